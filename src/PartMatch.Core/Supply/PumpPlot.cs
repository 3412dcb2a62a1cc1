using PartMatch.Core.Catalogue;
using PartMatch.Core.Plots;
using PartMatch.Core.Sums;

namespace PartMatch.Core.Supply;

/// <summary>Delivery of the pumps over pressure, with what the goal wants drawn in.</summary>
public static class PumpPlot
{
    private const int Drawn = 4;
    private const double Bar = 100_000;
    private const double LitresPerHourPerM3S = 3_600_000;

    /// <param name="pumps">The pumps of the catalogue, for their tables; the pump of the chain is drawn first, then the first of the ranking.</param>
    public static Plot Of(SupplySized answer, IReadOnlyList<Part> pumps)
    {
        var volt = (double)answer.Asked.PumpVoltage.Value;
        var drawn = answer.Pumps.Select(pump => pump.Part).OrderBy(part => part != answer.Asked.Pump)
            .Select(id => pumps.FirstOrDefault(pump => pump.Id == id)).OfType<Part>().Select(pump => (pump.Label, Table: RecordedTable.Find(pump, "flow")))
            .Where(one => one.Table is not null && one.Table.At(volt, (double)one.Table.Ys[0]) is TableRead).Take(Drawn).ToList();
        double[] pressures = [.. drawn.SelectMany(one => one.Table?.Ys ?? []).Distinct().Order().Select(pascals => (double)pascals)];
        double? Delivery(RecordedTable? table, double pascals) => table?.At(volt, pascals) is TableRead read ? read.Value.Expected * LitresPerHourPerM3S : null;
        PlotLine Line((string Label, RecordedTable? Table) one, int index) => new(
            one.Label, [.. pressures.Select(pascals => (pascals, flow: Delivery(one.Table, pascals))).Where(point => point.flow is not null).Select(point =>
                new PlotPoint(point.pascals / Bar, point.flow ?? 0))])
        {
            IsMain = index == 0,
        };

        var (wanted, pressure) = (answer.Need.Wanted, answer.Need.PressureAtPump);
        return new CurvePlot(
            "Delivery of the pump over pressure",
                $"Delivery at {answer.Asked.PumpVoltage.Text} over the pressure at the pump, as recorded; level lines are what the goal wants, upright the pressure that the pump sees.",
            new PlotAxis("pressure at the pump, gauge", "bar"), new PlotAxis("delivery", "L/h", From: 0),
            [.. drawn.Select(Line)],
            [],
            [
                new PlotLimit(PlotDirection.Upright, pressure.Expected / Bar, "at the goal"),
                new PlotLimit(PlotDirection.Level, wanted.Expected * LitresPerHourPerM3S, "wanted"),
                new PlotLimit(PlotDirection.Level, wanted.High * LitresPerHourPerM3S, "greatest wanted"),
            ],
            new PlotTable(
                ["Pressure at the pump, bar", .. drawn.Select(one => $"{one.Label}, L/h")],
                [.. pressures.Select(pascals => (IReadOnlyList<string>)
                    [SumText.Number(pascals / Bar, "0.00"),
                        .. drawn.Select(one => Delivery(one.Table, pascals) is { } flow ? SumText.Number(flow, "0.0") : "not recorded")])]));
    }
}
