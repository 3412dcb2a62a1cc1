using PartMatch.Core.Planning;

namespace PartMatch.Core.Builds;

/// <summary>What it costs to keep of the donor what was to be kept "if possible": such a wish outranks the objective, so that it has to be told.</summary>
/// <param name="Kept">Wishes that the plan holds.</param>
/// <param name="Without">The best plan where none of them counts.</param>
internal sealed record KeptWishes(IReadOnlyList<BuildGround> Kept, SolvedPlan Without)
{
    /// <summary>Null where there is no such wish, it costs nothing, or that was not found out.</summary>
    public static KeptWishes? Reckon(PlanRun run, SolvedPlan solved, PlanObjective objective, PlanEffort effort, CancellationToken stop)
    {
        var soft = BuildPlanner.SoftWishes(run.Terms, solved.Written);
        BuildGround[] kept = [.. soft.Select(ground => solved.Written.Grounds[ground]).Except(solved.GivenUp)];
        if (kept.Length == 0 || solved.Solution.Choices.Count == 0 || stop.IsCancellationRequested)
        {
            return null;
        }

        var without = run.Solve(objective, effort with { Ties = PlanTies.CostAndDays }, soft.ToHashSet(), stop: stop);
        var (held, free) = (solved.Solution.Totals, without.Solution.Totals);
        return without.Solution.Choices.Count > 0 && (held.Cost, held.Days) != (free.Cost, free.Days) ? new KeptWishes(kept, without) : null;
    }

    public string Say(BuildTerms terms, SolvedPlan solved) =>
        $"Kept because you wish it wherever that can be: {string.Join(" ", Kept.Select(wish => wish.Text))} The plan without that wish {LineChanges.Difference(terms, solved, Without)}.";
}
