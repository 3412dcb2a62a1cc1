using PartMatch.Core.Catalogue;
using PartMatch.Core.Items;
using PartMatch.Core.Parts;

namespace PartMatch.Core.Fit;

/// <summary>Does it go on? Best first; the worst of all relations counts.</summary>
public enum Mounts
{
    Yes,
    WithWork,
    No,
    NotKnown,
}

/// <summary>Does the engine run as the reference does?</summary>
public enum Runs
{
    Same,
    Differently,
    NotKnown,
}

public enum Headline
{
    Fits,
    FitsWithWork,
    MountsButRunsDifferently,
    NotKnownYet,
    DoesNotFit,
}

/// <summary>How sure an answer is; fixed meanings: rank 1–2, rank 3, rank 4–5, rank 6 or disputed or not known.</summary>
public enum Sureness
{
    Unproven,
    Indicated,
    Documented,
    Proven,
}

public enum IdentityRelation
{
    FittedHere,
    NewerNumber,
    OlderNumber,
    SameBothWays,
    AnotherPart,
    UnknownNumber,
}

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

/// <summary>One axis of the answer.</summary>
/// <param name="CouldBe">Every value still possible, best first; one when the axis is known.</param>
/// <param name="DecidedBy">Ids of the reasons that decided.</param>
/// <param name="Rank">Rank of the best statement, 1 best to 6; null when nothing was stated.</param>
public sealed record AxisAnswer<T>(
    T Value, IReadOnlyList<T> CouldBe, bool Disputed, IReadOnlyList<string> DecidedBy, int? Rank, Sureness Sureness)
    where T : struct, Enum;

/// <summary>How the part asked about stands to what the maker fitted.</summary>
/// <param name="Fitted">What the maker fitted there; empty when nothing or not recorded.</param>
/// <param name="Chain">The supersessions from the fitted part to the one asked about, in order.</param>
public sealed record IdentityAnswer(IdentityRelation Relation, IReadOnlyList<string> Fitted, IReadOnlyList<ChainLink> Chain);

/// <summary>One step of a chain of supersessions, as walked: from what is fitted towards what is asked about.</summary>
public sealed record ChainLink(string From, string To, SupersessionWay Way, int Quantity, IReadOnlyList<string> With, string Text);

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

    public Consequence? Consequence { get; init; }

    /// <summary>Weakest grade among the values compared.</summary>
    public EvidenceGrade? Grade { get; init; }

    /// <summary>For a failed joint, stack or companion: which neighbour change would mend it.</summary>
    public string? Mend { get; init; }

    public IReadOnlyList<string> Evidence => [.. Cited.Select(source => source.Code).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)];

    /// <summary>The sources themselves: codes repeat between books.</summary>
    internal IReadOnlyList<Evidence> Cited { get; init; } = [];

    /// <summary>For a joint or stack: which of its sides or terms is the part's own.</summary>
    internal FeatureAt? At { get; init; }

    /// <summary>How wide a reading of what is missing may be and still lie in what is surely accepted, base units; null where an end is open or unknown.</summary>
    internal decimal? Room { get; init; }
}

/// <summary>A statement of lower rank that says something else than the axis.</summary>
public sealed record Disagreement(Axis Axis, string Says, int Rank, IReadOnlyList<string> Reasons, string Text);

/// <summary>A change elsewhere that the part drags in.</summary>
/// <param name="Demand">In words.</param>
/// <param name="Because">Codes of the companion rules, nearest cause last.</param>
/// <param name="Held">What sits there as things stand, in words.</param>
/// <param name="Parts">Known parts that meet every demand on the position, ordered.</param>
public sealed record CompanionChange(string Position, string Demand, IReadOnlyList<string> Because, string Held, IReadOnlyList<string> Parts, string Text);

/// <summary>A work that the answer needs.</summary>
public sealed record WorkNeeded(string Work, string Name, string? Who, decimal? Days, Measures.Money? Price, bool? CanBeUndone, IReadOnlyList<string> Reasons);

/// <summary>A reading that would turn "not known" into an answer.</summary>
/// <param name="On"><c>part</c> or <c>engine</c>.</param>
/// <param name="Settles"><c>mounts</c> or <c>runs</c>.</param>
public sealed record MeasureNext(string Feature, string Name, string On, string? Position, Method Check, decimal Minutes, Axis Settles, string? How);

