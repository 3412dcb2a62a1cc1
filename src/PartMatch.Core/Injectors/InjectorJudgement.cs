using PartMatch.Core.Catalogue;
using PartMatch.Core.Measures;
using PartMatch.Core.Sums;

namespace PartMatch.Core.Injectors;

/// <summary>Can this injector feed the goal? Its own rating, its own dead time, at the goal's pressure and fuel.</summary>
internal static class InjectorJudgement
{
    // So that a goal set to exactly what an injector feeds is not refused by the last bit of a double.
    private const double Rounding = 1e-9;

    public static SizedInjector Of(InjectorGoal goal, Part part)
    {
        var rating = InjectorRating.Read(part);
        var blank = new SizedInjector(part.Id, part.Name, rating.As, Enough.NotKnown, "", rating.Missing, [], []);
        if (rating.FlowM3S is not { } ratedFlow || rating.FluidKgM3 is not { } ratedFluid)
        {
            var missing = rating.Missing.First(fact => fact.Feature == (rating.FlowM3S is null ? "rated-flow" : "rated-fluid"));
            return blank with { Because = $"Not known. {missing.Text}" };
        }

        var flow = OrificeFlow.MassFlow(ratedFlow, rating.PressurePa, ratedFluid, (double)goal.AcrossPa, goal.Fuel.Density.Spread);
        var sized = blank with { Flow = flow.In(SumText.GramsPerMinute, "0.0"), Working = [InjectorSteps.Flow(goal, rating, ratedFlow, ratedFluid, flow)] };
        return DeadTimeOf(goal, part) switch
        {
            KnownDeadTime deadTime => Judged(goal, sized, rating, flow, deadTime),
            DeadTimeOutsideTable outside => sized with { Because = $"Not known: {outside.Reason}." },
            var other => throw new InvalidOperationException($"{other.GetType().Name} is no outcome of a dead time."),
        };
    }

    private static DeadTime DeadTimeOf(InjectorGoal goal, Part part) =>
        goal.Question.DeadTime is null ? DeadTimes.Of(part, goal.Voltage.Value, goal.AcrossPa) : goal.DeadTime;

    private static SizedInjector Judged(InjectorGoal goal, SizedInjector sized, InjectorRating rating, Spread flow, KnownDeadTime deadTime)
    {
        var pulse = InjectorTiming.PulseSeconds(goal.FuelFlowKgS * goal.CycleS / goal.Injectors, flow, goal.Shots, deadTime.Seconds);
        var duty = pulse / goal.CycleS;
        var power = InjectorTiming.EffectiveDuty(goal.Duty, goal.Shots, deadTime.Seconds, goal.CycleS).NotNegative() * goal.Injectors * flow / goal.Bsfc.Spread;
        var enough = duty.High <= goal.Duty + Rounding ? Enough.Yes : duty.Expected > goal.Duty + Rounding ? Enough.No : Enough.NotKnown;
        var dutyRange = duty.In(SumText.Percent, "0.0");
        return sized with
        {
            DeadTime = deadTime.Seconds.In(SumText.Milliseconds, "0.00"),
            Pulse = pulse.In(SumText.Milliseconds, "0.00"),
            Duty = dutyRange,
            PowerAtDuty = power.In(SumText.Kilowatts, "0.0"),
            Enough = enough,
            Because = InWords(enough, dutyRange, goal.Duty),
            Working = [.. sized.Working, .. InjectorSteps.Duty(goal, flow, deadTime)],
            Warnings = [.. SizingWarnings.OfInjector(goal, rating, pulse, deadTime)],
        };
    }

    private static string InWords(Enough enough, QuantityRange duty, double limit)
    {
        var within = $"open {duty.Text} of the time at the goal, limit {SumText.InPercent(limit, "0.##")}";
        return enough switch
        {
            Enough.Yes => $"Enough even in the worst case: {within}.",
            Enough.No => $"Not enough: {within}.",
            _ => $"Enough if the expected figures hold, not in the worst case: {within}.",
        };
    }
}
