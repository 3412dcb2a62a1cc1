using PartMatch.Core.Fit;
using PartMatch.Core.Injectors;
using PartMatch.Core.Measures;
using PartMatch.Core.Sums;

namespace PartMatch.Core.Supply;

/// <summary>Can regulator and return carry back what the pump gives and an idling engine does not burn?</summary>
/// <remarks>A pump at full voltage gives most where least is wanted. What cannot flow back lifts the pressure, whatever the regulator is set to.</remarks>
internal static class ReturnPath
{
    public const string Link = "return";

    private const string Creeps = "where regulator and return line cannot carry it, the pressure creeps up at idle and the engine runs rich";

    private const string Source = "what the pump gives is burnt or flows back; its voltage as at the goal";

    /// <summary>Null where a control unit slows the pump instead.</summary>
    public static SupplyLink? Of(SupplyQuestion question, SupplyGoal goal, IdleNeed? idle)
    {
        if (goal.Goal.Rail.Supply == FuelSupply.ReturnlessControlled)
        {
            return null;
        }

        var part = question.ReturnCapacity is null ? question.Regulator?.Id : null;
        SupplyLink NotKnown(string because) => new(Link, part, Enough.NotKnown, $"Not known: {because}");
        if (question.Pump is not { } pump || RecordedTable.Find(pump, "flow") is not { } table)
        {
            return NotKnown($"what the pump gives at idle is not recorded, so neither is what must flow back; {Creeps}.");
        }

        // On a rail with a return all that the pump gives passes the line; a regulator in the tank sits before it.
        var (volt, rail, line) = (Spread.Of(goal.PumpVoltage), RailPa(goal), goal.Goal.Rail.Supply == FuelSupply.ReturnlessFixed ? LineLoss.None : goal.Line);
        var (found, isLeast) = PumpPoint.Of(table, volt, rail, line);
        if (found is not { } delivered)
        {
            return NotKnown($"the pump is not recorded at {goal.PumpVoltage.Text} and a rail of {SumText.InBar(rail)}, "
                + $"so what must flow back at idle is not known; {Creeps}.");
        }

        var pressure = rail + line.At(delivered);
        var burnt = idle is null ? Spread.Exactly(0) : idle.FuelFlowKgS / goal.Goal.Density.Spread;
        var back = (delivered - burnt).NotNegative();
        var burns = idle is null ? "what the engine burns there is not known and taken as nothing" : $"the engine burns {burnt.In(SumText.LitresPerHour, "0.0").Text}";
        var must = $"{(isLeast ? "at least " : "")}{back.In(SumText.LitresPerHour, "0").Text} must flow back at idle "
            + $"({(isLeast ? $"the pump’s table begins at {SumText.InBar(table.Ys[0])}, it may see less" : $"the pump sees {SumText.InBar(pressure)}")}, {burns})";
        var working = new[]
        {
            new WorkingStep(
                $"flow back at idle{(isLeast ? ", at least" : "")}", "delivery of the pump there − fuel burnt at idle",
                $"{SumText.In(SumText.LitresPerHour, delivered.Expected, "0.0")} − {SumText.In(SumText.LitresPerHour, burnt.Expected, "0.0")}",
                SumText.In(SumText.LitresPerHour, back.Expected, "0.0"), Source),
        };
        return Judged(CapacityOf(question), back, isLeast, must, part) with { Working = working };
    }

    private static SupplyLink Judged(Spread? capacity, Spread back, bool isLeast, string must, string? part)
    {
        if (capacity is not { } carries)
        {
            return new SupplyLink(Link, part, Enough.NotKnown,
                $"Not known: what regulator and return line carry is not recorded; {must}, and {Creeps}. "
                + "Read the rail pressure at idle on a gauge, or give return-capacity=.");
        }

        var shown = carries.In(SumText.LitresPerHour, "0").Text;
        return (back.Expected > carries.Expected, back.High <= carries.Low && !isLeast) switch
        {
            (true, _) => new SupplyLink(Link, part, Enough.No,
                $"Not enough: the return carries {shown}, and {must}: the pressure creeps up at idle and the engine runs rich. "
                + "A wider return or a slower pump; measure it at the rail."),
            (_, true) => new SupplyLink(Link, part, Enough.Yes, $"Enough even in the worst case: the return carries {shown}, and {must}."),
            _ => new SupplyLink(Link, part, Enough.NotKnown, $"Not sure: the return carries {shown}, and {must}. Read the rail pressure at idle on a gauge."),
        };
    }

    private static Spread RailPa(SupplyGoal goal) => goal.Goal.Rail.Supply == FuelSupply.ReturnManifold
        ? (goal.Goal.Rail.PressurePa + AtIdle(goal)).NotNegative()
        : goal.Goal.Rail.PressurePa;

    private static Spread AtIdle(SupplyGoal goal) => goal.Goal.Question.IdleManifold is { } given ? Spread.Of(given) : IdleNeed.Manifold.Spread;

    public static Spread? CapacityOf(SupplyQuestion question) => question.ReturnCapacity is { } typed ? Spread.Of(typed)
        : question.Regulator is { } regulator && ValueSelection.Of(regulator, "return-capacity") is StatedQuantity recorded
            && recorded.Possible is { Low: > 0 and var low, High: { } high }
            ? new Spread((double)low, (double)recorded.Nominal, (double)high)
            : null;
}
