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

    private readonly Spread?[,] _values;

    private RecordedTable(IReadOnlyList<decimal> xs, IReadOnlyList<decimal> ys, Spread?[,] values)
    {
        (Xs, Ys, _values) = (xs, ys, values);
    }

    /// <summary>Rising, base unit.</summary>
    public IReadOnlyList<decimal> Xs { get; }

    /// <summary>Rising, base unit.</summary>
    public IReadOnlyList<decimal> Ys { get; }

    /// <summary>The table of a curve of a part, or null where nothing that counts is recorded.</summary>
    public static RecordedTable? Find(Part part, string curve) =>
        _read.GetValue(part, static read => read.Curves.Select(point => point.Curve).Distinct().Select(code => (code, table: Read(read, code)))
            .Where(one => one.table is not null).ToDictionary(one => one.code, one => one.table!)).GetValueOrDefault(curve); // null ones are left out just before

    /// <summary>The value at every place of a box: its least, that at the expected place, its greatest.</summary>
    /// <remarks>Bilinear pieces have their extremes at corners: the ends of the box and the lines of the table between them.</remarks>
    public TableReading At(Spread x, Spread y)
    {
        var expected = At(x.Expected, y.Expected);
        if (expected is not TableRead { Value: var value } || (x.IsExact && y.IsExact))
        {
            return expected;
        }

        var (low, high) = (value.Low, value.High);
        foreach (var atX in Places(x, Xs))
        {
            foreach (var atY in Places(y, Ys))
            {
                if (At(atX, atY) is not TableRead { Value: var corner })
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
        if (Bracket(Xs, x) is not var (left, right) || Bracket(Ys, y) is not var (below, above))
        {
            return new BeyondTable();
        }

        foreach (var (column, row) in (ReadOnlySpan<(int, int)>)[(left, below), (right, below), (left, above), (right, above)])
        {
            if (_values[column, row] is null)
            {
                return new TableGap(Xs[column], Ys[row]);
            }
        }

        var (across, up) = (Share(Xs, left, right, x), Share(Ys, below, above, y));
        Spread Along(int row) => Between(_values[left, row]!.Value, _values[right, row]!.Value, across); // no gap: looked just now
        return new TableRead(Between(Along(below), Along(above), up));
    }

    // A point without its second coordinate or on retracted evidence says nothing; of several sources the best grade speaks, as a range where they differ.
    private static RecordedTable? Read(Part part, string curve)
    {
        var points = part.Curves.Where(point => point.Curve == curve && point.Y is > 0 && point.Evidence?.IsRetracted != true).ToLookup(point => (X: point.X, Y: point.Y ?? 0));
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

    private static IEnumerable<double> Places(Spread range, IReadOnlyList<decimal> lines) =>
        lines.Select(line => (double)line).Where(line => line > range.Low && line < range.High).Append(range.Low).Append(range.High);

    // The neighbours on the grid that hold the value between them; both the same on a grid line.
    private static (int Low, int High)? Bracket(IReadOnlyList<decimal> lines, double value)
    {
        for (var index = 0; index < lines.Count; index++)
        {
            var line = (double)lines[index];
            if (line == value)
            {
                return (index, index);
            }

            if (line > value)
            {
                return index == 0 ? null : (index - 1, index);
            }
        }

        return null;
    }

    private static double Share(IReadOnlyList<decimal> lines, int low, int high, double value) =>
        low == high ? 0 : (value - (double)lines[low]) / (double)(lines[high] - lines[low]);

    private static Spread Between(Spread left, Spread right, double share) => (left * (1 - share)) + (right * share);
}
