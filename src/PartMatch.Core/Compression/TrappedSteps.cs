using PartMatch.Core.Measures;
using PartMatch.Core.Sums;
using static PartMatch.Core.Sums.GeometryText;

namespace PartMatch.Core.Compression;

/// <summary>From the closing of the intake valve to the trapped ratio, for the pencil.</summary>
internal static class TrappedSteps
{
    private const double SameRatio = 0.005;
    private const string Heywood = "Heywood 1988, equations 2.4 to 2.6 (equation numbers from memory)";

    public static IEnumerable<WorkingStep> Of(double ratio, SliderCrank crank, double closes)
    {
        var angle = 180 + closes;
        var (a, l, x) = (InMm(crank.ThrowM), InMm(crank.RodM), crank.BelowTopM(angle));
        yield return new WorkingStep(
            "crank angle at the closing", "180° + closing after bottom dead centre", $"180° + ({InDegrees(closes)})",
            $"θ = {InDegrees(angle)} after top dead centre", "the sign convention");
        yield return new WorkingStep(
            "piston below its top at the closing", "a + l − a × cos θ − √(l² − (a × sin θ)²), a = stroke ÷ 2, l = rod length",
            $"{a} + {l} − {a} × cos {InDegrees(angle)} − √(({l})² − ({a} × sin {InDegrees(angle)})²)", InMm(x), Heywood);
        yield return new WorkingStep(
            "share of the stroke that is enclosed", "piston below its top ÷ stroke", $"{InMm(x)} ÷ {InMm(crank.StrokeM)}",
            SumText.Number(x / crank.StrokeM, "0.0000"), "definition");
        yield return new WorkingStep(
            "trapped compression ratio", "1 + (compression ratio − 1) × that share",
            $"1 + ({InRatio(ratio)} − 1) × {SumText.Number(x / crank.StrokeM, "0.0000")}",
            InRatio(TrappedCompression.Of(ratio, crank, closes)), "volume at the closing ÷ clearance volume; geometry only");
    }

    /// <summary>
    /// The pressure at the end of compression against the same variant as built; nothing where that is what was asked about, or is not known.
    /// </summary>
    public static IEnumerable<WorkingStep> AgainstAsBuilt(Spread? trapped, IReadOnlyList<VariantYardstick> variants) => variants
        .Where(one => one.IsAsked && one is { Trapped: not null, EndOfCompression: not null } && trapped is { } here
            && Math.Abs(here.Expected - one.Trapped.Expected) > SameRatio)
        .Select(one => new WorkingStep(
            $"end-of-compression pressure against {one.Name} as built", "(trapped ÷ trapped as built) to the power n, from the same pressure at the closing",
            $"({InRatio(trapped?.Expected ?? 0)} ÷ {InRatio(one.Trapped?.Expected ?? 0)}) ^ {InRatio(EndOfCompression.Exponent.Spread.Expected)}",
            $"× {InRatio(one.EndOfCompression?.Expected ?? 0)}", EndOfCompression.Exponent.Source));
}
