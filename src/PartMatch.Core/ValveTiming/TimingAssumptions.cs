using PartMatch.Core.Measures;
using PartMatch.Core.Sums;

namespace PartMatch.Core.ValveTiming;

/// <summary>What was taken as true, in the order of use.</summary>
internal static class TimingAssumptions
{
    private static readonly Spread _none = Spread.Exactly(0);

    public static IEnumerable<Assumption> Of(TimingSetting setting)
    {
        foreach (var lobe in new[] { setting.Intake, setting.Exhaust })
        {
            var code = TimingText.Code(lobe.Valve);
            yield return new Assumption($"{code}-opens", TimingText.Opens(lobe.Valve, lobe.OnMark.Opens), lobe.Sources);
            yield return new Assumption($"{code}-closes", TimingText.Closes(lobe.Valve, lobe.OnMark.Closes), lobe.Sources);
            if (lobe.Phaser.Moves)
            {
                yield return new Assumption(
                    $"{code}-phaser-range", GeometryText.RangeInDegrees(lobe.Phaser.Range),
                    $"rests {(lobe.Phaser.Rest == PhaserRest.Advanced ? "advanced" : "retarded")}; the recorded events hold at rest");
            }
        }

        if (setting.Intake.Parts.Concat(setting.Exhaust.Parts).Any(part => !part.IsFitted))
        {
            yield return new Assumption("mark", GeometryText.RangeInDegrees(_none),
                "a part of another engine is taken to stand to its mark here as it does there: check with a degree wheel");
        }

        foreach (var (name, known, show) in new[]
        {
            ("compression-ratio", setting.Ratio.Figure, (Func<Spread, QuantityRange>)(ratio => GeometryText.RangeOfRatio(ratio))),
            ("stroke", setting.Stroke.Figure, stroke => GeometryText.RangeInMm(stroke)),
            ("rod-length", setting.Rod.Figure, rod => GeometryText.RangeInMm(rod)),
        })
        {
            if (known is { } figure)
            {
                yield return new Assumption(name, show(figure.Spread), figure.Source);
            }
        }

        yield return new Assumption("exponent", GeometryText.RangeOfRatio(EndExponent), Compression.EndOfCompression.Exponent.Source);
    }

    private static Spread EndExponent => Compression.EndOfCompression.Exponent.Spread;
}
