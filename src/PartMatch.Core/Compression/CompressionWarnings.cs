using PartMatch.Core.Catalogue;
using PartMatch.Core.Measures;
using PartMatch.Core.Sums;
using static PartMatch.Core.Sums.GeometryText;

namespace PartMatch.Core.Compression;

/// <summary>What to know before relying on the answer: each flag states the number, what is usual and who says so, and ends in measuring.</summary>
internal static class CompressionWarnings
{
    // What two careful people differ by with burette and plasticine. Ours, no source.
    private const double SameRatio = 0.15;
    private const double SameLengthM = 0.000005;

    // Faces are trued with tenths. Common practice, no source.
    internal const double UsualSkimM = 0.0005;

    internal const string DeepSkim =
        "more than 0.50 mm is seldom taken (common practice, no source): measure what is left of the face over chamber and water, the maker's least height, "
        + "the land for the gasket, and how ports and covers line up";

    public static IEnumerable<SumWarning> Of(
        FamilyFacts facts, CompressionQuestion question, CylinderInputs inputs, CylinderInputs? built, IReadOnlyList<VariantYardstick> variants,
        SquishBound bound)
    {
        if (Squish(inputs, built, bound) is { } squish)
        {
            yield return squish;
        }

        if (inputs.Of(cylinder => cylinder.GasketBoreM - cylinder.BoreM).Low < 0)
        {
            var one = inputs.Expected;
            yield return new SumWarning("gasket-in-the-cylinder",
                $"The hole of the gasket, {InMm(one.GasketBoreM)}, can be smaller than the bore, {InMm(one.BoreM)}: its edge would stand in the cylinder "
                + "and burn, and the volume of the gasket is reckoned with its own hole. Measure both, the gasket laid on the block.");
        }

        foreach (var (face, taken) in new[] { ("head", question.HeadSkim), ("block", question.BlockSkim) })
        {
            if (taken?.High > UsualSkimM)
            {
                yield return new SumWarning($"{face}-skim-deep", $"{RangeInMm(Spread.Of(taken)).Text} off the {face}: {DeepSkim}.");
            }
        }

        foreach (var warning in OfHeadSkim(question, inputs))
        {
            yield return warning;
        }

        if (HeadMoves(facts, question, inputs, built) is { } moves)
        {
            yield return moves;
        }

        if (built is not null && EngineGeometry.Read(facts, question.Variant).Ratio.Figure is { } recorded
            && Math.Abs(recorded.Spread.Expected - built.Ratio.Expected) > SameRatio)
        {
            yield return new SumWarning("ratio-differs-from-volumes",
                $"Its own parts add up to {InRatio(built.Ratio.Expected)} where {InRatio(recorded.Spread.Expected)} is recorded of {question.Variant}: one of "
                + "the two is wrong. Measure the volumes with a burette.");
        }

        if (inputs.Closes is null)
        {
            yield return new SumWarning("closing-not-recorded",
                "It is not recorded when the intake valve closes: nothing is said of what is trapped. Measure it at 1 mm lift and give it as intake-closes=.");
        }

        foreach (var warning in TrappedWarnings.Of(question.Variant, inputs.Trapped, inputs.Closes, inputs.Expected.Crank, variants))
        {
            yield return warning;
        }
    }

    private static IEnumerable<SumWarning> OfHeadSkim(CompressionQuestion question, CylinderInputs inputs)
    {
        if (question.HeadSkim is not { High: > 0 } skim)
        {
            yield break;
        }

        if (question.ChamberArea is null)
        {
            yield return new SumWarning("opening-not-known",
                "Over how much of the bore the chamber opens is not known: from half of it to all of it is reckoned with, and the wider it opens the more "
                + "a skim takes. Measure the opening at the face and give it as chamber-area=.");
        }

        if (question.LandDepth is null)
        {
            yield return new SumWarning("land-taken-as-level",
                "The squish land is taken to be level with the face of the head: a skim cuts both, and the squish stays. A land below the face comes nearer "
                + $"to the crown by as much as is taken, here by up to {InMm(skim.High)}: measure how deep it lies and give it as land-depth=.");
        }
        else if (inputs.Of(cylinder => cylinder.LandM - cylinder.HeadSkimM).Low < 0 && question.LandDepth.High > 0)
        {
            yield return new SumWarning("skim-past-the-land",
                $"The skim, {RangeInMm(Spread.Of(skim)).Text}, can reach the land, which lies {RangeInMm(Spread.Of(question.LandDepth)).Text} "
                + "below the face: from there on the chamber opens over less and a skim takes less volume than is reckoned. Measure the chamber with a burette "
                + "afterwards.");
        }
    }

