using PartMatch.Core.Catalogue;
using PartMatch.Core.Fit;
using PartMatch.Core.Parts;

namespace PartMatch.Core.Items;

/// <summary>One example against a service limit, or against all of them. Not inspected never counts as good.</summary>
public enum ItemCondition
{
    WithinLimits,
    NotInspected,
    BeyondLimits,
}

/// <summary>What a table of grades makes of a reading.</summary>
public enum GradeOutcome
{
    /// <summary>One graded number.</summary>
    One,

    /// <summary>The reading's uncertainty reaches over several grades, or over an end of the table; or one grade has several numbers.</summary>
    Several,

    /// <summary>In no row of the table.</summary>
    Outside,

    /// <summary>How well it was read is not recorded.</summary>
    NotKnown,
}

/// <summary>What was measured on one example, held against the service limits of its kind and the tables that choose by it.</summary>
/// <param name="Item">Its code in its book.</param>
/// <param name="Text">Why the whole stands as it does.</param>
/// <param name="Limits">Every limit that holds for it, ordered by feature.</param>
/// <param name="Grades">One for each table that chooses by a feature that was read, ordered by position.</param>
/// <param name="NotInspected">What no reading shows.</param>
public sealed record ItemAnswer(
    string Item,
    string Book,
    string? Part,
    ItemCondition Condition,
    string Text,
    IReadOnlyList<LimitAnswer> Limits,
    IReadOnlyList<GradeAnswer> Grades,
    string NotInspected,
    IReadOnlyList<Caution> Cautions)
{
    /// <summary>Everything that was read, ordered by feature.</summary>
    public IReadOnlyList<ReadingAnswer> Readings { get; init; } = [];
}

/// <summary>What was read on the item.</summary>
/// <param name="Counts">Its source, its own or that of the item, was not withdrawn.</param>
/// <param name="OfNumber">What is recorded of the number itself; null when nothing is.</param>
public sealed record ReadingAnswer(
    string Feature, string Name, ComparedValue Reading, bool Counts, string? Instrument, string? ReadOn, string? Note, ComparedValue? OfNumber,
    SourceShown? Source);

/// <summary>One service limit.</summary>
/// <param name="Part">The one part the limit holds for; null for the whole kind.</param>
/// <param name="Limit">The band that passes.</param>
/// <param name="Reading">What was read, ± how well; null when nothing was read that counts.</param>
/// <param name="Consequence">Of using a part beyond the limit.</param>
/// <param name="Source">Who sets the limit; null when not recorded.</param>
public sealed record LimitAnswer(
    string Feature, string Name, string? Part, ItemCondition Condition, ComparedValue Limit, ComparedValue? Reading, Consequence Consequence, string Text,
    SourceShown? Source);

/// <summary>What to order where a position is chosen by measurement.</summary>
/// <param name="Position">The position whose part is chosen.</param>
/// <param name="Feature">The feature of this item it is chosen by.</param>
/// <param name="Parts">The graded numbers that can be right, in the order of the table; empty when in no row.</param>
public sealed record GradeAnswer(
    string Position, string Name, string Feature, ComparedValue Reading, GradeOutcome Outcome, IReadOnlyList<string> Parts, string Text);
