using PartMatch.Core.Catalogue;
using PartMatch.Core.Measures;
using PartMatch.Core.Mixture;
using PartMatch.Core.Sums;

namespace PartMatch.Core.Injectors;

/// <summary>Can this injector feed the goal? Its own rating, its own dead time, at the goal's pressure and fuel.</summary>
/// <remarks>Dead time and flow both hang on the pressure across; they are taken as independent, so that the range is never too narrow.</remarks>
internal static class InjectorJudgement
{
    // So that a goal set to exactly what an injector feeds is not refused by the last bit of a double.
    private const double Rounding = 1e-9;

    /// <param name="second">The other injector of each cylinder, where one was asked.</param>
    /// <param name="idle">Null where idling cannot be told.</param>
    /// <param name="idleNotKnown">Why, then.</param>
    public static SizedInjector Of(InjectorGoal goal, StagedSecond? second, IdleNeed? idle, string? idleNotKnown, Part part)
    {
        var rating = InjectorRating.Of(part);
        var blank = new SizedInjector(part.Id, part.Name, rating.As, Enough.NotKnown, "", rating.Missing, [], [])
        {
            Label = part.Label,
            WettedFor = WettedParts.Of(goal.Fuel, goal.Question.Ethanol, part),
        };
        if (rating.FlowM3S is not { } ratedFlow || rating.FluidKgM3 is not { } ratedFluid)
        {
            var missing = rating.Missing.First(fact => fact.Feature == (rating.FlowM3S is null ? "rated-flow" : "rated-fluid"));
            return blank with { Because = $"Not known. {missing.Text}" };
        }

        var flow = OrificeFlow.MassFlow(ratedFlow, rating.PressurePa, ratedFluid, goal.AcrossPa, goal.Density.Spread);
        var sized = blank with
        {
            Flow = flow.In(SumText.GramsPerMinute, "0.0"),
            Idle = IdleJudgement.Of(goal, idle, idleNotKnown, rating, part),
            Working = new WorkingLater(() => [InjectorSteps.Flow(goal, rating, ratedFlow, ratedFluid, flow)]),
        };
        return (DeadTimeOf(goal, part, goal.AcrossPa), second) switch
        {
            (_, { Reason: { } reason }) => sized with { Because = $"Not known: {reason}." },
            (DeadTimeOutsideTable outside, _) => sized with { Because = $"Not known: {outside.Reason}." },
            (KnownDeadTime deadTime, _) => Judged(goal, sized, rating, OpenInjectors.Of(flow, deadTime, second), second),
            var (other, _) => throw new InvalidOperationException($"{other.GetType().Name} is no outcome of a dead time."),
        };
    }

    public static DeadTime DeadTimeOf(InjectorGoal goal, Part part, Spread acrossPa) =>
        goal.Question.DeadTime is null ? DeadTimes.Of(part, goal.VoltV, acrossPa) : goal.DeadTime;

    private static SizedInjector Judged(InjectorGoal goal, SizedInjector sized, InjectorRating rating, OpenInjectors open, StagedSecond? second)
    {
        var pulse = (goal.FuelFlowKgS * goal.CycleS / goal.Injectors / open.FlowKgS) + (open.DeadTimeS * goal.Shots);
        var duty = (goal.FuelFlowKgS / goal.Injectors / open.FlowKgS) + (open.DeadTimeS * goal.Shots / goal.CycleS);
        var power = InjectorTiming.EffectiveDuty(goal.Duty, goal.Shots, open.DeadTimeS,
            goal.CycleS).NotNegative() * goal.Injectors * open.FlowKgS / goal.Bsfc.Spread;
        var enough = duty.High <= goal.Duty.Low + Rounding ? Enough.Yes : duty.Expected > goal.Duty.Expected + Rounding ? Enough.No : Enough.NotKnown;
        var dutyRange = duty.In(SumText.Percent, "0.0");
        var shut = InjectorTiming.ShutSeconds(pulse, goal.Shots, goal.CycleS);
        var first = sized.Working;
        return sized with
        {
            DeadTime = open.Own.Seconds.In(SumText.Milliseconds, "0.00"),
            Pulse = pulse.In(SumText.Milliseconds, "0.00"),
            Duty = dutyRange,
            PowerAtDuty = power.In(SumText.Kilowatts, "0.0"),
            Shut = shut.In(SumText.Milliseconds, "0.00"),
            Enough = enough,
            Because = InWords(enough, dutyRange, goal.Duty, second) + Share(goal, open, pulse.Expected),
            Working = new WorkingLater(() => [.. first, .. InjectorSteps.Duty(goal, open)]),
            Warnings = [.. SizingWarnings.OfInjector(goal, rating, pulse, shut, open.Own)],
        };
    }

    private static string Share(InjectorGoal goal, OpenInjectors open, double pulseS) => open.Second is null
        ? ""
        : $" Of the fuel it feeds {SumText.InPercent(open.OwnShareOf(goal, pulseS), "0")} "
            + $"and the second stage {SumText.InPercent(1 - open.OwnShareOf(goal, pulseS), "0")}.";

    private static string InWords(Enough enough, QuantityRange duty, Spread limit, StagedSecond? second)
    {
        var beside = second is null ? "" : $" beside {second.Part.Label} in each cylinder";
        var within = $"open {duty.Text} of the time at the goal{beside}, limit {SumText.InPercent(limit.Expected, "0.##")}";
        return enough switch
        {
            Enough.Yes => $"Enough even in the worst case: {within}.",
            Enough.No when duty.Low > limit.High => $"Not enough even in the best case: {within}.",
            Enough.No => $"Not enough with the expected figures, only in the best case: {within}.",
            _ => $"Enough if the expected figures hold, not in the worst case: {within}.",
        };
    }
}
