using System.Xml.Linq;
using static PartMatch.Core.Plots.PlotSvg;

namespace PartMatch.Core.Plots;

/// <summary>Axes with their ticks, names and grid lines, and the limits that cross the field.</summary>
internal static class AxisDrawing
{
    public static IEnumerable<XElement> Across(PlotAxis axis, PlotScale scale, PlotField field)
    {
        foreach (var tick in scale.Ticks())
        {
            var x = scale.Place(tick);
            yield return Line(x, field.Top, x, field.Foot, "plot-grid");
            yield return Line(x, field.Foot, x, field.Foot + 5, "plot-axis");
            yield return Text(x, field.Foot + 20, scale.Text(tick), "middle", "plot-number");
        }

        yield return Line(field.Left, field.Foot, field.Right, field.Foot, "plot-axis");
        yield return Text(field.Right, field.Foot + 40, Named(axis), "end", "plot-name");
    }

    public static IEnumerable<XElement> Up(PlotAxis axis, PlotScale scale, PlotField field)
    {
        foreach (var tick in scale.Ticks())
        {
            var y = scale.Place(tick);
            yield return Line(field.Left, y, field.Right, y, "plot-grid");
            yield return Line(field.Left - 5, y, field.Left, y, "plot-axis");
            yield return Text(field.Left - 9, y + 5, scale.Text(tick), "end", "plot-number");
        }

        yield return Line(field.Left, field.Top, field.Left, field.Foot, "plot-axis");
        var (x, middle) = (16, (field.Top + field.Foot) / 2);
        var name = Text(x, middle, Named(axis), "middle", "plot-name");
        name.Add(new XAttribute("transform", $"rotate(-90 {N(x)} {N(middle)})"));
        yield return name;
    }

    /// <summary>Limits that lie on their axis, each with its name beside it; upright names take turns in height so that neighbours stay readable.</summary>
    public static IEnumerable<XElement> Limits(IReadOnlyList<PlotLimit> limits, PlotScale across, PlotScale? up, PlotField field)
    {
        var uprights = 0;
        foreach (var limit in limits)
        {
            if (limit.Direction == PlotDirection.Upright && across.Holds(limit.At))
            {
                var x = across.Place(limit.At);
                var isNearRight = x > (field.Left + field.Right) / 2;
                yield return Line(x, field.Top, x, field.Foot, "plot-limit");
                yield return Text(x + (isNearRight ? -5 : 5), field.Top + 14 + (uprights++ % 3 * 18), limit.Name, isNearRight ? "end" : "start", "plot-text");
            }
            else if (limit.Direction == PlotDirection.Level && up is not null && up.Holds(limit.At))
            {
                var y = up.Place(limit.At);
                yield return Line(field.Left, y, field.Right, y, "plot-limit");
                yield return Text(field.Right - 4, y - 5 < field.Top + 10 ? y + 16 : y - 5, limit.Name, "end", "plot-text");
            }
        }
    }

    private static string Named(PlotAxis axis) => axis.Unit.Length == 0 ? axis.Name : $"{axis.Name}, {axis.Unit}";
}
