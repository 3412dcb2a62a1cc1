using PartMatch.Core.Planning;

namespace PartMatch.Core.Builds;

/// <summary>Why is there no plan? What cannot hold together, and what would mend it.</summary>
public static class BuildConflicts
{
    /// <inheritdoc cref="BuildPlanner.Plan"/>
    public static BuildConflict Find(
        BuildFacts facts, Build build, int version, PlanObjective objective, DateOnly today, PlanEffort effort, FitMemory memory, CancellationToken stop = default)
    {
        var run = new PlanRun(facts, build, today, memory, refusedSellers: []);
        var asked = new PlanAsked(build.Code, version, objective, run.Terms.StartOn);

        // With offers of refused sellers among the grades of a part, the search below asks for more than a plan does.
        var plan = memory.Plans.Solve(
            facts, build, objective, today, effort, () => BuildPlanner.SolveWithWishes(new PlanRun(facts, build, today, memory), objective, effort, stop: stop));
        var isNone = plan is { IsFoundOut: true, Solution.Status: PlanStatus.Infeasible } && build.RefusedSellers.Count == 0;
        return plan.Solution.Choices.Count > 0
            ? ConflictSearch.Nothing(asked)
            : new ConflictSearch(run, asked, effort, null, isNone, stop).Find(withFurther: true) with { NotStated = NotStated.Of(run.Screen, build.Currency) };
    }
}
