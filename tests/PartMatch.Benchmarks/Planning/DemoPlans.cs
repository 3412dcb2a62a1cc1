using System.Diagnostics;
using System.Globalization;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Mvc.Testing;
using Microsoft.Extensions.DependencyInjection;
using PartMatch.Core.Builds;
using PartMatch.Core.Planning;
using PartMatch.Storage.Builds;
using PartMatch.Web.Builds;
using PartMatch.Web.LookAlikes;

namespace PartMatch.Benchmarks.Planning;

/// <summary>
/// The demo's builds inside one process, step by step: <c>plans base.db</c>, a base that holds the demo (a new file is filled with it). Warm: everything was asked once before.
/// </summary>
internal static class DemoPlans
{
    private const int Rounds = 15;
    private static readonly DateOnly _today = new(2026, 11, 26);

    public static void Show(string path)
    {
        using var server = new DemoServer(path);
        var source = server.Services.GetRequiredService<BuildSource>();
        var store = server.Services.GetRequiredService<BuildStore>();
        foreach (var code in new[] { "hill-climb", "cart", "sidecar" })
        {
            var build = store.Find(code)!.Document!;
            var (facts, memory) = source.Find(build.Family)!;
            Show(facts, build, memory);
        }

        var hillClimb = store.Find("hill-climb")!.Document!;
        var (known, remembered) = source.Find(hillClimb.Family)!;
        foreach (var budget in new[] { "6000.00", "3000.00" })
        {
            Time(
                $"hill-climb with a budget of {budget} EUR: conflict",
                () => BuildConflicts.Find(
                    known, hillClimb with { Budget = budget }, 1, PlanObjective.Cheapest, _today, PlanEffort.Ordinary, remembered));
        }
    }

    private static void Show(BuildFacts facts, Build build, FitMemory memory)
    {
        Say($"{build.Code}");
        var effort = PlanEffort.Ordinary;
        foreach (var objective in Enum.GetValues<PlanObjective>())
        {
            var run = new PlanRun(facts, build, _today, memory);
            var solved = BuildPlanner.SolveWithWishes(run, objective, effort);
            Time($"  {objective}: from the stored build to the plan, not remembered", () => BuildPlanner.SolveWithWishes(new PlanRun(facts, build, _today, memory), objective, effort));
            Time("    of that the problem", () => new PlanRun(facts, build, _today, memory).Write());
            var givenUp = solved.Written.Grounds.Index().Where(ground => solved.GivenUp.Contains(ground.Item)).Select(ground => ground.Index).ToHashSet();
            Time($"    the solving, all ties, {givenUp.Count} wishes given up", () => PlanSolver.SolveWithout(solved.Written.Problem, givenUp, objective, effort));
            Time(
                "    the solving, the first measure alone",
                () => PlanSolver.SolveWithout(solved.Written.Problem, givenUp, objective, effort with { Ties = PlanTies.None }));
            if (solved.Lines.Count > 0)
            {
                Time("    judging the lines", () => run.Judge(solved.Written, solved.Solution));
            }

            Time("  the whole answer, remembered", () => BuildPlanner.Plan(facts, build, 1, objective, _today, effort, memory));
        }

        Time("  trade-off", () => BuildFrontiers.ByDays(facts, build, 1, _today, effort, memory), rounds: 3);
        Time(
            "    of that what would change the plan",
            () => PlanSwings.Of(new BuildQuestion(facts, build, 1, PlanObjective.Cheapest, _today, effort, memory, CancellationToken.None)), rounds: 3);
        Time("  conflict", () => BuildConflicts.Find(facts, build, 1, PlanObjective.Cheapest, _today, effort, memory));
        foreach (var (position, part) in new[] { ("piston", "vardmoor:VF-8500-20"), ("coolant-pump", "pellworth:P-26-1147-C") })
        {
            if (facts.Family.FindPosition(position) is not null)
            {
                Time($"  why not {part}", () => BuildWhyNots.Ask(facts, build, 1, PlanObjective.Cheapest, _today, effort, memory, position, part));
            }
        }
    }

    private static void Time<T>(string what, Func<T> work, int rounds = Rounds)
    {
        work();
        var times = new List<double>();
        for (var round = 0; round < rounds; round++)
        {
            var watch = Stopwatch.StartNew();
            work();
            times.Add(watch.Elapsed.TotalMilliseconds);
        }

        times.Sort();
        Say($"{what}: {times[rounds / 2]:0.0} ms ({times[0]:0.0} to {times[^1]:0.0})");
    }

    private static void Say(FormattableString line) => Console.WriteLine(line.ToString(CultureInfo.InvariantCulture));

    // Any public type of the server program tells the factory which program it is.
    private sealed class DemoServer(string path) : WebApplicationFactory<NearRequest>
    {
        protected override void ConfigureWebHost(IWebHostBuilder builder)
        {
            builder.UseContentRoot(AppContext.BaseDirectory); // no page is asked for
            builder.UseSetting("PartMatch:Database", Path.GetFullPath(path));
            builder.UseSetting("Logging:LogLevel:Default", "Warning");
        }
    }
}
