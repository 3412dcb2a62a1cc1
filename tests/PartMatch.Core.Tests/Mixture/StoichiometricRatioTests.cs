using PartMatch.Core.Mixture;
using Xunit;

namespace PartMatch.Core.Tests.Mixture;

/// <summary>
/// Source: Heywood 1988, eq. 3.6 and table D.4 (values from memory, high confidence), evaluated with dry air of 20.95 % oxygen and IUPAC atomic weights.
/// </summary>
public sealed class StoichiometricRatioTests
{
    // By hand for CH1.87: oxygen 1 + 1.87 ÷ 4 = 1.4675 mol; air 1.4675 ÷ 0.2095 × 28.9647 = 202.89 g; fuel 12.011 + 1.87 × 1.008 = 13.896 g; 14.60.
    [Theory]
    [InlineData("petrol, CH1.87", 1.87, 0, 14.60)]
    [InlineData("iso-octane, C8H18", 18.0 / 8, 0, 15.13)]
    [InlineData("n-heptane, C7H16", 16.0 / 7, 0, 15.18)]
    [InlineData("toluene, C7H8", 8.0 / 7, 0, 13.50)]
    [InlineData("benzene, C6H6", 1, 0, 13.27)]
    [InlineData("ethanol, C2H6O", 3, 0.5, 9.00)]
    [InlineData("methanol, CH4O", 4, 1, 6.47)]
    public void Air_follows_from_composition(string fuel, double hydrogen, double oxygen, double expected)
    {
        Assert.NotEmpty(fuel);
        Assert.Equal(expected, StoichiometricRatio.Of(hydrogen, oxygen), 0.01);
    }

    // DOE Alternative Fuels Data Center prints 14.7 for petrol (marked calculated) and 9 for ethanol.
    [Theory]
    [InlineData("petrol-e0", 14.7)]
    [InlineData("ethanol", 9.0)]
    public void Fuels_have_the_published_ratio(string code, double expected) => Assert.Equal(expected, Fuels.Find(code)?.AirFuelRatio.Spread.Expected);
}
