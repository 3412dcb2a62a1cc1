using PartMatch.Core.Planning;
using Xunit;

namespace PartMatch.Core.Tests.Planning;

/// <summary>Days and work, each by hand.</summary>
public sealed class PlanWorkTests
{
    /// <summary>
    /// Pistons come on day 7 (cheap) or on day 3 for 30 more. The block is honed to its pistons (4 days) and its deck is milled (2 days) at the same shop,
    /// one after the other.
    /// Cheapest: mill 0 to 2, hone 7 to 11. Soonest: mill 0 to 2, hone 3 to 7.
    /// </summary>
    [Theory]
    [InlineData(PlanObjective.Cheapest, 100 + 50 + 20, 11, 7)]
    [InlineData(PlanObjective.Soonest, 130 + 50 + 20, 7, 3)]
    public void Honing_starts_when_the_pistons_are_there(PlanObjective objective, long cost, int days, int honing)
    {
        var solution = Solving.Best(Workshop, objective);

        Assert.Equal((cost, days), (solution.Totals.Cost, solution.Totals.Days));
        Assert.Equal([honing, 0], solution.Jobs);
    }

    /// <summary>Nothing is waited for, but the block is at one job at a time: 4 + 2 days, and not 4.</summary>
    [Theory]
    [InlineData(5, PlanStatus.Infeasible)]
    [InlineData(6, PlanStatus.ProvenOptimal)]
    public void Work_on_one_place_does_not_overlap(int lastDay, PlanStatus status)
    {
        var problem = Workshop with { Products = [new PlanProduct("piston", 4)], LastDay = new PlanBound(lastDay, null) };

        Assert.Equal(status, Solving.Best(problem).Status);
    }

    [Fact]
    public void Work_after_other_work_waits_for_it()
    {
        // The deck is milled after honing now: hone 7 to 11, mill 11 to 13.
        var problem = Workshop with { Jobs = [Workshop.Jobs[0], Workshop.Jobs[1] with { AfterJobs = [0] }] };

        Assert.Equal([7, 11], Solving.Best(problem).Jobs);
    }

    [Theory]
    [InlineData(6, PlanStatus.Infeasible, 0)]
    [InlineData(7, PlanStatus.ProvenOptimal, 200)]
    [InlineData(10, PlanStatus.ProvenOptimal, 200)]
    [InlineData(11, PlanStatus.ProvenOptimal, 170)]
    public void A_last_day_is_paid_for(int lastDay, PlanStatus status, long cost)
    {
        var solution = Solving.Best(Workshop with { LastDay = new PlanBound(lastDay, null) });

        Assert.Equal((status, cost), (solution.Status, solution.Totals.Cost));
    }

    [Fact]
    public void The_frontier_names_both_pistons()
    {
        var frontier = Solving.Frontier(Workshop);

        Assert.True(frontier.IsComplete);
        Assert.Equal([(170L, 11), (200L, 7)], frontier.Points.Select(point => (point.Totals.Cost, point.Totals.Days)));
    }

    [Fact]
    public void Work_that_no_rule_wants_is_not_done_even_where_it_costs_nothing()
    {
        var problem = Workshop with { Rules = [], Jobs = [.. Workshop.Jobs.Select(job => job with { Cost = 0 })] };

        Assert.All(Solving.Best(problem).Jobs, start => Assert.Null(start));
    }

    [Fact]
    public void A_doubt_that_is_not_admitted_is_no_way_out()
    {
        // The pistons are wanted only with an oversize that nobody has measured.
        var rule = new PlanRule([new ChoiceMade(0, 0)], [new DoubtTaken(0)], Ground: 8);
        PlanProblem Trusting(bool isAdmitted) => Workshop with { Doubts = [new PlanDoubt("bore", 5, isAdmitted)], Rules = [.. Workshop.Rules, rule] };

        Assert.Equal(5, Solving.Best(Trusting(true)).Totals.Risk);
        Assert.Equal(PlanStatus.Infeasible, Solving.Best(Trusting(false)).Status);
        Assert.Equal([8], Solving.Conflict(Trusting(false), 7, 8)?.Grounds);
        Assert.Equal(170, Solving.Without(Trusting(false), 8).Totals.Cost);
    }

    [Fact]
    public void The_purse_and_the_last_day_are_a_conflict_that_names_both()
    {
        // By day 10 it costs 200; 199 are there. Either alone is no hindrance, and the rules of the shop are not given up.
        var problem = Workshop with { MostCost = new PlanBound(199, 1), LastDay = new PlanBound(10, 2) };

        var conflict = Solving.Conflict(problem, 2, 1);

        Assert.Equal(PlanConflictStatus.Minimal, conflict?.Status);
        Assert.Equal([2, 1], conflict?.Grounds);
        Assert.Null(Solving.Conflict(problem with { MostCost = new PlanBound(200, 1) }, 2, 1));
    }

    [Fact]
    public void A_place_whose_ground_is_dropped_may_stay_open()
    {
        var problem = Workshop with { Places = [Workshop.Places[0] with { Ground = 3 }, Workshop.Places[1]], MostCost = new PlanBound(100, 1) };

        Assert.Equal([3, 1], Solving.Conflict(problem, 3, 1)?.Grounds);
        var open = Solving.Without(problem, 3);
        Assert.Equal([null, 0], open.Choices);
        Assert.Equal(0, open.Totals.Cost);
    }

    private static PlanProblem Workshop { get; } = new(
        [new PlanPlace("pistons", [new PlanChoice("pistons", 0, [new PlanPieces(0, 4)])]),
         new PlanPlace("block", [new PlanChoice("the donor's", 0, [], Kept: 1)])],
        [new PlanProduct("piston")],
        [new PlanOffer("cheap", 0, 25, 4, [new PlanPieces(0, 1)], ArrivesOn: 7), new PlanOffer("soon", 1, 130, 1, [new PlanPieces(0, 4)], ArrivesOn: 3)],
        [new PlanSeller("slow", 0), new PlanSeller("quick", 0)],
        [new PlanJob("hone", 50, 4, [0, 1], [1], []), new PlanJob("mill", 20, 2, [1], [1], [])],
        [],
        [new PlanRule([new ChoiceMade(0, 0)], [new JobDone(0)]), new PlanRule([new ChoiceMade(0, 0)], [new JobDone(1)])]);
}
