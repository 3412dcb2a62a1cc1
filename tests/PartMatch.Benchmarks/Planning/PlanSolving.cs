using BenchmarkDotNet.Attributes;
using BenchmarkDotNet.Engines;
using PartMatch.Core.Planning;

namespace PartMatch.Benchmarks.Planning;

[SimpleJob(RunStrategy.Monitoring, warmupCount: 1, iterationCount: 5)]
public class PlanSolving
{
    private readonly PlanProblem _hundred = PlanCatalogue.Draw(100, 8, 40, 4);
    private readonly PlanProblem _build = PlanCatalogue.Draw(40, 6, 12, 3);
    private readonly PlanProblem _warehouses = Warehouses.Draw(50, 50);

    /// <summary>The size of one engine.</summary>
    [Benchmark]
    public PlanSolution Forty_places_6_choices_12_sellers_3_offers() => PlanSolver.Solve(_build, PlanObjective.Cheapest, PlanEffort.Ordinary);

    [Benchmark]
    public PlanSolution Hundred_places_8_choices_40_sellers_4_offers() => PlanSolver.Solve(_hundred, PlanObjective.Cheapest, PlanEffort.Ordinary);

    /// <summary>As the peer: what it costs, no ties.</summary>
    [Benchmark]
    public PlanSolution Hundred_places_cost_alone() => PlanSolver.Solve(_hundred, PlanObjective.Cheapest, PlanEffort.Ordinary with { Ties = PlanTies.None });

    [Benchmark]
    public PlanSolution Hundred_places_soonest() => PlanSolver.Solve(_hundred, PlanObjective.Soonest, PlanEffort.Ordinary);

    [Benchmark]
    public PlanSolution Hundred_places_surest() => PlanSolver.Solve(_hundred, PlanObjective.Surest, PlanEffort.Ordinary);

    [Benchmark]
    public long Hundred_places_plainly() => PlainSearch.Solve(_hundred);

    [Benchmark]
    public long Hundred_places_each_by_itself() => PlainSearch.EachByItself(_hundred);

    [Benchmark]
    public PlanSolution Warehouses_50_by_50() => PlanSolver.Solve(_warehouses, PlanObjective.Cheapest, PlanEffort.Ordinary);

    [Benchmark]
    public long Warehouses_50_by_50_plainly() => PlainSearch.Solve(_warehouses);
}

/// <summary>Of its own, because its peer takes minutes.</summary>
[SimpleJob(RunStrategy.Monitoring, warmupCount: 0, iterationCount: 2)]
public class LargePlanSolving
{
    private readonly PlanProblem _large = PlanCatalogue.Draw(300, 12, 100, 6);
    private readonly PlanProblem _open = PlanCatalogue.DrawOpen(300, 12, 100, 6);

    [Benchmark]
    public PlanSolution Three_hundred_places_12_choices_100_sellers_6_offers() => PlanSolver.Solve(_large, PlanObjective.Cheapest, PlanEffort.Ordinary);

    /// <summary>Nothing but prices and parcels, with all ties.</summary>
    [Benchmark]
    public PlanSolution Three_hundred_places_prices_and_parcels_alone() => PlanSolver.Solve(_open, PlanObjective.Cheapest, PlanEffort.Ordinary);

    [Benchmark]
    public long Three_hundred_places_prices_and_parcels_alone_plainly() => PlainSearch.Solve(_open);

    /// <summary>As the peer: what it costs, no ties.</summary>
    [Benchmark]
    public PlanSolution Three_hundred_places_cost_alone() => PlanSolver.Solve(_large, PlanObjective.Cheapest, PlanEffort.Ordinary with { Ties = PlanTies.None });

    [Benchmark]
    public long Three_hundred_places_plainly() => PlainSearch.Solve(_large);

    [Benchmark]
    public long Three_hundred_places_each_by_itself() => PlainSearch.EachByItself(_large);
}
