using PartMatch.Core.Catalogue;

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

/// <summary>One axis of the answer.</summary>
/// <param name="CouldBe">Every value still possible, best first; one when the axis is known.</param>
/// <param name="DecidedBy">Ids of the reasons that decided.</param>
/// <param name="Rank">Rank of the best statement, 1 best to 6; null when nothing was stated.</param>
public sealed record AxisAnswer<T>(
    T Value, IReadOnlyList<T> CouldBe, bool Disputed, IReadOnlyList<string> DecidedBy, int? Rank, Sureness Sureness)
    where T : struct, Enum;

/// <summary>A statement of lower rank that says something else than the axis.</summary>
public sealed record Disagreement(Axis Axis, string Says, int Rank, IReadOnlyList<string> Reasons, string Text);
