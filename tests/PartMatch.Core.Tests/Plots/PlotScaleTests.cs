using PartMatch.Core.Plots;
using Xunit;

namespace PartMatch.Core.Tests.Plots;

public sealed class PlotScaleTests
{
    // Steps 1, 2, 5 × 10ⁿ, about six ticks: Heckbert, Nice Numbers for Graph Labels, Graphics Gems, 1990. By hand: (105 − 0) ÷ 6 = 17.5 → 20; 0 … 120.
    [Theory]
    [InlineData(0, 105, "0 20 40 60 80 100 120")]
    [InlineData(-0.6, 1.5, "−1.0 −0.5 0.0 0.5 1.0 1.5")]
    [InlineData(2.9, 3.1, "2.90 2.95 3.00 3.05 3.10")]
    [InlineData(0, 7_000, "0 2000 4000 6000 8000")]
    public void Ticks_are_round_and_reach_over_all_that_is_drawn(double low, double high, string expected)
    {
        var scale = PlotScale.Of(new PlotAxis("x", ""), [low, high], 0, 100);

        Assert.Equal(expected, string.Join(' ', scale.Ticks().Select(scale.Text)));
    }

    [Fact]
    public void Given_ends_and_step_are_kept()
    {
        var scale = PlotScale.Of(new PlotAxis("crank angle", "°", 0, 720) { Step = 90 }, [100, 300], 50, 720);

        Assert.Equal("0 90 180 270 360 450 540 630 720", string.Join(' ', scale.Ticks().Select(scale.Text)));
        Assert.Equal(50 + 180, scale.Place(180), 1e-9);
    }

    [Fact]
    public void Upward_axis_grows_against_the_sheet()
    {
        var scale = PlotScale.Of(new PlotAxis("y", "", 0, 10), [], 300, -200);

        Assert.Equal(300, scale.Place(0), 1e-9);
        Assert.Equal(100, scale.Place(10), 1e-9);
    }

    [Theory]
    [InlineData(5)]
    [InlineData(0)]
    [InlineData(-3)]
    public void Single_value_has_room_on_both_sides(double value)
    {
        var scale = PlotScale.Of(new PlotAxis("x", ""), [value], 0, 100);

        Assert.InRange(scale.Place(value), 1, 99);
        Assert.InRange(scale.Ticks().Count(), 2, 20);
    }

    [Fact]
    public void Numbers_that_are_none_are_passed_over()
    {
        var scale = PlotScale.Of(new PlotAxis("x", ""), [double.NaN, double.PositiveInfinity, 1, 4], 0, 100);

        Assert.Equal(1, scale.From);
        Assert.Equal(4, scale.To);
    }

    [Fact]
    public void Step_too_fine_for_the_axis_is_replaced() =>
        Assert.InRange(PlotScale.Of(new PlotAxis("x", "") { Step = 1e-9 }, [0, 1], 0, 100).Ticks().Count(), 2, 20);
}
