using System.Diagnostics;
using System.Globalization;
using PartMatch.Core.Planning;

namespace PartMatch.Benchmarks.Planning;

/// <summary>
/// A facility-location instance as a plan: a warehouse is a seller, its fixed cost the parcel, a customer a place, what it costs to serve one wholly
/// an offer.
/// </summary>
/// <remarks>
/// Source of the instances and of their text format: J. E. Beasley, OR-Library; Journal of the Operational Research Society 41:1069-1072, 1990.
/// </remarks>
internal static class Warehouses
{
    /// <summary>The instances have up to five decimals, all of them multiples of this one.</summary>
    public const int UnitsPerOne = 10_000;

    public static PlanProblem Read(string text)
    {
        var numbers = text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries);
        var (sites, customers) = (int.Parse(numbers[0], CultureInfo.InvariantCulture), int.Parse(numbers[1], CultureInfo.InvariantCulture));
        var fixedCosts = Enumerable.Range(0, sites).Select(site => Units(numbers[3 + (2 * site)])).ToArray();
        var at = 2 + (2 * sites);
        var costs = Enumerable.Range(0, customers).Select(customer => Enumerable.Range(0, sites)
            .Select(site => Units(numbers[at + (customer * (sites + 1)) + 1 + site])).ToArray());
        return Plan(fixedCosts, [.. costs]);
    }

    /// <summary>Sites and customers on a square, customers of different size; a site costs as much as some of its customers.</summary>
    public static PlanProblem Draw(int sites, int customers)
    {
        var random = new Random(11);
        var at = Enumerable.Range(0, sites + customers).Select(_ => (X: random.Next(1000), Y: random.Next(1000))).ToArray();
        var sizes = Enumerable.Range(0, customers).Select(_ => random.Next(1, 30)).ToArray();
        var costs = Enumerable.Range(0, customers).Select(customer => Enumerable.Range(0, sites)
            .Select(site => sizes[customer] * (long)double.Round(
                100 * double.Hypot(at[site].X - at[sites + customer].X, at[site].Y - at[sites + customer].Y))).ToArray());
        return Plan([.. Enumerable.Repeat(500_000L, sites)], [.. costs]);
    }

    private static PlanProblem Plan(IReadOnlyList<long> fixedCosts, IReadOnlyList<IReadOnlyList<long>> costs) => new(
        [.. costs.Select((_, customer) => new PlanPlace($"customer {customer}", [new PlanChoice("served", 0, [new PlanPieces(customer, 1)])]))],
        [.. costs.Select((_, customer) => new PlanProduct($"customer {customer}"))],
        [.. costs.SelectMany((row, customer) =>
            row.Select((cost, site) => new PlanOffer($"{site} to {customer}", site, cost, 1, [new PlanPieces(customer, 1)])))],
        [.. fixedCosts.Select((cost, site) => new PlanSeller($"site {site}", cost))],
        [],
        [],
        []);

    /// <summary>For each file: its least cost, the sites that are open, the time.</summary>
    public static void Show(IEnumerable<string> files)
    {
        foreach (var file in files)
        {
            var problem = Read(File.ReadAllText(file));
            var clock = Stopwatch.StartNew();
            var solution = PlanSolver.Solve(problem, PlanObjective.Cheapest, PlanEffort.Ordinary);
            clock.Stop();
            var open = problem.Offers.Where((_, offer) => solution.Packs[offer] > 0).Select(offer => offer.Seller).Distinct().Order();
            var cost = (decimal)solution.Totals.Cost / UnitsPerOne;
            Console.WriteLine(string.Create(
                CultureInfo.InvariantCulture,
                $"{Path.GetFileName(file)}: {solution.Status} {cost} from {string.Join(' ', open)} in {clock.Elapsed.TotalSeconds:F2} s"));
        }
    }

    private static long Units(string number) => (long)(decimal.Parse(number, CultureInfo.InvariantCulture) * UnitsPerOne);
}
