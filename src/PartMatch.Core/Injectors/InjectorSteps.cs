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
        + $" × √({BareGramsPerCm3(ratedFluid.Expected)} × {BareGramsPerCm3(goal.Density.Spread.Expected)}) g/cm³"
        + $" × √({InBar(goal.AcrossPa.Expected)} ÷ {InBar(rating.PressurePa.Expected)})",
        InGramsPerMinute(flow.Expected), "Bernoulli: flow through an orifice ∝ √(Δp ÷ density)");

    public static IEnumerable<WorkingStep> Duty(InjectorGoal goal, OpenInjectors opened)
    {
        var (flow, deadTime) = (opened.FlowKgS.Expected, opened.DeadTimeS.Expected);
        if (opened.Second is { } second)
        {
            var (own, other) = (InGramsPerMinute(opened.OwnFlowKgS.Expected), InGramsPerMinute(second.FlowKgS.Expected));
            yield return new WorkingStep(
                "flow of the staged pair", "its flow + that of the second injector at the same pressure and fuel", $"{own} + {other}",
                    InGramsPerMinute(flow), second.Part.Id);
            yield return new WorkingStep(
                "dead time of the staged pair", "the two weighed by flow: the fuel that both leave out",
                $"({own} × {InMilliseconds(opened.Own.Seconds.Expected)} + {other} × {InMilliseconds(second.DeadTimeS.Expected)}) ÷ {InGramsPerMinute(flow)}",
                InMilliseconds(deadTime), "both take the same pulse");
        }

        var open = goal.FuelFlowKgS.Expected / goal.Injectors / flow;
        var shut = goal.Shots * deadTime / goal.CycleS.Expected;
        var shutSum = $"{goal.Shots} × {InMilliseconds(deadTime)} ÷ {InMilliseconds(goal.CycleS.Expected, "0.000")}";
        var held = InGramsPerMinute(flow);
        yield return new WorkingStep(
            "share of the time open for the fuel", "fuel flow ÷ injectors ÷ flow held open",
            $"{InKilogramsPerHour(goal.FuelFlowKgS.Expected)} ÷ {goal.Injectors} × 1000 g/kg ÷ 60 min/h ÷ {held}", InPercent(open), "definition of the duty");
        yield return new WorkingStep(
            "duty at the goal", "that + shots × dead time ÷ cycle time", $"{InPercent(open)} + {shutSum}", InPercent(open + shut),
                $"dead time: {DeadTimes.SourceOf(opened.Own, goal.VoltV, goal.AcrossPa)}");

        if (opened.Second is not null)
        {
            var pulse = (open + shut) * goal.CycleS.Expected;
            yield return new WorkingStep(
                "share of the fuel that it feeds itself", "its flow × (duty × cycle − shots × its dead time) ÷ fuel of the pair in a cycle",
                $"{InGramsPerMinute(opened.OwnFlowKgS.Expected)} × ({InMilliseconds(pulse)} − {goal.Shots} × {InMilliseconds(opened.Own.Seconds.Expected)}) "
                + "÷ 60 000 ms/min ÷ "
                + $"{In(UnitTable.Get("mg"), goal.FuelFlowKgS.Expected * goal.CycleS.Expected / goal.Injectors, "0.0")} × 1000 mg/g",
                InPercent(opened.OwnShareOf(goal, pulse), "0.0"), "the second stage feeds the rest");
        }

        var power = Math.Max(0, goal.Duty.Expected - shut) * goal.Injectors * flow / goal.Bsfc.Spread.Expected;
        yield return new WorkingStep(
            "power at the duty limit", "(duty limit − shots × dead time ÷ cycle time) × injectors × flow held open ÷ BSFC",
            $"({InPercent(goal.Duty.Expected, "0.##")} − {shutSum}) × {goal.Injectors} × {held} × 60 min/h ÷ {InGramsPerKilowattHour(goal.Bsfc.Spread.Expected)}",
            In(Kilowatts, power, "0.0"), "the sums above turned round");
    }
}
