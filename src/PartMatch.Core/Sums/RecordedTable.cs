using System.Runtime.CompilerServices;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Fit;
using PartMatch.Core.Measures;

namespace PartMatch.Core.Sums;

/// <summary>What a recorded table says at one place: a closed set of outcomes.</summary>
internal abstract record TableReading;

internal sealed record TableRead(Spread Value) : TableReading;

/// <summary>The place lies beyond the table.</summary>
internal sealed record BeyondTable : TableReading;

/// <summary>The table has a gap there.</summary>
/// <param name="X">The point that is missing, base unit.</param>
internal sealed record TableGap(decimal X, decimal Y) : TableReading;

/// <summary>A part's recorded curve over two quantities: read between its points, never beyond them (bilinear).</summary>
internal sealed class RecordedTable
{
    // Parts are immutable, and every question reads the same few tables.
    private static readonly ConditionalWeakTable<Part, Dictionary<string, RecordedTable>> _read = [];

    private readonly double[] _xs;
    private readonly double[] _ys;
    private readonly Spread?[,] _values;

    private RecordedTable(decimal[] xs, decimal[] ys, Spread?[,] values)
    {
        (Xs, Ys, _values) = (xs, ys, values);
        (_xs, _ys) = ([.. xs.Select(line => (double)line)], [.. ys.Select(line => (double)line)]);
    }

    /// <summary>Rising, base unit.</summary>
    public IReadOnlyList<decimal> Xs { get; }

    /// <summary>Rising, base unit.</summary>
    public IReadOnlyList<decimal> Ys { get; }

    /// <summary>The table of a curve of a part, or null where nothing that counts is recorded.</summary>
    public static RecordedTable? Find(Part part, string curve) =>
        _read.GetValue(part, static read => read.Curves.Select(point => point.Curve).Distinct().Select(code => (code, table: Read(read, code)))
            // null ones are left out just before
            .Where(one => one.table is not null).ToDictionary(one => one.code, one => one.table!)).GetValueOrDefault(curve);

    /// <summary>The value at every place of a box: its least, that at the expected place, its greatest.</summary>
    /// <remarks>Bilinear pieces have their extremes at corners: the ends of the box and the lines of the table between them.</remarks>
    public TableReading At(Spread x, Spread y)
    {
        if (Find(x.Expected, y.Expected) is not { } value)
        {
            return At(x.Expected, y.Expected);
        }

        var (low, high) = (value.Low, value.High);
        for (var column = 0; Place(_xs, x, column) is { } atX; column++)
        {
            for (var row = 0; Place(_ys, y, row) is { } atY; row++)
            {
                if (Find(atX, atY) is not { } corner)
                {
                    return At(atX, atY);
                }

                (low, high) = (Math.Min(low, corner.Low), Math.Max(high, corner.High));
            }
        }

        return new TableRead(value with { Low = low, High = high });
    }

    public TableReading At(double x, double y)
    {
        if (Find(x, y) is { } value)
        {
            return new TableRead(value);
        }

        return Bracket(_xs, x) is var (left, right) && Bracket(_ys, y) is var (below, above)
            && new[] { (left, below), (right, below), (left, above), (right, above) }.First(corner =>
                _values[corner.Item1, corner.Item2] is null) is var (column, row)
                ? new TableGap(Xs[column], Ys[row])
                : new BeyondTable();
    }

    // Null beyond the table and in a gap.
    private Spread? Find(double x, double y)
    {
        if (Bracket(_xs, x) is not var (left, right) || Bracket(_ys, y) is not var (below, above)
            || _values[left, below] is not { } leftBelow || _values[right, below] is not { } rightBelow || _values[left, above] is not { } leftAbove
                || _values[right, above] is not { } rightAbove)
        {
            return null;
        }

        var (across, up) = (Share(_xs, left, right, x), Share(_ys, below, above, y));
        return Between(Between(leftBelow, rightBelow, across), Between(leftAbove, rightAbove, across), up);
    }

    // A point without its second coordinate or on retracted evidence says nothing; of several sources the best grade speaks, as a range where they differ.
    private static RecordedTable? Read(Part part, string curve)
    {
        var points = part.Curves.Where(point => point.Curve == curve && point.Y is > 0 && point.Evidence?.IsRetracted != true).ToLookup(point =>
            (X: point.X, Y: point.Y ?? 0));
        if (points.Count == 0)
        {
            return null;
        }

        decimal[] xs = [.. points.Select(point => point.Key.X).Distinct().Order()];
        decimal[] ys = [.. points.Select(point => point.Key.Y).Distinct().Order()];
        var values = new Spread?[xs.Length, ys.Length];
        foreach (var point in points)
        {
            var best = point.Max(one => ValueSelection.GradeOf(one.Evidence));
            var stated = point.Where(one => ValueSelection.GradeOf(one.Evidence) == best).Select(one => (double)one.Value).ToList();
            values[Array.IndexOf(xs, point.Key.X), Array.IndexOf(ys, point.Key.Y)] = new Spread(stated.Min(), stated.Average(), stated.Max());
        }

        return new RecordedTable(xs, ys, values);
    }

    // The places of a range where an extreme can lie: its two ends, then the lines between them; null after the last. One place where it is exact.
    private static double? Place(double[] lines, Spread range, int index)
    {
        if (index < 2)
        {
            return index == 0 ? range.Low : range.IsExact ? null : range.High;
        }

        var first = 0;
        while (first < lines.Length && lines[first] <= range.Low)
        {
            first++;
        }

        return first + index - 2 is var line && line < lines.Length && lines[line] < range.High ? lines[line] : null;
    }

    // The neighbours on the grid that hold the value between them; both the same on a grid line.
    private static (int Low, int High)? Bracket(double[] lines, double value)
    {
        for (var index = 0; index < lines.Length; index++)
        {
            if (lines[index] >= value)
            {
                return lines[index] == value ? (index, index) : index == 0 ? null : (index - 1, index);
            }
        }

        return null;
    }

    private static double Share(double[] lines, int low, int high, double value) => low == high ? 0 : (value - lines[low]) / (lines[high] - lines[low]);

    private static Spread Between(Spread left, Spread right, double share) => new(
        left.Low + ((right.Low - left.Low) * share), left.Expected + ((right.Expected - left.Expected) * share), left.High
            + ((right.High - left.High) * share));
}
