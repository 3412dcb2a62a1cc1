using PartMatch.Core.Measures;
using Xunit;

namespace PartMatch.Core.Tests.Measures;

public sealed class QuantityRangeParserTests
{
    // 300 g/(kW·h) = 0.3 kg / 3.6 MJ = 8.333e-8 kg/J; 330 → 9.167e-8; 340 → 9.444e-8; 380 → 1.0556e-7.
    [Theory]
    [InlineData("300..330..380 g/(kW·h)", 8.3333333e-8, 9.1666667e-8, 1.05555556e-7, "300 … 330 … 380 g/(kW·h)", null)]
    [InlineData("300 .. 330 .. 380 g/kWh", 8.3333333e-8, 9.1666667e-8, 1.05555556e-7, "300 … 330 … 380 g/(kW·h)", null)]
    [InlineData("300 … 330 … 380 g/(kW·h)", 8.3333333e-8, 9.1666667e-8, 1.05555556e-7, "300 … 330 … 380 g/(kW·h)", null)]
    [InlineData("300..380 g/(kW·h)", 8.3333333e-8, 9.4444444e-8, 1.05555556e-7, "300 … 380 g/(kW·h)", "expected = the middle of 300 … 380 g/(kW·h)")]
    [InlineData("330 g/(kW·h)", 9.1666667e-8, 9.1666667e-8, 9.1666667e-8, "330 g/(kW·h)", null)]
    [InlineData("330..330 g/(kW·h)", 9.1666667e-8, 9.1666667e-8, 9.1666667e-8, "330 … 330 g/(kW·h)", "expected = the middle of 330 … 330 g/(kW·h)")]
    public void A_range_is_read(string text, double low, double expected, double high, string shown, string? said)
    {
        var read = Assert.IsType<RangeRead>(QuantityRangeParser.Parse(text, Dimension.SpecificConsumption));
        Assert.Equal(low, read.Range.Low, 1e-15);
        Assert.Equal(expected, read.Range.Expected, 1e-15);
        Assert.Equal(high, read.Range.High, 1e-15);
        Assert.Equal(("kg/J", shown, said), (read.Range.Unit, read.Range.Text, read.Said));
    }

    [Theory]
    [InlineData("380..300 g/(kW·h)", "The range runs backwards")]
    [InlineData("300..400..380 g/(kW·h)", "The range runs backwards")]
    [InlineData("300..310..320..330 g/(kW·h)", "Not a range")]
    [InlineData("300...380 g/(kW·h)", "Not a quantity")]
    [InlineData("..380 g/(kW·h)", "Not a range")]
    [InlineData("300.. g/(kW·h)", "Not a quantity")]
    [InlineData("300 g/(kW·h)..380 g/(kW·h)", "Not a range")]
    [InlineData("300..380", "Which unit?")]
    [InlineData("300..380 kW", "A unit of another kind")]
    [InlineData("0,5 lb/(hp(I)·h)", "Is the comma a decimal point?")]
    [InlineData("0,5..0,6 lb/(hp(I)·h)", "Is the comma a decimal point?")]
    public void What_is_no_range_is_refused(string text, string title)
    {
        var refused = Assert.IsType<RangeRefused>(QuantityRangeParser.Parse(text, Dimension.SpecificConsumption)).Reason;
        Assert.Equal((title, text), (refused.Title, refused.Found));
        Assert.NotEmpty(refused.Mend);
    }

    [Fact]
    public void A_very_long_range_is_refused_cut_short()
    {
        var refused = Assert.IsType<RangeRefused>(QuantityRangeParser.Parse(string.Concat(Enumerable.Repeat("3..", 100_000)), Dimension.Time)).Reason;
        Assert.True(refused.Found.Length < 100, refused.Found);
    }
}
