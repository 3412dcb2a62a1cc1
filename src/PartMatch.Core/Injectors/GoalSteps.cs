using PartMatch.Core.Sums;
using static PartMatch.Core.Sums.SumText;

namespace PartMatch.Core.Injectors;

/// <summary>The first sums for the pencil: how much fuel, how many injectors, how much time, how much pressure.</summary>
internal static class GoalSteps
{
    public static IEnumerable<WorkingStep> Of(InjectorGoal goal)
    {
        yield return new WorkingStep(
            "fuel flow", "power × BSFC", $"{In(Kilowatts, goal.PowerW.Expected, "0.##")} × {InGramsPerKilowattHour(goal.Bsfc.Spread.Expected)}",
                InKilogramsPerHour(goal.FuelFlowKgS.Expected),
            "definition of specific consumption: Heywood 1988, 2.8 (from memory)");
        yield return new WorkingStep(
            "injectors", "cylinders × injectors for each", $"{goal.Cylinders} × {goal.InjectorsPerCylinder}", Number(goal.Injectors, "0"),
                "the variant, or the question");

        var cycle = InMilliseconds(goal.CycleS.Expected, "0.000");
        yield return new WorkingStep(
            "cycle time", "120 000 ms/min ÷ speed", $"120 000 ms/min ÷ {In(PerMinute, (double)goal.Question.Speed.Value, "0.##")}", cycle,
                "four-stroke: two turns a cycle");
        yield return new WorkingStep(
            "effective duty", "duty − shots × dead time ÷ cycle time",
            $"{InPercent(goal.Duty.Expected, "0.##")} − {goal.Shots} × {InMilliseconds(goal.DeadTime.Seconds.Expected)} ÷ {cycle}",
            InPercent(goal.EffectiveDuty.Expected), $"dead time: {goal.DeadTime.Source}");
        yield return goal.Rail.Step();
    }
}
