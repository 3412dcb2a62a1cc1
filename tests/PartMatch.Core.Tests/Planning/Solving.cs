using PartMatch.Core.Planning;
using Xunit;

namespace PartMatch.Core.Tests.Planning;

/// <summary>The solver as a test asks it.</summary>
internal static class Solving
{
    public static PlanSolution Best(PlanProblem problem, PlanObjective objective = PlanObjective.Cheapest, PlanEffort? effort = null) =>
        PlanSolver.Solve(problem, objective, effort ?? PlanEffort.Ordinary, stop: TestContext.Current.CancellationToken);

    public static PlanSolution Without(PlanProblem problem, params int[] dropped) => PlanSolver.SolveWithout(
        problem, dropped.ToHashSet(), PlanObjective.Cheapest, PlanEffort.Ordinary, stop: TestContext.Current.CancellationToken);

    public static PlanConflict? Conflict(PlanProblem problem, params int[] grounds) =>
        PlanConflict.Find(problem, grounds, PlanEffort.Ordinary, TestContext.Current.CancellationToken);

    public static PlanFrontier Frontier(PlanProblem problem) => PlanFrontier.ByDays(problem, PlanEffort.Ordinary, stop: TestContext.Current.CancellationToken);
}
