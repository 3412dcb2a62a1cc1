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
        return new ConflictSearch(run, new PlanAsked(build.Code, version, objective, run.Terms.StartOn), effort, null, stop).Find(withFurther: true);
    }
}
