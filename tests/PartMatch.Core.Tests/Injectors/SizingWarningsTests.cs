using PartMatch.Core.Catalogue;
using PartMatch.Core.Injectors;
using PartMatch.Core.Measures;
using PartMatch.Core.Sums;
using Xunit;
using static PartMatch.Core.Tests.Injectors.InjectorExamples;

namespace PartMatch.Core.Tests.Injectors;

public sealed class SizingWarningsTests
{
    private static readonly InjectorQuestion Quiet = HillClimb with { Boost = Read("0.8 bar", Dimension.Pressure), DeadTime = ReadRange("0.9 ms", Dimension.Time) };

    [Fact]
    public void A_goal_within_everything_has_no_warning() => Assert.Empty(Size(Quiet).Warnings);

    [Theory]
    [InlineData("95 %", false)]
    [InlineData("95.1 %", true)]
    [InlineData("100 %", true)]
    public void A_duty_limit_above_95_percent_is_flagged(string duty, bool flagged) =>
        Assert.Equal(flagged, Has(Size(Quiet with { Duty = Read(duty, Dimension.Ratio) }).Warnings, "duty-limit-high"));

    // The variant was built for 0.80 bar.
    [Theory]
    [InlineData("0.8 bar", false)]
    [InlineData("0.81 bar", true)]
    public void Boost_above_what_the_variant_was_built_for_is_flagged(string boost, bool flagged) =>
        Assert.Equal(flagged, Has(Size(Quiet with { Boost = Read(boost, Dimension.Pressure) }).Warnings, "boost-above-variant"));

    [Fact]
    public void Boost_on_a_natural_variant_or_an_unrecorded_one_is_flagged()
    {
        Assert.Contains(
            With([Count("ts", "cylinders", 3), Word("ts", "induction", "natural")]),
            warning => warning.Code == "boost-above-variant" && warning.Text.Contains("built for none", StringComparison.Ordinal));
        Assert.True(Has(With([Count("ts", "cylinders", 3)]), "boost-not-recorded"));
        Assert.True(Has(With([Count("ts", "cylinders", 3)]), "fuel-system-not-recorded"));
    }

    // 3 bar held over ambient is 3.0 across without boost and 2.2 at the 0.8 bar that the variant was built for: what is left out flatters every injector.
    [Theory]
    [InlineData("boosted", "0 bar", true)]
    [InlineData("boosted", "0.1 bar", false)]
    [InlineData("natural", "0 bar", false)]
    public void Goal_without_boost_on_a_boosted_variant_is_flagged(string induction, string boost, bool flagged) => Assert.Equal(
        flagged,
        Has(Assert.IsType<InjectorsSized>(InjectorSizing.Size(Quiet with { Boost = Read(boost, Dimension.Pressure) }, [],
            [Count("ts", "cylinders", 3), Word("ts", "induction", induction)])).Warnings, "goal-without-boost"));

    // 180 g/(kW·h) is 3600 ÷ (180 × 43) = 46.5 %.
    [Theory]
    [InlineData("180..330..380 g/(kW·h)", false)]
    [InlineData("179..330..380 g/(kW·h)", true)]
    public void An_implausible_consumption_is_flagged(string bsfc, bool flagged)
    {
        var warnings = Size(Quiet with { Bsfc = ReadRange(bsfc, Dimension.SpecificConsumption) }).Warnings;
        Assert.Equal(flagged, Has(warnings, "bsfc-implausible"));
        Assert.All(warnings, warning => Assert.Contains("46.8 %", warning.Text, StringComparison.Ordinal)); // 3600 ÷ (179 × 43)
    }

    [Theory]
    [InlineData("7200/min", false)]
    [InlineData("7201/min", true)]
    public void Speed_above_the_redline_is_flagged(string speed, bool flagged) =>
        Assert.Equal(flagged, Has(Size(Quiet with { Speed = Read(speed, Dimension.Speed) }).Warnings, "speed-above-redline"));

