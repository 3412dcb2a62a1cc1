using PartMatch.Core.Catalogue;

namespace PartMatch.Core.Identification;

/// <summary>When the checks are made.</summary>
public enum CheckMode
{
    /// <summary>By a photo or a label that a seller can be asked for.</summary>
    BeforePaying,

    /// <summary>With the thing on the bench and the tools that are there.</summary>
    InHand,
}

/// <summary>What the checks can do for the candidates, best first.</summary>
public enum TellApartHeadline
{
    /// <summary>One candidate is left by what was seen.</summary>
    Identified,

    /// <summary>Every two of them are separated by some check.</summary>
    ToldApart,

    /// <summary>Some are, some are not.</summary>
    Partly,

    /// <summary>No check separates any two.</summary>
    NotToldApart,

    /// <summary>What was seen fits none of them.</summary>
    NoneLeft,
}

/// <summary>How to find out which of several parts, or which variant of an engine, one has before oneself.</summary>
/// <param name="Candidates">In the order asked.</param>
/// <param name="WeightsText">How likely each was taken to be, and why.</param>
/// <param name="Method">Whether no key has a smaller expected effort, or a cheaper one may exist.</param>
/// <param name="ExpectedMinutes">Of the key; 0 where no check is made.</param>
/// <param name="Key">Where to begin; null where no check splits the candidates that are left.</param>
/// <param name="Inseparable">Every two of the candidates left that no check at hand separates, and what would.</param>
/// <param name="Message">What to write to a seller; null in hand, and where no photo or label helps.</param>
/// <param name="Confirm">To be sure that it is the first of the candidates left: all of these must come out so, in this order.</param>
/// <param name="Positions">Of an engine: what was seen where, and on which variants it is so.</param>
/// <param name="WalkRound">Of an engine: one check for each position at which the variants differ, by minutes. A swapped part deceives a key, not this.</param>
public sealed record TellApartAnswer(
    TellApartAsked Asked,
    TellApartHeadline Headline,
    string HeadlineText,
    IReadOnlyList<CandidateRow> Candidates,
    string WeightsText,
    KeyMethod Method,
    decimal ExpectedMinutes,
    decimal WorstMinutes,
    KeyStep? Key,
    IReadOnlyList<Inseparable> Inseparable,
    SellerMessage? Message,
    IReadOnlyList<Confirmation> Confirm,
    IReadOnlyList<SeenPosition> Positions,
    IReadOnlyList<WalkRoundStop> WalkRound)
{
    /// <summary>The address that asks this question again; the door fills it in.</summary>
    public string Permalink { get; init; } = "";
}

/// <summary>The question with its defaults filled in.</summary>
/// <param name="Parts">Ids of the parts; empty where variants are asked about.</param>
/// <param name="Variants">Empty where parts are asked about.</param>
/// <param name="Tools">Tools at hand; empty before paying.</param>
public sealed record TellApartAsked(
    IReadOnlyList<string> Parts, string? Family, IReadOnlyList<string> Variants, CheckMode Mode, IReadOnlyList<Method> Tools, IReadOnlyList<string> Seen);

public enum CandidateState
{
    Possible,
    RuledOut,
}

/// <summary>What it can be.</summary>
/// <param name="Candidate">Id of the part, or code of the variant.</param>
/// <param name="Number">Of a part, as written.</param>
/// <param name="Weight">How likely it was taken to be before anything was seen; all add up to 1.</param>
/// <param name="RuledOutBy">What was seen that is not so of it; empty where it is still possible.</param>
public sealed record CandidateRow(string Candidate, string? Number, string Name, decimal Weight, CandidateState State, IReadOnlyList<string> RuledOutBy);

/// <summary>A check to make.</summary>
/// <param name="Position">Where on the engine; null for a part by itself.</param>
/// <param name="Name">The feature in words, its position before it.</param>
/// <param name="Minutes">Of the check alone.</param>
/// <param name="AccessMinutes">Until one can see it, on a complete engine; null for a part by itself.</param>
/// <param name="Access">What has to come off first, in words.</param>
/// <param name="How">What to do, in the words of the kind; null when not recorded.</param>
public sealed record ObservedCheck(
    string? Position, string? Kind, string Feature, string Name, Method Method, decimal Minutes,
    decimal? AccessMinutes, string? Access, bool BeforePaying, string? How);

/// <summary>A step of the key.</summary>
/// <param name="Candidates">Codes of those that are possible here.</param>
/// <param name="ExpectedMinutes">From here to the end.</param>
public sealed record KeyStep(IReadOnlyList<string> Candidates, ObservedCheck Check, decimal ExpectedMinutes, IReadOnlyList<StepAnswer> Answers);

/// <summary>An answer that the check of a step can give.</summary>
/// <param name="Text">What is seen or read.</param>
/// <param name="Seen">The same, to be added to the question.</param>
/// <param name="Candidates">Who is left then: one is identified; several without a next step are not separated.</param>
/// <param name="Share">How likely the answer is, 0 to 1.</param>
public sealed record StepAnswer(string Text, string Seen, IReadOnlyList<string> Candidates, decimal Share, KeyStep? Next);

/// <summary>Two candidates that no check at hand separates.</summary>
/// <param name="Text">Why not.</param>
/// <param name="WouldSeparate">What would: checks by other means, cheapest first, then those for which a value is missing; four at most.</param>
/// <param name="IsLinked">A supersession, or somebody's finding that they are one part, links the two.</param>
public sealed record Inseparable(IReadOnlyList<string> Candidates, string Text, IReadOnlyList<Separator> WouldSeparate, bool IsLinked);

/// <summary>A check that would separate two candidates, and what it takes.</summary>
public sealed record Separator(string Feature, string Name, Method Method, decimal Minutes, string Text);

/// <summary>A check that must come out one way if it is the one.</summary>
/// <param name="Expect">What is seen or read of it.</param>
/// <param name="RulesOut">Codes of those for which it comes out otherwise.</param>
public sealed record Confirmation(ObservedCheck Check, string Expect, IReadOnlyList<string> RulesOut);

/// <summary>What was seen at a position of an engine.</summary>
/// <param name="As">Variants on which it is so.</param>
/// <param name="IsForeign">The rest speaks for a variant on which it is otherwise.</param>
public sealed record SeenPosition(string Position, IReadOnlyList<string> As, bool IsForeign, string Text);

/// <summary>A position to be looked at on the way round an engine.</summary>
/// <param name="Answers">What can be seen, and on which variants it is so; a variant for which it is not recorded is in each.</param>
public sealed record WalkRoundStop(string Position, string Name, ObservedCheck Check, IReadOnlyList<WalkRoundAnswer> Answers);

public sealed record WalkRoundAnswer(string Text, string Seen, IReadOnlyList<string> Candidates);

/// <summary>A message to a seller, ready to be sent.</summary>
/// <param name="Questions">What is asked, and which candidates each answer splits.</param>
/// <param name="Shots">The photographs asked for.</param>
public sealed record SellerMessage(string Text, IReadOnlyList<SellerQuestion> Questions, IReadOnlyList<AskedShot> Shots);

public sealed record SellerQuestion(string Feature, string Name, Method Method, string Text, IReadOnlyList<IReadOnlyList<string>> Splits);

/// <param name="How">How to take it; null when not recorded.</param>
public sealed record AskedShot(string Kind, string Shot, string Name, string? How);
