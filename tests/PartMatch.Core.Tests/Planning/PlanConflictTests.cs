using CsCheck;
using PartMatch.Core.Planning;
using Xunit;

namespace PartMatch.Core.Tests.Planning;

public sealed class PlanConflictTests
{
    private static readonly int[] _grounds = [.. Enumerable.Range(0, AnyPlan.Grounds)];

    [Fact]
    public void A_conflict_is_one_and_none_without_any_of_its_members() => AnyPlan.Of().Sample(
        problem =>
        {
            var conflict = Solving.Conflict(problem, _grounds);

            bool CanHold(IEnumerable<int> grounds) => EveryPlan.Totals(problem, _grounds.Except(grounds).ToHashSet()).Count > 0;
            Assert.Equal(conflict is null, CanHold(_grounds));
            if (conflict is not null)
            {
                Assert.Equal(PlanConflictStatus.Minimal, conflict.Status);
                Assert.False(CanHold(conflict.Grounds));
                Assert.All(conflict.Grounds, member => Assert.True(CanHold(conflict.Grounds.Where(other => other != member))));
            }
        },
        iter: 120,
        threads: 1);
}
