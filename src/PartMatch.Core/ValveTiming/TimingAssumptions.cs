using PartMatch.Core.Compression;
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
            yield return new Assumption($"{code}-closes", TimingText.Closes(lobe.Valve, lobe.OnMark.Closes), lobe.Valve == Valve.Intake
                ? $"{lobe.Sources}; {SeatsLater(lobe)}" : lobe.Sources);
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
                yield return new Assumption(name, show(figure.Spread), name == "compression-ratio" ? figure.Source + FromVolumes(setting) : figure.Source);
            }
        }

        yield return new Assumption("exponent", GeometryText.RangeOfRatio(EndExponent), EndOfCompression.Exponent.Source);
    }

    // Where it closes before the bottom, later is nearer to the bottom, where most is trapped.
    private static string SeatsLater(LobeSetting lobe) => "that is at the stated lift: the valve seats some degrees later, so "
        + (lobe.AtRest.Closes.Expected < 0 ? "more is trapped in truth until it seats past the bottom" : "less is trapped in truth");

    /// <summary>The compression sheet builds the ratio up from its volumes: where that makes another number, it is said here.</summary>
    private static string FromVolumes(TimingSetting setting)
    {
        if (setting.Question.CompressionRatio is not null || setting.Crank is not { } crank || setting.Ratio.Figure is not { } recorded
            || CylinderReading.Read(setting.Facts, new CompressionQuestion(setting.Question.Variant)).Inputs is not { } built)
        {
            return "";
        }

        string Both(double ratio) => $"{GeometryText.InRatio(ratio)} up from its volumes, which traps "
            + GeometryText.InRatio(TrappedCompression.Of(ratio, crank, setting.Intake.AtRest.Closes.Expected));
        var said = Both(built.Ratio.Expected);
        return said == Both(recorded.Spread.Expected) ? "" : $"; the compression sheet builds {said} at this closing";
    }

    private static Spread EndExponent => EndOfCompression.Exponent.Spread;
}
