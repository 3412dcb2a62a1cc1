using System.Globalization;
using PartMatch.Core.Measures;
using PartMatch.Core.Plots;

namespace PartMatch.Core.Builds;

/// <summary>A build drawn.</summary>
public static class BuildPlots
{
    /// <summary>Name of the drawing of the frontier.</summary>
    public const string FrontierName = "frontier";

    /// <summary>Cost over days, as steps: between two plans nothing is gained by waiting.</summary>
    public static Plot Frontier(BuildFrontier answer)
    {
        PlotPoint[] points = [.. answer.Points.Select(point => new PlotPoint(point.Days, CostOf(point.Cost)))];
        var currency = answer.Points is [{ Cost.Currency: var code }, ..] ? code : "";
        return new CurvePlot(
            "Cost over days", $"What the cheapest plan costs that is ready by a day, counted from the day of ordering. {answer.HeadlineText}",
            new PlotAxis("ready after", "days"), new PlotAxis("cost", currency),
            [
                new PlotLine("cheapest by that day", Steps(points)) { IsMain = true },
                new PlotLine("plans", [.. points.Zip(answer.Points, (at, point) => at with { Name = $"{point.Cost.Amount} {point.Cost.Currency}" })]) { IsPointsOnly = true },
            ],
            [], [],
            new PlotTable(
                ["Ready after, days", "Ready on", $"Cost, {currency}", $"Each day sooner, {currency}", "Sureness"],
                [.. answer.Points.Select(point => (IReadOnlyList<string>)
                    [
                        point.Days.ToString(CultureInfo.InvariantCulture), point.ReadyOn.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture), point.Cost.Amount,
                        point.DayCosts?.Amount ?? "", Catalogue.Codes.Of(point.Sureness),
                    ])]));
    }

    /// <summary>From each plan level to the day of the next, then down to it.</summary>
    private static List<PlotPoint> Steps(PlotPoint[] points) =>
        [.. points.Take(1), .. points.Zip(points.Skip(1)).SelectMany(pair => new[] { pair.First with { X = pair.Second.X }, pair.Second })];

    private static double CostOf(Money money) => double.Parse(money.Amount, CultureInfo.InvariantCulture);
}
