using PartMatch.Core.Measures;
using PartMatch.Core.Sums;
using static PartMatch.Core.Sums.GeometryText;

namespace PartMatch.Core.Compression;

/// <summary>The sums for the pencil, with the expected figures.</summary>
internal static class CompressionSteps
{
    private const string Definition = "definition";

    public static IEnumerable<WorkingStep> Of(CylinderInputs inputs)
    {
        var one = inputs.Expected;
        double? Find(string name) => inputs.Assumed.FirstOrDefault(assumed => assumed.Name == name)?.Range.Expected;
        yield return new WorkingStep("swept volume", "π ÷ 4 × bore² × stroke", $"π ÷ 4 × ({InMm(one.BoreM)})² × {InMm(one.StrokeM)} ÷ 1000 mm³/cm³",
            InCm3(one.SweptM3), Definition);
        yield return new WorkingStep(
            "gasket volume", "π ÷ 4 × gasket bore² × thickness tightened", $"π ÷ 4 × ({InMm(one.GasketBoreM)})² × {InMm(one.GasketM, "0.00#")} ÷ 1000 mm³/cm³",
            InCm3(one.GasketM3, "0.000"), Definition);
        if (Find("deck-height") is { } face && Find("compression-height") is { } crown)
        {
            yield return new WorkingStep(
                "deck", "deck height − stroke ÷ 2 − rod length − compression height",
                $"{InMm(face, "0.00#")} − {InMm(one.StrokeM, "0.00#")} ÷ 2 − {InMm(one.RodM, "0.00#")} − {InMm(crown, "0.00#")}",
                InMm(one.DeckM, "0.00#"), "crown edge below the block's face at top dead centre; negative = above");
        }

        yield return new WorkingStep(
            "deck volume", "π ÷ 4 × bore² × (deck − skim of the block)",
            $"π ÷ 4 × ({InMm(one.BoreM)})² × ({InMm(one.DeckM, "0.00#")} − {InMm(one.BlockSkimM, "0.00#")}) ÷ 1000 mm³/cm³",
            InCm3(one.DeckM3, "0.000"), "the deck as measured or recorded, else from the four lengths");
        if (one.HeadSkimM > 0)
        {
            yield return new WorkingStep(
                "chamber after the skim", "chamber − skim of the head × its opening",
                $"{InCm3(one.ChamberM3)} − {InMm(one.HeadSkimM, "0.00#")} ÷ 10 mm/cm × {In(SquareCentimetres, one.OpeningM2)}",
                InCm3(one.ChamberLeftM3, "0.000"), "the opening where it is not given: three quarters of the bore expected, half to all of it possible");
        }

        yield return new WorkingStep(
            "clearance volume", "chamber + bowl + gasket + deck",
            $"{InCm3(one.ChamberLeftM3, "0.00#")} + ({InCm3(one.BowlM3)}) + {InCm3(one.GasketM3, "0.000")} + ({InCm3(one.DeckM3, "0.000")})",
            InCm3(one.ClearanceM3, "0.000"),
            "bowl: dish positive, dome negative; the gap beside the top land is left out");
        yield return new WorkingStep(
            "compression ratio", "(swept + clearance) ÷ clearance",
            $"({InCm3(one.SweptM3)} + {InCm3(one.ClearanceM3, "0.000")}) ÷ {InCm3(one.ClearanceM3, "0.000")}", InRatio(one.Ratio), Definition);
        yield return Squish(one);
        if (inputs.Closes is { } closes && double.IsFinite(one.RodM))
        {
            foreach (var step in TrappedSteps.Of(one.Ratio, one.Crank, closes.Expected))
            {
                yield return step;
            }
        }
    }

    private static WorkingStep Squish(Cylinder one)
    {
        var level = $"{InMm(one.GasketM, "0.00#")} + {InMm(one.DeckM, "0.00#")} − {InMm(one.BlockSkimM, "0.00#")}";
        var taken = one.HeadSkimM > 0 ? "a skim of the head cuts such a land with the face, so the squish stays; " : "";
        return one.LandM > 0
            ? new WorkingStep(
                "squish", "gasket + deck − skim of the block + (depth of the land − skim of the head, at least 0)",
                $"{level} + ({InMm(one.LandM, "0.00#")} − {InMm(one.HeadSkimM, "0.00#")}, at least 0)", InMm(one.SquishM, "0.00#"),
                "for a flat land below the face of the head: a skim of the head brings it nearer by as much, until it reaches the land; cold and at rest")
            : new WorkingStep(
                "squish", "gasket + deck − skim of the block", level, InMm(one.SquishM, "0.00#"),
                $"for a flat land level with the face of the head; {taken}cold and at rest");
    }

    private static string In(Unit unit, double value) => SumText.In(unit, value, "0.00");
}
