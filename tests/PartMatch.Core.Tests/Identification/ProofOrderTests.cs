using CsCheck;
using PartMatch.Core.Identification;
using Xunit;

namespace PartMatch.Core.Tests.Identification;

public sealed class ProofOrderTests
{
    private static readonly (double Cost, double FailureChance)[] _three = [(1, 0.1), (5, 0.6), (2, 0.3)];

    // By hand, for 3-2-1: 2 + 0.7 × 5 + 0.7 × 0.4 × 1 = 5.78.
    [Theory]
    [InlineData(6.22, 0, 1, 2)]
    [InlineData(5.95, 0, 2, 1)]
    [InlineData(6.12, 1, 0, 2)]
    [InlineData(6.08, 1, 2, 0)]
    [InlineData(5.85, 2, 0, 1)]
    [InlineData(5.78, 2, 1, 0)]
    public void Expected_cost_of_every_order_of_three(double expected, params int[] order) => Assert.Equal(expected, ProofOrder.ExpectedCost(_three, order), 1e-9);

    // Cost ÷ chance of failing: 10, 8.33, 6.67. Source: the rule for series systems, Mitten 1960, Butterworth 1972.
    [Fact]
    public void Smallest_cost_for_a_failure_comes_first() => Assert.Equal([2, 1, 0], ProofOrder.Of(_three));

    [Fact]
    public void What_cannot_fail_comes_last_and_equals_stay_as_given()
    {
        Assert.Equal([1, 2, 0, 3], ProofOrder.Of([(0, 0), (1, 0.5), (2, 1.0), (1, 0)]));
        Assert.Empty(ProofOrder.Of([]));
    }

    [Fact]
    public void No_order_is_cheaper() => Gen.Select(Gen.Int[0, 9], Gen.Int[0, 10]).Array[1, 5].Sample(rows =>
    {
        (double, double)[] tests = [.. rows.Select(row => ((double)row.Item1, row.Item2 / 10.0))];
        var best = Orders([.. Enumerable.Range(0, tests.Length)]).Min(order => ProofOrder.ExpectedCost(tests, order));
        return ProofOrder.ExpectedCost(tests, ProofOrder.Of(tests)) < best + 1e-9;
    });

    private static IEnumerable<int[]> Orders(int[] left) => left.Length == 0
        ? [[]]
        : left.SelectMany(first => Orders([.. left.Where(other => other != first)]), (first, rest) => (int[])[first, .. rest]);
}
