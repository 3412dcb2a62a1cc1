using System.Xml.Linq;
using static PartMatch.Core.Plots.PlotSvg;

namespace PartMatch.Core.Plots;

/// <summary>Bars in rows over one axis.</summary>
internal static class RowDrawing
{
    public const double RowHeight = 44;

    private const double BarHeight = 20;
    private const double NameHeight = 18;

    // Of the usual sans-serif faces at 14 px, a little generous: text that is moved too far left is still read, text that is cut is not.
    private const double GlyphWidth = 7.6;

    /// <summary>Room above the rows for the names of the limits.</summary>
    public static double GutterOf(RowPlot plot) => plot.Limits.Count == 0 ? 0 : 58;

    public static (IEnumerable<XElement> Drawing, IReadOnlyList<LegendEntry> Legend) Of(RowPlot plot, PlotField field)
    {
        // Rows carry their name above their bar, so the field may use the whole width.
        var wide = field with { Left = 24, Width = field.Width + field.Left - 24 };
        var bars = plot.Rows.SelectMany(row => row.Bars).SelectMany(bar => (double[])[bar.From, bar.To]);
        var across = PlotScale.Of(plot.X, bars.Concat(plot.Limits.Select(limit => limit.At)), wide.Left, wide.Width);
        return (
            [
                .. AxisDrawing.Across(plot.X, across, wide),
                .. AxisDrawing.Limits(plot.Limits, across, null, wide),
                .. plot.Rows.SelectMany((row, index) => Row(row, across, wide.Top + GutterOf(plot) + (index * RowHeight))),
            ],
            []);
    }

    private static IEnumerable<XElement> Row(PlotRow row, PlotScale across, double top) =>
        row.Bars.SelectMany((bar, index) => Bar(bar, across, top, index == 0 ? $"{row.Name}: {bar.Text}" : bar.Text));

    private static IEnumerable<XElement> Bar(PlotBar bar, PlotScale across, double top, string text)
    {
        var (from, to) = (across.Place(Math.Clamp(bar.From, across.From, across.To)), across.Place(Math.Clamp(bar.To, across.From, across.To)));
        yield return new XElement(
            Svg("rect"), new XAttribute("x", N(from)), new XAttribute("y", N(top + NameHeight)), new XAttribute("width", N(Math.Max(1, to - from))), new XAttribute("height", N(BarHeight)),
            new XAttribute("class", bar.IsFaint ? "plot-bar plot-faint" : "plot-bar"), new XAttribute("fill-opacity", bar.IsFaint ? "0.15" : "0.6"), new XAttribute("stroke", "currentColor"));
        if (text.Length == 0)
        {
            yield break;
        }

        var (start, end) = (across.Place(across.From), across.Place(across.To));
        yield return Text(Math.Max(start, Math.Min(from, end - (text.Length * GlyphWidth))), top + NameHeight - 4, text, "start", "plot-text");
    }
}
