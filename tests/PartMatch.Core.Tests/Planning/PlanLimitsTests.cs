using CsCheck;
using PartMatch.Core.Planning;
using Xunit;

namespace PartMatch.Core.Tests.Planning;

/// <summary>The ends of a search, and the ends of the numbers.</summary>
public sealed class PlanLimitsTests
{
    [Fact]
    public void The_same_problem_gives_the_same_plan()
    {
        AnyPlan.Of().Sample(problem => Assert.Equal(Told(Solving.Best(problem, PlanObjective.Surest)),
            Told(Solving.Best(problem, PlanObjective.Surest))), iter: 30, threads: 1);

        static string Listed<T>(IEnumerable<T> all) => string.Join(' ', all);
        static string Told(PlanSolution solution) =>
            $"{Listed(solution.Choices)}; {Listed(solution.Packs)}; {Listed(solution.Jobs)}; {Listed(solution.Doubts)}; {solution.Totals}";
    }

    [Fact]
    public void One_offer_more_never_makes_it_dearer() => AnyPlan.Of().Sample(
        problem =>
        {
            var all = Solving.Best(problem);
            var fewer = Solving.Best(problem with { Offers = [.. problem.Offers.Skip(1)] });
            Assert.True(fewer.Status == PlanStatus.Infeasible || all.Totals.Cost <= fewer.Totals.Cost);
        },
        iter: 60,
        threads: 1);

    [Fact]
    public void A_stop_before_the_first_step_finds_nothing()
    {
        var stopped = new CancellationToken(canceled: true);
        var solution = PlanSolver.Solve(WarehouseInstances.Plan(12_500), PlanObjective.Cheapest, PlanEffort.Ordinary, stop: stopped);

        Assert.Equal(PlanStatus.StoppedByYou, solution.Status);
    }

    [Fact]
    public void No_effort_worth_the_name_runs_out_of_time()
    {
        var solution = Solving.Best(WarehouseInstances.Plan(12_500), effort: new PlanEffort(1e-9) { NarrowsFrom = int.MaxValue });

        Assert.Equal(PlanStatus.OutOfTime, solution.Status);
        Assert.Empty(solution.Choices);
    }

    [Fact]
    public void What_an_earlier_search_found_is_kept_when_the_next_one_is_stopped_at_once()
    {
        var search = new PlanSearch(WarehouseInstances.Plan(12_500), new HashSet<int>(), int.MaxValue);
        search.Find(work: 5, TestContext.Current.CancellationToken);
        var stopped = search.Minimise(search.Model.Cost, work: 5, null, new CancellationToken(canceled: true));

        Assert.Equal(ConstraintStatus.Found, stopped.Status);
        Assert.Equal(50, search.Read(PlanStatus.StoppedByYou, stopped.Bound).Choices.Count(choice => choice is not null));
        Assert.InRange(stopped.Bound, 0, search.Value(search.Model.Cost));
    }

    // Told from the solver's own thread: what escaped from there would end the process.
    [Fact]
    public void A_listener_that_fails_every_time_is_heard_once()
    {
        var count = 0;

        var failure = Assert.Throws<InvalidOperationException>(() => PlanSolver.Solve(
            WarehouseInstances.Plan(25_000), PlanObjective.Cheapest, PlanEffort.Ordinary, _ => throw new InvalidOperationException($"failure {++count}"),
            TestContext.Current.CancellationToken));

        Assert.Equal(("failure 1", 1), (failure.Message, count));
    }

    [Fact]
    public void A_stop_while_it_is_told_keeps_the_best_found()
    {
        using var stopping = new CancellationTokenSource();
        var told = new List<PlanProgress>();
        var solution = PlanSolver.Solve(
            WarehouseInstances.Plan(12_500), PlanObjective.Cheapest, PlanEffort.Ordinary with { NarrowsFrom = int.MaxValue }, Hear, stopping.Token);

        Assert.Equal(PlanStatus.StoppedByYou, solution.Status);
        Assert.Equal(50, solution.Choices.Count);
        Assert.Equal(told.Last(progress => progress.Best is not null).Best, solution.Totals.Cost);
        Assert.InRange(solution.Bound, 1, 9_777_994_000);
        Assert.InRange(solution.Totals.Cost, 9_777_994_000, long.MaxValue);

        void Hear(PlanProgress progress)
        {
            told.Add(progress);
            if (progress.Best is not null)
            {
                stopping.Cancel();
            }
        }
    }

