using PartMatch.Core.Catalogue;

namespace PartMatch.Core.Fit;

/// <summary>What spoke: the part's identity, a feature, a joint, a stack, a companion rule, a finding, or the kind of the part.</summary>
public enum ReasonBy
{
    Identity,
    Feature,
    Joint,
    Stack,
    Companion,
    Finding,
    Kind,
}

/// <summary>Was the relation met? Strong three-valued logic (Kleene 1952): a missing value is not a yes.</summary>
public enum Met
{
    Yes,
    No,
    NotKnown,
}

/// <summary>A compared value as the answer shows it: limits in the base unit for quantities, the text for all.</summary>
/// <param name="From">Where a demand comes from: <c>fitted-part</c>, <c>need</c>, <c>neighbour</c>, <c>band</c>.</param>
/// <param name="Part">The part it belongs to, where it belongs to one.</param>
public sealed record ComparedValue(string Text, decimal? Low = null, decimal? High = null, string? Unit = null, string? From = null, string? Part = null)
{
    /// <summary>Not recorded, disputed, or one of several that differ: a reading would settle it.</summary>
    internal bool IsOpen { get; init; }
}

/// <summary>One reason of an answer.</summary>
/// <param name="Met">Whether the relation was met; for identity, whether it speaks for the part.</param>
public sealed record Reason(
    string Id, ReasonBy By, Axis Axis, Met Met, string Text)
{
    public string? Feature { get; init; }

    /// <summary>The joint, stack or companion rule.</summary>
    public string? Code { get; init; }

    public Relation? Relation { get; init; }

    public ComparedValue? Part { get; init; }

    public ComparedValue? Need { get; init; }

    public IReadOnlyList<ComparedValue>? Terms { get; init; }

    public ComparedValue? Allowance { get; init; }

    /// <summary>For a joint or stack: what the difference or sum may be.</summary>
    public ComparedValue? Band { get; init; }

    public ComparedValue? Difference { get; init; }

    public Effect? Effect { get; init; }

    public string? Work { get; init; }

    /// <summary>The work that sets this feature to what the engine as built has: the relation is met only after it.</summary>
    public string? OnceDone { get; init; }

    public Consequence? Consequence { get; init; }

    /// <summary>Weakest grade among the values compared.</summary>
    public EvidenceGrade? Grade { get; init; }

    /// <summary>For a failed joint, stack or companion: which neighbour change would mend it.</summary>
    public string? Mend { get; init; }

    public IReadOnlyList<string> Evidence => [.. Cited.Select(source => source.Code).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)];

    /// <summary>The sources themselves: codes repeat between books.</summary>
    internal IReadOnlyList<Evidence> Cited { get; init; } = [];

    /// <summary>For a companion: every rule that led to it.</summary>
    internal IReadOnlyList<string> Because { get; init; } = [];

    /// <summary>For a joint or stack: which of its sides or terms is the part's own.</summary>
    internal FeatureAt? At { get; init; }

    /// <summary>
    /// How wide a reading of what is missing may be and still lie in what is surely accepted, base units; null where an end is open or unknown.
    /// </summary>
    internal decimal? Room { get; init; }
}
