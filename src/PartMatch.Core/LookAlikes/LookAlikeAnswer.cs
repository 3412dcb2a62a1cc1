using PartMatch.Core.Catalogue;

namespace PartMatch.Core.LookAlikes;

/// <summary>The numbers and parts that can be taken for the one asked about.</summary>
/// <param name="Known">The parts that the number asked about stands on, by id; empty when it is in no book, more than one when it is ambiguous.</param>
/// <param name="WrittenForms">Every number of the base that is the same once separators are dropped, by maker, as written.</param>
/// <param name="Question">What has to be asked before anything else: several written forms, several parts, or a mark that only narrows; null when the number is plain.</param>
/// <param name="SplitBy">The check that best splits the parts that the number can mean; null where it means one part or none.</param>
/// <param name="Complete">No number within the limit is missing from the whole list.</param>
/// <param name="Within">Edits on folded keys that counted as near.</param>
/// <param name="Total">Rows of the whole list.</param>
/// <param name="Cursor">Asks for the next page; null on the last one.</param>
/// <param name="LookAlikes">This page, ordered by danger (ease × harm, largest first), offers of the look-alike (most first), cost (found only by eye last), key, part.</param>
public sealed record LookAlikeAnswer(
    LookAlikeAsked Asked, IReadOnlyList<KnownPart> Known, IReadOnlyList<WrittenForm> WrittenForms, string? Question, string? SplitBy, bool Complete, int Within, int Total, string? Cursor, IReadOnlyList<LookAlike> LookAlikes)
{
    /// <summary>The address that asks this question again; the door fills it in.</summary>
    public string Permalink { get; init; } = "";

    /// <summary>The address of the key over what the number can mean, or over the one part and what it can be taken for; null for a number in no book; the door fills it in.</summary>
    public string? TellApart { get; init; }
}

/// <summary>A part that the number asked about stands on.</summary>
/// <param name="Name">Null, as the kind, when no family has the part in its scope.</param>
public sealed record KnownPart(string Part, string? Name, string? Kind);

/// <summary>A number as one maker or supplier writes it.</summary>
public sealed record WrittenForm(string Maker, string Number, NumberSort Sort, string Part);

/// <summary>A part that can be taken for the one asked about.</summary>
/// <param name="Number">The number that is near, as written; the part's own number when the eye found it.</param>
/// <param name="Near">How near the numbers are; null when only the eye found it.</param>
/// <param name="Against">The known part it was judged against: of several the one that makes it most dangerous; null when the number asked about is in no book.</param>
/// <param name="RelationText">The supersessions behind the relation, with their limits; null when there are none.</param>
/// <param name="Worst">The place of most harm; null when there is none, or when neither part is fitted anywhere.</param>
/// <param name="DangerText">The two factors of the danger, in words.</param>
/// <param name="Differs">Features with different recorded values, those that matter first.</param>
/// <param name="TellApart">Checks that separate the two, cheapest first.</param>
/// <param name="TellApartText">Which check is the cheapest, or that nothing recorded separates them, and why.</param>
/// <param name="Offers">Offers of the look-alike that are recorded: the more there are, the likelier it is met.</param>
public sealed record LookAlike(
    string Number,
    string Part,
    string? Kind,
    string? Name,
    Near? Near,
    bool SameToTheEye,
    string? Against,
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
    int Offers);

/// <summary>How near two numbers are.</summary>
/// <param name="Edits">Between the keys as they are.</param>
/// <param name="FoldedEdits">Between the keys with look-alike characters folded together.</param>
/// <param name="Cost">0 for equal keys; the larger, the less likely the mix-up (<see cref="MixUpCost"/>).</param>
/// <param name="Class">Null when the keys are equal.</param>
/// <param name="At">Where they differ.</param>
public sealed record Near(int Edits, int FoldedEdits, double Cost, MixUpClass? Class, IReadOnlyList<MixUpPlace> At);
