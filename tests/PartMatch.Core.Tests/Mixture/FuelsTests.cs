using PartMatch.Core.Measures;
using PartMatch.Core.Mixture;
using Xunit;
using static PartMatch.Core.Tests.Injectors.InjectorExamples;

namespace PartMatch.Core.Tests.Mixture;

public sealed class FuelsTests
{
    [Fact]
    public void The_fuels_are_the_ones_documented() =>
        Assert.Equal(["petrol-e0", "petrol-e5", "petrol-e10", "e85", "ethanol", "methanol"], Fuels.All.Select(fuel => fuel.Code));

    // EN 228:2012, limits table: 720.0 … 775.0 kg/m3 at 15 °C, for petrol with up to 10 % ethanol alike.
    [Theory]
    [InlineData("petrol-e0")]
    [InlineData("petrol-e5")]
    [InlineData("petrol-e10")]
    public void Petrol_has_the_density_limits_of_its_standard(string code)
    {
        var density = Get(code).Density.Spread;
        Assert.Equal((720.0, 775.0), (density.Low, density.High));
        Assert.InRange(density.Expected, 720, 775);
    }

    // EN 15293: 760 … 800 kg/m3 (from memory, medium confidence). Ethanol and methanol at 25, 20, 15 °C: Perry's Handbook table 2-32 evaluated
    // (ethanol 794.3/790.2/786.0, methanol 796.8/792.0/787.3, within 0.4 %); DOE at 60 °F: 792.05 and 794.45 kg/m3.
    [Theory]
    [InlineData("e85", 760, 800, 783)]
    [InlineData("ethanol", 786.0, 794.3, 792.05)]
    [InlineData("methanol", 787.3, 796.8, 794.45)]
    public void Alcohol_fuels_have_their_published_densities(string code, double low, double high, double independent)
    {
        var density = Get(code).Density.Spread;
        Near(low, density.Low, 0.004);
        Near(high, density.High, 0.004);
        Assert.InRange(independent, density.Low, density.High);
    }

    // DOE Alternative Fuels Data Center: gasoline 14.7 (marked calculated), ethanol 9; Heywood 1988 eq. 3.6 for CH1.87 14.60, ethanol 9.00,
    // methanol 6.47 (± 0.01, computed from composition with dry air of 20.95 % oxygen). E85 at 85 % by volume: 9.814.
    [Theory]
    [InlineData("petrol-e0", 14.60, 14.7)]
    [InlineData("ethanol", 9.00, 9.00)]
    [InlineData("methanol", 6.47, 6.47)]
    [InlineData("e85", 9.814, 11.71)]
    public void A_fuel_has_its_stoichiometric_ratio(string code, double low, double high)
    {
        Assert.Equal(low, Get(code).AirFuelRatio.Spread.Low, 0.01);
        Assert.Equal(high, Get(code).AirFuelRatio.Spread.High, 0.01);
    }

    // DOE: 18 676, 11 585, 8 637 Btu/lb = 43.440, 26.947, 20.090 MJ/kg; round figures 43.0, 26.9, 20.0 of the textbooks.
    [Theory]
    [InlineData("petrol-e0", 43.0, 43.440)]
    [InlineData("ethanol", 26.9, 26.947)]
    [InlineData("methanol", 20.0, 20.090)]
    public void A_fuel_has_its_heating_value(string code, double expectedMegajoules, double highMegajoules)
    {
        Near(expectedMegajoules, Get(code).HeatingValue.Spread.Expected / 1e6, 1e-3);
        Near(highMegajoules, Get(code).HeatingValue.Spread.High / 1e6, 1e-3);
    }

    // Blends by volume, by hand: mass of ethanol 790 x, of petrol 745 (1 − x).
    // x = 0.85: 671.5 + 111.75 = 783.25; (671.5 × 26.9 + 111.75 × 43.0) ÷ 783.25 = 29.197 MJ/kg.
    // x = 0.51: 402.9 + 365.05 = 767.95; (402.9 × 26.9 + 365.05 × 43.0) ÷ 767.95 = 34.553 MJ/kg; ASTM D5798 lets E85 have 51 … 83 %.
    // x = 0.10: 79 + 670.5 = 749.5; (79 × 26.9 + 670.5 × 43.0) ÷ 749.5 = 41.303. x = 0.05: 39.5 + 707.75; 42.149.
    [Theory]
    [InlineData("e85", 29.197, 34.553)]
    [InlineData("petrol-e10", 41.303, 43.0)]
    [InlineData("petrol-e5", 42.149, 43.0)]
    public void A_blend_ranges_from_its_richest_to_its_leanest(string code, double richest, double leanest)
    {
        var heat = Get(code).HeatingValue.Spread;
        Near(richest, heat.Low / 1e6, 1e-3);
        Near(leanest, heat.High / 1e6, 1e-3);
        Assert.Equal(heat.Low, heat.Expected); // sized on its richest
    }

