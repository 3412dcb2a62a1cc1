using PartMatch.Core.Injectors;
using PartMatch.Core.Mixture;
using PartMatch.Core.Sums;

namespace PartMatch.Core.Supply;

/// <summary>What to know before relying on the supply.</summary>
internal static class SupplyWarnings
{
    public static IEnumerable<SumWarning> Of(SupplyQuestion question, SupplyGoal goal, InjectorEngine engine)
    {
        foreach (var warning in SizingWarnings.OfGoal(goal.Goal, engine).Where(warning => warning.Code != "dead-time-assumed"))
        {
            yield return warning;
        }

        if (question.Pump is { } pump && PumpJudgement.Of(goal, pump) is { WettedFor: not WettedFor.Recorded and var wetted })
        {
            yield return new SumWarning("pump-not-recorded-for-fuel", wetted == WettedFor.NotKnown
                ? $"What fuels the parts of {pump.Label} stand is not recorded: ask its maker about {goal.Goal.Fuel.Name} before running it."
                : $"The parts of {pump.Label} are recorded for other fuels and not for {goal.Goal.Fuel.Name}: ask its maker before running it.");
        }

        yield return new SumWarning("pump-as-new",
            "A pump is taken as it was recorded. Wear, a clogged filter, hot fuel and thin wire take delivery away: measure it into a can, at the rail's pressure and with the engine's own wiring.");
    }
}
