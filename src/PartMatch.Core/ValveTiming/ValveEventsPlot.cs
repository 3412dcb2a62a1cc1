using PartMatch.Core.Plots;

namespace PartMatch.Core.ValveTiming;

/// <summary>When the valves are open, as bars over the crank angle around the top dead centre of overlap.</summary>
public static class ValveEventsPlot
{
    private const double HalfTurn = 180;

    public static Plot Of(ValveTimingAnswer answer)
    {
        TimingState[] states = [answer.AtRest, .. answer.Swept.Where(state => state.What.EndsWith("fully moved", StringComparison.Ordinal)),
            .. answer.AsBuilt is { } built && answer.Changes.Count > 0 ? [built] : Array.Empty<TimingState>()];
        return new RowPlot(
            "Valve events",
            $"Bars show when each valve is open at {answer.Asked.AtLift.Text} lift or more. At rest the intake valve opens {answer.AtRest.IntakeOpens.Text} "
            + $"and closes {answer.AtRest.IntakeCloses.Text}; "
            + $"the exhaust valve opens {answer.AtRest.ExhaustOpens.Text} and closes {answer.AtRest.ExhaustCloses.Text}; overlap {answer.AtRest.Overlap.Text}.",
            new PlotAxis("Crank angle after the top dead centre of overlap", "°", -270, 270) { Step = 90 },
            [.. states.SelectMany(state => Rows(state, state == answer.AsBuilt))],
            [
                new PlotLimit(PlotDirection.Upright, -HalfTurn, "bottom dead centre"),
                new PlotLimit(PlotDirection.Upright, 0, "top dead centre"),
                new PlotLimit(PlotDirection.Upright, HalfTurn, "bottom dead centre"),
            ],
            new PlotTable(
                ["Setting", "Valve", "Opens", "Closes", "Duration, ° of the crank", "Overlap, ° of the crank"],
                [
                    .. states.SelectMany(state => new IReadOnlyList<string>[]
                    {
                        [state.What, "exhaust", state.ExhaustOpens.Text, state.ExhaustCloses.Text, state.ExhaustDuration.Text, state.Overlap.Text],
                        [state.What, "intake", state.IntakeOpens.Text, state.IntakeCloses.Text, state.IntakeDuration.Text, state.Overlap.Text],
                    }),
                ]));
    }

    private static IEnumerable<PlotRow> Rows(TimingState state, bool isFaint)
    {
        yield return new PlotRow(
            $"exhaust, {state.What}",
            [new PlotBar(-HalfTurn - state.ExhaustOpens.Expected, state.ExhaustCloses.Expected, state.ExhaustDuration.Text) { IsFaint = isFaint }]);
        yield return new PlotRow(
            $"intake, {state.What}",
            [new PlotBar(-state.IntakeOpens.Expected, HalfTurn + state.IntakeCloses.Expected, state.IntakeDuration.Text) { IsFaint = isFaint }]);
    }
}
