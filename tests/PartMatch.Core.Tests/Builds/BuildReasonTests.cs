using System.Text.Json;
using CsCheck;
using PartMatch.Core.Builds;
using PartMatch.Core.Planning;
using PartMatch.Core.Tests.Catalogue;
using Xunit;
using static PartMatch.Core.Tests.Builds.BuildPlannerTests;

namespace PartMatch.Core.Tests.Builds;

/// <summary>Why, why not, what conflicts and what each day costs, held against every way to build.</summary>
public sealed class BuildReasonTests
{
    private const int Draws = 60;

    [Fact]
    public void A_conflict_is_one_and_without_any_one_wish_of_it_there_is_a_plan() => AnyBuild.Of(wishes: true).Sample(
        told =>
        {
            var conflict = told.Conflict();
            Assert.Equal(new EveryBuild(told).All().Count == 0, conflict.Status == PlanStatus.Infeasible);
            if (conflict.Status != PlanStatus.Infeasible)
            {
                return;
            }

            var members = conflict.Members.Select(member => member.Wish).ToHashSet();
            var others = Wishes(told).Where(wish => !members.Contains(wish)).ToHashSet();
            Assert.Empty(new EveryBuild(told, others).All());
            Assert.All(members.Where(member => !member.StartsWith("obtainable:", StringComparison.Ordinal)), member => Assert.NotEmpty(new EveryBuild(told, others.Append(member).ToHashSet()).All()));
            Assert.NotEmpty(members);
        },
        iter: Draws, threads: 1);

    // All else as asked: a member that does not mend the whole by itself tells no cost.
    [Fact]
    public void A_member_tells_what_the_best_plan_costs_without_it() => AnyBuild.Of(wishes: true).Sample(
        told => Assert.All(told.Conflict().Members.Where(member => !member.Wish.StartsWith("obtainable:", StringComparison.Ordinal) && member.Wish != "needed-by"), member =>
        {
            var all = new EveryBuild(told, new HashSet<string> { member.Wish }).All();
            Assert.Equal(all.Count == 0 ? null : all.Min(one => one.Cost), member.CostThen is { } cost ? Cents(cost) : (long?)null);
        }),
        iter: Draws, threads: 1);

    // A smallest set that cannot hold together: another one may keep every plan away when one member of it is given up.
    [Fact]
    public void Whether_it_is_enough_to_give_up_one_member_is_told() => AnyBuild.Of(wishes: true).Sample(
        told =>
        {
            var conflict = told.Conflict();
            if (conflict.Further.Count > 0 || conflict.Members.Count == 0)
            {
                return;
            }

            var wishes = conflict.Members.Where(member => !member.Wish.StartsWith("obtainable:", StringComparison.Ordinal))
                .Select(member => (Member: member, IsEnough: new EveryBuild(told, new HashSet<string> { member.Wish }).All().Count > 0)).ToList();
            Assert.All(wishes, wish => Assert.Equal(!wish.IsEnough, wish.Member.Mend.Contains("that alone is not enough", StringComparison.Ordinal)));
            if (wishes.Exists(wish => !wish.IsEnough))
            {
                Assert.DoesNotContain("there is a plan", conflict.HeadlineText, StringComparison.Ordinal);
            }
            else if (wishes.Count == conflict.Members.Count)
            {
                Assert.Matches("without any one of them there is a plan|without it there is one", conflict.HeadlineText);
            }
        },
        iter: Draws, threads: 1);

    // Each time with nothing known before.
    [Fact]
    public void A_conflict_is_the_same_however_many_searches_go_on_at_once() => AnyBuild.Of(wishes: true).Sample(
        told =>
        {
            string Asked(int atOnce) => JsonSerializer.Serialize(BuildConflicts.Find(
                told.Facts(), told.Build, 1, PlanObjective.Cheapest, TestBuild.Today, PlanEffort.Ordinary with { AtOnce = atOnce }, new FitMemory()));
            Assert.Equal(Asked(1), Asked(4));
        },
        iter: Draws, threads: 1);

