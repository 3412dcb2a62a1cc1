using PartMatch.Core.Catalogue;
using PartMatch.Core.Measures;
using PartMatch.Core.Sums;
using static PartMatch.Core.Sums.GeometryText;

namespace PartMatch.Core.Compression;

/// <summary>What compression do these parts make, and how much of it is trapped? Geometry, cold and at rest; it does not predict knock.</summary>
public static class CompressionReckoning
{
    private static readonly QuantityRange _none = RangeInMm(Spread.Exactly(0));

    /// <param name="question">Its variant must be the family's; its parts may be of another family.</param>
    /// <returns><see cref="CompressionAnswer"/>, or <see cref="SumRefused"/> with the reason.</returns>
    public static SumOutcome Reckon(FamilyFacts facts, CompressionQuestion question)
    {
        if ((CompressionRefusals.OfParts(facts, question) ?? CompressionRefusals.OfQuestion(question)) is { } refused)
        {
            return refused;
        }

        var (inputs, lacking) = CylinderReading.Read(facts, question);
        return inputs is null ? lacking! : CompressionRefusals.OfCylinder(question, inputs) ?? (SumOutcome)Answer(facts, question, inputs);
    }

    private static CompressionAnswer Answer(FamilyFacts facts, CompressionQuestion question, CylinderInputs inputs)
    {
        // How deep its land lies belongs to the head: as built it is as deep, unless another head is asked about.
        var built = CylinderReading.Read(
            facts, new CompressionQuestion(question.Variant) { LandDepth = question.Head is null ? question.LandDepth : null }).Inputs;
        var (trapped, bound) = (inputs.Trapped, SquishBound.Of(facts, question.Variant));
        var variants = FamilyYardsticks.Of(facts, question.Variant, trapped);
        return new CompressionAnswer(
            new CompressionAsked(facts.Family.Code, question.Variant, question.HeadSkim ?? _none, question.BlockSkim ?? _none, question.WantedRatio),
            [.. Parts(facts, question)],
            inputs.Assumed,
            [.. Volumes(inputs, built)],
            RangeOfRatio(inputs.Ratio),
            RangeInMm(inputs.Squish),
            RangeInPercent(IdealCycle.Efficiency(inputs.Ratio)),
            built is null ? [] : EngineChanges.Between(StateOf(built), StateOf(inputs)),
            variants,
            inputs.Influences,
            [.. CompressionSteps.Of(inputs), .. TrappedSteps.AgainstAsBuilt(trapped, variants)],
            [.. CompressionWarnings.Of(facts, question, inputs, built, variants, bound)],
            Cautions.Of(["interference-engine", "emissions-law"]))
        {
            Curve = trapped is not null && inputs.Closes is { } closing ? new TrappedCurve(inputs.Expected.Ratio, inputs.Expected.Crank, closing.Expected)
                : null,
            Trapped = trapped is { } share ? RangeOfRatio(share) : null,
            IntakeCloses = inputs.Closes is { } closes ? ValveTiming.TimingText.IntakeCloses(closes) : null,
            AsBuiltRatio = built is null ? null : RangeOfRatio(built.Ratio),
            AsBuiltSquish = built is null ? null : RangeInMm(built.Squish),
            RecordedRatio = EngineGeometry.Read(facts, question.Variant).Ratio.Figure is { } recorded ? RangeOfRatio(recorded.Spread) : null,
            SquishWanted = bound.Wanted,
            SquishSays = SquishBound.Measure,
            Wanted = question.WantedRatio is { } wanted
                ? [.. new WantedRatio(inputs.Expected, inputs.Of(cylinder => cylinder.OpeningM2), inputs.Squish, bound).Ways((double)wanted.Value)]
                : [],
        };
    }

    internal static EngineState StateOf(CylinderInputs inputs) => new()
    {
        Ratio = inputs.Ratio.Expected,
        Trapped = inputs.Trapped?.Expected,
        RatioAsAsked = inputs.RatioAsAsked,
        TrappedAsAsked = inputs.TrappedAsAsked,
        SquishM = inputs.Squish.Expected,
    };

    private static IEnumerable<RolePart> Parts(FamilyFacts facts, CompressionQuestion question)
    {
        foreach (var (role, chosen) in new[]
        {
            (Roles.Head, question.Head), (Roles.HeadGasket, question.HeadGasket), (Roles.Piston, question.Piston),
            (Roles.IntakeCamshaft, question.IntakeCamshaft),
        })
        {
            if (RoleParts.FindPosition(facts, role) is { } position)
            {
                foreach (var part in CylinderReading.PartsOf(facts, question, role, chosen))
                {
                    yield return RoleParts.Shown(facts, question.Variant, position, part);
                }
            }
        }
    }

    private static IEnumerable<VolumeTerm> Volumes(CylinderInputs inputs, CylinderInputs? built)
    {
        VolumeTerm Term(string name, Func<Cylinder, double> volume) =>
            new(name, built is null ? null : RangeInCm3(built.Of(volume)), RangeInCm3(inputs.Of(volume)));
        yield return Term("chamber", cylinder => cylinder.ChamberLeftM3);
        yield return Term("bowl", cylinder => cylinder.BowlM3);
        yield return Term("gasket", cylinder => cylinder.GasketM3);
        yield return Term("deck", cylinder => cylinder.DeckM3);
        yield return Term("clearance", cylinder => cylinder.ClearanceM3);
        yield return Term("swept", cylinder => cylinder.SweptM3);
    }
}
