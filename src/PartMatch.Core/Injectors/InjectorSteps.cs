using PartMatch.Core.Measures;
using PartMatch.Core.Sums;
using static PartMatch.Core.Sums.SumText;

namespace PartMatch.Core.Injectors;

/// <summary>The sums of one injector for the pencil, with the expected figures.</summary>
internal static class InjectorSteps
{
    public static WorkingStep Flow(InjectorGoal goal, InjectorRating rating, Spread ratedFlow, Spread ratedFluid, Spread flow) => new(
        "flow at the goal, held open", "rated flow × √(density of its fluid × density of the fuel) × √(pressure across ÷ rated pressure)",
        $"{In(CubicCentimetresPerMinute, ratedFlow.Expected, "0.##")}"
        + $" × √({BareGramsPerCm3(ratedFluid.Expected)} × {BareGramsPerCm3(goal.Fuel.Density.Spread.Expected)}) g/cm3"
        + $" × √({BareBar((double)goal.AcrossPa)} ÷ {BareBar(rating.PressurePa.Expected)})",
        InGramsPerMinute(flow.Expected), "Bernoulli: flow through an orifice ∝ √(Δp ÷ density)");

    public static IEnumerable<WorkingStep> Duty(InjectorGoal goal, Spread flow, KnownDeadTime deadTime)
    {
        var open = goal.FuelFlowKgS.Expected / goal.Injectors / flow.Expected;
        var shut = goal.Shots * deadTime.Seconds.Expected / goal.CycleS;
        var shutSum = $"{goal.Shots} × {InMilliseconds(deadTime.Seconds.Expected)} ÷ {InMilliseconds(goal.CycleS, "0.000")}";
        var held = InGramsPerMinute(flow.Expected);
        yield return new WorkingStep(
            "share of the time open for the fuel", "fuel flow ÷ injectors ÷ flow held open",
            $"{InKilogramsPerHour(goal.FuelFlowKgS.Expected)} ÷ {goal.Injectors} × 1000 ÷ 60 ÷ {held}", InPercent(open), "definition of the duty");
        yield return new WorkingStep(
            "duty at the goal", "that + shots × dead time ÷ cycle time", $"{InPercent(open)} + {shutSum}", InPercent(open + shut), $"dead time: {deadTime.Source}");

        var power = Math.Max(0, goal.Duty - shut) * goal.Injectors * flow.Expected / goal.Bsfc.Spread.Expected;
        yield return new WorkingStep(
            "power at the duty limit", "(duty limit − shots × dead time ÷ cycle time) × injectors × flow held open ÷ BSFC",
            $"({InPercent(goal.Duty, "0.##")} − {shutSum}) × {goal.Injectors} × {held} × 60 ÷ {InGramsPerKilowattHour(goal.Bsfc.Spread.Expected)}",
            In(Kilowatts, power, "0.0"), "the sums above turned round");
    }
}
