using PartMatch.Core.Catalogue;

namespace PartMatch.Core.Consistency;

/// <summary>What is wrong or missing, worst first.</summary>
public enum FaultSort
{
    /// <summary>Numbers that replace each other one way only, in a circle.</summary>
    SupersessionLoop,

    /// <summary>What the maker fitted breaks a joint or a stack of its own variant.</summary>
    JointContradicts,

    /// <summary>What the maker fitted breaks a companion rule of its own variant.</summary>
    CompanionContradicts,

    /// <summary>What the maker fitted does not meet an explicit need of its own position.</summary>
    FittedPartContradicts,

    /// <summary>Equally good sources of one value exclude each other.</summary>
    ValuesDisputed,

    /// <summary>A weaker source of a value says what cannot be true together with the one that counts.</summary>
    ValuesContradicted,

    /// <summary>A value has another sign, or another order of magnitude, than that of every other part of its kind.</summary>
    ValueFarOff,

    /// <summary>Findings about one question exclude each other, or say another thing than what is reckoned.</summary>
    FindingsDisagree,

    /// <summary>Sources tighten one fastener of the same engines to different ends.</summary>
    TorquesDisagree,

    /// <summary>The spans of two parts at one position overlap although neither is a plain alternative of the other.</summary>
    SpansOverlap,

    /// <summary>Engines between the spans of a position have nothing recorded.</summary>
    SpansGap,

    /// <summary>A value that a rule, need, joint, stack or companion rule reads is not recorded of a fitted part.</summary>
    MissingValue,

    /// <summary>Nothing is recorded of a position of a variant.</summary>
    NotRecorded,

    /// <summary>A statement cites no evidence, or only evidence that was retracted.</summary>
    NoEvidence,

    /// <summary>Two numbers that are dangerously easy to mix up, and nobody has judged the pair.</summary>
    NearUnjudged,

    /// <summary>The list of features of a kind in use has not been reviewed.</summary>
    KindNotReviewed,
}

/// <summary>How bad a fault is, worst first.</summary>
public enum Severity
{
    /// <summary>Recorded statements cannot all be true.</summary>
    Wrong,

    /// <summary>A person has to say which of the recorded statements holds.</summary>
    Doubtful,

    /// <summary>Something that answers rest on is not there.</summary>
    Missing,
}

/// <summary>One thing that is wrong or missing.</summary>
/// <param name="Position">Where it shows; null where it belongs to no position.</param>
/// <param name="Variants">The variants it concerns, in ordinal order; empty when it concerns a part that no variant has.</param>
/// <param name="Rows">The rows that say it, and those that lack it.</param>
/// <param name="Fit">The address of a fit question that shows it.</param>
/// <param name="Mend">What to do about it.</param>
public sealed record Fault(
    FaultSort Sort, string Title, string Text, string? Position, IReadOnlyList<string> Variants, IReadOnlyList<FaultRow> Rows, string? Fit, string Mend)
{
    public Severity Severity => Sort switch
    {
        <= FaultSort.FittedPartContradicts => Severity.Wrong,
        <= FaultSort.SpansOverlap => Severity.Doubtful,
        _ => Severity.Missing,
    };

    /// <summary>Worst that the broken relation may come to; null where none is broken.</summary>
    public Consequence? Consequence { get; init; }

    /// <summary>How many questions hang on it; null where that is not counted.</summary>
    public Unlocks? Unlocks { get; init; }

    /// <summary>For a missing value: how to get it.</summary>
    public Measurement? Measure { get; init; }

    /// <summary>Several pairs, or several variants, may name one row.</summary>
    internal Fault WithoutRepeatedRows() => this with { Rows = [.. Rows.Distinct()] };
}

/// <summary>A row of a parts book.</summary>
/// <param name="Book">Null where what is known of the row does not say in which book it stands.</param>
/// <param name="Table">Name of the file without its ending.</param>
/// <param name="Key">Its key cells joined by commas; a comma in a cell is written %2C, a percent sign %25.</param>
/// <param name="Text">What it says, in words.</param>
/// <param name="Source">The evidence that it cites, or that it cites none; null for a row that needs none.</param>
public sealed record FaultRow(string? Book, string Table, string Key, string Text, string? Source = null);

/// <summary>
/// How many of the questions "does what one variant has at a position go on another?" of the family are not known yet and hang on this.
/// An axis that is not known is held open by relations that are not known; each of them lacks one or more things.
/// </summary>
/// <param name="Alone">Questions with an axis that nothing but this holds open.</param>
/// <param name="Together">Further questions in which it is one of several things that hold an axis open.</param>
public sealed record Unlocks(int Alone, int Together)
{
    public static Unlocks None { get; } = new(0, 0);
}

/// <summary>A value to get.</summary>
/// <param name="Name">Of the feature.</param>
/// <param name="Check">The cheapest recorded check that can decide most of what hangs on the value; null when no check is recorded.</param>
/// <param name="Minutes">That the check takes, without getting at the part.</param>
public sealed record Measurement(string Part, string Feature, string Name, Method? Check, decimal? Minutes, string? How);

/// <summary>What the base can find wrong or missing by itself. An empty list is no proof that nothing is.</summary>
/// <param name="Counts">Faults of each sort that was looked for, by its code, before the filter by sort.</param>
/// <param name="MeasureNext">The missing values that settle something, those first that settle most alone; at most ten.</param>
/// <param name="Faults">By sort, worst first, as declared; within a sort by consequence, by what hangs on them, by position.</param>
/// <param name="Total">Faults that the filters leave.</param>
public sealed record ConsistencyAnswer(
    ConsistencyAsked Asked, IReadOnlyDictionary<string, int> Counts, IReadOnlyList<Fault> MeasureNext, IReadOnlyList<Fault> Faults, int Total)
{
    /// <summary>The address that asks this question again; the door fills it in.</summary>
    public string Permalink { get; init; } = "";
}