    // Same air and mixture strength: 14.7 ÷ 9.814 = 1.4978 by mass. Same efficiency: 43.0 ÷ 29.20 = 1.4726 by mass.
    [Fact]
    public void E85_asks_for_half_as_much_again()
    {
        var (petrol, e85) = (Fuels.Petrol, Get("e85"));
        Near(1.4978, petrol.AirFuelRatio.Spread.Expected / e85.AirFuelRatio.Spread.Expected, 1e-3);
        Near(1.4726, SpecificConsumption.OnFuel(Spread.Exactly(1), e85).Expected, 1e-3);
    }

    // The same by volume, with the densities: 1.4978 × 745 ÷ 783 and 1.4726 × 745 ÷ 783; the source has 1.4262 and 1.4022 (another density of ethanol).
    [Fact]
    public void E85_asks_for_two_fifths_more_by_volume()
    {
        var (petrol, e85) = (Fuels.Petrol, Get("e85"));
        var thinner = petrol.Density.Spread.Expected / e85.Density.Spread.Expected;
        Near(1.4262, petrol.AirFuelRatio.Spread.Expected / e85.AirFuelRatio.Spread.Expected * thinner, 1e-3);
        Near(1.4022, petrol.HeatingValue.Spread.Expected / e85.HeatingValue.Spread.Expected * thinner, 1e-3);
    }

    // DOE Alternative Fuels Data Center by volume: 116 090, 76 330, 57 250 Btu/gal(US) = 32.356, 21.274, 15.957 MJ/L (1 Btu = 1055.056 J);
    // with 43.440 MJ/kg that is a petrol of 744.84 kg/m3. By weight it prints 6.0 … 6.5, 6.61 and 6.63 lb/gal at 60 °F.
    [Theory]
    [InlineData("petrol-e0", 116_090, 32.356)]
    [InlineData("ethanol", 76_330, 21.274)]
    [InlineData("methanol", 57_250, 15.957)]
    public void Heat_by_volume_agrees_with_heat_by_mass_and_density(string code, double btuPerGallon, double megajoulePerLitre)
    {
        Near(megajoulePerLitre, btuPerGallon * 1055.056 / 3.785411784e-3 / 1e9, 1e-3);
        var density = megajoulePerLitre * 1e9 / Get(code).HeatingValue.Spread.High;
        Assert.InRange(density, Get(code).Density.Spread.Low, Get(code).Density.Spread.High);
        if (code == "petrol-e0")
        {
            Near(744.84, density, 1e-3);
            Near(Get(code).Density.Spread.Expected, density, 1e-3);
        }
    }

    [Theory]
    [InlineData(6.0, 718.96)]
    [InlineData(6.5, 778.87)]
    [InlineData(6.61, 792.05)]
    [InlineData(6.63, 794.45)]
    public void Pounds_a_gallon_are_a_density(double pounds, double expected) => Assert.Equal(expected, pounds * 0.45359237 / 3.785411784e-3, 0.01);

    // n-heptane at 20 °C: VDI 683.82, Perry 685.8 kg/m3 (± 0.4 %).
    [Fact]
    public void The_test_fluid_has_its_published_density()
    {
        Near(683.82, RatedFluids.HeptaneKgM3, 1e-4);
        Near(685.8, RatedFluids.HeptaneKgM3, 0.004);
        Assert.Equal(Fuels.Petrol.Density, RatedFluids.Find("petrol"));
        Assert.Null(RatedFluids.Find("sea-water"));
    }

    [Fact]
    public void Every_figure_names_a_source_and_runs_upwards()
    {
        foreach (var figure in Fuels.All.SelectMany(fuel => new[] { fuel.Density, fuel.AirFuelRatio, fuel.HeatingValue }))
        {
            Assert.NotEmpty(figure.Source);
            Assert.True(figure.Spread.Low <= figure.Spread.Expected && figure.Spread.Expected <= figure.Spread.High, figure.Source);
        }
    }

    private static Fuel Get(string code) => Fuels.Find(code) ?? throw new ArgumentException(code);
}
