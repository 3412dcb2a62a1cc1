using PartMatch.Core.Catalogue;
using PartMatch.Core.Injectors;
using PartMatch.Core.Measures;
using PartMatch.Core.Sums;
using Xunit;
using static PartMatch.Core.Tests.Injectors.InjectorExamples;

namespace PartMatch.Core.Tests.Injectors;

public sealed class InjectorRefusalsTests
{
    [Theory]
    [InlineData("carburetted", "carburettor")]
    [InlineData("direct-injected", "into the cylinder")]
    public void A_variant_without_port_injection_is_refused_with_the_reason(string fuelSystem, string reason)
    {
        var refused = Refuse(HillClimb, [Word("ts", "fuel-system", fuelSystem), Count("ts", "cylinders", 2)]);
        Assert.Equal((fuelSystem, "variant"), (refused.Code, refused.Field));
        Assert.Contains(reason, refused.Reason, StringComparison.Ordinal);
        Assert.NotEmpty(refused.Mend);
    }

    // Another variant's carburettor is none of this one's business.
    [Fact]
    public void Facts_of_another_variant_do_not_refuse() =>
        Assert.IsType<InjectorsSized>(InjectorSizing.Size(HillClimb, [], [.. BoostedTriple, Word("pump-set", "fuel-system", "carburetted")]));

    [Theory]
    [InlineData("1.1 bar", false)] // as much as the boost
    [InlineData("1.0 bar", false)]
    [InlineData("1.101 bar", true)]
    public void A_rail_must_push_harder_than_the_manifold(string rail, bool flows)
    {
        foreach (var supply in new[] { FuelSupply.ReturnAmbient, FuelSupply.ReturnlessFixed, FuelSupply.ReturnlessControlled })
        {
            var outcome = InjectorSizing.Size(HillClimb with { Pressure = Read(rail, Dimension.Pressure), Supply = supply }, [], BoostedTriple);
            Assert.Equal(flows, outcome is InjectorsSized);
            if (outcome is SumRefused refused)
            {
                Assert.Equal(("no-pressure-across", "pressure"), (refused.Code, refused.Field));
                Assert.Contains("manifold 1.10 bar gauge", refused.Found, StringComparison.Ordinal);
                Assert.Contains("return-manifold", refused.Mend, StringComparison.Ordinal);
            }
        }

        Assert.IsType<InjectorsSized>(InjectorSizing.Size(HillClimb with { Pressure = Read(rail, Dimension.Pressure) }, [], BoostedTriple));
    }

    // 85 % of 17.647 ms is 15.000 ms: fifteen squirts of 1 ms take it all, fourteen leave 1 ms.
    [Theory]
    [InlineData(14, true)]
    [InlineData(15, false)]
    public void Squirts_must_leave_time_to_inject(int shots, bool leaves)
    {
        var outcome = InjectorSizing.Size(HillClimb with { Shots = shots, DeadTime = ReadRange("1 ms", Dimension.Time) }, [], BoostedTriple);
        Assert.Equal(leaves, outcome is InjectorsSized);
        if (outcome is SumRefused refused)
        {
            Assert.Equal(("no-time-to-inject", "shots"), (refused.Code, refused.Field));
            Assert.Equal("15 × 1.00 ms shut = 15.00 ms, open at most 85.0 % of 17.647 ms = 15.000 ms", refused.Found);
        }
    }

    // 3600 ÷ 43 = 83.72 g/(kW·h): all the heat of petrol as work.
    [Theory]
    [InlineData("83.73 g/(kW·h)", true)]
    [InlineData("83.72 g/(kW·h)", false)]
    [InlineData("80..330..380 g/(kW·h)", false)]
    [InlineData("0.1376 lb/(hp(I)·h)", false)]
    [InlineData("0 g/(kW·h)", false)]
    public void An_impossible_consumption_is_refused(string bsfc, bool possible)
    {
        var outcome = InjectorSizing.Size(HillClimb with { Bsfc = ReadRange(bsfc, Dimension.SpecificConsumption) }, [], BoostedTriple);
        Assert.Equal(possible, outcome is InjectorsSized);
        if (outcome is SumRefused refused)
        {
            Assert.Equal(("bsfc-impossible", "bsfc"), (refused.Code, refused.Field));
            Assert.Contains("83.72 g/(kW·h)", refused.Expected, StringComparison.Ordinal);
        }
    }

