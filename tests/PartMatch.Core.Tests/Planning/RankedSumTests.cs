using PartMatch.Core.Planning;
using Xunit;

namespace PartMatch.Core.Tests.Planning;

public sealed class RankedSumTests
{
    private static readonly (long Least, long Most)[] _ranges = [(0, 1), (0, 3), (0, 1)];

    [Fact]
    public void A_step_of_an_earlier_sum_outweighs_all_of_the_later_ones()
    {
        // The last goes from 0 to 2 * 1, so a step of the middle one weighs 3; the middle one from 0 to 3, so a step of the first weighs 4 * 3.
        var (sum, count) = RankedSum.Of([Sum(0, 1), Sum(1, 1), Sum(2, 2)], _ranges);

        Assert.Equal(3, count);
        Assert.Equal([(0, 12L), (1, 3L), (2, 2L)], sum.Factors.OrderBy(factor => factor.Key).Select(factor => (factor.Key, factor.Value)));
    }

    [Fact]
    public void What_does_not_go_into_one_sum_is_left_for_the_next()
    {
        // 4 * 3 * 10^17 is beyond 10^18, 4 * 10^17 is not.
        var (_, count) = RankedSum.Of([Sum(0, 100_000_000_000_000_000), Sum(1, 1), Sum(2, 2)], _ranges);

        Assert.Equal(2, count);
    }

    private static LinearSum Sum(int variable, long factor) => new LinearSum().Add(variable, factor);
}
