using PartMatch.Core.Plots;
using static PartMatch.Core.Sums.SumText;

namespace PartMatch.Core.Injectors;

/// <summary>A sizing drawn. Of the catalogue the first of the ranking and what the maker fitted are drawn: more lines cannot be told apart.</summary>
public static class InjectorPlots
{
    private const int Drawn = 4;
    private const double Bar = 100_000;
    private const double GramsPerMinutePerKgS = 60_000;

    // Least and greatest pressure across that the drawing shows.
    private static readonly double[] _bars = [1, 1.5, 2, 2.5, 3, 3.5, 4, 4.5, 5, 5.5, 6];

    /// <summary>Flow over pressure, with the need drawn in.</summary>
    public static Plot Flow(InjectorsSized answer)
    {
        var (goalBar, need) = ((double)answer.PressureAcross.Value / Bar, answer.NeedPerInjector.Mass);
        var drawn = Chosen(answer.Injectors.Where(injector => injector.Flow is not null), injector => injector.Flow?.Text);
        double FlowOf(SizedInjector injector, double bar) => OrificeFlow.AtPressure(injector.Flow?.Expected ?? 0, goalBar, bar) * GramsPerMinutePerKgS;
        return new CurvePlot(
            "Flow over pressure", $"Mass flow of one injector held open over the pressure across it, for {Named(drawn)}; level lines are the need of the goal, least, expected and greatest.",
            new PlotAxis("pressure across", "bar"), new PlotAxis("flow held open", "g/min", From: 0),
            [.. drawn.Select((injector, index) =>
                new PlotLine(injector.Label, [.. _bars.Select(bar => new PlotPoint(bar, FlowOf(injector, bar)))]) { IsMain = index == 0 })],
            [],
            [
                new PlotLimit(PlotDirection.Upright, goalBar, "at the goal"),
                new PlotLimit(PlotDirection.Level, need.Low * GramsPerMinutePerKgS, "least need"),
                new PlotLimit(PlotDirection.Level, need.Expected * GramsPerMinutePerKgS, "need"),
                new PlotLimit(PlotDirection.Level, need.High * GramsPerMinutePerKgS, "greatest need"),
            ],
            new PlotTable(
                ["Pressure across, bar", .. drawn.Select(injector => $"{injector.Label}, g/min")],
                [.. _bars.Select(bar => (IReadOnlyList<string>)[Number(bar, "0.0"), .. drawn.Select(injector => Number(FlowOf(injector, bar), "0.0"))])]));
    }

    /// <summary>Duty over power: a straight line from the dead time's share upwards.</summary>
    public static Plot Duty(InjectorsSized answer)
    {
        var (goalKw, limit) = ((double)answer.Asked.Power.Value / 1000, (double)answer.Asked.Duty);
        var drawn = Chosen(answer.Injectors.Where(injector => injector is { Duty: not null, Pulse: not null }), injector => injector.Duty?.Text);
        double[] powers = [.. Enumerable.Range(0, 8).Select(step => goalKw * step / 5)];
        double DutyOf(SizedInjector injector, double kilowatts) => AtRest(answer, injector)
            + (((injector.Duty?.Expected ?? 0) - AtRest(answer, injector)) * kilowatts / goalKw);
        return new CurvePlot(
            "Duty over power", $"Share of the time open over the power at {answer.Asked.Speed.Text}, expected figures, for {Named(drawn)}; where a line crosses the limit its set gives out.",
            new PlotAxis("power at the crank", "kW"), new PlotAxis("duty", "%", From: 0),
            [.. drawn.Select((injector, index) =>
                new PlotLine(injector.Label, [.. powers.Select(power => new PlotPoint(power, DutyOf(injector, power) * 100))]) { IsMain = index == 0 })],
            [],
            [new PlotLimit(PlotDirection.Upright, goalKw, "goal"), new PlotLimit(PlotDirection.Level, limit * 100, "limit")],
            new PlotTable(
                ["Power, kW", .. drawn.Select(injector => $"{injector.Label}, %")],
                [.. powers.Select(power => (IReadOnlyList<string>)[Number(power, "0.#"),
                    .. drawn.Select(injector => Number(DutyOf(injector, power) * 100, "0.0"))])]));
    }

    /// <summary>Pressure across over boost, with a hose to the manifold and without.</summary>
    public static Plot Pressure(InjectorsSized answer)
    {
        var rows = answer.PressureThrough;
        PlotLine Line(string name, Func<PressureAtBoost, double> pascals, bool isMain = false) =>
            new(name, [.. rows.Select(row => new PlotPoint((double)row.Boost.Value / Bar, pascals(row) / Bar))]) { IsMain = isMain };
        return new CurvePlot(
            "Pressure across over boost", "Pressure across an injector from the vacuum of idling to the boost of the goal: as asked, with the regulator's hose on the manifold, and held over ambient.",
            new PlotAxis("manifold, gauge", "bar"), new PlotAxis("pressure across", "bar", From: 0),
            [Line("as asked", row => row.Across.Expected, isMain: true),
                Line("hose to the manifold", row => row.Referenced.Expected), Line("held over ambient", row => row.Fixed.Expected)],
            [],
            [new PlotLimit(PlotDirection.Upright, (double)answer.Asked.Boost.Value / Bar, "goal")],
            new PlotTable(
                ["Manifold, bar gauge", "As asked, bar", "Hose to the manifold, bar", "Held over ambient, bar", "Flow against the goal, %"],
                [.. rows.Select(row => (IReadOnlyList<string>)
                    [row.Boost.Text.Replace(" bar", "", StringComparison.Ordinal), InBars(row.Across.Expected), InBars(row.Referenced.Expected),
                        InBars(row.Fixed.Expected), Number(row.Flow.Expected * 100, "0.0")])]));
    }

    // The first of the ranking, of equal ones one; what the maker fitted is always among them, to be compared with.
    private static List<SizedInjector> Chosen(IEnumerable<SizedInjector> ranked, Func<SizedInjector, string?> line)
    {
        List<SizedInjector> told = [.. ranked.DistinctBy(line)];
        var first = told.Take(Drawn).ToList();
        return first.Exists(IsFitted) || told.Find(IsFitted) is not { } fitted ? first : [.. first.Take(Drawn - 1), fitted];

        static bool IsFitted(SizedInjector injector) => injector.Fit is { IsFitted: true };
    }

    // The dead time's share of the cycle: what is open without a drop.
    private static double AtRest(InjectorsSized answer, SizedInjector injector) =>
        answer.Asked.Shots * (injector.DeadTime?.Expected ?? 0) * (double)answer.Asked.Speed.Value / 120;

    private static string InBars(double pascals) => Number(pascals / Bar, "0.00");

    private static string Named(List<SizedInjector> drawn) => drawn.Count == 0 ? "no injector" : string.Join(", ", drawn.Select(injector => injector.Label));
}