    // On methanol of 20 MJ/kg the bound is 3600 ÷ 20 = 180.
    [Fact]
    public void The_bound_of_consumption_goes_by_the_fuel()
    {
        var question = HillClimb with { Fuel = "methanol", Bsfc = ReadRange("179.9 g/(kW·h)", Dimension.SpecificConsumption) };
        Assert.Equal("bsfc-impossible", Refuse(question, BoostedTriple).Code);
        Assert.IsType<InjectorsSized>(InjectorSizing.Size(question with { Bsfc = ReadRange("180.1 g/(kW·h)", Dimension.SpecificConsumption) }, [], BoostedTriple));
    }

    [Fact]
    public void An_unknown_fuel_is_refused_with_the_list()
    {
        var refused = Refuse(HillClimb with { Fuel = "e95" }, BoostedTriple);
        Assert.Equal(("unknown-fuel", "fuel", "e95"), (refused.Code, refused.Field, refused.Found));
        Assert.Equal("one of petrol-e0, petrol-e5, petrol-e10, e85, ethanol, methanol", refused.Expected);
    }

    [Fact]
    public void Unrecorded_cylinders_are_asked_for()
    {
        Assert.Equal(("cylinders-not-recorded", "cylinders"), (Refuse(HillClimb, []).Code, Refuse(HillClimb, []).Field));
        Assert.IsType<InjectorsSized>(InjectorSizing.Size(HillClimb with { Cylinders = 3 }, [], []));
    }

    public static TheoryData<string, InjectorQuestion> OutOfRange() => new()
    {
        { "power", HillClimb with { Power = Read("0 kW", Dimension.Power) } },
        { "power", HillClimb with { Power = Read("-180 kW", Dimension.Power) } },
        { "speed", HillClimb with { Speed = Read("0/min", Dimension.Speed) } },
        { "pressure", HillClimb with { Pressure = Read("0 bar", Dimension.Pressure) } },
        { "pressure", HillClimb with { Pressure = Read("-3 bar", Dimension.Pressure) } },
        { "boost", HillClimb with { Boost = Read("-1.01325 bar", Dimension.Pressure) } },
        { "duty", HillClimb with { Duty = Read("0 %", Dimension.Ratio) } },
        { "duty", HillClimb with { Duty = Read("100.1 %", Dimension.Ratio) } },
        { "duty", HillClimb with { Duty = Read("85", Dimension.Ratio) } },
        { "dead-time", HillClimb with { DeadTime = ReadRange("-0.1..0.9..1.0 ms", Dimension.Time) } },
        { "voltage", HillClimb with { Voltage = Read("0 V", Dimension.Voltage) } },
        { "cylinders", HillClimb with { Cylinders = 0 } },
        { "cylinders", HillClimb with { Cylinders = 65 } },
        { "injectors-per-cylinder", HillClimb with { InjectorsPerCylinder = 0 } },
        { "shots", HillClimb with { Shots = -1 } },
    };

    [Theory]
    [MemberData(nameof(OutOfRange))]
    public void A_value_outside_what_it_can_be_is_refused(string field, InjectorQuestion question)
    {
        var refused = Refuse(question, BoostedTriple);
        Assert.Equal(("out-of-range", field), (refused.Code, refused.Field));
        Assert.NotEmpty(refused.Found);
        Assert.NotEmpty(refused.Mend);
    }

    private static SumRefused Refuse(InjectorQuestion question, IReadOnlyList<EngineFact> facts) =>
        Assert.IsType<SumRefused>(InjectorSizing.Size(question, [], facts));
}
