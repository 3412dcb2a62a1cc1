using PartMatch.Core.Measures;
using PartMatch.Core.Sums;

namespace PartMatch.Core.Air;

/// <summary>What a goal is held against: the family's own variants first, then what is published.</summary>
internal static class Yardsticks
{
    public static IReadOnlyList<Yardstick> Of(AirQuestion question) =>
    [
        .. question.Variants.OrderBy(variant => variant.Variant, StringComparer.Ordinal).Select(variant => new Yardstick(
            variant.Variant, BmepOf(variant).In(SumText.Bars, "0.0"), PistonSpeedOf(variant) is { } speed ? InMetresPerSecond(speed) : null,
            variant.RedlinePerMinute is null ? "as recorded, at its rating" : "as recorded: pressure at its rating, piston speed at its redline")),
        new Yardstick("published", EngineLoad.PublishedBmep(question.Boosted).Spread.In(SumText.Bars, "0.0"), InMetresPerSecond(EngineLoad.PublishedPistonSpeed.Spread),
            $"{EngineLoad.PublishedBmep(question.Boosted).Source}; {EngineLoad.PublishedPistonSpeed.Source}"),
    ];

    public static Spread BmepOf(RatedVariant variant) => EngineLoad.Bmep(variant.PowerW, variant.DisplacementM3, variant.SpeedPerMinute);

    public static Spread? PistonSpeedOf(RatedVariant variant) =>
        variant.StrokeM is { } stroke ? EngineLoad.PistonSpeed(stroke, variant.RedlinePerMinute ?? variant.SpeedPerMinute) : null;

    public static QuantityRange InMetresPerSecond(Spread speed)
    {
        static string Show(double value) => SumText.Number(value, "0.0");
        var numbers = Show(speed.Low) == Show(speed.High) ? Show(speed.Expected) : $"{Show(speed.Low)} … {Show(speed.Expected)} … {Show(speed.High)}";
        return new QuantityRange(speed.Low, speed.Expected, speed.High, "m/s", $"{numbers} m/s");
    }
}
