using CsCheck;
using PartMatch.Core.Measures;
using Xunit;

namespace PartMatch.Core.Tests.Measures;

public sealed class SpreadTests
{
    [Fact]
    public void Sums_take_the_ends_that_work_the_same_way()
    {
        var (left, right) = (new Spread(2, 3, 4), new Spread(1, 2, 5));
        Assert.Equal(new Spread(3, 5, 9), left + right);
        Assert.Equal(new Spread(-3, 1, 3), left - right);
        Assert.Equal(new Spread(2, 6, 20), left * right);
        Assert.Equal(new Spread(0.4, 1.5, 4), left / right);
        Assert.Equal(new Spread(1, 2, 3), new Spread(1, 4, 9).SquareRoot());
        Assert.Equal(new Spread(0, 1, 3), (left - right).NotNegative());
    }

    // The claim of the type: where each input stands once, the ends are the least and greatest value over all corners.
    [Fact]
    public void The_ends_are_the_worst_and_best_corners() =>
        Gen.Select(Positive, Positive, Positive).Sample((a, b, c) =>
        {
            var corners = from x in Ends(a) from y in Ends(b) from z in Ends(c) select Math.Sqrt(x * y) / z;
            var spread = (a * b).SquareRoot() / c;
            Assert.Equal(corners.Min(), spread.Low, corners.Min() * 1e-12);
            Assert.Equal(corners.Max(), spread.High, corners.Max() * 1e-12);
            Assert.InRange(spread.Expected, spread.Low, spread.High);
        });

    [Fact]
    public void Text_is_in_a_unit_of_the_trade_and_numbers_in_the_base_unit()
    {
        Assert.Equal(new QuantityRange(0.8, 0.9, 1.037, "1", "80.0 … 90.0 … 103.7 %"), new Spread(0.8, 0.9, 1.037).In(UnitTable.Get("%"), "0.0"));
        Assert.Equal("3.00 bar, n-heptane", Spread.Exactly(300_000).In(UnitTable.Get("bar"), "0.00", ", n-heptane").Text);
    }

    [Theory]
    [InlineData(10.66, 10.74, "10.7 bar")]
    [InlineData(10.64, 10.74, "10.6 … 10.7 … 10.7 bar")]
    public void Ends_that_print_alike_are_one_number(double lowBar, double highBar, string expected) =>
        Assert.Equal(expected, new Spread(lowBar * 1e5, 10.70e5, highBar * 1e5).In(UnitTable.Get("bar"), "0.0").Text);

    private static readonly Gen<Spread> Positive =
        Gen.Select(Gen.Double[0.1, 100], Gen.Double[0, 10], Gen.Double[0, 10]).Select((low, up, further) => new Spread(low, low + up, low + up + further));

    private static double[] Ends(Spread spread) => [spread.Low, spread.High];
}
