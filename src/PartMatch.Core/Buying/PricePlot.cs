using System.Globalization;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Listings;
using PartMatch.Core.Plots;

namespace PartMatch.Core.Buying;

/// <summary>
/// The history of a price drawn: one currency, for each condition a line through the cheapest offer of each day, and a mark of its own shape for
/// every offer.
/// </summary>
public static class PricePlot
{
    /// <param name="on">Where the days are counted to.</param>
    /// <param name="currency">Null: that of most offers, the first by its code among equals.</param>
    public static Plot Of(string number, PriceHistory history, DateOnly on, string? currency)
    {
        var chosen = currency ?? MostUsed(history) ?? "";
        PricePoint[] points = [.. history.Points.Where(point => point.UnitPrice?.Currency == chosen)];
        var lines = points.GroupBy(point => point.Condition).OrderBy(group => group.Key).Select(group => LineOf(group.Key, [.. group], on));
        return new CurvePlot(
            $"Prices asked for {number}",
            Describe(history, chosen, points),
            new PlotAxis($"days up to {on:yyyy-MM-dd}", "", From: -Room(points, on), To: points.Any(point => point.SeenOn > on) ? null : 0), new PlotAxis("one piece", chosen, From: 0),
            [.. lines],
            [],
            [],
            new PlotTable(
                ["Seen on", "Seller", "Condition", "Pieces", $"Price of one piece{(chosen.Length == 0 ? "" : $", {chosen}")}"],
                [
                    .. points.Select(point => (IReadOnlyList<string>)
                        [point.SeenOn.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture), point.SellerName, Word(point.Condition),
                            point.Pack?.ToString(CultureInfo.InvariantCulture) ?? "", point.UnitPrice?.Amount ?? ""]),
                ]));
    }

    /// <summary>Whole months of 30 days back to the oldest, one at least: a single day would give an axis of fractions.</summary>
    private static double Room(PricePoint[] points, DateOnly on) =>
        Math.Max(1, Math.Ceiling(points.Select(point => on.DayNumber - point.SeenOn.DayNumber).DefaultIfEmpty(0).Max() / 30.0)) * 30;

    private static string? MostUsed(PriceHistory history) => history.Points.Where(point => point.UnitPrice is not null).GroupBy(point => point.Price.Currency)
        .OrderByDescending(group => group.Count()).ThenBy(group => group.Key, StringComparer.Ordinal).Select(group => group.Key).FirstOrDefault();

    private static PlotLine LineOf(ItemCondition condition, PricePoint[] points, DateOnly on) => new(
        $"{Word(condition)}, {(points.Length == 1 ? "one offer" : string.Create(CultureInfo.InvariantCulture, $"{points.Length} offers"))}",
        [.. points.GroupBy(point => point.SeenOn).Select(day => day.MinBy(MajorUnits)!).OrderBy(point => point.SeenOn)
            .Select(point => PlaceOf(point, on))]) // no group is empty
    {
        Marks = [.. points.Select(point => PlaceOf(point, on))],
        Shape = ShapeOf(condition),
    };

    private static PlotShape ShapeOf(ItemCondition condition) => condition switch
    {
        ItemCondition.New => PlotShape.Square,
        ItemCondition.Refurbished => PlotShape.Diamond,
        ItemCondition.Used => PlotShape.Circle,
        ItemCondition.Damaged => PlotShape.Cross,
        _ => PlotShape.Triangle,
    };

    private static PlotPoint PlaceOf(PricePoint point, DateOnly on) => new(point.SeenOn.DayNumber - on.DayNumber, MajorUnits(point));

    private static double MajorUnits(PricePoint point) =>
        point.UnitPrice is { } price ? (double)decimal.Parse(price.Amount, CultureInfo.InvariantCulture) : double.NaN;

    private static string Describe(PriceHistory history, string currency, PricePoint[] points)
    {
        if (points.Length == 0)
        {
            return $"No offer with a price by the piece is recorded{(currency.Length == 0 ? "" : $" in {currency}")}.{LeftOut(history, currency)}";
        }

        var ranges = history.Ranges.Where(range => range.Currency == currency)
            .Select(range => $"{Word(range.Condition)} {range.Low.Amount} to {range.High.Amount} {currency}, in the middle {range.Middle.Amount}");
        return string.Create(CultureInfo.InvariantCulture,
            $"{points.Length} {(points.Length == 1 ? "offer" : "offers")}: {string.Join("; ", ranges)}.{LeftOut(history, currency)}");
    }

    private static string LeftOut(PriceHistory history, string currency)
    {
        string[] reasons =
        [
            .. history.Points.Where(point => point.UnitPrice is not null && point.Price.Currency != currency).GroupBy(point => point.Price.Currency)
                .OrderBy(group => group.Key, StringComparer.Ordinal)
                .Select(group => string.Create(CultureInfo.InvariantCulture, $"{group.Count()} in {group.Key}")),
            .. history.Points.Count(point => point.UnitPrice is null) is > 0 and var unknown
                ? [string.Create(CultureInfo.InvariantCulture, $"{unknown} for a pack of unknown size")] : Array.Empty<string>(),
        ];
        return reasons is [] ? "" : $" Not drawn: {string.Join(", ", reasons)}.";
    }

    private static string Word(ItemCondition condition) => Codes.Of(condition).Replace('-', ' ');
}
