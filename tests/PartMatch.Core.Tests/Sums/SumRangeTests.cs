using CsCheck;
using PartMatch.Core.Measures;
using PartMatch.Core.Sums;
using Xunit;

namespace PartMatch.Core.Tests.Sums;

public sealed class SumRangeTests
{
    // Time open for a mass through an orifice with a dead time that grows with pressure: the pressure stands twice, and pulls both ways.
    private static double Pulse(double[] of) => (of[0] / Math.Sqrt(of[1])) + (0.1 * of[1]);

    // By hand: 10 ÷ √1 + 0.1 × 1 = 10.1; 10 ÷ √4 + 0.1 × 4 = 5.4; 10 ÷ √9 + 0.1 × 9 = 4.2333…
    [Fact]
    public void Input_that_stands_twice_is_one_number_not_two()
    {
        var range = SumRange.Of([new("mass", Spread.Exactly(10)), new("pressure", new Spread(1, 4, 9))], Pulse);

        Assert.Equal(4.2333333, range.Low, 1e-6);
        Assert.Equal(5.4, range.Expected, 1e-12);
        Assert.Equal(10.1, range.High, 1e-12);
    }

    [Fact]
    public void Greatest_influence_comes_first_and_exact_inputs_have_none()
    {
        var influences = SumRange.Influences(
            [new("mass", new Spread(9, 10, 11)), new("pressure", new Spread(1, 4, 9)), new("offset", Spread.Exactly(3))], Pulse, value => $"{value:0.0} ms");

        Assert.Equal(["pressure: alone from 10.1 ms at its least down to 4.2 ms at its most", "mass: alone from 4.9 ms to 5.9 ms"], influences.Select(one => one.Text));
    }

    [Fact]
    public void No_combination_inside_the_ranges_lies_outside_the_result() =>
        Gen.Select(Gen.Double[1, 10], Gen.Double[1, 10], Gen.Double[0, 5], Gen.Double[0, 5], Gen.Double[0, 1], Gen.Double[0, 1])
            .Sample((first, second, firstWidth, secondWidth, firstAt, secondAt) =>
            {
                static double Quotient(double[] of) => of[0] / of[1];
                var range = SumRange.Of([new("a", new Spread(first, first, first + firstWidth)), new("b", new Spread(second, second, second + secondWidth))], Quotient);
                var inside = Quotient([first + (firstWidth * firstAt), second + (secondWidth * secondAt)]);
                return inside >= range.Low - 1e-12 && inside <= range.High + 1e-12;
            });

    // 100.0 and 100.1 read alike without decimals: two equal ends would say nothing.
    [Fact]
    public void Input_that_hardly_moves_the_result_says_so()
    {
        SumInput[] inputs = [new("speed", new Spread(100.0, 100.05, 100.1))];
        var influence = Assert.Single(SumRange.Influences(inputs, of => of[0], value => $"{Math.Round(value):0} kW"));
        Assert.Equal("speed: hardly moves it, 100 kW either way", influence.Text);
    }
}
