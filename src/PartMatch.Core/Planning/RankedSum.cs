namespace PartMatch.Core.Planning;

/// <summary>Sums in order of rank as one: a step of an earlier one outweighs everything that the later ones can come to.</summary>
internal static class RankedSum
{
    /// <summary>The solver keeps whole numbers in 64 bits; this leaves room for its own sums.</summary>
    private const long Most = 1_000_000_000_000_000_000;

    /// <returns>As many of the sums as go into one, from the first on.</returns>
    public static (LinearSum Sum, int Count) Of(IReadOnlyList<LinearSum> sums, IReadOnlyList<(long Least, long Most)> ranges)
    {
        for (var count = sums.Count; count > 1; count--)
        {
            if (Weigh([.. sums.Take(count)], ranges) is { } sum)
            {
                return (sum, count);
            }
        }

        return (sums[0], 1);
    }

    private static LinearSum? Weigh(IReadOnlyList<LinearSum> sums, IReadOnlyList<(long Least, long Most)> ranges)
    {
        var ranked = new LinearSum();
        var (weight, reach) = (Int128.One, Int128.Zero);
        foreach (var sum in sums.Reverse())
        {
            reach += weight * (Int128.Abs(sum.Constant) + Total(sum, ranges, range => long.Max(long.Abs(range.Least), long.Abs(range.Most))));
            if (reach > Most)
            {
                return null;
            }

            ranked.Add(sum, (long)weight);
            weight *= Total(sum, ranges, range => range.Most - range.Least) + 1;
        }

        return ranked;
    }

    private static Int128 Total(LinearSum sum, IReadOnlyList<(long Least, long Most)> ranges, Func<(long Least, long Most), long> of) =>
        sum.Factors.Aggregate(Int128.Zero, (all, factor) => all + (Int128.Abs(factor.Value) * of(ranges[factor.Key])));
}
