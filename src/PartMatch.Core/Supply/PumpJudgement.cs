using PartMatch.Core.Catalogue;
using PartMatch.Core.Fit;
using PartMatch.Core.Injectors;
using PartMatch.Core.Measures;
using PartMatch.Core.Mixture;
using PartMatch.Core.Sums;

namespace PartMatch.Core.Supply;

/// <summary>Does this pump deliver what the goal wants, at the pressure that it sees?</summary>
internal static class PumpJudgement
{
    private const double Rounding = 1e-9;

    public static SizedPump Of(SupplyGoal goal, Part pump)
    {
        var blank = new SizedPump(pump.Id, pump.Name, Enough.NotKnown, "", WettedParts.Of(goal.Goal.Fuel, goal.Goal.Question.Ethanol, pump),
            [])
        { ReliefPressure = ReliefOf(pump)?.In(SumText.Bars, "0.0") };
        if (RecordedTable.Find(pump, "flow") is not { } table)
        {
            return blank with { Because = "Not known: its delivery is not recorded." };
        }

        var (volt, pressure) = (Spread.Of(goal.PumpVoltage), goal.AtPumpPa);
        // An open relief valve needs no table to be told.
        if (ReliefOf(pump) is { } relief && pressure.Expected >= relief.Expected && table.At(volt, pressure) is not TableRead)
        {
            return blank with { Enough = Enough.No, Because = IsOpen(pressure, relief) };
        }

        if (table.At(volt, pressure) is not TableRead { Value: var flow })
        {
            if (MostOf(goal, table, ReliefOf(pump)) is { } met)
            {
                return Meeting(goal, blank, met);
            }

            var where = $"{volt.In(SumText.Volt, "0.0#").Text} and {SumText.InBar(pressure)}";
            return blank with
            {
                Because = table.At(volt, pressure) is TableGap
                    ? $"Not known: its table has a gap at {where}."
                    : $"Not known: its delivery is recorded for {SumText.Number((double)table.Xs[0], "0.0#")} … {SumText.Number((double)table.Xs[^1], "0.0#")} V and "
                        + $"{SumText.InBar(table.Ys[0])} … {SumText.InBar(table.Ys[^1])} at its outlet, not for {where}; nothing is read beyond a table.",
            };
        }

        return Judged(goal, blank, table, flow, pressure, ReliefOf(pump));
    }

    /// <summary>Power that a flow carries, W: flow × density ÷ (BSFC × (1 + return)).</summary>
    public static Spread PowerOf(SupplyGoal goal, Spread flowM3S) =>
        flowM3S * goal.Goal.Density.Spread / (goal.Goal.Bsfc.Spread * (Spread.Exactly(1) + goal.Return.Spread));

    public static WorkingStep PowerStep(SupplyGoal goal, Spread flowM3S, string what, string source) => new(
        what, "flow × density ÷ (BSFC × (1 + return))",
        $"{SumText.In(SumText.LitresPerHour, flowM3S.Expected, "0.0")} × {SumText.Number(goal.Goal.Density.Spread.Expected, "0.#")} g/L ÷ ({SumText.InGramsPerKilowattHour(goal.Goal.Bsfc.Spread.Expected)} × {SumText.Number(1 + goal.Return.Spread.Expected, "0.00")})",
        SumText.In(SumText.Kilowatts, PowerOf(goal, flowM3S).Expected, "0.0"), source);

    public static Spread? ReliefOf(Part pump) =>
        ValueSelection.Of(pump, "relief-pressure") is StatedQuantity { Possible: { Low: > 0 and var low, High: { } high } } relief
        ? new Spread((double)low, (double)relief.Nominal, (double)high)
        : null;

