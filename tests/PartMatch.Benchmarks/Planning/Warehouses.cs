using System.Globalization;
using PartMatch.Core.Planning;

namespace PartMatch.Benchmarks.Planning;

/// <summary>A facility-location instance as a plan: a warehouse is a seller, its fixed cost the parcel, a customer a place, what it costs to serve one wholly an offer.</summary>
/// <remarks>Source of the instances and of their text format: J. E. Beasley, OR-Library; Journal of the Operational Research Society 41:1069-1072, 1990.</remarks>
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
        var costs = Enumerable.Range(0, customers).Select(customer => Enumerable.Range(0, sites).Select(site => Units(numbers[at + (customer * (sites + 1)) + 1 + site])).ToArray());
        return Plan(fixedCosts, [.. costs]);
    }

    public static PlanProblem Plan(IReadOnlyList<long> fixedCosts, IReadOnlyList<IReadOnlyList<long>> costs) => new(
        [.. costs.Select((_, customer) => new PlanPlace($"customer {customer}", [new PlanChoice("served", 0, [new PlanPieces(customer, 1)])]))],
        [.. costs.Select((_, customer) => new PlanProduct($"customer {customer}"))],
        [.. costs.SelectMany((row, customer) => row.Select((cost, site) => new PlanOffer($"{site} to {customer}", site, cost, 1, [new PlanPieces(customer, 1)])))],
        [.. fixedCosts.Select((cost, site) => new PlanSeller($"site {site}", cost))],
        [],
        [],
        []);

    private static long Units(string number) => (long)(decimal.Parse(number, CultureInfo.InvariantCulture) * UnitsPerOne);
}
