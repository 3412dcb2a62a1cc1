using PartMatch.Core.Measures;

namespace PartMatch.Core.Injectors;

/// <summary>The sums of one injector for the pencil, with the expected figures.</summary>
internal static class InjectorSteps
{
    public static WorkingStep Flow(InjectorGoal goal, InjectorRating rating, Spread ratedFlow, Spread ratedFluid, Spread flow) => new(
        "flow at the goal, held open", "rated flow × √(density of its fluid × density of the fuel) × √(pressure across ÷ rated pressure)",
        $"{SizingText.In(SizingText.CubicCentimetresPerMinute, ratedFlow.Expected, "0.##")} × √({SizingText.GramsPerCm3(ratedFluid.Expected)} × {SizingText.GramsPerCm3(goal.Fuel.Density.Spread.Expected)}) g/cm3"
        + $" × √({InBar((double)goal.AcrossPa)} ÷ {InBar(rating.PressurePa.Expected)})",
        Grams(flow.Expected), "Bernoulli: flow through an orifice ∝ √(Δp ÷ density)");

    public static IEnumerable<WorkingStep> Duty(InjectorGoal goal, Spread flow, KnownDeadTime deadTime)
    {
        var open = goal.FuelFlowKgS.Expected / goal.Injectors / flow.Expected;
        var shut = goal.Shots * deadTime.Seconds.Expected / goal.CycleS;
        var (shutSum, cycle) = ($"{goal.Shots} × {SizingText.In(SizingText.Milliseconds, deadTime.Seconds.Expected, "0.00")}", SizingText.In(SizingText.Milliseconds, goal.CycleS, "0.000"));
        yield return new WorkingStep(
            "share of the time open for the fuel", "fuel flow ÷ injectors ÷ flow held open",
            $"{SizingText.In(SizingText.KilogramsPerHour, goal.FuelFlowKgS.Expected, "0.00")} ÷ {goal.Injectors} × 1000 ÷ 60 ÷ {Grams(flow.Expected)}", Percent(open), "definition of the duty");
        yield return new WorkingStep(
            "duty at the goal", "that + shots × dead time ÷ cycle time", $"{Percent(open)} + {shutSum} ÷ {cycle}", Percent(open + shut), $"dead time: {deadTime.Source}");

        var left = goal.Duty - shut;
        yield return new WorkingStep(
            "power at the duty limit", "(duty limit − shots × dead time ÷ cycle time) × injectors × flow held open ÷ BSFC",
            $"({SizingText.In(SizingText.Percent, goal.Duty, "0.##")} − {shutSum} ÷ {cycle}) × {goal.Injectors} × {Grams(flow.Expected)} × 60 ÷ {SizingText.In(SizingText.GramsPerKilowattHour, goal.Bsfc.Spread.Expected, "0.##")}",
            SizingText.In(SizingText.Kilowatts, Math.Max(0, left) * goal.Injectors * flow.Expected / goal.Bsfc.Spread.Expected, "0.0"), "the sums above turned round");
    }

    private static string Grams(double kgS) => SizingText.In(SizingText.GramsPerMinute, kgS, "0.0");

    private static string Percent(double share) => SizingText.In(SizingText.Percent, share, "0.00");

    private static string InBar(double pascals) => SizingText.Number(pascals / 1e5, "0.00");
}
