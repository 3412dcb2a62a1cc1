using PartMatch.Core.Measures;
using PartMatch.Core.Sums;
using PartMatch.Core.ValveTiming;
using static PartMatch.Core.Sums.GeometryText;

namespace PartMatch.Core.Compression;

/// <summary>The questions about compression that have no honest answer.</summary>
internal static class CompressionRefusals
{
    // A skim beyond this leaves no head or block; it is more often a decimal point that slipped. Common practice, no source.
    private const double DeepestSkimM = 0.005;
    private const double MostAngle = 180;

    public static SumRefused? OfQuestion(CompressionQuestion question) =>
        new (string Field, QuantityRange? Length)[]
        {
            ("bore", question.Bore), ("stroke", question.Stroke), ("rod-length", question.RodLength), ("deck-height", question.DeckHeight),
            ("compression-height", question.CompressionHeight),
            ("chamber-volume", question.ChamberVolume), ("gasket-thickness", question.GasketThickness), ("gasket-bore", question.GasketBore),
            ("chamber-area", question.ChamberArea),
        }.Select(one => ValveTimingRefusals.OfLength(one.Field, one.Length)).FirstOrDefault(refused => refused is not null)
        ?? OfSkim("head-skim", question.HeadSkim)
        ?? OfSkim("block-skim", question.BlockSkim)
        ?? OfAngle("intake-closes", question.IntakeCloses)
        ?? OfAngle("intake-advance", question.IntakeAdvance)
        ?? ValveTimingRefusals.OfRatio("wanted-ratio", question.WantedRatio is { } wanted
            ? new QuantityRange((double)wanted.Value, (double)wanted.Value, (double)wanted.Value, wanted.Unit, wanted.Text) : null);

    /// <summary>What is wrong once the volumes are added up, or null.</summary>
    public static SumRefused? OfCylinder(CylinderInputs inputs)
    {
        var clearance = inputs.Of(cylinder => cylinder.ClearanceM3);
        if (clearance.Low <= 0)
        {
            return new SumRefused(
                "out-of-range", "chamber-volume", "Added up, no room is left over the piston.", RangeInCm3(clearance).Text,
                "a clearance volume of more than 0 cm3",
                "a dome is a negative bowl-volume, a dish a positive one; a piston that stands above the block is a negative deck-clearance");
        }

        if (inputs.Of(cylinder => cylinder.ChamberLeftM3).Low < 0)
        {
            return new SumRefused(
                "out-of-range", "head-skim", "The skim takes more than the chamber holds.", RangeInCm3(inputs.Of(cylinder => cylinder.ChamberLeftM3)).Text,
                "a chamber that is left",
                "a chamber with squish lands opens over less than the bore: measure the opening and give chamber-area=");
        }

        var expected = inputs.Expected;
        var stroke = inputs.Of(cylinder => cylinder.StrokeM);
        return inputs.Closes is { } closes && Math.Max(Math.Abs(closes.Low), Math.Abs(closes.High)) >= MostAngle
            ? new SumRefused("out-of-range", "intake-closes", "Closing half a turn and more from bottom dead centre is another stroke.",
                TimingText.IntakeCloses(closes).Text, "less than 180° from it", "negative = before")
            : double.IsFinite(expected.RodM) ? EngineGeometry.FindFault(stroke, inputs.Of(cylinder => cylinder.RodM)) : null;
    }

    private static SumRefused? OfSkim(string field, QuantityRange? skim) => skim is { Low: < 0 } or { High: > DeepestSkimM }
        ? new SumRefused("out-of-range", field, "Outside what is taken off a face.", skim.Text, "0 to 5 mm", "a thicker gasket is gasket-thickness=")
        : null;

    private static SumRefused? OfAngle(string field, QuantityRange? angle) => angle is not null
        && Math.Max(Math.Abs(angle.Low), Math.Abs(angle.High)) >= MostAngle
        ? new SumRefused("out-of-range", field, "Half a turn of the crankshaft and more is another stroke.", angle.Text, "within 180°",
            "degrees of the crank; negative = before bottom dead centre, or retarded")
        : null;
}
