using PartMatch.Core.Measures;
using PartMatch.Core.Mixture;
using PartMatch.Core.Sums;
using static PartMatch.Core.Sums.SumText;

namespace PartMatch.Core.Injectors;

/// <summary>What to know before relying on the answer.</summary>
internal static class SizingWarnings
{
    // Above this an injector has hardly time to close before it opens again. Common practice, no source.
    private const double HighestSensibleDuty = 0.95;

    // Common practice, no source.
    private const double ShortestSensibleShut = 0.0015;

    public static IEnumerable<SumWarning> OfGoal(InjectorGoal goal, InjectorEngine engine)
    {
        var question = goal.Question;
        if (goal.Duty.High > HighestSensibleDuty)
        {
            yield return new SumWarning(
                "duty-limit-high", $"The duty limit of {InPercent(goal.Duty.High, "0.#")} is above 95 %: an injector that hardly closes meters badly (common practice, no source).");
        }

        if (goal.Bsfc.Spread.Low < SpecificConsumption.ImplausibleBelow(goal.Fuel))
        {
            yield return new SumWarning("bsfc-implausible",
                $"{InGramsPerKilowattHour(goal.Bsfc.Spread.Low)} turns {InPercent(SpecificConsumption.Efficiency(goal.Bsfc.Spread.Low, goal.Fuel), "0.0")} of the fuel's heat into work: "
                + $"below {InGramsPerKilowattHour(SpecificConsumption.ImplausibleBelow(goal.Fuel))} "
                + $"no engine of this sort on {goal.Fuel.Name} is to be expected (a judgement, no source).");
        }

        if (engine.Cylinders is { } built && question.Cylinders is { } asked && asked != built)
        {
            yield return new SumWarning("cylinders-not-as-built",
                $"Reckoned with {asked} cylinders; this variant has {built}. "
                + (question.Displacement is null ? "The displacement is still that of the variant, for the air and for idling: give displacement=. " : "")
                + "Fit and yardsticks stay those of the variant.");
        }

        if (BoostWarning(question, engine) is { } boost)
        {
            yield return boost;
        }

        if (engine.RedlinePerMinute is { } redline && (question.Speed.High ?? question.Speed.Value) > redline)
        {
            yield return new SumWarning("speed-above-redline",
                $"{question.Speed.Text} is above the {Number((double)redline, "0")}/min this variant was built for.");
        }

        if (goal.Rail.Supply != FuelSupply.ReturnManifold && question.Boost.Value > 0 && goal.Rail.AcrossAt(0) is { Expected: var unboosted }
            && goal.AcrossPa.Expected < unboosted)
        {
            yield return new SumWarning("pressure-falls-with-boost",
                $"Without a manifold reference boost takes away pressure: {InBar(unboosted)} without boost, {InBar(goal.AcrossPa.Expected)} across at the goal, "
                + $"which is {InPercent(OrificeFlow.AtPressure(1, unboosted, goal.AcrossPa.Expected), "0.#")} of the flow.");
        }

        if (goal.Rail.IsKnownAtGoalOnly)
        {
            yield return new SumWarning("rail-table-not-given",
                $"A control unit sets this rail: {InBar(goal.Rail.PressurePa)} is taken at the goal and nowhere else. "
                + "What it sets at other boost and at idle is not told: give rail-table=.");
        }

        if (goal.DeadTime.IsAssumed)
        {
            yield return new SumWarning("dead-time-assumed",
                $"The need is reckoned with a dead time of {goal.DeadTime.Source}. An injector with a table of its own is judged by that.{AtOtherVoltage(goal)}");
        }

        if (engine.FuelSystem is null)
        {
            yield return new SumWarning("fuel-system-not-recorded",
                "It is not recorded how this variant takes its fuel: the sums hold for port injection only.");
        }
    }

    public static IEnumerable<SumWarning> OfInjector(InjectorGoal goal, InjectorRating rating, Spread pulse, Spread shut, KnownDeadTime deadTime)
    {
        if (deadTime.IsAssumed)
        {
            yield return new SumWarning("dead-time-not-recorded", $"Its dead time is not recorded: {deadTime.Source}.{AtOtherVoltage(goal)}");
        }

        if (pulse.Expected > goal.CycleS.Expected)
        {
            yield return new SumWarning("pulse-longer-than-cycle",
                $"It would have to be open {InMilliseconds(pulse.Expected)} in a cycle of "
                + $"{InMilliseconds(goal.CycleS.Expected)}: always open is not enough.");
        }
        else if (shut.Expected < ShortestSensibleShut)
        {
            yield return new SumWarning("hardly-closes",
                $"Between two shots at the goal it is shut for {shut.In(Milliseconds, "0.00").Text}; an injector wants about 1 … 2 ms to close and be ready again "
                + "(common practice, no source). Below that its flow leaves the straight line: measure.");
        }

        if (rating.SmallestLinearPulseS is { Expected: var smallest } && pulse.Low / goal.Shots < smallest)
        {
            yield return new SumWarning("pulse-below-linear-range",
                $"A shot at the goal may be {InMilliseconds(pulse.Low / goal.Shots)}, "
                + $"below the {InMilliseconds(smallest)} from which it meters on a straight line.");
        }
    }

    private static SumWarning? BoostWarning(InjectorQuestion question, InjectorEngine engine)
    {
        if (question.Boost.Value <= 0)
        {
            return engine.Induction == "boosted"
                ? new SumWarning("goal-without-boost",
                    $"The goal is reckoned without boost, and this variant is boosted{(engine.BoostPa is { } own ? $", built for {InBar(own)}" : "")}: "
                    + "give boost=. Under boost a rail that does not follow the manifold has less pressure across, "
                    + "so its injectors feed less than is said here; and the air carries more.")
                : null;
        }

        var builtFor = engine.BoostPa ?? (engine.Induction == "natural" ? 0 : null);
        return builtFor switch
        {
            null => new SumWarning("boost-not-recorded",
                $"It is not recorded what boost this variant was built for; the goal asks for {InBar(question.Boost.Value)}."),
            { } pascals when question.Boost.Value > pascals => new SumWarning("boost-above-variant",
                $"The goal asks for {InBar(question.Boost.Value)} of boost; this variant was built for {(pascals == 0 ? "none" : InBar(pascals))}. "
                + "Injectors are the least of it: compare pistons, rods, gasket, cooling and knock control."),
            _ => null,
        };
    }

    private static string AtOtherVoltage(InjectorGoal goal) => goal.Voltage.Value switch
    {
        < 14 => $" At {goal.Voltage.Text} it is longer.",
        > 14 => $" At {goal.Voltage.Text} it is shorter.",
        _ => "",
    };
}
