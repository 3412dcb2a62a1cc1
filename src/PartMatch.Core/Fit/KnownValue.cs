using PartMatch.Core.Catalogue;
using PartMatch.Core.Measures;

namespace PartMatch.Core.Fit;

/// <summary>What the base knows of one feature after its sources are weighed: a closed set of outcomes.</summary>
public abstract record KnownValue;

/// <summary>No source that counts says anything.</summary>
public sealed record NotRecorded : KnownValue
{
    public static NotRecorded Instance { get; } = new();
}

/// <summary>Equally good sources exclude each other.</summary>
public sealed record DisputedValue(string Text, IReadOnlyList<Evidence> Evidence) : KnownValue;

/// <summary>A value that counts.</summary>
/// <param name="Grade">Grade of the sources it rests on.</param>
public abstract record StatedValue(string Text, EvidenceGrade Grade, IReadOnlyList<Evidence> Evidence) : KnownValue
{
    /// <summary>What weaker sources say that cannot be true together with it: outranked, but not to be kept quiet.</summary>
    public IReadOnlyList<RecordedValue> Against { get; init; } = [];
}

/// <summary>A quantity in base units.</summary>
/// <param name="Nominal">The value itself.</param>
/// <param name="Stated">Value −minus … +plus: what the maker allows for this number.</param>
/// <param name="Possible">The same widened by how well it is known: where the part can really lie.</param>
/// <param name="Uncertainty">How well the value is known; 0 when not recorded.</param>
/// <param name="Bare">Minus or plus is not recorded: compared as a bare value, graded inferred.</param>
public sealed record StatedQuantity(
    decimal Nominal, Interval Stated, Interval Possible, decimal Uncertainty, bool Bare, Unit Unit, string Text, EvidenceGrade Grade,
    IReadOnlyList<Evidence> Evidence)
    : StatedValue(Text, Grade, Evidence)
{
    /// <summary>Several equally good sources that overlap: the text names each, the limits hold them all.</summary>
    public bool IsHull { get; init; }
}

public sealed record StatedCount(long Value, string Text, EvidenceGrade Grade, IReadOnlyList<Evidence> Evidence) : StatedValue(Text, Grade, Evidence);

/// <summary>A choice, or a set of choices.</summary>
public sealed record StatedChoices(IReadOnlyList<string> Choices, string Text, EvidenceGrade Grade, IReadOnlyList<Evidence> Evidence)
    : StatedValue(Text, Grade, Evidence);
