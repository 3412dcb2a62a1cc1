using PartMatch.Core.Catalogue;
using PartMatch.Core.Measures;
using PartMatch.Core.Sums;
using PartMatch.Core.ValveTiming;
using static PartMatch.Core.Sums.GeometryText;

namespace PartMatch.Core.Compression;

/// <summary>The questions about compression that have no honest answer.</summary>
internal static class CompressionRefusals
{
    // A skim beyond this leaves no head or block; it is more often a decimal point that slipped. Common practice, no source.
    internal const double DeepestSkimM = 0.005;
    private const double MostAngle = 180;

    // Wide of any engine that a builder lifts: ours, no source.
    private const double MostVolumeM3 = 0.010;
    private const double MostAreaM2 = 1;
    private const double FurthestDeckM = 0.050;

    public static SumRefused? OfParts(FamilyFacts facts, CompressionQuestion question) =>
        PartKinds.FindFault(facts, "head", question.Head, Roles.Head)
        ?? PartKinds.FindFault(facts, "head-gasket", question.HeadGasket, Roles.HeadGasket)
        ?? PartKinds.FindFault(facts, "piston", question.Piston, Roles.Piston)
        ?? PartKinds.FindFault(facts, "intake-cam", question.IntakeCamshaft, Roles.IntakeCamshaft, Roles.ExhaustCamshaft);

    public static SumRefused? OfQuestion(CompressionQuestion question) =>
        new (string Field, QuantityRange? Length)[]
        {
            ("bore", question.Bore), ("stroke", question.Stroke), ("rod-length", question.RodLength), ("deck-height", question.DeckHeight),
            ("compression-height", question.CompressionHeight), ("gasket-thickness", question.GasketThickness), ("gasket-bore", question.GasketBore),
        }.Select(one => ValveTimingRefusals.OfLength(one.Field, one.Length, Example(one.Field))).FirstOrDefault(refused => refused is not null)
        ?? OfSize("chamber-volume", question.ChamberVolume, double.Epsilon, MostVolumeM3, "more than 0 and at most 10 L", "for example 41 cm3")
        ?? OfSize("bowl-volume", question.BowlVolume, -MostVolumeM3, MostVolumeM3, "-10 L to 10 L: a dish positive, a dome negative", "for example 9.6 cm3")
        ?? OfSize("chamber-area", question.ChamberArea, double.Epsilon, MostAreaM2, "more than 0 and at most 1 m²", "for example 40 cm2")
        ?? OfSize("deck-clearance", question.DeckClearance, -FurthestDeckM, FurthestDeckM, "-50 mm to 50 mm: negative = above the block", "for example 0.2 mm")
        ?? OfSize("land-depth", question.LandDepth, 0, FurthestDeckM, "0 to 50 mm, below the face of the head", "leave it out for a land level with the face")
        ?? OfSkim("head-skim", question.HeadSkim)
        ?? OfSkim("block-skim", question.BlockSkim)
        ?? OfAngle("intake-closes", question.IntakeCloses)
        ?? OfAngle("intake-advance", question.IntakeAdvance)
        ?? ValveTimingRefusals.OfRatio("wanted-ratio", question.WantedRatio is { } wanted
            ? new QuantityRange((double)wanted.Value, (double)wanted.Value, (double)wanted.Value, wanted.Unit, wanted.Text) : null);

    /// <summary>What is wrong once the volumes are added up, or null.</summary>
    public static SumRefused? OfCylinder(CompressionQuestion question, CylinderInputs inputs)
    {
        var clearance = inputs.Of(cylinder => cylinder.ClearanceM3);
        if (clearance.Low <= 0)
        {
            return new SumRefused(
                "out-of-range", FieldToBlame(question), "Added up, no room is left over the piston.", RangeInCm3(clearance).Text,
                "a clearance volume of more than 0 cm³",
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

    private static string Example(string field) => field switch
    {
        "bore" => "85 mm",
        "stroke" => "94 mm",
        "rod-length" => "152 mm",
        "deck-height" => "230.2 mm",
        "compression-height" => "31 mm",
        "gasket-thickness" => "0.75 mm",
        _ => "86 mm",
    };

    // What was typed is more often wrong than what is recorded.
    private static string FieldToBlame(CompressionQuestion question) => question switch
    {
        { BowlVolume: not null } => "bowl-volume",
        { DeckClearance: not null } => "deck-clearance",
        { BlockSkim: not null } => "block-skim",
        _ => "chamber-volume",
    };

    private static SumRefused? OfSize(string field, QuantityRange? size, double least, double most, string expected, string mend) =>
        size is null || (size.Low >= least && size.High <= most) ? null
            : new SumRefused("out-of-range", field, $"Outside what a {field.Replace('-', ' ')} can be.", size.Text, expected, mend);

    private static SumRefused? OfSkim(string field, QuantityRange? skim) => skim is { Low: < 0 } or { High: > DeepestSkimM }
        ? new SumRefused("out-of-range", field, "Outside what is taken off a face.", skim.Text, "0 to 5 mm",
            "a skim is tenths of a millimetre, for example 0.3 mm: look for a decimal point that slipped")
        : null;

    private static SumRefused? OfAngle(string field, QuantityRange? angle) => angle is not null
        && Math.Max(Math.Abs(angle.Low), Math.Abs(angle.High)) >= MostAngle
        ? new SumRefused("out-of-range", field, "Half a turn of the crankshaft and more is another stroke.", angle.Text, "within 180°",
            "degrees of the crank; negative = before bottom dead centre, or retarded")
        : null;
}
