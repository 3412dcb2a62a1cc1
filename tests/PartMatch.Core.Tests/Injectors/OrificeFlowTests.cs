using PartMatch.Core.Injectors;
using PartMatch.Core.Measures;
using Xunit;
using static PartMatch.Core.Tests.Injectors.InjectorExamples;

namespace PartMatch.Core.Tests.Injectors;

/// <summary>Source: Bernoulli, Q = Cd·A·√(2Δp/ρ), any fluid-mechanics text; the expected numbers were computed by hand from it.</summary>
public sealed class OrificeFlowTests
{
    // 240 cm3/min at 3.0 bar across; 240 × √(2/3) = 195.959 and so on.
    [Theory]
    [InlineData(2.0, 195.959)]
    [InlineData(2.5, 219.089)]
    [InlineData(3.0, 240.000)]
    [InlineData(3.5, 259.230)]
    [InlineData(4.0, 277.128)]
    [InlineData(5.0, 309.839)]
    public void Flow_grows_with_the_root_of_pressure(double bar, double expectedCm3PerMinute) =>
        Near(expectedCm3PerMinute, OrificeFlow.AtPressure(240, 300_000, bar * 100_000), 1e-5);

    // 3.0 × 1.12² = 3.7632; 3.0 × (500/440)² = 3.8740.
    [Theory]
    [InlineData(1.12, 1, 3.7632)]
    [InlineData(500, 440, 3.8740)]
    public void Pressure_for_more_flow_grows_with_its_square(double wanted, double flow, double expectedBar) =>
        Near(expectedBar, OrificeFlow.PressureFor(wanted, flow, 300_000) / 100_000, 1e-4);

    // A rail fixed at 4.0 bar gauge: Δp = rail − manifold, then the root against 3 bar.
    [Theory]
    [InlineData(-0.6, 4.6, 1.23828)]
    [InlineData(0.0, 4.0, 1.15470)]
    [InlineData(0.5, 3.5, 1.08012)]
    [InlineData(1.0, 3.0, 1.00000)]
    [InlineData(1.5, 2.5, 0.91287)]
    public void A_fixed_rail_loses_pressure_across_with_boost(double boostBar, double expectedBar, double expectedFactor)
    {
        foreach (var supply in new[] { FuelSupply.ReturnAmbient, FuelSupply.ReturnlessFixed, FuelSupply.ReturnlessControlled })
        {
            var across = (double)PressureAcross.Of(supply, 400_000, (decimal)boostBar * 100_000);
            Assert.Equal(expectedBar, across / 100_000, 1e-9);
            Assert.Equal(expectedFactor, OrificeFlow.AtPressure(1, 300_000, across), 1e-5);
            Assert.Equal(400_000, PressureAcross.RailGaugeOf(supply, 400_000, (decimal)boostBar * 100_000));
        }
    }

    // The definition of a manifold-referenced regulator: 3.0 bar across at every manifold pressure; the rail follows.
    [Theory]
    [InlineData(-0.6, 2.4)]
    [InlineData(0.0, 3.0)]
    [InlineData(1.5, 4.5)]
    public void A_manifold_referenced_rail_follows_the_manifold(double boostBar, double expectedRailBar)
    {
        Assert.Equal(300_000, PressureAcross.Of(FuelSupply.ReturnManifold, 300_000, (decimal)boostBar * 100_000));
        Assert.Equal((decimal)expectedRailBar * 100_000, PressureAcross.RailGaugeOf(FuelSupply.ReturnManifold, 300_000, (decimal)boostBar * 100_000));
    }

    // 3 bar fixed against 1.2 bar of boost: √(1.8/3) = 0.774597, so the static size must grow by 1.290994.
    [Fact]
    public void A_fixed_rail_of_3_bar_under_boost_asks_for_larger_injectors()
    {
        var across = (double)PressureAcross.Of(FuelSupply.ReturnlessFixed, 300_000, 120_000);
        Near(0.774597, OrificeFlow.AtPressure(1, 300_000, across), 1e-6);
        var (full, boosted) = (Rating(300_000), Rating(across));
        Near(1.290994, boosted / full, 1e-6);

        static double Rating(double acrossPa) =>
            OrificeFlow.RatedVolumeFlow(Spread.Exactly(0.005), Spread.Exactly(300_000), Spread.Exactly(683.8), acrossPa, Spread.Exactly(745)).Expected;
    }

    // Rated on n-heptane 683.8 kg/m3, used with petrol 745: mass × √(745/683.8) = 1.043791, volume ÷ 1.043791.
    [Fact]
    public void Test_fluid_and_fuel_differ_by_the_root_of_density()
    {
        var volume = Spread.Exactly(1e-5);
        var mass = OrificeFlow.MassFlow(volume, Spread.Exactly(300_000), Spread.Exactly(683.8), 300_000, Spread.Exactly(745)).Expected;
        Near(1.043791, mass / (1e-5 * 683.8), 1e-6);
        Near(1 / 1.043791, mass / 745 / 1e-5, 1e-6);
    }

    [Fact]
    public void Rating_and_flow_turn_each_other_round()
    {
        var (pressure, heptane, petrol) = (Spread.Exactly(300_000), Spread.Exactly(683.8), Spread.Exactly(745));
        var mass = OrificeFlow.MassFlow(Spread.Exactly(7.3e-6), pressure, heptane, 430_000, petrol);
        Near(7.3e-6, OrificeFlow.RatedVolumeFlow(mass, pressure, heptane, 430_000, petrol).Expected, 1e-14);
    }
}
