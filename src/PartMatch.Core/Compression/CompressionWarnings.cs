using PartMatch.Core.Catalogue;
using PartMatch.Core.Sums;
using static PartMatch.Core.Sums.GeometryText;

namespace PartMatch.Core.Compression;

/// <summary>What to know before relying on the answer: each flag states the number, what is usual and who says so, and ends in measuring.</summary>
internal static class CompressionWarnings
{
    // What two careful people differ by with burette and plasticine. Ours, no source.
    private const double SameRatio = 0.15;

    // Sums of binary fractions miss a bound that they lie on by less than this.
    private const double DustM = 1e-9;

    public static IEnumerable<SumWarning> Of(
        FamilyFacts facts, CompressionQuestion question, CylinderInputs inputs, CylinderInputs? built, IReadOnlyList<VariantYardstick> variants)
    {
        if (Squish(facts, question, inputs, built) is { } squish)
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

        if (question.HeadSkim is { High: > 0 } && question.ChamberArea is null)
        {
            yield return new SumWarning("skim-over-the-bore",
                "The skim of the head is taken over the whole bore. A chamber with squish lands opens over less, and the skim then takes less: measure its "
                + "opening and give it as chamber-area=.");
        }

        if (question.HeadSkim is { High: > 0 } || question.BlockSkim is { High: > 0 } || question.GasketThickness is not null
            || question.HeadGasket is not null)
        {
            yield return new SumWarning("head-sits-lower",
                "What lowers the head brings the valves nearer to the pistons by as much, and lets a chain- or belt-driven camshaft in the head run late: "
                + "measure piston-to-valve by hand, and the events with a degree wheel.");
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

    private static SumWarning? Squish(FamilyFacts facts, CompressionQuestion question, CylinderInputs inputs, CylinderInputs? built)
    {
        var squish = RangeInMm(inputs.Squish);
        var was = built is null ? "" : $", as built {RangeInMm(built.Squish).Text}";
        if (squish.Low <= 0)
        {
            return new SumWarning("squish-gone", $"Squish {squish.Text}{was}: the crown can meet the head. Measure it with soft metal over the crown, the "
                + "gasket tightened.");
        }

        var wanted = CompressionReckoning.FindSquishWanted(facts, question.Variant);
        var stack = facts.Stacks.FirstOrDefault(one => one.Code == wanted?.Stack);
        var isOutside = stack is not null && ((double?)stack.Band.Low > inputs.Squish.Low + DustM || (double?)stack.Band.High < inputs.Squish.High - DustM);
        return wanted is not null && isOutside
            ? new SumWarning("squish-outside",
                $"Squish {squish.Text}{was}; the base wants {wanted.Band} here ({wanted.Stack}{(wanted.Evidence is null ? "" : $", {wanted.Evidence}")}). "
                + "It narrows with speed and heat as rods stretch and pistons rock. Measure it with soft metal over the crown, the gasket tightened.")
            : null;
    }
}
