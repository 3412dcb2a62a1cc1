using PartMatch.Core.Injectors;
using PartMatch.Core.Measures;
using PartMatch.Core.Mixture;
using Xunit;
using static PartMatch.Core.Tests.Injectors.InjectorExamples;

namespace PartMatch.Core.Tests.Mixture;

public sealed class SpecificConsumptionTests
{
    // η = 3600 ÷ (BSFC × heating value) with BSFC in g/(kW·h) and 43 MJ/kg = 43 kJ/g: 3600 ÷ 12 900 and 3600 ÷ 10 750.
    [Theory]
    [InlineData(300, 0.27907)]
    [InlineData(250, 0.33488)]
    public void Efficiency_follows_from_consumption(double gramsPerKilowattHour, double expected) =>
        Near(expected, SpecificConsumption.Efficiency(gramsPerKilowattHour / 3.6e9, Fuels.Petrol), 1e-4);

    // η = 1 at 3600 ÷ 43 = 83.72 g/(kW·h) = 0.1376 lb/(hp·h).
    [Fact]
    public void Nothing_is_below_the_heat_of_the_fuel()
    {
        Near(83.72, In("g/(kW·h)", SpecificConsumption.ImpossibleBelow(Fuels.Petrol)), 1e-3);
        Near(0.1376, In("lb/(hp(I)·h)", SpecificConsumption.ImpossibleBelow(Fuels.Petrol)), 1e-3);
        Near(180, In("g/(kW·h)", SpecificConsumption.ImplausibleBelow(Fuels.Petrol)), 1e-9);
    }

    // 300 × 43.0 ÷ 29.20, ÷ 26.9, ÷ 20.0.
    [Theory]
    [InlineData("e85", 441.8)]
    [InlineData("ethanol", 479.6)]
    [InlineData("methanol", 645.0)]
    public void Equal_efficiency_carries_consumption_to_another_fuel(string code, double expected) =>
        Assert.Equal(expected, In("g/(kW·h)", SpecificConsumption.OnFuel(Spread.Exactly(300 / 3.6e9), Fuels.Find(code)!).Expected), 0.1); // known codes

    // Natural: van Basshuysen and Schäfer 2005, 250 … 350 (at second hand). Boosted: Bosch Automotive Handbook, 280 … 380 (from memory, medium).
    [Theory]
    [InlineData(false, 250, 300, 350)]
    [InlineData(true, 280, 330, 380)]
    public void A_published_range_goes_by_induction(bool boosted, double low, double expected, double high)
    {
        var spread = SpecificConsumption.Published(boosted, Fuels.Petrol).Spread;
        Near(low, In("g/(kW·h)", spread.Low), 1e-9);
        Near(expected, In("g/(kW·h)", spread.Expected), 1e-9);
        Near(high, In("g/(kW·h)", spread.High), 1e-9);
    }

    // Low on the leanest E85 (34.55 MJ/kg), high on the richest (29.20): 280 × 43 ÷ 34.55 = 348.5; 380 × 43 ÷ 29.20 = 559.6.
    [Fact]
    public void A_blend_widens_the_range()
    {
        var spread = SpecificConsumption.Published(true, Fuels.Find("e85")!).Spread; // a known code
        Assert.Equal(348.5, In("g/(kW·h)", spread.Low), 0.1);
        Assert.Equal(559.6, In("g/(kW·h)", spread.High), 0.1);
    }

    [Fact]
    public void Boost_of_the_goal_or_of_the_variant_chooses_the_range()
    {
        var naturalGoal = HillClimb with { Boost = Read("0 bar", Dimension.Pressure) };
        Assert.Equal(280, Low(Assert.IsType<InjectorsSized>(InjectorSizing.Size(naturalGoal, [], BoostedTriple))), 1e-6);
        Assert.Equal(250, Low(Assert.IsType<InjectorsSized>(InjectorSizing.Size(naturalGoal, [], [Count("ts", "cylinders", 3)]))), 1e-6);
        Assert.Equal(280, Low(Assert.IsType<InjectorsSized>(InjectorSizing.Size(HillClimb, [], [Count("ts", "cylinders", 3), Word("ts", "induction", "natural")]))), 1e-6);

        static double Low(InjectorsSized sized) => In("g/(kW·h)", sized.Assumed.First(assumption => assumption.Name == "bsfc").Range.Low);
    }

    [Fact]
    public void A_consumption_given_is_taken_as_it_is_on_any_fuel()
    {
        var given = ReadRange("440..450..460 g/(kW·h)", Dimension.SpecificConsumption);
        var bsfc = Size(HillClimb with { Fuel = "e85", Bsfc = given }).Assumed.First(assumption => assumption.Name == "bsfc");
        Assert.Equal((given, "given in the question"), (bsfc.Range, bsfc.Source));
    }
}
