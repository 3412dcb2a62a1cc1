using PartMatch.Core.Measures;
using Xunit;

namespace PartMatch.Core.Tests.Measures;

public sealed class UnitGuessTests
{
    // 1 atm is 1.01325 bar and 14.696 psi (NIST SP 811): 2.1 bar absolute is 1.09 bar over it, 30 psi absolute 15.30 psi.
    [Theory]
    [InlineData("25 ft-lb", Dimension.Torque, "did you mean 25 lbf·ft?")]
    [InlineData("25 ft-lbs", Dimension.Torque, "did you mean 25 lbf·ft?")]
    [InlineData("180 KW", Dimension.Power, "did you mean 180 kW?")]
    [InlineData("245 ps", Dimension.Power, "did you mean 245 PS?")]
    [InlineData("5 MW", Dimension.Power, "did you mean 5 kW, or 5000 kW?")]
    [InlineData("170-190 kW", Dimension.Power, "did you mean 170..190 kW?")]
    [InlineData("170–190 kw", Dimension.Power, "did you mean 170..190 kW?")]
    [InlineData("2.1 bar abs", Dimension.Pressure, "a gauge pressure is absolute − ambient: 2.1 bar absolute is 1.09 bar at the sea")]
    [InlineData("30 psia", Dimension.Pressure, "a gauge pressure is absolute − ambient: 30 psi absolute is 15.30 psi at the sea")]
    [InlineData("1.1 bar(g)", Dimension.Pressure, "did you mean 1.1 bar?")]
    [InlineData("6800 RPM", Dimension.Speed, "did you mean 6800 1/min?")]
    [InlineData("3 BAR", Dimension.Pressure, "did you mean 3 bar?")]
    public void Unit_that_comes_near_one_is_asked_back(string text, Dimension dimension, string mend)
    {
        var refused = Assert.IsType<QuantityRefused>(QuantityParser.Parse(text, dimension));
        Assert.Equal("quantity-wrong-unit", refused.Code);
        Assert.StartsWith(mend, refused.Mend, StringComparison.Ordinal);
    }

    // Nothing near; mW and MW would be two; the other end of the range is no quantity.
    [Theory]
    [InlineData("180 furlongs", Dimension.Power)]
    [InlineData("170-x kW", Dimension.Power)]
    [InlineData("170-190 bar", Dimension.Power)]
    public void Unit_that_comes_near_none_is_shown_an_example(string text, Dimension dimension) =>
        Assert.StartsWith("for example ", Assert.IsType<QuantityRefused>(QuantityParser.Parse(text, dimension)).Mend, StringComparison.Ordinal);

    [Theory]
    [InlineData("245 CV")]
    [InlineData("245 cv")]
    public void Horsepower_of_either_kind_is_asked_about(string text) =>
        Assert.Equal("Which horsepower?", Assert.IsType<QuantityRefused>(QuantityParser.Parse(text, Dimension.Power)).Title);
}