    [Fact]
    public void Progress_ends_at_the_answer_and_never_worsens()
    {
        var told = new List<PlanProgress>();
        var solution = PlanSolver.Solve(
            WarehouseInstances.Plan(25_000), PlanObjective.Cheapest, PlanEffort.Ordinary, told.Add, TestContext.Current.CancellationToken);

        Assert.Equal(solution.Totals.Cost, told[^1].Best);
        Assert.Equal(told.Select(progress => progress.Best ?? long.MaxValue).OrderDescending(), told.Select(progress => progress.Best ?? long.MaxValue));
        Assert.Equal(told.Select(progress => progress.Bound).Order(), told.Select(progress => progress.Bound));
        Assert.All(told, progress => Assert.True(progress.Bound <= solution.Totals.Cost));
    }

    [Fact]
    public void A_listener_that_fails_is_heard_of()
    {
        var failure = Assert.Throws<InvalidOperationException>(() => PlanSolver.Solve(
            WarehouseInstances.Plan(25_000), PlanObjective.Cheapest, PlanEffort.Ordinary, _ => throw new InvalidOperationException("no ear"),
            TestContext.Current.CancellationToken));

        Assert.Equal("no ear", failure.Message);
    }

    [Fact]
    public void Money_up_to_the_limit_is_added_exactly_and_beyond_it_is_refused()
    {
        PlanProblem Costing(long cost) => new([new PlanPlace("block", [new PlanChoice("gold", cost, [])])], [], [], [], [], [], []);

        Assert.Equal(PlanProblemCheck.Most, Solving.Best(Costing(PlanProblemCheck.Most)).Totals.Cost);
        Assert.Equal(-PlanProblemCheck.Most, Solving.Best(Costing(-PlanProblemCheck.Most)).Totals.Cost);
        var refused = Assert.Throws<ArgumentException>(() => Solving.Best(Costing(PlanProblemCheck.Most + 1)));
        Assert.StartsWith("found 1000000000000001 as all money of the problem together, expected at most 1000000000000000",
            refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_stock_without_end_is_no_large_number()
    {
        var problem = new PlanProblem(
            [new PlanPlace("bolts", [new PlanChoice("new", 0, [new PlanPieces(0, 10)])])],
            [new PlanProduct("bolt")],
            [new PlanOffer("bolts", 0, 7, int.MaxValue, [new PlanPieces(0, 4)], GoodsValue: 7)],
            [new PlanSeller("seller", 100, 0, 30)],
            [],
            [],
            []);

        // Three packs hold twelve bolts: 21 and the parcel; with five packs the goods are 35, and sending is free.
        Assert.Equal((35, 5), (Solving.Best(problem).Totals.Cost, Solving.Best(problem).Packs[0]));
    }

    [Theory]
    [MemberData(nameof(Faults))]
    public void What_cannot_be_reckoned_with_is_refused_with_its_place(PlanProblem problem, string message)
    {
        var refused = Assert.Throws<ArgumentException>(() => Solving.Best(problem));

        Assert.Equal(message, refused.Message);
    }

    public static TheoryData<PlanProblem, string> Faults()
    {
        var nothing = new PlanProblem([], [], [], [], [], [], []);
        PlanJob Job(params int[] after) => new("hone", 0, 1, [], [], after);
        return new TheoryData<PlanProblem, string>
        {
            { nothing with { Products = [new PlanProduct("bolt", -1)] }, "found -1 as what is in hand of \"bolt\", expected 0 or more" },
            { nothing with { Sellers = [new PlanSeller("shop", -5)] }, "found -5 as the parcel of seller \"shop\", expected 0 or more" },
            { nothing with { Offers = [new PlanOffer("bolts", 0, 7, 1, [])] }, "found 0 as seller of offer \"bolts\", expected an index below 0" },
            { nothing with { Rules = [new PlanRule([new JobDone(2)], [])], Jobs = [Job()] }, "found 2 as job of a rule, expected an index below 1" },
            { nothing with { Jobs = [Job(1), Job(0)] },
                "found jobs that wait for each other, expected an order in which they can be done: look at their AfterJobs" },
        };
    }
}
