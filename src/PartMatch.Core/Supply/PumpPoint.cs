using PartMatch.Core.Measures;
using PartMatch.Core.Sums;

namespace PartMatch.Core.Supply;

/// <summary>Where pump and line meet: the pump's delivery at the pressure that this very delivery makes it see.</summary>
/// <param name="FlowM3S">Null where the table does not reach there.</param>
/// <param name="IsLeast">The table begins above that pressure, and less pressure never gives less flow: it is at least this.</param>
internal readonly record struct PumpPoint(Spread? FlowM3S, bool IsLeast)
{
    // Halves a range of some bar to far below what anybody records.
    private const int Halvings = 48;

    /// <param name="table">Delivery over voltage and pressure.</param>
    /// <param name="railPa">At the far end of the line, gauge.</param>
    public static PumpPoint Of(RecordedTable table, Spread volt, Spread railPa, LineLoss line)
    {
        var loss = line.PerFlowSquared;
        double? Delivery(double pascals, Func<Spread, double> corner) => table.At(volt, Spread.Exactly(pascals)) is TableRead read ? corner(read.Value) : null;
        var least = Solve(pascals => Delivery(pascals, value => value.Low), table, railPa.High, loss.High);
        var expected = Solve(pascals => Delivery(pascals, value => value.Expected), table, railPa.Expected, loss.Expected);
        var most = Solve(pascals => Delivery(pascals, value => value.High), table, railPa.Low, loss.Low);
        return least.Flow is { } low && expected.Flow is { } middle && most.Flow is { } high
            ? new PumpPoint(new Spread(low, middle, high), least.IsBelow || expected.IsBelow || most.IsBelow)
            : default;
    }

    // Delivery falls with pressure and the loss rises with flow: they cross once.
    private static (double? Flow, bool IsBelow) Solve(Func<double, double?> delivery, RecordedTable table, double railPa, double perFlowSquared)
    {
        var (first, top) = ((double)table.Ys[0], (double)table.Ys[^1]);
        double? Above(double pascals) => delivery(pascals) is { } flow ? railPa + (perFlowSquared * flow * flow) - pascals : null;
        var (low, high) = (Math.Max(railPa, first), top);
        if (low > top || Above(low) is not { } atLow || Above(high) is not { } atHigh || atHigh > 0)
        {
            return (null, false);
        }

        if (atLow < 0)
        {
            return (delivery(first), true);
        }

        for (var step = 0; step < Halvings; step++)
        {
            var middle = (low + high) / 2;
            if (Above(middle) is not { } above)
            {
                return (null, false);
            }

            (low, high) = above >= 0 ? (middle, high) : (low, middle);
        }

        return (delivery(low), false);
    }
}
