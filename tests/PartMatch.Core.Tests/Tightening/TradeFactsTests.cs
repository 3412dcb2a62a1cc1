using PartMatch.Core.Measures;
using Xunit;

namespace PartMatch.Core.Tests.Tightening;

/// <summary>What is said over the bench in two units. Common practice, no source; the factors are those of NIST SP 811.</summary>
public sealed class TradeFactsTests
{
    // 0.044 in × 25.4 = 1.1176 mm.
    [Fact]
    public void Plug_gap_of_forty_four_thousandths_is_1_12_mm() => Assert.Equal(1.12m, Math.Round(In("0.044 in", Dimension.Length, "mm"), 2));

    // 200 lbf·ft × 1.355 817 948 = 271.16 N·m.
    [Fact]
    public void Crank_pulley_bolt_near_two_hundred_pound_feet_is_about_271_newton_metres() =>
        Assert.Equal(271m, Math.Round(In("200 lbf·ft", Dimension.Torque, "N·m")));

    private static decimal In(string text, Dimension dimension, string unit) =>
        UnitTable.Get(unit).FromBase(Assert.IsType<QuantityRead>(QuantityParser.Parse(text, dimension)).Quantity.Value);
}
