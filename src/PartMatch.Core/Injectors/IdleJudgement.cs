using PartMatch.Core.Catalogue;
using PartMatch.Core.Sums;

namespace PartMatch.Core.Injectors;

/// <summary>Can this injector still meter the little fuel of idling? In a staged set it idles alone.</summary>
internal static class IdleJudgement
{
    public static IdleCheck Of(InjectorGoal goal, IdleNeed? idle, string? notKnown, InjectorRating rating, Part part)
    {
        if (idle is null || rating.FlowM3S is not { } flow || rating.FluidKgM3 is not { } fluid)
        {
            return new IdleCheck(Controllable.NotKnown, $"Idle not known: {notKnown ?? "its flow is not recorded"}.");
        }

        if (InjectorJudgement.DeadTimeOf(goal, part, idle.AcrossPa) is not KnownDeadTime deadTime)
        {
            return new IdleCheck(Controllable.NotKnown, $"Idle not known: its dead-time table does not reach {SumText.InBar(idle.AcrossPa)} across.");
        }

        var held = OrificeFlow.MassFlow(flow, rating.PressurePa, fluid, idle.AcrossPa, goal.Density.Spread);
        var pulse = (idle.FuelFlowKgS * idle.CycleS / (goal.Injectors * goal.Shots) / held) + deadTime.Seconds;
        var shown = pulse.In(SumText.Milliseconds, "0.00");
        if (rating.SmallestLinearPulseS is not { } smallest)
        {
            return new IdleCheck(Controllable.NotKnown,
                $"Idle not known: a shot of {shown.Text}, and its smallest linear pulse is not recorded.")
            { Pulse = shown };
        }

        var straight = $"straight from {SumText.InMilliseconds(smallest.Expected)}";
        return pulse.Low >= smallest.High
            ? new IdleCheck(Controllable.Yes, $"Idles on the straight line: a shot of {shown.Text}, {straight}.") { Pulse = shown }
            : pulse.Expected < smallest.Expected
                ? new IdleCheck(Controllable.No, $"Too big to idle well: a shot of {shown.Text}, {straight}; measure it on a flow bench.") { Pulse = shown }
            : new IdleCheck(Controllable.NotKnown, $"Idle at the edge of the straight line: a shot of {shown.Text}, {straight}.") { Pulse = shown };
    }
}