    [Fact]
    public void Why_not_costs_what_the_best_way_to_build_with_it_costs_more() => Gen.Select(Gen.OneOf(AnyBuild.Of(), AnyBuild.Bought), Gen.Int[0, 2], Gen.Int[-1, 3]).Sample(
        (told, at, index) =>
        {
            var (position, part) = (AnyFamily.Positions[at], index < 0 ? "none" : TestFamily.Id(AnyBuild.Number(at, index)));
            var answer = told.WhyNot(position, part);
            var all = new EveryBuild(told).All();
            var with = all.Where(one => one.Parts[position].Part == part).ToList();

            Assert.Equal(with.Count == 0 ? null : with.Min(one => one.Cost) - all.Min(one => one.Cost), answer.CostMore is { } more ? Cents(more) : (long?)null);
            Assert.Equal(with.Count > 0, answer.Plan?.Lines.Any(line => line.Position == position && (line.Part ?? "none") == part) == true);
            Assert.NotEmpty(answer.HeadlineText);
            Assert.True(all.Count == 0 || answer.Conflict is not { } conflict || conflict.Members.Any(member => member.Wish == $"force:{position}"));
        },
        iter: Draws, threads: 1);

    [Fact]
    public void The_reasons_of_every_line_end_in_something_that_was_asked_or_is_known() => Gen.OneOf(AnyBuild.Of(wishes: true), AnyBuild.Bought).Sample(
        told => Assert.All(AnyFamily.Positions.Select(position => (Position: position, Why: told.Why(position))).Where(one => one.Why is not null), one =>
        {
            var steps = one.Why!.Steps;
            Assert.Equal(one.Position, steps[0].Position);
            Assert.All(steps.SelectMany(step => step.On), on => Assert.Contains(steps, step => step.Position == on));
            Assert.Equal(steps.Count, steps.Distinct().Count());
            Assert.True(EndsInGround(steps, one.Position));
            Assert.All(one.Why.Alternatives, other => Assert.NotEmpty(other.WhyNot));
        }),
        iter: Draws, threads: 1);

    [Fact]
    public void The_frontier_holds_every_pair_of_cost_and_days_that_no_other_betters() => AnyBuild.Bought.Sample(
        told =>
        {
            var all = new EveryBuild(told).All();
            var best = all.Where(one => !all.Exists(other => other.Cost <= one.Cost && other.Days <= one.Days && (other.Cost < one.Cost || other.Days < one.Days)))
                .Select(one => (one.Days, one.Cost)).Distinct().Order().ToList();

            var frontier = told.Frontier();

            Assert.Equal(best, frontier.Points.Select(point => (point.Days, Cents(point.Cost))));
            Assert.Equal(all.Count == 0 ? PlanStatus.Infeasible : PlanStatus.ProvenOptimal, frontier.Status);
        },
        iter: Draws, threads: 1);

    // Every offer is one piece: dearer by more than the room, and another plan is the cheapest; dearer by the room, and the plan still is.
    [Fact]
    public void A_price_may_rise_by_its_room_and_no_further() => AnyBuild.Bought.Sample(
        told =>
        {
            var cheapest = new EveryBuild(told).All().Select(one => one.Cost).DefaultIfEmpty(0).Min();
            foreach (var swing in told.Frontier().Swings.Where(swing => swing.What == "price"))
            {
                var without = told with { Offers = [.. told.Offers.Where(offer => $"{offer.Book}/{offer.Code}" != swing.Subject)] };
                var all = new EveryBuild(without).All();
                Assert.Equal(all.Count == 0 ? null : all.Min(one => one.Cost) - cheapest, swing.Room is { } room ? Cents(room) : (long?)null);
            }
        },
        iter: Draws / 2, threads: 1);

    private static bool EndsInGround(IReadOnlyList<WhyStep> steps, string position)
    {
        var reached = new HashSet<string> { position };
        for (var count = 0; count != reached.Count;)
        {
            count = reached.Count;
            reached.UnionWith(steps.Where(step => reached.Contains(step.Position)).SelectMany(step => step.On));
        }

        return steps.Any(step => reached.Contains(step.Position) && step.On.Count == 0);
    }

    internal static IEnumerable<string> Wishes(TestBuild told) =>
    [
        "budget", "needed-by", .. told.Build.RefusedSellers.Select(seller => $"seller:{seller}"),
        .. AnyFamily.Positions.SelectMany(position => new[] { $"renew:{position}", $"keep:{position}" }),
        .. told.Build.Wishes.SelectMany(wish => wish.Refuse.Select(part => $"refuse:{wish.Position}:{part}")),
    ];
}
