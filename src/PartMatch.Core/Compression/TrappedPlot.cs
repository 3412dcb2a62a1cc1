using PartMatch.Core.Plots;
using PartMatch.Core.Sums;
using PartMatch.Core.ValveTiming;

namespace PartMatch.Core.Compression;

/// <summary>What the trapped ratio is drawn from: expected figures.</summary>
/// <param name="Ratio">Geometric.</param>
/// <param name="Closes">After bottom dead centre.</param>
internal sealed record TrappedCurve(double Ratio, SliderCrank Crank, double Closes);

/// <summary>Trapped compression over the closing of the intake valve, with the family's own variants as points.</summary>
public static class TrappedPlot
{
    private const double Reach = 120;
    private const double Step = 5;
    private const double TableStep = 20;

    /// <summary>Null where the trapped ratio is not known.</summary>
    public static Plot? Of(ValveTimingAnswer answer) => answer.Curve is { } curve ? Of(curve, answer.Asked.Variant, answer.Variants) : null;

    /// <inheritdoc cref="Of(ValveTimingAnswer)"/>
    public static Plot? Of(CompressionAnswer answer) => answer.Curve is { } curve ? Of(curve, answer.Asked.Variant, answer.Variants) : null;

    private static CurvePlot Of(TrappedCurve curve, string asked, IReadOnlyList<VariantYardstick> variants)
    {
        asked = variants.FirstOrDefault(one => one.Variant == asked)?.Name ?? asked;
        double At(double closes) => TrappedCompression.Of(curve.Ratio, curve.Crank, closes);
        var line = Points(Step, At);
        PlotPoint[] own = [.. variants.Where(one => one.Trapped is not null && one.IntakeCloses is not null).Select(one =>
            new PlotPoint(one.IntakeCloses!.Expected, one.Trapped!.Expected) { Name = one.Name })];
        var here = At(curve.Closes);
        return new CurvePlot(
            "Trapped compression over intake closing",
            $"With a compression ratio of {GeometryText.InRatio(curve.Ratio)} most is trapped when the valve closes at bottom dead centre, and less the "
            + "further from it on either side. "
            + $"Closing {TimingText.IntakeCloses(Measures.Spread.Exactly(curve.Closes)).Text} traps {GeometryText.InRatio(here)}.",
            new PlotAxis("Intake closes after bottom dead centre (minus = before)", "° of the crank", -Reach, Reach) { Step = 30 },
            new PlotAxis("Trapped compression ratio", ""),
            [
                new PlotLine($"{asked} as asked, compression ratio {GeometryText.InRatio(curve.Ratio)}", line) { IsMain = true },
                .. own.Length == 0 ? [] : new[] { new PlotLine($"as built: "
                    + $"{string.Join(", ", variants.Where(one => one.Trapped is not null).Select(one => one.Name))}", own) { IsPointsOnly = true } },
            ],
            [],
            [
                new PlotLimit(PlotDirection.Upright, 0, "bottom dead centre"),
                new PlotLimit(PlotDirection.Upright, curve.Closes, $"closes here: {GeometryText.InRatio(here)}"),
            ],
            new PlotTable(
                ["Intake closes, ° of the crank after bottom dead centre", "Trapped compression ratio", "Of"],
                [
                    .. Points(TableStep, At).Append(new PlotPoint(curve.Closes, here)).OrderBy(point => point.X)
                        .Select(point => (IReadOnlyList<string>)[GeometryText.InDegrees(point.X, "0.#"), GeometryText.InRatio(point.Y), asked + " as asked"]),
                    .. variants.Where(one => one.Trapped is not null && one.IntakeCloses is not null)
                        .Select(one => (IReadOnlyList<string>)[GeometryText.InDegrees(one.IntakeCloses!.Expected, "0.#"),
                            GeometryText.InRatio(one.Trapped!.Expected), one.Name + " as built"]),
                ]));
    }

    private static PlotPoint[] Points(double step, Func<double, double> at) =>
        [.. Enumerable.Range(0, (int)(2 * Reach / step) + 1).Select(index => (index * step) - Reach).Select(closes => new PlotPoint(closes, at(closes)))];
}
