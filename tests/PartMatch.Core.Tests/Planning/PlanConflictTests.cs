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

    // Money and time hold here too, unlike in most questions of a build: they are always told.
    [Fact]
    public void What_is_told_to_keep_every_plan_away_does() => Gen.Select(AnyPlan.Of(), Gen.Int[0, (1 << AnyPlan.Grounds) - 1]).Sample(
        (problem, given) =>
        {
            HashSet<int> dropped = [.. _grounds.Where(ground => (given & (1 << ground)) != 0)];
            var why = PlanSolver.WhyNone(problem, dropped, PlanEffort.Ordinary, TestContext.Current.CancellationToken);

            Assert.Equal(EveryPlan.Totals(problem, dropped).Count > 0, why is null);
            if (why is not null)
            {
                Assert.Empty(why.Intersect(dropped));
                Assert.Empty(EveryPlan.Totals(problem, _grounds.Except(why).ToHashSet()));
            }
        },
        iter: 200,
        threads: 1);

    // A plan found with everything given up: where only what it breaks is given up, it is one of all plans still; without one thing of that, it is none. The
    // last two grounds are limits on money and time, which a plan with fewer packs of the same offers may keep.
    [Fact]
    public void A_plan_holds_where_what_it_breaks_is_given_up() => AnyPlan.Of().Sample(
        problem =>
        {
            var solution = PlanSolver.SolveWithout(problem, _grounds.ToHashSet(), PlanObjective.Soonest, PlanEffort.Ordinary);
            if (solution.Choices.Count == 0)
            {
                return;
            }

            var broken = PlanBroken.Of(problem, solution);
            bool IsOne(IEnumerable<int> given) => EveryPlan.Totals(Only(problem, solution), given.ToHashSet()).Count > 0;
            Assert.True(IsOne(broken));
            Assert.All(broken.Where(ground => ground < AnyPlan.Grounds - 2), ground => Assert.False(IsOne(_grounds.Where(other => other != ground))));
        },
        iter: 200,
        threads: 1);

    /// <summary>The problem with nothing to decide but the days.</summary>
    private static PlanProblem Only(PlanProblem problem, PlanSolution solution)
    {
        PlanFact[] never = [.. problem.Places.SelectMany((place, index) => place.Choices.Select((_, choice) => (Index: index, Choice: choice)))
            .Where(one => solution.Choices[one.Index] != one.Choice).Select(one => new ChoiceMade(one.Index, one.Choice))];
        PlanRule Not(PlanFact fact) => new([fact], []);
        PlanRule Is(PlanFact fact) => new([], [fact]);
        return problem with
        {
            Rules =
            [
                .. problem.Rules, .. never.Select(Not),
                .. solution.Choices.Index().Where(made => made.Item is not null).Select(made => Is(new ChoiceMade(made.Index, made.Item!.Value))), // just asked
                .. solution.Jobs.Select((start, job) => start is null ? Not(new JobDone(job)) : Is(new JobDone(job))),
                .. solution.Doubts.Select((taken, doubt) => taken ? Is(new DoubtTaken(doubt)) : Not(new DoubtTaken(doubt))),
            ],
            Offers = [.. problem.Offers.Select((offer, index) => offer with { Packs = solution.Packs[index] })],
        };
    }
}