/// <summary>One stretch of build dates or serial numbers whose answer differs from another's.</summary>
public sealed record SpanAnswer(string Span, string? Mark, Headline Headline, IReadOnlyList<string> Fitted);

/// <summary>The answer to a <see cref="FitQuestion"/>: never a bare yes.</summary>
/// <param name="Reference">What <i>runs</i> was judged against, in words.</param>
/// <param name="Consequence">Worst consequence among the unmet relations; null when none is unmet.</param>
/// <param name="JudgedAgainst">Of several fitments valid together, the one that gave this answer; null when there was no choice.</param>
/// <param name="Spans">Filled when the answer depends on build date or serial number.</param>
public sealed record FitAnswer(
    FitAsked Asked,
    Headline Headline,
    string HeadlineText,
    string Reference,
    Sureness Sureness,
    Consequence? Consequence,
    AxisAnswer<Mounts> Mounts,
    AxisAnswer<Runs> Runs,
    IdentityAnswer Identity,
    string? JudgedAgainst,
    IReadOnlyList<Reason> Reasons,
    IReadOnlyList<Disagreement> Disagreements,
    IReadOnlyList<CompanionChange> AlsoNeeded,
    IReadOnlyList<CompanionChange> PerhapsNeeded,
    IReadOnlyList<WorkNeeded> Works,
    IReadOnlyList<MeasureNext> MeasureNext,
    IReadOnlyList<SpanAnswer> Spans,
    string NotCompared,
    IReadOnlyList<Caution> Cautions)
{
    /// <summary>What the word for its sureness means.</summary>
    public string SurenessText => SurenessMeaning.Of(Sureness);

    /// <summary>Everything found about the part at this position, on any variant, whether it counts or not; ordered by code.</summary>
    public IReadOnlyList<FindingShown> Findings { get; init; } = [];

    /// <summary>The one example that was asked about, against its service limits; null where a number was asked about.</summary>
    public ItemAnswer? Item { get; init; }

    /// <summary>Every source cited anywhere in the answer, ordered by code. Codes repeat between books: a code can stand here twice.</summary>
    public IReadOnlyList<SourceShown> Sources =>
    [
        .. Reasons.SelectMany(reason => reason.Cited).Select(SourceShown.Of).OfType<SourceShown>()
            .Concat(Findings.Select(finding => finding.Evidence)).Concat(Item?.Limits.Select(limit => limit.Source).OfType<SourceShown>() ?? [])
            .Distinct().OrderBy(source => source.Evidence, StringComparer.Ordinal).ThenBy(source => source.Grade).ThenBy(source => source.Source, StringComparer.Ordinal),
    ];

    /// <summary>What timing and compression become with the part; null where the position plays no part in those sums. The door fills it in.</summary>
    public EngineChange? EngineChange { get; init; }

    /// <summary>Numbers that can be taken for the part asked about, most dangerous first; the door fills them in.</summary>
    public IReadOnlyList<LookAlikeWarning> LookAlikes { get; init; } = [];

    /// <summary>The known numbers nearest to one that no book knows, likeliest mix-up first; empty for a known one. The door fills them in.</summary>
    public IReadOnlyList<NearestNumber> NearestNumbers { get; init; } = [];

    /// <summary>The address that asks this question again.</summary>
    public string Permalink { get; init; } = "";
}

/// <summary>The question with its defaults filled in.</summary>
/// <param name="Part">The part asked about, or null when no book knows the number.</param>
/// <param name="Number">The number as asked, where one was asked.</param>
/// <param name="From">The variant whose part was asked about, where one was.</param>
/// <param name="With">Neighbours given, as <c>position=part</c>, ordered.</param>
public sealed record FitAsked(
    string Family, string Variant, string Position, string? Part, string? Number, string? From, string? Built, long? Serial, IReadOnlyList<string> With)
{
    /// <summary>The item asked about, as <c>book/item</c>, where one was.</summary>
    public string? Item { get; init; }
}

/// <summary>A known number that is written nearly as the one asked about.</summary>
/// <param name="Edits">Between the keys as they are.</param>
public sealed record NearestNumber(string Number, string Part, int Edits);

/// <summary>A number that can be taken for this one.</summary>
/// <param name="Danger"><c>high</c>, <c>medium</c>, <c>low</c> or <c>none</c>.</param>
/// <param name="TellApart">The cheapest check that separates them, in words; null when nothing recorded does.</param>
public sealed record LookAlikeWarning(string Part, string Name, string Danger, string? TellApart);
