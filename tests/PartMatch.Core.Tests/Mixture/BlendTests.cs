using CsCheck;
using PartMatch.Core.Measures;
using PartMatch.Core.Mixture;
using Xunit;
using static PartMatch.Core.Tests.Injectors.InjectorExamples;

namespace PartMatch.Core.Tests.Mixture;

public sealed class BlendTests
{
    private static readonly Fuel E85 = Fuels.Find("e85")!; // a code of the list

    // By hand, ethanol 790.2 kg/m3, 26.9 MJ/kg, 9.0; petrol 745, 43.0, 14.7. At 70 %: 553.14 + 223.5 = 776.64 kg/m3;
    // heat (553.14 × 26.9 + 223.5 × 43.0) ÷ 776.64 = 31.533 MJ/kg; air (553.14 × 9.0 + 223.5 × 14.7) ÷ 776.64 = 10.640.
    [Fact]
    public void Measured_share_gives_its_own_figures()
    {
        var blend = Blend.Of(E85, Spread.Exactly(0.70));

        Near(776.64, blend.Density.Spread.Expected, 1e-5);
        Near(31.533e6, blend.HeatingValue.Spread.Expected, 1e-4);
        Near(10.640, blend.AirFuelRatio.Spread.Expected, 1e-4);
        Assert.True(blend.IsAlcohol);
    }

    // ASTM D5798: 51 … 83 %. The leanest has most heat: (402.9 × 26.9 + 365.05 × 43.0) ÷ 767.95 = 34.55 MJ/kg, as the fuel table says.
    [Fact]
    public void Range_of_shares_runs_from_richest_to_leanest()
    {
        var heat = Blend.Of(E85, new Spread(0.51, 0.70, 0.83)).HeatingValue.Spread;

        Near(34.55e6, heat.High, 1e-3);
        Near(31.533e6, heat.Expected, 1e-4);
        Assert.True(heat.Low < heat.Expected);
    }

    [Theory]
    [InlineData(0, 745, 43.0)]
    [InlineData(1, 790.2, 26.9)]
    public void Ends_are_the_two_fuels(double share, double density, double megajoules)
    {
        var blend = Blend.Of(E85, Spread.Exactly(share));

        Near(density, blend.Density.Spread.Expected, 1e-12);
        Near(megajoules * 1e6, blend.HeatingValue.Spread.Expected, 1e-12);
    }

    [Fact]
    public void More_ethanol_is_denser_with_less_heat_and_less_air() => Gen.Select(Gen.Double[0, 1], Gen.Double[0, 1]).Sample((one, other) =>
    {
        var (less, more) = (Blend.Of(E85, Spread.Exactly(Math.Min(one, other))), Blend.Of(E85, Spread.Exactly(Math.Max(one, other))));
        return less.Density.Spread.Expected <= more.Density.Spread.Expected + 1e-9
            && less.HeatingValue.Spread.Expected >= more.HeatingValue.Spread.Expected - 1e-3
            && less.AirFuelRatio.Spread.Expected >= more.AirFuelRatio.Spread.Expected - 1e-12;
    });

    [Fact]
    public void Pure_alcohols_take_no_share() =>
        Assert.Equal(["petrol-e0", "petrol-e5", "petrol-e10", "e85"], Fuels.All.Where(Blend.Takes).Select(fuel => fuel.Code));

    // Perry's Handbook table 2-32 evaluated at 15, 20 and 25 °C: ethanol 794.3, 790.2, 786.0; methanol 796.8, 792.0, 787.3 (± 0.4 %; straight to 0.03 %).
    [Theory]
    [InlineData("ethanol", 15, 794.3)]
    [InlineData("ethanol", 20, 790.2)]
    [InlineData("ethanol", 25, 786.0)]
    [InlineData("methanol", 15, 796.8)]
    [InlineData("methanol", 20, 792.0)]
    [InlineData("methanol", 25, 787.3)]
    public void Density_falls_with_temperature_as_published(string code, double celsius, double expected) =>
        Near(expected, FuelDensity.At(Fuels.Find(code)!, Spread.Exactly(celsius)).Spread.Expected, 3e-4); // codes of the list

    // ASTM D1250 table 54B (from memory): 346.4228 ÷ 745² + 0.4388 ÷ 745 = 0.001213 for each degree; 25 degrees over 15 °C: 745 × (1 − 0.030325) = 722.41.
    // iso-octane beside it (Perry): 698.5 at 15 °C, 690.3 at 25 °C: 0.001174.
    [Fact]
    public void Warm_petrol_is_thinner_by_about_a_tenth_of_a_percent_a_degree()
    {
        Near(346.4228 / (745 * 745) + (0.4388 / 745), Fuels.Petrol.Expansion, 1e-3);
        Near(722.41, FuelDensity.At(Fuels.Petrol, Spread.Exactly(40)).Spread.Expected, 1e-5);
        Near((698.5 - 690.3) / 698.5 / 10, Fuels.Petrol.Expansion, 0.04);
    }

    [Fact]
    public void Range_of_temperatures_gives_the_thinnest_at_the_warmest()
    {
        var density = FuelDensity.At(Fuels.Ethanol, new Spread(15, 20, 25)).Spread;

        Near(786.0, density.Low, 3e-4);
        Near(794.3, density.High, 1e-12);
    }

    // Perry's Handbook table 2-32: iso-octane 698.5, 694.4, 690.3 kg/m3 at 15, 20, 25 °C; n-heptane 689.9, 685.8, 681.5 there, VDI 688.05, 683.82, 679.57.
    [Fact]
    public void Rating_fluids_have_their_published_densities()
    {
        Assert.Equal(new Spread(690.3, 694.4, 698.5), RatedFluids.Find("iso-octane")?.Spread);
        Assert.InRange(RatedFluids.HeptaneKgM3, 679.57, 689.9);
    }
}
