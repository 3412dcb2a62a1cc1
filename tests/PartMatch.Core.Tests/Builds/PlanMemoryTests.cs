using PartMatch.Core.Builds;
using PartMatch.Core.Orders;
using PartMatch.Core.Planning;
using Xunit;
using static PartMatch.Core.Tests.Catalogue.TestFamily;

namespace PartMatch.Core.Tests.Builds;

/// <summary>A plan is remembered for the very same question, and for no other.</summary>
public sealed class PlanMemoryTests
{
    private static readonly TestBuild _told = new TestBuild(
        WithWheels(wheel => wheel.CannotAlterRunning()).Wheel("WHEEL-1").Wheel("WHEEL-2").Fitted("lark", "wheel", "WHEEL-1").Fitted("swift", "wheel", "WHEEL-2"))
        .Seller("mill").Sold("WHEEL-2", 1000, days: 3);

    private static readonly BuildFacts _facts = _told.Facts();
    private readonly PlanMemory _memory = new();

    private SolvedPlan Asked(
        Func<SolvedPlan> solve, BuildFacts? facts = null, Build? build = null, PlanObjective objective = PlanObjective.Cheapest, int day = 0, PlanEffort? effort = null) =>
        _memory.Solve(facts ?? _facts, build ?? _told.Build, objective, TestBuild.Today.AddDays(day), effort ?? PlanEffort.Ordinary, solve);

    private static SolvedPlan Solve(PlanEffort effort) =>
        BuildPlanner.SolveWithWishes(new PlanRun(_facts, _told.Build, TestBuild.Today, new FitMemory()), PlanObjective.Cheapest, effort);

    [Fact]
    public void The_same_question_again_has_the_same_plan()
    {
        var first = Asked(() => Solve(PlanEffort.Ordinary));
        Assert.Same(first, Asked(() => throw new InvalidOperationException("it was known"), build: _told.Build with { Wishes = [] }));
        Assert.Same(first, Asked(() => throw new InvalidOperationException("it was known"), facts: _facts with { Bought = new BuildBought("", [], 0, 0, 0) }));
    }

    [Fact]
    public void Whatever_is_otherwise_is_solved_anew()
    {
        Asked(() => Solve(PlanEffort.Ordinary));
        var other = Solve(PlanEffort.Ordinary);
        Assert.Same(other, Asked(() => other, facts: _told.Sold("WHEEL-2", 900).Facts()));
        Assert.Same(other, Asked(() => other, facts: _facts with { Bought = new BuildBought("EUR", [], 1, 0, 0) }));
        Assert.Same(other, Asked(() => other, build: _told.Build with { Budget = "5.00" }));
        Assert.Same(other, Asked(() => other, build: _told.Wish(new Wish("wheel", null) { Refuse = [Id("WHEEL-2")] }).Build));
        Assert.Same(other, Asked(() => other, objective: PlanObjective.Soonest));
        Assert.Same(other, Asked(() => other, day: 1));
        Assert.Same(other, Asked(() => other, effort: PlanEffort.Thorough));
    }

    [Fact]
    public void What_was_not_thought_to_the_end_is_thought_again()
    {
        var hasty = Asked(() => Solve(new PlanEffort(1e-12)), effort: new PlanEffort(1));
        Assert.Equal(PlanStatus.OutOfTime, hasty.Solution.Status);
        Assert.Equal(PlanStatus.ProvenOptimal, Asked(() => Solve(PlanEffort.Ordinary), effort: new PlanEffort(1)).Solution.Status);
    }
}
