using PartMatch.Core.Measures;
using PartMatch.Core.Mixture;
using PartMatch.Core.Sums;
using static PartMatch.Core.Sums.SumText;

namespace PartMatch.Core.Injectors;

/// <summary>What each injector of a goal must feed when held open: fuel flow ÷ (injectors × effective duty).</summary>
internal static class InjectorNeed
{
    private const double RatedPa = 300_000;

    public static NeedPerInjector Of(InjectorGoal goal)
    {
        var mass = MassKgS(goal);
        return new NeedPerInjector(
            mass.In(GramsPerMinute, "0.0"),
            (mass / goal.Fuel.Density.Spread).In(CubicCentimetresPerMinute, "0.0"),
            RatedM3S(goal, mass).In(CubicCentimetresPerMinute, "0.0", ", n-heptane, 3.00 bar"));
    }

    /// <summary>The sums for the pencil: each with the expected figures, then mass and rating with all the worst ones and all the best ones.</summary>
    public static IReadOnlyList<WorkingStep> Working(InjectorGoal goal)
    {
        var (mass, density) = (MassKgS(goal), goal.Fuel.Density.Spread.Expected);
        var (perMinute, duty) = (InGramsPerMinute(mass.Expected), InPercent(goal.EffectiveDuty.Expected));
        return
        [
            .. GoalSteps.Of(goal),
            new("flow wanted of each injector held open", "fuel flow ÷ (injectors × effective duty)",
                $"{InKilogramsPerHour(goal.FuelFlowKgS.Expected)} ÷ ({goal.Injectors} × {duty}) × 1000 g ÷ 60 min", perMinute, "definition of the duty"),
            new("the same as volume", "mass flow ÷ density of the fuel",
                $"{perMinute} ÷ {BareGramsPerCm3(density)} g/cm3", InCm3PerMinute(mass.Expected / density), goal.Fuel.Density.Source),
            Rated("the same as a rating: n-heptane, 3.00 bar across", goal, mass.Expected, density),
            Corner("least need", goal, goal.Bsfc.Spread.Low, goal.DeadTime.Seconds.Low, goal.EffectiveDuty.High),
            Rated("least rating: least need, densest fuel", goal, mass.Low, goal.Fuel.Density.Spread.High),
            Corner("greatest need", goal, goal.Bsfc.Spread.High, goal.DeadTime.Seconds.High, goal.EffectiveDuty.Low),
            Rated("greatest rating: greatest need, thinnest fuel", goal, mass.High, goal.Fuel.Density.Spread.Low),
        ];
    }

    private static Spread MassKgS(InjectorGoal goal) => goal.FuelFlowKgS / (goal.EffectiveDuty * goal.Injectors);

    private static Spread RatedM3S(InjectorGoal goal, Spread mass) =>
        OrificeFlow.RatedVolumeFlow(mass, Spread.Exactly(RatedPa), RatedFluids.Heptane.Spread, (double)goal.AcrossPa, goal.Fuel.Density.Spread);

    private static WorkingStep Rated(string what, InjectorGoal goal, double massKgS, double densityKgM3)
    {
        var rated = OrificeFlow.RatedVolumeFlow(
            Spread.Exactly(massKgS), Spread.Exactly(RatedPa), RatedFluids.Heptane.Spread, (double)goal.AcrossPa, Spread.Exactly(densityKgM3));
        return new WorkingStep(
            what, "mass flow ÷ √(density of the fuel × density of n-heptane) × √(3.00 bar ÷ pressure across)",
            $"{InGramsPerMinute(massKgS)} ÷ √({BareGramsPerCm3(densityKgM3)} × {BareGramsPerCm3(RatedFluids.HeptaneKgM3)}) g/cm3 × √(3.00 ÷ {BareBar((double)goal.AcrossPa)})",
            InCm3PerMinute(rated.Expected), "Bernoulli: flow through an orifice ∝ √(Δp ÷ density); n-heptane 683.8 kg/m3, VDI Heat Atlas");
    }

    private static WorkingStep Corner(string what, InjectorGoal goal, double bsfc, double deadTimeS, double effectiveDuty)
    {
        var flow = goal.PowerW * bsfc;
        return new WorkingStep(
            what, "power × BSFC ÷ (injectors × (duty − shots × dead time ÷ cycle)), with the ends of the ranges that work the same way: the worst case, not a likely one",
            $"{In(Kilowatts, goal.PowerW, "0.##")} × {InGramsPerKilowattHour(bsfc)} = {InKilogramsPerHour(flow)}; "
            + $"{InMilliseconds(deadTimeS)} dead time leaves {InPercent(effectiveDuty)}; "
            + $"{InKilogramsPerHour(flow)} ÷ ({goal.Injectors} × {InPercent(effectiveDuty)}) × 1000 ÷ 60",
            InGramsPerMinute(flow / (goal.Injectors * effectiveDuty)), "interval arithmetic (Moore 1966)");
    }
}
