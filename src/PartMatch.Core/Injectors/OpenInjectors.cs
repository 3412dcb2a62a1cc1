using PartMatch.Core.Catalogue;
using PartMatch.Core.Measures;

namespace PartMatch.Core.Injectors;

/// <summary>The second injector of each cylinder in a staged set.</summary>
/// <param name="Reason">Why it cannot be reckoned with; then there is no flow.</param>
internal sealed record StagedSecond(Part Part, Spread FlowKgS, Spread DeadTimeS, string? Reason)
{
    /// <summary>What the second injector of the goal feeds, or null where none was asked.</summary>
    public static StagedSecond? Of(InjectorGoal goal)
    {
        if (goal.Question.StagedWith is not { } part)
        {
            return null;
        }

        var rating = InjectorRating.Of(part);
        StagedSecond NotKnown(string reason) => new(part, default, default, reason);
        if (rating.FlowM3S is not { } flow || rating.FluidKgM3 is not { } fluid)
        {
            return NotKnown($"of the second injector, {part.Label}, no flow is known");
        }

        return InjectorJudgement.DeadTimeOf(goal, part, goal.AcrossPa) switch
        {
            KnownDeadTime known => new(part, OrificeFlow.MassFlow(flow, rating.PressurePa, fluid, goal.AcrossPa, goal.Density.Spread), known.Seconds, null),
            DeadTimeOutsideTable outside => NotKnown($"of the second injector, {part.Label}: {outside.Reason}"),
            var other => throw new InvalidOperationException($"{other.GetType().Name} is no outcome of a dead time."),
        };
    }
}

/// <summary>What opens together for one cylinder: one injector, or a staged pair that takes the same pulse.</summary>
/// <param name="FlowKgS">Of all of it, held open.</param>
/// <param name="DeadTimeS">Of all of it: each one's weighed by its flow.</param>
/// <param name="Own">Of the injector judged.</param>
/// <param name="OwnFlowKgS">Of the injector judged.</param>
internal sealed record OpenInjectors(Spread FlowKgS, Spread DeadTimeS, KnownDeadTime Own, Spread OwnFlowKgS, StagedSecond? Second)
{
    public static OpenInjectors Of(Spread flow, KnownDeadTime deadTime, StagedSecond? second) => second is null
        ? new(flow, deadTime.Seconds, deadTime, flow, null)
        : new(flow + second.FlowKgS, Weighed(flow, deadTime.Seconds, second.FlowKgS, second.DeadTimeS), deadTime, flow, second);

    /// <summary>Share of the fuel of the pair that the injector judged feeds itself, with the expected figures.</summary>
    /// <param name="pulseS">Time open in a cycle, over all squirts.</param>
    public double OwnShareOf(InjectorGoal goal, double pulseS) =>
        OwnFlowKgS.Expected * Math.Max(0, pulseS - (goal.Shots * Own.Seconds.Expected)) / (goal.FuelFlowKgS.Expected * goal.CycleS.Expected / goal.Injectors);

    // A mean lies between its two; of all weights possible the ends give the least and the greatest.
    private static Spread Weighed(Spread flow, Spread deadTime, Spread otherFlow, Spread otherDeadTime)
    {
        double[] shares = [flow.Low / (flow.Low + otherFlow.High), flow.High / (flow.High + otherFlow.Low)];
        static double Mean(double share, double one, double other) => (share * one) + ((1 - share) * other);
        return new Spread(
            shares.Min(share => Mean(share, deadTime.Low, otherDeadTime.Low)),
            Mean(flow.Expected / (flow.Expected + otherFlow.Expected), deadTime.Expected, otherDeadTime.Expected),
            shares.Max(share => Mean(share, deadTime.High, otherDeadTime.High)));
    }
}
