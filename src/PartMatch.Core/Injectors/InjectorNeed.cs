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
            (mass / goal.Density.Spread).In(CubicCentimetresPerMinute, "0.0"),
            RatedM3S(goal, mass).In(CubicCentimetresPerMinute, "0.0", ", n-heptane, 3.00 bar"));
    }

    /// <summary>What each input alone does to the rating wanted.</summary>
    public static IReadOnlyList<Influence> Influences(InjectorGoal goal)
    {
        var rail = goal.Rail;
        var boostCounts = rail.Supply != FuelSupply.ReturnManifold && rail.Table.Count == 0;
        SumInput[] inputs =
        [
            new("power", goal.PowerW), new("specific consumption", goal.Bsfc.Spread), new("duty limit", goal.Duty), new("dead time", goal.DeadTime.Seconds),
            new("speed", Spread.Of(goal.Question.Speed)), new("density of the fuel", goal.Density.Spread),
            new(rail.Table.Count > 0 ? "pressure across" : "fuel pressure", rail.Table.Count > 0 ? goal.AcrossPa : rail.PressurePa),
            new("boost", boostCounts ? rail.BoostPa : Spread.Exactly(0)),
        ];
        double Rating(double[] of) =>
            of[0] * of[1] / (goal.Injectors * (of[2] - (goal.Shots * of[3] * of[4] / 120))) * Math.Sqrt(RatedPa / (RatedFluids.HeptaneKgM3 * of[5] * (of[6] - of[7])));
        return SumRange.Influences(inputs, Rating, rating => In(CubicCentimetresPerMinute, rating, "0"));
    }

    /// <summary>The sums for the pencil: each with the expected figures, then mass and rating with all the worst ones and all the best ones.</summary>
    public static IReadOnlyList<WorkingStep> Working(InjectorGoal goal)
    {
        var (mass, density) = (MassKgS(goal), goal.Density.Spread.Expected);
        var (perMinute, duty) = (InGramsPerMinute(mass.Expected), InPercent(goal.EffectiveDuty.Expected));
        return
        [
            .. GoalSteps.Of(goal),
            new($"flow wanted of each {(goal.Question.StagedWith is null ? "injector" : "staged pair")} held open", "fuel flow ÷ (injectors × effective duty)",
                $"{InKilogramsPerHour(goal.FuelFlowKgS.Expected)} ÷ ({goal.Injectors} × {duty}) × 1000 g/kg ÷ 60 min/h", perMinute, "definition of the duty"),
            new("the same as volume", "mass flow ÷ density of the fuel",
                $"{perMinute} ÷ {BareGramsPerCm3(density)} g/cm³", InCm3PerMinute(mass.Expected / density), goal.Density.Source),
            Rated("the same as a rating: n-heptane, 3.00 bar across", goal, mass.Expected, density, goal.AcrossPa.Expected),
            Corner("least need", goal, goal.PowerW.Low, goal.Bsfc.Spread.Low, goal.DeadTime.Seconds.Low, goal.CycleS.High, goal.EffectiveDuty.High),
            Rated("least rating: least need, densest fuel, most pressure", goal, mass.Low, goal.Density.Spread.High, goal.AcrossPa.High),
            Corner("greatest need", goal, goal.PowerW.High, goal.Bsfc.Spread.High, goal.DeadTime.Seconds.High, goal.CycleS.Low, goal.EffectiveDuty.Low),
            Rated("greatest rating: greatest need, thinnest fuel, least pressure", goal, mass.High, goal.Density.Spread.Low, goal.AcrossPa.Low),
        ];
    }

    /// <summary>Held open, of one injector or one staged pair.</summary>
    public static Spread MassKgS(InjectorGoal goal) => goal.FuelFlowKgS / (goal.EffectiveDuty * goal.Injectors);

    /// <summary>A mass flow at the goal as the rating that gives it: n-heptane, 3.00 bar across.</summary>
    public static Spread RatedM3S(InjectorGoal goal, Spread mass) =>
        OrificeFlow.RatedVolumeFlow(mass, Spread.Exactly(RatedPa), RatedFluids.Heptane.Spread, goal.AcrossPa, goal.Density.Spread);

    public static WorkingStep Rated(string what, InjectorGoal goal, double massKgS, double densityKgM3, double acrossPa)
    {
        var rated = OrificeFlow.RatedVolumeFlow(Spread.Exactly(massKgS), Spread.Exactly(RatedPa), RatedFluids.Heptane.Spread, acrossPa,
            Spread.Exactly(densityKgM3));
        return new WorkingStep(
            what, "mass flow ÷ √(density of the fuel × density of n-heptane) × √(3.00 bar ÷ pressure across)",
            $"{InGramsPerMinute(massKgS)} ÷ √({BareGramsPerCm3(densityKgM3)} × {BareGramsPerCm3(RatedFluids.HeptaneKgM3)}) g/cm³ × √(3.00 bar ÷ {InBar(acrossPa)})",
            InCm3PerMinute(rated.Expected), "Bernoulli: flow through an orifice ∝ √(Δp ÷ density); n-heptane 683.8 kg/m³, VDI Heat Atlas");
    }

    private static WorkingStep Corner(string what, InjectorGoal goal, double powerW, double bsfc, double deadTimeS, double cycleS, double effectiveDuty)
    {
        var flow = powerW * bsfc;
        return new WorkingStep(
            what, "power × BSFC ÷ (injectors × (duty − shots × dead time ÷ cycle)), with the ends of the ranges that work the same way: the worst case, not a likely one",
            $"{In(Kilowatts, powerW, "0.##")} × {InGramsPerKilowattHour(bsfc)} = {InKilogramsPerHour(flow)}; "
            + $"{goal.Shots} × {InMilliseconds(deadTimeS)} dead time in {InMilliseconds(cycleS, "0.000")} leaves {InPercent(effectiveDuty)}; "
            + $"{InKilogramsPerHour(flow)} ÷ ({goal.Injectors} × {InPercent(effectiveDuty)}) × 1000 g/kg ÷ 60 min/h",
            InGramsPerMinute(flow / (goal.Injectors * effectiveDuty)), "interval arithmetic (Moore 1966)");
    }
}
