using PartMatch.Core.Injectors;
using Xunit;

namespace PartMatch.Core.Tests.Injectors;

public sealed class RailTableParserTests
{
    [Fact]
    public void Pairs_of_boost_and_rail_are_read_with_the_unit_of_the_last() =>
        Assert.Equal(
            [new RailPoint(-60_000, 300_000), new RailPoint(0, 350_000), new RailPoint(110_000, 500_000)],
            Assert.IsType<RailTableRead>(RailTableParser.Parse("-0.6:3.0, 0:3.5, 1.1:5.0 bar")).Points);

    [Theory]
    [InlineData("")]
    [InlineData("0:3.5 bar")]
    [InlineData("0:3.5,1.1:5.0")]
    [InlineData("0:3.5,1.1 bar")]
    [InlineData("0:3.5:4,1.1:5.0 bar")]
    [InlineData("0:3,5;1:4.5 bar")]
    [InlineData("0:x,1.1:5.0 bar")]
    [InlineData("0:3.5,1.1:5.0 kW")]
    public void What_is_no_table_is_refused_with_an_example(string text)
    {
        var refused = Assert.IsType<RailTableRefused>(RailTableParser.Parse(text));
        Assert.Equal("quantity-unreadable", refused.Reason.Code);
        Assert.Contains("0:3.5,0.5:4.0,1.1:5.0 bar", refused.Reason.Mend, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("0:3.5,0:4.0 bar")]
    [InlineData("1.1:5.0,0:3.5 bar")]
    public void Boost_must_rise(string text) => Assert.Equal("The table does not rise", Assert.IsType<RailTableRefused>(RailTableParser.Parse(text)).Reason.Title);

    // Straight between its points: 3.5 and 4.5 bar at 0 and 1 bar of boost are 4.0 at 0.5; nothing beyond.
    [Theory]
    [InlineData(0, 350_000.0)]
    [InlineData(50_000, 400_000.0)]
    [InlineData(100_000, 450_000.0)]
    [InlineData(-1, null)]
    [InlineData(100_001, null)]
    public void A_table_is_read_between_its_points_only(double boost, double? expected) =>
        Assert.Equal(expected, RailPoint.At([new(0, 350_000), new(100_000, 450_000)], boost));
}
