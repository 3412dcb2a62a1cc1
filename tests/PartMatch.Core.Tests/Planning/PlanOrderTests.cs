using PartMatch.Core.Planning;
using Xunit;

namespace PartMatch.Core.Tests.Planning;

/// <summary>What is ordered only after something is done, and what is bought of two that come to the same; each by hand.</summary>
public sealed class PlanOrderTests
{
    // The shaft comes on day 4 and is ground (2 days); then its shells are chosen and come 3 days later: 4 + 2 + 3.
    private static readonly PlanProblem _shells = new(
        [new PlanPlace("shaft", [new PlanChoice("new", 0, [new PlanPieces(0, 1)])]), new PlanPlace("shells", [new PlanChoice("graded", 0, [new PlanPieces(1, 1)])])],
        [new PlanProduct("shaft"), new PlanProduct("shells")],
        [new PlanOffer("shaft", 0, 100, 1, [new PlanPieces(0, 1)], ArrivesOn: 4), new PlanOffer("shells", 0, 30, 1, [new PlanPieces(1, 1)], ArrivesOn: 3)],
        [new PlanSeller("mill", 0)],
        [new PlanJob("grind", 20, 2, [0], [0], []), new PlanJob("choose", 0, 0, [0], [], [0]) { Orders = 1 }],
        [], [new PlanRule([], [new JobDone(0)]), new PlanRule([], [new JobDone(1)])]);

    [Theory]
    [InlineData(8, PlanStatus.Infeasible)]
    [InlineData(9, PlanStatus.ProvenOptimal)]
    public void What_is_chosen_by_measurement_comes_after_it_was_measured(int lastDay, PlanStatus status) =>
        Assert.Equal(status, Solving.Best(_shells with { LastDay = new PlanBound(lastDay, null) }).Status);

    [Fact]
    public void The_days_count_from_the_order()
    {
        var solution = Solving.Best(_shells);

        Assert.Equal((9, 6), (solution.Totals.Days, solution.Jobs[1]));
    }

    // 7 more for shells that are there on the next day; without an order to wait for they would be worth nothing.
    [Theory]
    [InlineData(PlanObjective.Cheapest, 150, 9)]
    [InlineData(PlanObjective.Soonest, 157, 7)]
    public void Shells_that_come_sooner_are_paid_for(PlanObjective objective, long cost, int days)
    {
        var problem = _shells with { Offers = [.. _shells.Offers, new PlanOffer("shells, sooner", 0, 37, 1, [new PlanPieces(1, 1)], ArrivesOn: 1)] };
        var solution = Solving.Best(problem, objective);

        Assert.Equal((cost, days), (solution.Totals.Cost, solution.Totals.Days));
    }

    [Theory]
    [InlineData(0, 1)]
    [InlineData(1, 0)]
    public void Of_two_that_come_to_the_same_the_lower_rank_is_bought(int first, int second)
    {
        PlanOffer Shell(int rank) => new("shell", 0, 30, 1, [new PlanPieces(0, 1)]) { Rank = rank };
        var solution = Solving.Best(new PlanProblem(
            [new PlanPlace("shell", [new PlanChoice("new", 0, [new PlanPieces(0, 1)])])], [new PlanProduct("shell")], [Shell(first), Shell(second)],
            [new PlanSeller("mill", 0)], [], [], []));

        Assert.Equal([1 - first, 1 - second], solution.Packs);
    }

    // One piece for either of two places, and either place will do: by their numbers alone the choices come to the same.
    [Fact]
    public void Of_two_places_that_come_to_the_same_the_first_is_changed()
    {
        PlanPlace Place(string name) => new(name, [new PlanChoice("nothing", 0, []), new PlanChoice("shell", 0, [new PlanPieces(0, 1)])]);
        var solution = Solving.Best(new PlanProblem(
            [Place("front"), Place("rear")], [new PlanProduct("shell")], [new PlanOffer("shell", 0, 30, 1, [new PlanPieces(0, 1)]) { Rank = 1 }],
            [new PlanSeller("mill", 0)], [], [], [new PlanRule([], [new ChoiceMade(0, 1), new ChoiceMade(1, 1)])]));

        Assert.Equal([1, 0], solution.Choices);
    }
}
