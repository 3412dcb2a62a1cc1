namespace PartMatch.Core.LookAlikes;

/// <summary>Which parts of a family are most dangerously mixed up?</summary>
/// <param name="Kind">Only pairs with a part of this kind; null for all.</param>
/// <param name="Danger">Only this danger; null for all.</param>
/// <param name="Judgement">
/// Only pairs that stand to each other so; <see cref="PartRelation.NotJudged"/> is the list of what nobody has looked at yet.
/// </param>
/// <param name="Limit">Rows of a page, at least 1.</param>
/// <param name="Cursor">From the page before; null for the first page.</param>
public sealed record PairQuestion(
    string Family,
    string? Kind = null,
    DangerLevel? Danger = null,
    PartRelation? Judgement = null,
    int Limit = LookAlikeQuestion.DefaultLimit,
    string? Cursor = null);

/// <summary>Pairs of parts that can be mixed up.</summary>
/// <param name="Complete">No pair within the limit is missing from the whole list.</param>
/// <param name="Within">Edits on folded keys that counted as near; 1 for keys shorter than 6 characters.</param>
/// <param name="Counts">Of all pairs of the family, before the filters.</param>
/// <param name="Total">Pairs that the filters leave.</param>
/// <param name="Cursor">Asks for the next page; null on the last one.</param>
/// <param name="Pairs">This page, ordered by danger (ease × harm, largest first), offers of both together (most first), cost, then the two parts.</param>
public sealed record PairAnswer(
    PairAsked Asked, bool Complete, int Within, PairCounts Counts, int Total, string? Cursor, IReadOnlyList<PairRow> Pairs)
{
    /// <summary>The address that asks this question again; the door fills it in.</summary>
    public string Permalink { get; init; } = "";
}

/// <summary>The question as the answer repeats it.</summary>
public sealed record PairAsked(string Family, string? Kind, DangerLevel? Danger, PartRelation? Judgement, int Limit);

/// <param name="NotJudged">Pairs that no supersession links and nobody has judged, whatever their danger.</param>
public sealed record PairCounts(int High, int Medium, int Low, int None, int NotJudged);

/// <summary>Two parts that can be mixed up; which of them is a and which b means nothing.</summary>
/// <param name="Near">How near their numbers are, read from a to b; null when only the eye mixes them up.</param>
/// <param name="Relation">How b stands to a.</param>
/// <param name="Wrong">How often the one came in place of the other, where deliveries are counted; null where none are.</param>
public sealed record PairRow(
    PairPart A,
    PairPart B,
    Near? Near,
    bool SameToTheEye,
    PartRelation Relation,
    string? RelationText,
    DangerLevel Danger,
    int Ease,
    int Harm,
    WorstPlace? Worst,
    string DangerText,
    IReadOnlyList<PartDifference> Differs,
    IReadOnlyList<TellApart> TellApart,
    string TellApartText,
    WrongDeliveries? Wrong);

/// <param name="Number">The number that is near, as written; the part's own where only the eye mixes them up.</param>
/// <param name="Offers">Offers of it that are recorded.</param>
public sealed record PairPart(string Part, string Number, string? Name, string? Kind, int Offers);

/// <param name="Deliveries">Deliveries of either part that were looked at.</param>
/// <param name="Wrong">Those in which the other came.</param>
public sealed record WrongDeliveries(int Deliveries, int Wrong);