    private static SizedPump Judged(SupplyGoal goal, SizedPump blank, RecordedTable table, Spread flow, Spread pressure, Spread? relief)
    {
        var wanted = goal.WantedM3S;
        var margin = MarginOf(flow, wanted);
        var opens = relief is { } valve && pressure.Expected >= valve.Expected;
        var mayOpen = relief is { } spring && pressure.High >= spring.Low;
        var enough = opens || margin.Expected < -Rounding ? Enough.No : margin.Low >= -Rounding && !mayOpen ? Enough.Yes : Enough.NotKnown;
        var most = MostOf(goal, table, relief);
        var (shown, wants) = (flow.In(SumText.LitresPerHour, "0.0"), wanted.In(SumText.LitresPerHour, "0.0"));
        return blank with
        {
            Enough = enough,
            Because = opens
                ? IsOpen(pressure, relief ?? pressure)
                : $"{InWords(enough, margin)}: {shown.Text} at {SumText.InBar(pressure)} and {goal.PumpVoltage.Text}, "
                    + $"wanted {wants.Text}{(mayOpen ? $"; its relief valve may open ({SumText.InBar(relief ?? pressure)})" : "")}."
                    + (most is null ? " What power it carries is not known: its table ends before its delivery meets the loss of the line." : ""),
            Flow = shown,
            Margin = margin.In(SumText.Percent, "0"),
            Power = most is { } carried ? PowerOf(goal, carried).In(SumText.Kilowatts, "0") : null,
            Working = new WorkingLater(() =>
            [
                new("delivery", "its table at the voltage and the pressure at the pump", $"{goal.PumpVoltage.Text}, {SumText.InBar(pressure.Expected)}",
                    SumText.In(SumText.LitresPerHour, flow.Expected, "0.0"), "recorded; bilinear between its points"),
                new("margin", "delivery ÷ wanted − 1",
                    $"{SumText.In(SumText.LitresPerHour, flow.Expected, "0.0")} ÷ {SumText.In(SumText.LitresPerHour, wanted.Expected, "0.0")} − 1",
                        SumText.InPercent(margin.Expected, "0"), "definition"),
                .. most is not { } met ? Array.Empty<WorkingStep>() :
                [
                    new("flow at which pump and line meet", "the flow that the pump delivers at rail gauge + loss of the line at that flow",
                        $"rail {SumText.InBar(goal.Goal.Rail.Gauge.Expected)} + {SumText.InBar(goal.Line.Loss.Spread.Expected)} × ({SumText.In(SumText.LitresPerHour, met.Expected, "0.0")} ÷ {SumText.In(SumText.LitresPerHour, goal.Line.AtM3S.Expected, "0.#")})² = {SumText.InBar((goal.Goal.Rail.Gauge + goal.Line.At(met)).Expected)}",
                        SumText.In(SumText.LitresPerHour, met.Expected, "0.0"), $"its table at {goal.PumpVoltage.Text}; loss ∝ flow², turbulent flow (from memory)"),
                    PowerStep(goal, met, "power that it carries", "the sums above turned round; the loss is that of its own flow"),
                ],
            ]),
        };
    }

    // The table need not reach the worst pressure of the goal: with less flow than that wants, pump and line meet below it.
    private static SizedPump Meeting(SupplyGoal goal, SizedPump blank, Spread met)
    {
        var margin = MarginOf(met, goal.WantedM3S);
        var enough = margin.Expected < -Rounding ? Enough.No : margin.Low >= -Rounding ? Enough.Yes : Enough.NotKnown;
        return blank with
        {
            Enough = enough,
            Because = $"{InWords(enough, margin)}: pump and line meet at {met.In(SumText.LitresPerHour, "0.0").Text}, wanted "
                + $"{goal.WantedM3S.In(SumText.LitresPerHour, "0.0").Text}; at the {SumText.InBar(goal.AtPumpPa)} of the goal its table ends.",
            Power = PowerOf(goal, met).In(SumText.Kilowatts, "0"),
        };
    }

    private static Spread MarginOf(Spread flow, Spread wanted) =>
        new((flow.Low / wanted.High) - 1, (flow.Expected / wanted.Expected) - 1, (flow.High / wanted.Low) - 1);

    /// <summary>What pump and line pass together, never more than the line passes before the relief valve opens.</summary>
    private static Spread? MostOf(SupplyGoal goal, RecordedTable table, Spread? relief)
    {
        if (PumpPoint.Of(table, Spread.Of(goal.PumpVoltage), goal.Goal.Rail.Gauge, goal.Line) is not { FlowM3S: { } met, IsLeast: false })
        {
            return null;
        }

        var line = relief is { } valve && goal.Line.Loss.Spread.Low > 0 ? goal.Line.FlowThatLoses(valve - goal.Goal.Rail.Gauge) : met;
        return new Spread(Math.Min(met.Low, line.Low), Math.Min(met.Expected, line.Expected), Math.Min(met.High, line.High));
    }

    private static string IsOpen(Spread pressure, Spread relief) =>
        $"Not enough: at {SumText.InBar(pressure)} its relief valve is open ({SumText.InBar(relief)}).";

    private static string InWords(Enough enough, Spread margin) => enough switch
    {
        Enough.Yes => "Enough even in the worst case",
        Enough.No when margin.High < 0 => "Not enough even in the best case",
        Enough.No => "Not enough with the expected figures, only in the best case",
        _ => "Enough if the expected figures hold, not in the worst case",
    };
}
