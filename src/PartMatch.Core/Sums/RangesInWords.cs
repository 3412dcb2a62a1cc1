namespace PartMatch.Core.Sums;

/// <summary>What a range of a sum means, said beside it.</summary>
internal static class RangesInWords
{
    /// <summary>Interval arithmetic takes the inputs as if their ends came together (Moore 1966).</summary>
    public const string WorstCases =
        "Low and high are worst cases taken together: every figure at the end that makes the result least, then at the end that makes it most. "
        + "They are bounds, as good as those figures are, and no probability: nothing is said of how likely an end is.";
}
