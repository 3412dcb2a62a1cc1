using PartMatch.Core.Catalogue;
using PartMatch.Core.Items;
using PartMatch.Core.Parts;

namespace PartMatch.Core.Fit;

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
public sealed record FitAnswer
{
    public required FitAsked Asked { get; init; }

    public required Headline Headline { get; init; }

    public required string HeadlineText { get; init; }

    /// <summary>What <i>runs</i> was judged against, in words.</summary>
    public required string Reference { get; init; }

    public required Sureness Sureness { get; init; }

    /// <summary>Worst consequence among the unmet relations; null when none is unmet.</summary>
    public required Consequence? Consequence { get; init; }

    public required AxisAnswer<Mounts> Mounts { get; init; }

    public required AxisAnswer<Runs> Runs { get; init; }

    public required IdentityAnswer Identity { get; init; }

    /// <summary>Of several fitments valid together, the one that gave this answer; null when there was no choice.</summary>
    public string? JudgedAgainst { get; init; }

    public required IReadOnlyList<Reason> Reasons { get; init; }

    public IReadOnlyList<Disagreement> Disagreements { get; init; } = [];

    public IReadOnlyList<CompanionChange> AlsoNeeded { get; init; } = [];

    public IReadOnlyList<CompanionChange> PerhapsNeeded { get; init; } = [];

    public IReadOnlyList<WorkNeeded> Works { get; init; } = [];

    public IReadOnlyList<MeasureNext> MeasureNext { get; init; } = [];

    /// <summary>Filled when the answer depends on build date or serial number.</summary>
    public IReadOnlyList<SpanAnswer> Spans { get; init; } = [];

    public required string NotCompared { get; init; }

    public required IReadOnlyList<Caution> Cautions { get; init; }

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
            .Distinct()
            .OrderBy(source => source.Evidence, StringComparer.Ordinal).ThenBy(source => source.Grade).ThenBy(source => source.Source, StringComparer.Ordinal),
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
/// <param name="DangerText">Its two factors, ease and harm, with the words for both.</param>
public sealed record LookAlikeWarning(string Part, string Name, string Danger, string? TellApart, string DangerText);
