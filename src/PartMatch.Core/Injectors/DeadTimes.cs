using PartMatch.Core.Catalogue;
using PartMatch.Core.Fit;
using PartMatch.Core.Measures;
using PartMatch.Core.Sums;

namespace PartMatch.Core.Injectors;

/// <summary>What is known of an injector's dead time at one voltage and pressure: a closed set of outcomes.</summary>
internal abstract record DeadTime;

/// <param name="IsAssumed">Nothing is recorded of this injector: common practice stands for it.</param>
internal sealed record KnownDeadTime(Spread Seconds, string Source, bool IsAssumed = false) : DeadTime;

/// <summary>There is a table, but it says nothing there.</summary>
internal sealed record DeadTimeOutsideTable(string Reason) : DeadTime;

/// <summary>Dead time from the recorded voltage × pressure table: between its points, never beyond them.</summary>
internal static class DeadTimes
{
    private const string Curve = "dead-time";

    /// <summary>Where nothing is recorded.</summary>
    public static KnownDeadTime CommonPractice { get; } = new(new Spread(0.0006, 0.0010, 0.0015), "0.6 … 1.0 … 1.5 ms at 14 V, common practice, no source", IsAssumed: true);

    /// <param name="volt">At the injector.</param>
    /// <param name="acrossPa">Pressure across it.</param>
    public static DeadTime Of(Part part, decimal volt, decimal acrossPa)
    {
        var points = Points(part);
        if (points.Count == 0)
        {
            return CommonPractice;
        }

        var (volts, pressures) = (points.Keys.Select(at => at.Volt), points.Keys.Select(at => at.Pa));
        if (Bracket(volts, volt) is not var (lowVolt, highVolt) || Bracket(pressures, acrossPa) is not var (lowPa, highPa))
        {
            return new DeadTimeOutsideTable(
                FormattableString.Invariant($"its dead time is recorded for {volts.Min():0.0#} … {volts.Max():0.0#} V ")
                + $"and {SumText.InBar(pressures.Min())} … {SumText.InBar(pressures.Max())} across, "
                + FormattableString.Invariant($"not for {volt:0.0#} V and {SumText.InBar(acrossPa)}; nothing is read beyond a table"));
        }

        (decimal Volt, decimal Pa)[] corners = [(lowVolt, lowPa), (highVolt, lowPa), (lowVolt, highPa), (highVolt, highPa)];
        if (corners.FirstOrDefault(corner => !points.ContainsKey(corner)) is { Pa: > 0 } gap)
        {
            return new DeadTimeOutsideTable(FormattableString.Invariant($"its dead-time table has a gap at {gap.Volt:0.0#} V, {SumText.InBar(gap.Pa)}"));
        }

        var (across, up) = (Share(lowVolt, highVolt, volt), Share(lowPa, highPa, acrossPa));
        var seconds = Between(Between(points[corners[0]], points[corners[1]], across), Between(points[corners[2]], points[corners[3]], across), up);
        return new KnownDeadTime(seconds, FormattableString.Invariant($"its table at {volt:0.0#} V and {SumText.InBar(acrossPa)} across"));
    }

    // A point without pressure or on retracted evidence says nothing; of several sources the best grade speaks, as a range where they differ.
    private static Dictionary<(decimal Volt, decimal Pa), Spread> Points(Part part) => part.Curves
        .Where(point => point.Curve == Curve && point.Y is > 0 && point.Evidence?.IsRetracted != true)
        .GroupBy(point => (Volt: point.X, Pa: point.Y ?? 0))
        .ToDictionary(group => group.Key, group =>
        {
            var best = group.Max(point => ValueSelection.GradeOf(point.Evidence));
            var seconds = group.Where(point => ValueSelection.GradeOf(point.Evidence) == best).Select(point => (double)point.Value).ToList();
            return new Spread(seconds.Min(), seconds.Average(), seconds.Max());
        });

    // The neighbours on the grid that hold the value between them; both the same on a grid line.
    private static (decimal Low, decimal High)? Bracket(IEnumerable<decimal> grid, decimal value)
    {
        var low = grid.Where(line => line <= value).DefaultIfEmpty(decimal.MinValue).Max();
        var high = grid.Where(line => line >= value).DefaultIfEmpty(decimal.MaxValue).Min();
        return low == decimal.MinValue || high == decimal.MaxValue ? null : (low, high);
    }

    private static double Share(decimal low, decimal high, decimal value) => low == high ? 0 : (double)((value - low) / (high - low));

    private static Spread Between(Spread left, Spread right, double share) => (left * (1 - share)) + (right * share);
}
