using PartMatch.Core.Measures;
using PartMatch.Core.Sums;
using static PartMatch.Core.Sums.SumText;

namespace PartMatch.Core.Injectors;

/// <summary>What the injectors of one cylinder must feed together when held open, and how they share it.</summary>
/// <param name="Fuel">Burnt by one cylinder at the goal, kg/s.</param>
/// <param name="Mass">Held open, all injectors of the cylinder together, kg/s.</param>
/// <param name="Volume">Of the fuel, m3/s.</param>
/// <param name="RatedVolume">As it would be rated: n-heptane, 3.00 bar across, m3/s.</param>
/// <param name="Shared">How the injectors share it, in words.</param>
public sealed record NeedPerCylinder(QuantityRange Fuel, QuantityRange Mass, QuantityRange Volume, QuantityRange RatedVolume, string Shared)
{
    /// <summary>What a second stage leaves to the first; absent where there is none, or nothing is known of its flow.</summary>
    public FirstStage? FirstStage { get; init; }
}

/// <summary>What each injector of the first stage must feed beside the second, both held open.</summary>
/// <param name="Second">The part of the second stage.</param>
/// <param name="SecondMass">What each of it feeds at the goal, kg/s.</param>
/// <param name="Mass">What is left, kg/s; never below nothing.</param>
/// <param name="RatedVolume">As it would be rated, m3/s.</param>
public sealed record FirstStage(string Second, QuantityRange SecondMass, QuantityRange Mass, QuantityRange RatedVolume);

/// <summary>The need of one cylinder, for whoever gives it more than one injector.</summary>
internal static class CylinderNeed
{
    private const string AsRated = ", n-heptane, 3.00 bar";

    public static NeedPerCylinder Of(InjectorGoal goal, StagedSecond? second)
    {
        var mass = InjectorNeed.MassKgS(goal) * goal.InjectorsPerCylinder;
        return new NeedPerCylinder(
            (goal.FuelFlowKgS / goal.Cylinders).In(GramsPerMinute, "0.0"),
            mass.In(GramsPerMinute, "0.0"),
            (mass / goal.Density.Spread).In(CubicCentimetresPerMinute, "0.0"),
            InjectorNeed.RatedM3S(goal, mass).In(CubicCentimetresPerMinute, "0.0", AsRated),
            InWords(goal, second))
        {
            FirstStage = second is { Reason: null } known ? Left(goal, known) : null,
        };
    }

    public static IEnumerable<WorkingStep> Working(InjectorGoal goal, StagedSecond? second)
    {
        var need = InjectorNeed.MassKgS(goal).Expected;
        if (goal.InjectorsPerCylinder > 1)
        {
            yield return new WorkingStep(
                "flow wanted of each cylinder, all its injectors held open", "flow of each × injectors for each cylinder",
                $"{InGramsPerMinute(need)} × {goal.InjectorsPerCylinder}", InGramsPerMinute(need * goal.InjectorsPerCylinder), "all take the same pulse");
        }

        if (second is { Reason: null })
        {
            var left = Math.Max(0, need - second.FlowKgS.Expected);
            yield return new WorkingStep(
                "left to the first stage", "flow wanted of the pair − flow of the second stage, at the same pressure and fuel",
                $"{InGramsPerMinute(need)} − {InGramsPerMinute(second.FlowKgS.Expected)}", InGramsPerMinute(left), $"the rating of {second.Part.Label}");
            yield return InjectorNeed.Rated(
                "the same as a rating for the first stage", goal, left, goal.Density.Spread.Expected, goal.AcrossPa.Expected);
        }
    }

    private static FirstStage Left(InjectorGoal goal, StagedSecond second)
    {
        var left = LeftKgS(goal, second);
        return new FirstStage(
            second.Part.Id, second.FlowKgS.In(GramsPerMinute, "0.0"), left.In(GramsPerMinute, "0.0"),
            InjectorNeed.RatedM3S(goal, left).In(CubicCentimetresPerMinute, "0.0", AsRated));
    }

    // What is left hangs on the rating of the second as well: its best case leaves least.
    private static Spread LeftKgS(InjectorGoal goal, StagedSecond second) => (InjectorNeed.MassKgS(goal) - second.FlowKgS).NotNegative();

    private static string InWords(InjectorGoal goal, StagedSecond? second) => (second, goal.InjectorsPerCylinder) switch
    {
        (null, 1) => "One injector for each cylinder: what the cylinder needs is what its injector must feed.",
        (null, var several) => $"{several} injectors for each cylinder, all with the same pulse: each feeds an equal part of what the cylinder needs.",
        ({ Reason: { } reason }, _) => $"How the two stages share it is not known: {reason}.",
        ({ } known, var several) =>
            $"{(several == 1 ? "Two stages" : $"{several} pairs of two stages")} for each cylinder. The second stage, {known.Part.Label}, feeds "
            + $"{known.FlowKgS.In(GramsPerMinute, "0.0").Text} held open and leaves {LeftKgS(goal, known).In(GramsPerMinute, "0.0").Text} to the first. "
            + "At the goal both take the same pulse, so each feeds by its flow; at idle the first stage feeds alone.",
    };
}
