using PartMatch.Core.Measures;
using PartMatch.Core.Sums;

namespace PartMatch.Core.Air;

/// <summary>What a goal is held against: the family's own variants first, then what is published.</summary>
internal static class Yardsticks
{
    public static IReadOnlyList<Yardstick> Of(AirQuestion question) =>
    [
        .. question.Variants.OrderBy(variant => variant.Variant, StringComparer.Ordinal).Select(variant => new Yardstick(
            variant.Variant, InBars(BmepOf(variant)), PistonSpeedOf(variant) is { } speed ? InMetresPerSecond(speed) : null,
            variant.RedlinePerMinute is null ? "as recorded, at its rating" : "as recorded: pressure at its rating, piston speed at its redline") {
            Name = variant.Name,
        }),
        new Yardstick("published", EngineLoad.PublishedBmep(question.Boosted).Spread.In(SumText.Bars, "0.0"),
            InMetresPerSecond(EngineLoad.PublishedPistonSpeed.Spread),
            $"{EngineLoad.PublishedBmep(question.Boosted).Source}; {EngineLoad.PublishedPistonSpeed.Source}"),
    ];

    public static Spread BmepOf(RatedVariant variant) => EngineLoad.Bmep(variant.PowerW, variant.DisplacementM3, variant.SpeedPerMinute);

    public static Spread? PistonSpeedOf(RatedVariant variant) =>
        variant.StrokeM is { } stroke ? EngineLoad.PistonSpeed(stroke, variant.RedlinePerMinute ?? variant.SpeedPerMinute) : null;

    public static QuantityRange InMetresPerSecond(Spread speed) => new(speed.Low, speed.Expected, speed.High, "m/s", $"{Numbers(speed)} m/s");

    private static QuantityRange InBars(Spread pascals) => pascals.In(SumText.Bars, "0.0") with { Text = $"{Numbers(pascals / 100_000)} bar" };

    // What a tolerance of the bore does to it is not worth three numbers that read alike.
    private static string Numbers(Spread value)
    {
        static string Show(double number) => SumText.Number(number, "0.0");
        return Show(value.Low) == Show(value.High) ? Show(value.Expected) : $"{Show(value.Low)} … {Show(value.Expected)} … {Show(value.High)}";
    }
}
