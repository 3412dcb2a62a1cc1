namespace PartMatch.Core.Injectors;

/// <summary>The first sums for the pencil: how much fuel, how many injectors, how much time, how much pressure.</summary>
internal static class GoalSteps
{
    public static IEnumerable<WorkingStep> Of(InjectorGoal goal)
    {
        var bsfc = SizingText.In(SizingText.GramsPerKilowattHour, goal.Bsfc.Spread.Expected, "0.##");
        yield return new WorkingStep(
            "fuel flow", "power × BSFC", $"{goal.Question.Power.Text} × {bsfc}", SizingText.In(SizingText.KilogramsPerHour, goal.FuelFlowKgS.Expected, "0.00"),
            "definition of specific consumption: Heywood 1988, 2.8 (from memory, high confidence)");
        yield return new WorkingStep(
            "injectors", "cylinders × injectors for each", $"{goal.Cylinders} × {goal.InjectorsPerCylinder}", Plain(goal.Injectors), "the variant, or the question");

        var cycle = SizingText.In(SizingText.Milliseconds, goal.CycleS, "0.000");
        yield return new WorkingStep(
            "cycle time", "120 000 ms/min ÷ speed", $"120 000 ÷ {goal.Question.Speed.Text}", cycle, "four-stroke: two turns a cycle");

        var deadTime = SizingText.In(SizingText.Milliseconds, goal.DeadTime.Seconds.Expected, "0.00");
        yield return new WorkingStep(
            "effective duty", "duty − shots × dead time ÷ cycle time",
            $"{SizingText.In(SizingText.Percent, goal.Duty, "0.##")} − {goal.Shots} × {deadTime} ÷ {cycle}",
            SizingText.In(SizingText.Percent, goal.EffectiveDuty.Expected, "0.00"), $"dead time: {goal.DeadTime.Source}");
        yield return PressureAcross.Step(goal.Question, goal.AcrossPa);
    }

    private static string Plain(int count) => SizingText.Number(count, "0");
}
