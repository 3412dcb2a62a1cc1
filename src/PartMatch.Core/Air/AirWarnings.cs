using PartMatch.Core.Measures;
using PartMatch.Core.Sums;
using static PartMatch.Core.Sums.SumText;

namespace PartMatch.Core.Air;

/// <summary>Flags: the number, the usual range with its source, and what to measure.</summary>
internal static class AirWarnings
{
    public static IEnumerable<SumWarning> Of(AirQuestion question, GoalStanding standing, Spread power, Spread bmep, Spread? pistonSpeed)
    {
        if (standing is GoalStanding.Ambitious or GoalStanding.Unlikely)
        {
            yield return new SumWarning(standing == GoalStanding.Unlikely ? "goal-unlikely" : "goal-ambitious",
                $"Seen from the air the goal is {(standing == GoalStanding.Unlikely ? "unlikely" : "ambitious")}: {In(Kilowatts, question.PowerW.Expected, "0")} wanted, "
                + $"{power.In(Kilowatts, "0").Text} carried. Its boost, charge temperature and consumption decide: measure.");
        }

        var published = EngineLoad.PublishedBmep(question.Boosted);
        var own = question.Variants.Where(variant => variant.Boosted == question.Boosted).Select(variant =>
            (variant.Name, Bmep: Yardsticks.BmepOf(variant).Expected)).ToList();
        if (bmep.Expected > Math.Max(published.Spread.High, own.Select(one => one.Bmep).DefaultIfEmpty(0).Max()))
        {
            yield return new SumWarning("bmep-above-usual",
                $"The goal implies a mean effective pressure of {In(Bars, bmep.Expected, "0.0")}. {Nearest(own, question.Boosted)}Published: {published.Source}. "
                + "More pressure is more load on pistons, rods, gasket and cooling: measure.");
        }

        var fastest = question.Variants.Select(variant =>
            (variant.Name, Speed: Yardsticks.PistonSpeedOf(variant)?.Expected ?? 0)).OrderByDescending(one => one.Speed).FirstOrDefault();
        if (pistonSpeed is { Expected: var metres } && metres > Math.Max(EngineLoad.PublishedPistonSpeed.Spread.High, fastest.Speed))
        {
            yield return new SumWarning("piston-speed-above-usual",
                $"Mean piston speed at the goal is {Number(metres, "0.0")} m/s. {(fastest.Speed > 0 ? $"The fastest of this family is {fastest.Name} with {Number(fastest.Speed, "0.0")} m/s. " : "")}"
                + $"Published: {EngineLoad.PublishedPistonSpeed.Source}. Load on rods and their bolts grows with its square: weigh and measure.");
        }
    }

    private static string Nearest(List<(string Name, double Bmep)> own, bool boosted) =>
        own.OrderByDescending(one => one.Bmep).FirstOrDefault() is { Name: { } name, Bmep: var bmep }
            ? $"The highest of this family's {(boosted ? "boosted" : "natural")} variants is {name} with {In(Bars, bmep, "0.0")} at its rating. " : "";
}
