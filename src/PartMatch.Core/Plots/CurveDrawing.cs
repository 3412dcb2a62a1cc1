using System.Xml.Linq;
using static PartMatch.Core.Plots.PlotSvg;

namespace PartMatch.Core.Plots;

/// <summary>Lines and bands between two axes.</summary>
internal static class CurveDrawing
{
    // Lengths of stroke and gap; the first line is unbroken. As many as a plot may have lines.
    private static readonly string?[] _dashes = [null, "9 5", "3 4", "12 4 3 4", "16 6", "6 3 2 3 2 3"];

    public static (IEnumerable<XElement> Drawing, IReadOnlyList<LegendEntry> Legend) Of(CurvePlot plot, PlotField field)
    {
        if (plot.Lines.Count > _dashes.Length)
        {
            throw new ArgumentException($"{plot.Lines.Count} lines cannot be told apart, at most {_dashes.Length} can.", nameof(plot));
        }

        var points = plot.Lines.SelectMany(line => line.Points.Concat(line.Marks)).Concat(plot.Bands.SelectMany(band => band.Low.Concat(band.High))).ToList();
        var across = PlotScale.Of(plot.X, points.Select(point => point.X).Concat(At(plot, PlotDirection.Upright)), field.Left, field.Width);
        var up = PlotScale.Of(plot.Y, points.Select(point => point.Y).Concat(At(plot, PlotDirection.Level)), field.Foot, -field.Height);
        string Place(PlotPoint point) => $"{N(across.Place(point.X))} {N(up.Place(point.Y))}";

        IEnumerable<XElement> drawing =
        [
            .. AxisDrawing.Across(plot.X, across, field),
            .. AxisDrawing.Up(plot.Y, up, field),
            .. plot.Bands.Select(band => Band([.. band.Low.Where(Drawable).Select(Place), .. band.High.Where(Drawable).Reverse().Select(Place)])),
            .. AxisDrawing.Limits(plot.Limits, across, up, field),
            .. plot.Lines.SelectMany((line, index) => line.IsPointsOnly
                ? line.Points.Where(Drawable).SelectMany(point => Named(point, across.Place(point.X), up.Place(point.Y)))
                : line.Points.Count > 1 || line.Marks is [] ? [Stroke("M" + string.Join('L', line.Points.Where(Drawable).Select(Place)), line, index)] : []),
            .. plot.Lines.SelectMany(line => line.Marks.Where(Drawable).Select(point => Mark(line.Shape, across.Place(point.X), up.Place(point.Y)))),
        ];
        return (drawing, Legend(plot));
    }

    private static IReadOnlyList<LegendEntry> Legend(CurvePlot plot) =>
    [
        .. plot.Lines.Select((line, index) => new LegendEntry(
            line.Name,
            y => line.IsPointsOnly ? [Dot(Left + (LegendEntry.SampleWidth / 2), y)] :
            [
                .. line.Points.Count > 1 || line.Marks is []
                    ? [Stroke($"M{N(Left)} {N(y)}H{N(Left + LegendEntry.SampleWidth)}", line, index)] : Array.Empty<XElement>(),
                .. line.Marks is [] ? Array.Empty<XElement>() : [Mark(line.Shape, Left + (LegendEntry.SampleWidth / 2), y)],
            ])),
        .. plot.Bands.Select(band => new LegendEntry(band.Name, y =>
            [Band([$"{N(Left)} {N(y - 7)}", $"{N(Left + LegendEntry.SampleWidth)} {N(y - 7)}",
                $"{N(Left + LegendEntry.SampleWidth)} {N(y + 7)}", $"{N(Left)} {N(y + 7)}"])])),
    ];

    private static IEnumerable<double> At(CurvePlot plot, PlotDirection direction) =>
        plot.Limits.Where(limit => limit.Direction == direction).Select(limit => limit.At);

    private static bool Drawable(PlotPoint point) => double.IsFinite(point.X) && double.IsFinite(point.Y);

    private static XElement Stroke(string path, PlotLine line, int index) => new(
        Svg("path"), new XAttribute("d", path), new XAttribute("class", $"plot-line plot-line-{index + 1}{(line.IsMain ? " plot-main" : "")}"),
        new XAttribute("fill", "none"), new XAttribute("stroke", "currentColor"), new XAttribute("stroke-width", line.IsMain ? "3" : "1.75"), new XAttribute("stroke-linejoin", "round"),
        _dashes[index] is { } dash ? new XAttribute("stroke-dasharray", dash) : null);

    private static XElement Dot(double x, double y) => new(
        Svg("circle"), new XAttribute("cx", N(x)), new XAttribute("cy", N(y)), new XAttribute("r", "4"), new XAttribute("class", "plot-dot"));

    private static XElement Mark(PlotShape shape, double x, double y) => shape == PlotShape.Circle ? Dot(x, y) : new XElement(
        Svg("path"), new XAttribute("d", $"M{N(x)} {N(y)}{Outline(shape)}"), new XAttribute("class", $"plot-dot plot-{shape.ToString().ToLowerInvariant()}"));

    // Of about the same area as a dot, from its middle.
    private static string Outline(PlotShape shape) => shape switch
    {
        PlotShape.Square => "m-4-4h8v8h-8z",
        PlotShape.Diamond => "m0-6l6 6-6 6-6-6z",
        PlotShape.Triangle => "m0-5l5 9h-10z",
        PlotShape.Cross => "m-5-3l2-2 3 3 3-3 2 2-3 3 3 3-2 2-3-3-3 3-2-2 3-3z",
        _ => throw new ArgumentOutOfRangeException(nameof(shape), shape, "no shape with an outline"),
    };

    /// <summary>Left of its point, where limits seldom have their names.</summary>
    private static IEnumerable<XElement> Named(PlotPoint point, double x, double y) =>
        point.Name is { } name ? [Dot(x, y), Text(x - 8, y + 5, name, "end", "plot-text")] : [Dot(x, y)];

    private static XElement Band(IReadOnlyList<string> corners) => new(
        Svg("path"), new XAttribute("d", $"M{string.Join('L', corners)}Z"), new XAttribute("class", "plot-band"), new XAttribute("fill-opacity", "0.15"), new XAttribute("stroke", "none"));
}
