using System.Globalization;

namespace PartMatch.Core.Plots;

/// <summary>From numbers of an axis to places on the sheet, with round ticks.</summary>
/// <remarks>Round steps 1, 2, 5 × 10ⁿ: Heckbert, Nice Numbers for Graph Labels, Graphics Gems, 1990.</remarks>
internal sealed class PlotScale
{
    private const int WantedTicks = 6;
    private const int MostTicks = 60;

    private readonly double _start;
    private readonly double _length;
    private readonly int _decimals;

    private PlotScale(double from, double to, double step, double start, double length)
    {
        (From, To, Step, _start, _length) = (from, to, step, start, length);
        _decimals = Math.Clamp((int)Math.Ceiling(-Math.Log10(step) - 1e-9), 0, 12);
    }

    public double From { get; }

    public double To { get; }

    public double Step { get; }

    /// <param name="drawn">Every number that is drawn along the axis; others than finite ones are passed over.</param>
    /// <param name="start">Place of the beginning of the axis.</param>
    /// <param name="length">Signed: negative where numbers grow upwards.</param>
    public static PlotScale Of(PlotAxis axis, IEnumerable<double> drawn, double start, double length)
    {
        var finite = drawn.Where(double.IsFinite).DefaultIfEmpty(0).ToList();
        var (low, high) = (axis.From ?? finite.Min(), axis.To ?? finite.Max());
        if (high <= low)
        {
            // One value, or none: room on both sides of it.
            var room = low == 0 ? 1 : Math.Abs(low) / 2;
            (low, high) = (axis.From ?? low - room, axis.From is null ? low + room : low + (2 * room));
        }

        var step = axis.Step is { } given and > 0 && (high - low) / given <= MostTicks ? given : RoundStep((high - low) / WantedTicks);
        return new PlotScale(axis.From ?? Math.Floor((low / step) + 1e-9) * step, axis.To ?? Math.Ceiling((high / step) - 1e-9) * step, step, start, length);
    }

    public double Place(double value) => _start + (_length * (value - From) / (To - From));

    /// <summary>Whether a number lies on the axis; a little beyond counts, as sums end in rounding.</summary>
    public bool Holds(double value) => value >= From - (Step * 1e-6) && value <= To + (Step * 1e-6);

    /// <summary>Multiples of the step on the axis, smallest first.</summary>
    public IEnumerable<double> Ticks()
    {
        var (first, last) = (Math.Ceiling((From / Step) - 1e-9), Math.Floor((To / Step) + 1e-9));
        for (var index = first; index <= last; index++)
        {
            yield return index * Step;
        }
    }

    /// <summary>A tick as text, with as many decimals as the step has; a true minus sign, no minus zero.</summary>
    public string Text(double tick)
    {
        var text = Math.Round(tick, _decimals).ToString("F" + _decimals.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
        return text.Trim('-', '0', '.').Length == 0 ? text.TrimStart('-') : text.Replace('-', '−');
    }

    private static double RoundStep(double rough)
    {
        var power = Math.Pow(10, Math.Floor(Math.Log10(rough)));
        return (rough / power) switch
        {
            <= 1 => power,
            <= 2 => 2 * power,
            <= 5 => 5 * power,
            _ => 10 * power,
        };
    }
}