    // 3 bar fixed against 0.8 bar: √(2.2/3) = 0.8563.
    [Fact]
    public void A_rail_without_manifold_reference_is_flagged_under_boost()
    {
        var warning = Assert.Single(Size(Quiet with { Supply = FuelSupply.ReturnlessFixed }).Warnings);
        Assert.Equal("pressure-falls-with-boost", warning.Code);
        Assert.Contains("85.6 % of the flow", warning.Text, StringComparison.Ordinal);
        var unboosted = Size(Quiet with { Supply = FuelSupply.ReturnlessFixed, Boost = Read("0 bar", Dimension.Pressure) }).Warnings;
        Assert.False(Has(unboosted, "pressure-falls-with-boost"));
    }

    [Fact]
    public void An_assumed_dead_time_is_flagged() => Assert.True(Has(Size(Quiet with { DeadTime = null }).Warnings, "dead-time-assumed"));

    [Theory]
    [InlineData("12 V", "At 12 V it is longer.")]
    [InlineData("14 V", "is judged by that.")]
    [InlineData("15 V", "At 15 V it is shorter.")]
    public void An_assumed_dead_time_says_which_way_the_voltage_moves_it(string voltage, string ending) =>
        Assert.EndsWith(ending, Assert.Single(Size(Quiet with { DeadTime = null, Voltage = Read(voltage, Dimension.Voltage) }).Warnings).Text, StringComparison.Ordinal);

    // 3 × 180 cm3/min for 180 kW: open for more than the cycle.
    [Fact]
    public void A_pulse_longer_than_the_cycle_is_flagged()
    {
        Assert.True(Has(Judge(Quiet, Injector("I-1801", "180 cm3/min")).Warnings, "pulse-longer-than-cycle"));
        Assert.False(Has(Judge(Quiet, Injector("I-8601", "860 cm3/min")).Warnings, "pulse-longer-than-cycle"));
    }

    // Shortest squirt of a set of 860 at 20 kW: 20 × 0.280 = 5.6 kg/h ÷ 3 = 31.11 g/min each, of 860 × √(0.6838 × 0.775) = 626.06 g/min
    // held open: 4.97 % of 17.647 ms = 0.877 ms, + 0.9 ms = 1.777 ms.
    [Theory]
    [InlineData("1.77 ms", false)]
    [InlineData("1.78 ms", true)]
    public void A_squirt_below_the_linear_range_is_flagged(string smallest, bool flagged)
    {
        var injector = Injector("I-8601", "860 cm3/min", more: Value("smallest-linear-pulse", smallest, Dimension.Time));
        Assert.Equal(flagged, Has(Judge(Quiet with { Power = Read("20 kW", Dimension.Power) }, injector).Warnings, "pulse-below-linear-range"));
    }

    [Theory]
    [InlineData("petrol-e10", false)]
    [InlineData("e85", true)]
    [InlineData("ethanol", true)]
    [InlineData("methanol", true)]
    public void The_usual_cautions_are_shown_and_alcohol_has_its_own(string fuel, bool alcohol)
    {
        var codes = Size(Quiet with { Fuel = fuel }).Cautions.Select(caution => caution.Code).ToList();
        Assert.Superset(new HashSet<string>(["emissions-law", "fuel-pressure", "residual-rail-pressure"]), new HashSet<string>(codes));
        Assert.Equal(alcohol, codes.Contains("alcohol-fuel"));
    }

    private static IReadOnlyList<SumWarning> With(IReadOnlyList<EngineFact> facts) => Assert.IsType<InjectorsSized>(InjectorSizing.Size(Quiet, [], facts)).Warnings;

    private static bool Has(IReadOnlyList<SumWarning> warnings, string code) => warnings.Any(warning => warning.Code == code);

    // The variant has three.
    [Theory]
    [InlineData(null, false)]
    [InlineData(3, false)]
    [InlineData(6, true)]
    public void Cylinders_that_the_variant_does_not_have_are_flagged(int? cylinders, bool flagged) =>
        Assert.Equal(flagged, Size(HillClimb with { Cylinders = cylinders }).Warnings.Any(warning => warning.Code == "cylinders-not-as-built"));
}
