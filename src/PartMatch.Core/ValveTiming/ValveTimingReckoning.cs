using PartMatch.Core.Catalogue;
using PartMatch.Core.Compression;
using PartMatch.Core.Measures;
using PartMatch.Core.Sums;

namespace PartMatch.Core.ValveTiming;

/// <summary>
/// When do the valves open and close, and what is trapped then? Geometry of events as recorded or given; no valve train dynamics, no gas flow.
/// </summary>
public static class ValveTimingReckoning
{
    private static readonly Unit _millimetre = UnitTable.Get("mm");

    /// <param name="question">Its variant must be the family's; its parts may be of another family.</param>
    /// <returns><see cref="ValveTimingAnswer"/>, or <see cref="SumRefused"/> with the reason.</returns>
    public static SumOutcome Reckon(FamilyFacts facts, ValveTimingQuestion question)
    {
        var isOneCamshaft = RoleParts.FindPosition(facts, Roles.ExhaustCamshaft) is null;
        if (ValveTimingRefusals.OfQuestion(question, isOneCamshaft) is { } refused)
        {
            return refused;
        }

        var reading = new LobeReading(facts, question, isOneCamshaft);
        var (intake, noIntake) = reading.Read(Valve.Intake);
        var (exhaust, noExhaust) = reading.Read(Valve.Exhaust);
        if ((noIntake ?? noExhaust) is { } lacking)
        {
            return lacking;
        }

        var setting = new TimingSetting(facts, question, intake!, exhaust!, isOneCamshaft); // refused otherwise
        return setting.FindFault() ?? (SumOutcome)Answer(setting);
    }

    private static ValveTimingAnswer Answer(TimingSetting setting)
    {
        var (facts, question) = (setting.Facts, setting.Question);
        var rest = setting.State("at rest", 0, 0);
        var variants = FamilyYardsticks.Of(facts, question.Variant, setting.Trapped(setting.Intake.AtRest));
        var asBuilt = setting.IsAtOneMillimetre ? AsBuilt(setting) : null;
        return new ValveTimingAnswer(
            new ValveTimingAsked(
                facts.Family.Code, question.Variant, question.AtLift ?? Quantity.From(1, _millimetre), setting.Intake.Teeth, setting.Exhaust.Teeth,
                TimingText.Advance(setting.Intake.Advance), TimingText.Advance(setting.Exhaust.Advance),
                    question.CrankTurns ?? Quantity.From(2, UnitTable.BaseOf(Dimension.Ratio)), setting.IsOneCamshaft),
            TimingText.Convention,
            [.. setting.Intake.Parts.Concat(setting.Exhaust.Parts).DistinctBy(part => (part.Position, part.Part))],
            [.. TimingAssumptions.Of(setting)],
            rest,
            [.. setting.Swept()],
            EngineChanges.OfTiming(facts, question.Variant, setting),
            [.. TimingWheels.Of(setting)],
            setting.IsAtOneMillimetre ? variants : [],
            setting.Influences(),
            [.. TimingSteps.Of(setting), .. TrappedSteps.AgainstAsBuilt(setting.Trapped(setting.Intake.AtRest), variants)],
            [.. TimingWarnings.Of(setting, variants)],
            Cautions.Of(["interference-engine", "emissions-law"]))
        {
            AsBuilt = asBuilt,
            Curve = setting is { Geometry: { } known, Crank: { } crank } ? new TrappedCurve(known.Ratio.Expected, crank, setting.Intake.AtRest.Closes.Expected)
                : null,
            WantedEvents = [.. WantedTiming.OfEvents(setting)],
            WantedClosing = question.WantedTrapped is { } wanted ? WantedTrapping.Of(setting, wanted) : null,
        };
    }

    private static TimingState? AsBuilt(TimingSetting setting)
    {
        var (intake, exhaust) = AsBuiltEvents.Find(setting.Facts, setting.Question.Variant);
        return intake is { } one && exhaust is { } other
            ? TimingSetting.State($"{setting.Question.Variant} as built", one, other, Spread.Exactly(0), Spread.Exactly(0), setting.AsBuiltTrapped(one),
                setting.Enclosed(one))
            : null;
    }
}
