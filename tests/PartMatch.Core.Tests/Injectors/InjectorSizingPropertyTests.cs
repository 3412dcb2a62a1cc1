using CsCheck;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Injectors;
using PartMatch.Core.Measures;
using PartMatch.Core.Mixture;
using Xunit;
using static PartMatch.Core.Tests.Injectors.InjectorExamples;

namespace PartMatch.Core.Tests.Injectors;

public sealed class InjectorSizingPropertyTests
{
    private const int Samples = 200;

    private static readonly Gen<InjectorQuestion> Goals =
        Gen.Select(Gen.Int[20, 400], Gen.Int[2000, 9000], Gen.Int[1, 20], Gen.Int[25, 60], Gen.Int[60, 95], Gen.Int[0, Fuels.All.Count - 1], Gen.Int[1, 12], Gen.Int[1, 2])
            .Select((kilowatts, speed, boostTenths, pressureTenths, duty, fuel, cylinders, shots) => HillClimb with
            {
                Power = Of(kilowatts * 1000, "W"),
                Speed = Of(speed, "1/min"),
                Boost = Of(boostTenths * 10_000m, "Pa"),
                Pressure = Of(pressureTenths * 10_000m, "Pa"),
                Duty = Of(duty / 100m, "1"),
                Fuel = Fuels.All[fuel].Code,
                Cylinders = cylinders,
                Shots = shots,
            });

    [Fact]
    public void Doubling_the_cylinders_halves_the_need() => Goals.Sample(goal =>
    {
        var (one, two) = (Need(goal), Need(goal with { Cylinders = goal.Cylinders * 2 }));
        Near(one.Mass.Expected / 2, two.Mass.Expected, 1e-12);
        Near(one.RatedVolume.High / 2, two.RatedVolume.High, 1e-12);
    }, iter: Samples);

    [Fact]
    public void Two_injectors_for_each_cylinder_are_twice_the_cylinders() => Goals.Sample(
        goal => Assert.Equal(Need(goal with { Cylinders = goal.Cylinders * 2 }), Need(goal with { InjectorsPerCylinder = 2 })), iter: Samples);

    [Fact]
    public void More_power_needs_more_and_a_higher_duty_limit_needs_less() => Goals.Sample(goal =>
    {
        var need = Need(goal).Mass;
        Near(need.Expected * 1.5, Need(goal with { Power = goal.Power with { Value = goal.Power.Value * 1.5m } }).Mass.Expected, 1e-12);
        Assert.True(Need(goal with { Duty = goal.Duty with { Value = goal.Duty.Value + 0.05m } }).Mass.High < need.High);
    }, iter: Samples);

    [Fact]
    public void Boost_does_not_matter_to_a_manifold_referenced_rail() => Goals.Sample(
        goal => Assert.Equal(Need(goal), Need(goal with { Boost = goal.Boost with { Value = goal.Boost.Value + 30_000 } })), iter: Samples);

    [Fact]
    public void Boost_raises_the_rating_needed_on_a_fixed_rail_and_pressure_lowers_it() => Goals.Sample(goal =>
    {
        var fixedRail = goal with { Supply = FuelSupply.ReturnlessFixed };
        var need = Need(fixedRail);
        var boosted = Need(fixedRail with { Boost = goal.Boost with { Value = goal.Boost.Value + 10_000 } });
        var pressed = Need(fixedRail with { Pressure = Of((goal.Pressure?.Value ?? 0) + 10_000, "Pa") });
        Assert.Equal(need.Mass, boosted.Mass);
        Assert.True(boosted.RatedVolume.Expected > need.RatedVolume.Expected);
        Assert.True(pressed.RatedVolume.Expected < need.RatedVolume.Expected);
    }, iter: Samples);

