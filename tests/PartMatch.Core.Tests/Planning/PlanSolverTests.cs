using CsCheck;
using PartMatch.Core.Planning;
using Xunit;

namespace PartMatch.Core.Tests.Planning;

/// <summary>The solver beside trying everything, on problems drawn at random. A failure prints the seed to draw it again.</summary>
public sealed class PlanSolverTests
{
    private const int Draws = 60;

    /// <param name="narrowsFrom">0: the linear relaxation narrows even the smallest model.</param>
    [Theory]
    [InlineData(PlanObjective.Cheapest, 400)]
    [InlineData(PlanObjective.Soonest, 400)]
    [InlineData(PlanObjective.Surest, 400)]
    [InlineData(PlanObjective.MostKept, 400)]
    [InlineData(PlanObjective.Cheapest, 0)]
    [InlineData(PlanObjective.Soonest, 0)]
    [InlineData(PlanObjective.Surest, 0)]
    [InlineData(PlanObjective.MostKept, 0)]
    public void Any_problem_is_solved_as_by_trying_everything(PlanObjective objective, int narrowsFrom) => AnyPlan.Of().Sample(
        problem =>
        {
            var solution = Solving.Best(problem, objective, PlanEffort.Ordinary with { NarrowsFrom = narrowsFrom });
            var all = EveryPlan.Totals(problem);
            if (all.Count == 0)
            {
                Assert.Equal(PlanStatus.Infeasible, solution.Status);
                return;
            }

            Assert.Equal(PlanStatus.ProvenOptimal, solution.Status);
            var best = all.MinBy(totals => InOrder(objective, totals));
            Assert.Equal(best, (solution.Totals.Cost, solution.Totals.Days, solution.Totals.Risk, solution.Totals.Kept));
            Assert.Equal(objective switch
            {
                PlanObjective.Cheapest => best.Cost,
                PlanObjective.Soonest => best.Days,
                PlanObjective.Surest => best.Risk,
                _ => best.Kept,
            }, solution.Bound);
            AssertHolds(problem, solution);
        },
        iter: Draws,
        threads: 1);

    /// <summary>What is decided comes to what is told.</summary>
    internal static void AssertHolds(PlanProblem problem, PlanSolution solution)
    {
        var chosen = solution.Choices.Select(choice => choice ?? -1).ToArray();
        var (bought, done) = (solution.Packs.ToArray(), solution.Jobs.Select(start => start is null ? 0 : 1).ToArray());
        Assert.True(EveryPlan.Suffices(problem, chosen, bought));
        Assert.Equal(EveryPlan.Cost(problem, chosen, bought, done), solution.Totals.Cost);
        Assert.Equal(EveryPlan.Sending(problem, chosen, bought, done), solution.Totals.Sending);
        Assert.Equal(EveryPlan.Risk(problem, chosen, bought, [.. solution.Doubts.Select(taken => taken ? 1 : 0)]), solution.Totals.Risk);
        Assert.Equal(EveryPlan.LeastDays(problem, chosen, bought, done, solution.Jobs), solution.Totals.Days);
    }

    private static (long, long, long, long) InOrder(PlanObjective objective, (long Cost, int Days, long Risk, int Kept) totals) => objective switch
    {
        PlanObjective.Cheapest => (totals.Cost, totals.Days, totals.Risk, -totals.Kept),
        PlanObjective.Soonest => (totals.Days, totals.Cost, totals.Risk, -totals.Kept),
        PlanObjective.Surest => (totals.Risk, totals.Cost, totals.Days, -totals.Kept),
        _ => (-totals.Kept, totals.Cost, totals.Days, totals.Risk),
    };
}
