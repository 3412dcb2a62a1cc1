using System.Globalization;
using System.Xml.Linq;

namespace PartMatch.Core.Plots;

/// <summary>Writes a <see cref="Plot"/> as SVG: black on nothing by itself, coloured by the classes of the site's style sheet where that is at hand.</summary>
/// <remarks>Lines are told apart by their dashes and by the legend, never by colour alone.</remarks>
public static class PlotSvg
{
    internal const double Width = 640;
    internal const double Left = 72;
    internal const double Right = 20;
    internal const double Top = 16;

    private const double FieldHeight = 300;
    private const double UnderField = 52;
    private const double LegendLine = 22;

    /// <param name="styleSheet">Address of the style sheet for a drawing that is looked at by itself; null for none.</param>
    /// <returns>An SVG document as text, without byte order mark.</returns>
    public static string Write(Plot plot, string? styleSheet = null)
    {
        ArgumentNullException.ThrowIfNull(plot);
        var rows = plot as RowPlot;
        var fieldHeight = rows is null ? FieldHeight : RowDrawing.GutterOf(rows) + (Math.Max(1, rows.Rows.Count) * RowDrawing.RowHeight);
        var field = new PlotField(Left, Top, Width - Left - Right, fieldHeight);
        var (drawing, legend) = plot switch
        {
            CurvePlot curve => CurveDrawing.Of(curve, field),
            RowPlot row => RowDrawing.Of(row, field),
            _ => throw new InvalidOperationException($"{plot.GetType().Name} is no plot that can be drawn."),
        };
        var legendTop = Top + fieldHeight + UnderField;
        var height = legendTop + (legend.Count * LegendLine);
        var svg = new XElement(
            Svg("svg"), new XAttribute("viewBox", $"0 0 {N(Width)} {N(height)}"), new XAttribute("width", N(Width)), new XAttribute("height", N(height)),
            new XAttribute("class", "plot"), new XAttribute("role", "img"), new XAttribute("font-family", "system-ui, sans-serif"), new XAttribute("font-size", "14"),
            new XAttribute("fill", "currentColor"), new XElement(Svg("title"), plot.Title), new XElement(Svg("desc"), plot.Description),
            drawing, legend.Select((entry, index) => entry.Drawn(legendTop + (index * LegendLine))));
        var document = styleSheet is null ? new XDocument(svg) : new XDocument(new XProcessingInstruction("xml-stylesheet", $"type=\"text/css\" href=\"{styleSheet}\""), svg);
        return string.Concat(document.Nodes().Select(node => node.ToString(SaveOptions.DisableFormatting)));
    }

    internal static XName Svg(string name) => XName.Get(name, "http://www.w3.org/2000/svg");

    internal static string N(double number) => Math.Round(number, 2).ToString(CultureInfo.InvariantCulture);

    internal static XElement Line(double x1, double y1, double x2, double y2, string look) => new(
        Svg("path"), new XAttribute("d", $"M{N(x1)} {N(y1)}L{N(x2)} {N(y2)}"), new XAttribute("class", look), new XAttribute("fill", "none"), new XAttribute("stroke", "currentColor"));

    internal static XElement Text(double x, double y, string text, string anchor, string look) => new(
        Svg("text"), new XAttribute("x", N(x)), new XAttribute("y", N(y)), new XAttribute("text-anchor", anchor), new XAttribute("class", look), text);
}

/// <summary>The place inside the axes.</summary>
internal sealed record PlotField(double Left, double Top, double Width, double Height)
{
    public double Right => Left + Width;

    public double Foot => Top + Height;
}

/// <summary>One line of the legend.</summary>
/// <param name="Sample">Draws the sample, given the middle of the line.</param>
internal sealed record LegendEntry(string Name, Func<double, IReadOnlyList<XElement>> Sample)
{
    public const double SampleWidth = 36;

    public IEnumerable<XElement> Drawn(double top) =>
        [.. Sample(top), PlotSvg.Text(PlotSvg.Left + SampleWidth + 10, top + 5, Name, "start", "plot-text")];
}