    /// <summary>By how much the head comes nearer to the crankshaft than as built; where that is not known, only that it may.</summary>
    private static SumWarning? HeadMoves(FamilyFacts facts, CompressionQuestion question, CylinderInputs inputs, CylinderInputs? built)
    {
        const string Measure = "Measure piston-to-valve by hand, and the events with a degree wheel.";
        var one = inputs.Expected;
        var lower = one.HeadSkimM + one.BlockSkimM + ((built?.Expected.GasketM ?? one.GasketM) - one.GasketM);
        var mayMove = built is null && (question.GasketThickness ?? (object?)question.HeadGasket) is not null;
        return lower > SameLengthM
            ? new SumWarning("head-sits-lower",
                $"The head comes {InMm(lower)} nearer to the crankshaft than as built: its valves come nearer to the pistons by as much, a chain- or "
                + $"belt-driven camshaft in it runs late{ByDegrees(facts, question.Variant, lower)}, and pushrods take up lash. {Measure}")
            : lower < -SameLengthM
                ? new SumWarning("head-sits-higher",
                    $"The head sits {InMm(-lower)} further from the crankshaft than as built: a chain- or belt-driven camshaft in it runs early"
                    + $"{ByDegrees(facts, question.Variant, lower)}, which opens the intake valves sooner, and pushrods gain lash. {Measure}")
            : mayMove
                ? new SumWarning("head-may-move",
                    "How thick the gasket is as built is not known: a head that comes nearer to the crankshaft brings its valves nearer to the pistons and lets "
                    + $"a chain- or belt-driven camshaft in it run late, one that sits higher lets it run early. {Measure}")
            : null;
    }

    // The run between the wheels changes by as much as the head moves: that share of a pitch is that share of a tooth. A common pitch of timing chains.
    private const double ExamplePitchM = 0.009525;

    /// <summary>What it is worth at the crank where the teeth of the wheel on the intake camshaft are recorded; nothing where they are not.</summary>
    private static string ByDegrees(FamilyFacts facts, string variant, double movesM)
    {
        var wheel = RoleParts.FindPosition(facts, Roles.IntakeCamshaft) is { } camshaft ? RoleParts.FindWheel(facts, camshaft) : null;
        if (LookedUp.Feature(RoleParts.Fitted(facts, variant, wheel), "teeth").Figure is not { } teeth)
        {
            return "";
        }

        var perTooth = ValveTiming.TimingWheel.DegreesPerTooth((int)teeth.Spread.Expected, ValveTiming.TimingWheel.CrankTurnsOfCam);
        var degrees = Math.Abs(movesM) / ExamplePitchM * perTooth;
        return $" by about {InDegrees(degrees, "0.0")} of the crank (its share of one pitch, 9.525 mm taken, × the {InDegrees(perTooth, "0.0")} of a tooth; "
            + "the run taken as upright: measure)";
    }

    private static SumWarning? Squish(CylinderInputs inputs, CylinderInputs? built, SquishBound bound)
    {
        var squish = RangeInMm(inputs.Squish);
        var was = built is null ? "" : $", as built {RangeInMm(built.Squish).Text}";
        return squish.Low <= 0
            ? new SumWarning("squish-gone", $"Squish {squish.Text}{was}: the crown can meet the head. Measure it with soft metal over the crown, the "
                + "gasket tightened.")
            : bound.Says(inputs.Squish) is { } says ? new SumWarning("squish-outside", $"Squish {squish.Text}{was}; {says}. {SquishBound.Measure}")
            : null;
    }
}
