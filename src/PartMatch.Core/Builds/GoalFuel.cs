using PartMatch.Core.Catalogue;
using PartMatch.Core.Injectors;
using PartMatch.Core.Supply;

namespace PartMatch.Core.Builds;

/// <summary>Does the fuel of the goal reach the injectors through the pump and the regulator of the plan? The fit of each says nothing of that.</summary>
internal static class GoalFuel
{
    /// <summary>Links of the chain that are not enough, or not shown to be; empty without a goal of power.</summary>
    public static IEnumerable<string> Of(PlanRun run, SolvedPlan solved)
    {
        var family = run.Terms.Facts.Family;
        if (InjectorGoals.QuestionOf(run.Terms) is not { } goal)
        {
            return [];
        }

        var plan = solved.Written.Chosen(solved.Solution);
        var question = new SupplyQuestion(goal) { Injector = At(Roles.Injector), Pump = At(Roles.FuelPump), Regulator = At(Roles.FuelRegulator) };
        return SupplySizing.Size(question, PartsOf(Roles.Injector), PartsOf(Roles.FuelPump), family.EngineFacts) is SupplySized sized
            ?
            [
                .. sized.Links.Where(link => link.Part is not null && link.Enough == Enough.No)
                    .Select(link => $"Fuel for {run.Terms.Build.Goal?.Power}: {link.Link} {link.Part} is not enough. {link.Because}"),
                .. sized.Links.Where(link => link.Part is not null && link.Enough == Enough.NotKnown).GroupBy(link => link.Part)
                    .Select(links => $"Fuel for {run.Terms.Build.Goal?.Power}: whether {links.Key} is enough as {string.Join(" and ", links.Select(link => link.Link))} "
                        + "is not known; Fuel supply tells what to measure."),
            ]
            : [];

        Part? At(string role) => family.Positions.FirstOrDefault(position => position.Role == role) is { } position
            && plan.TryGetValue(position.Code, out var candidate) && candidate is { IsNothing: false, Parts: [var part] } ? part : null;

        Part[] PartsOf(string role) => family.Positions.FirstOrDefault(position => position.Role == role) is { } position
            ? [.. family.PartsOfKind(position.Kind)]
            : [];
    }
}
