using CsCheck;
using Xunit;

namespace PartMatch.Core.Tests.Planning;

public sealed class PlanFrontierTests
{
    [Fact]
    public void The_frontier_is_every_pair_that_no_plan_betters() => AnyPlan.Of().Sample(
        problem =>
        {
            var frontier = Solving.Frontier(problem);

            var all = EveryPlan.Totals(problem);
            var wanted = all.Select(totals => (totals.Cost, totals.Days)).Distinct()
                .Where(point => !all.Any(other => (other.Cost, other.Days) != point && other.Cost <= point.Cost && other.Days <= point.Days))
                .Order();
            Assert.True(frontier.IsComplete);
            Assert.Equal(wanted, frontier.Points.Select(point => (point.Totals.Cost, point.Totals.Days)));
            Assert.All(frontier.Points, point => PlanSolverTests.AssertHolds(problem, point));
        },
        iter: 60,
        threads: 1);
}