    [Fact]
    public void Low_expected_and_high_keep_their_order() => Goals.Sample(goal =>
    {
        var sized = Size(goal, Injector("I-1", "440 cm3/min"), Injector("I-2", "620 cm3/min", fluid: null), Injector("I-3", "500 cm3/min", pressure: null));
        var ranges = sized.Injectors.SelectMany(injector => new[] { injector.Flow, injector.DeadTime, injector.Pulse, injector.Duty, injector.PowerAtDuty }).OfType<QuantityRange>()
            .Concat([sized.NeedPerInjector.Mass, sized.NeedPerInjector.Volume, sized.NeedPerInjector.RatedVolume]).ToList();
        Assert.Equal(18, ranges.Count);
        Assert.All(ranges, range => Assert.True(range.Low <= range.Expected && range.Expected <= range.High, range.Text));
    }, iter: Samples);

    // Set to the power that an injector feeds at the limit, its duty is the limit: the two sums turn each other round at every end.
    [Fact]
    public void Power_at_the_limit_and_duty_turn_each_other_round() => Goals.Sample(goal =>
    {
        var injector = Injector("I-1", "440 cm3/min");
        var power = Judge(goal, injector).PowerAtDuty;
        Assert.NotNull(power);
        var limit = (double)goal.Duty.Value;
        Near(limit, Judge(goal with { Power = Of((decimal)power.Low, "W") }, injector).Duty!.High, 1e-9); // a whole rating always has a duty
        Near(limit, Judge(goal with { Power = Of((decimal)power.Expected, "W") }, injector).Duty!.Expected, 1e-9); // likewise
    }, iter: Samples);

    // Worst case: with every range pinned to one of its ends in turn, the answers stay inside the answer to the ranges and reach its ends.
    [Fact]
    public void The_ends_of_the_answer_are_its_worst_corners() => Goals.Sample(goal =>
    {
        var injector = Injector("I-1", "440 cm3/min");
        var ranged = goal with { Bsfc = Range(8e-8, 9e-8, 1e-7, "kg/J"), DeadTime = Range(0.0007, 0.0009, 0.0014, "s") };
        var corners =
            from bsfc in new[] { 8e-8, 1e-7 }
            from dead in new[] { 0.0007, 0.0014 }
            select ranged with { Bsfc = Range(bsfc, bsfc, bsfc, "kg/J"), DeadTime = Range(dead, dead, dead, "s") };
        var sized = corners.Select(corner => (Need(corner).RatedVolume, Judge(corner, injector).Duty!)).ToList(); // a whole rating always has a duty
        var (need, duty) = (Need(ranged).RatedVolume, Judge(ranged, injector).Duty!); // likewise
        Near(sized.Min(corner => corner.Item1.Low), need.Low, 1e-12);
        Near(sized.Max(corner => corner.Item1.High), need.High, 1e-12);
        Near(sized.Min(corner => corner.Item2.Low), duty.Low, 1e-12);
        Near(sized.Max(corner => corner.Item2.High), duty.High, 1e-12);
    }, iter: Samples);

    [Fact]
    public void The_order_of_the_catalogue_changes_no_verdict() => Goals.Sample(goal =>
    {
        Part[] catalogue = [Injector("I-1", "250 cm3/min"), Injector("I-2", "440 cm3/min"), Injector("I-3", "860 cm3/min")];
        var forwards = Size(goal, catalogue).Injectors;
        var backwards = Size(goal, [.. catalogue.Reverse()]).Injectors;
        Assert.Equal(forwards.Select(injector => (injector.Part, injector.Enough, injector.Duty)), backwards.Reverse().Select(injector => (injector.Part, injector.Enough, injector.Duty)));
    }, iter: Samples);

    private static NeedPerInjector Need(InjectorQuestion question) => Size(question).NeedPerInjector;

    private static Quantity Of(decimal value, string unit) => new(value, unit, $"{value} {unit}");

    private static QuantityRange Range(double low, double expected, double high, string unit) => new(low, expected, high, unit, "");
}
