using PartMatch.Core.Catalogue;
using PartMatch.Core.Compression;
using PartMatch.Core.Measures;
using PartMatch.Core.Sums;
using static PartMatch.Core.Sums.GeometryText;

namespace PartMatch.Core.ValveTiming;

/// <summary>The whole engine as the question sets it, ready to be read off.</summary>
internal sealed class TimingSetting
{
    public TimingSetting(FamilyFacts facts, ValveTimingQuestion question, LobeSetting intake, LobeSetting exhaust, bool isOneCamshaft)
    {
        (Facts, Question, Intake, Exhaust, IsOneCamshaft) = (facts, question, intake, exhaust, isOneCamshaft);
        Recorded = EngineGeometry.Read(facts, question.Variant);
        Ratio = LookedUp.Typed(question.CompressionRatio) ?? Recorded.Ratio;
        Stroke = LookedUp.Typed(question.Stroke) ?? Recorded.Stroke;
        Rod = LookedUp.Typed(question.RodLength) ?? Recorded.Rod;
    }

    public FamilyFacts Facts { get; }

    public ValveTimingQuestion Question { get; }

    public LobeSetting Intake { get; }

    public LobeSetting Exhaust { get; }

    public bool IsOneCamshaft { get; }

    public EngineGeometry Recorded { get; }

    public LookedUp Ratio { get; }

    public LookedUp Stroke { get; }

    public LookedUp Rod { get; }

    public bool IsAtOneMillimetre => Question.AtLift is null or { Value: 0.001m };

    /// <summary>All three that trapping needs; null where one is not known.</summary>
    public (Spread Ratio, Spread Stroke, Spread Rod)? Geometry =>
        Ratio.Figure is { } ratio && Stroke.Figure is { } stroke && Rod.Figure is { } rod ? (ratio.Spread, stroke.Spread, rod.Spread) : null;

    /// <summary>Expected crank drive.</summary>
    public SliderCrank? Crank => Geometry is { } known ? new SliderCrank(known.Stroke.Expected, known.Rod.Expected) : null;

    public SumRefused? FindFault() =>
        Geometry is { } known && EngineGeometry.FindFault(known.Stroke, known.Rod) is { } fault ? fault
        : Question.WantedTrapped is not null && Geometry is null ? ValveTimingRefusals.OfGeometry(this)
        : null;

    public Spread? Trapped(LobeEvents intake) => Geometry is { } known ? TrappedCompression.Of(known.Ratio, known.Stroke, known.Rod, intake.Closes) : null;

    /// <summary>With what is recorded of the variant, whatever the question gives instead.</summary>
    public Spread? AsBuiltTrapped(LobeEvents intake) => Recorded is { Ratio.Figure: { } ratio, Stroke.Figure: { } stroke, Rod.Figure: { } rod }
        ? TrappedCompression.Of(ratio.Spread, stroke.Spread, rod.Spread, intake.Closes)
        : null;

    public Spread? Enclosed(LobeEvents intake) => Geometry is { } known
        ? SumRange.Of(
            [new("stroke", known.Stroke), new("rod length", known.Rod), new("intake closing", TrappedCompression.FromBottom(intake.Closes))],
            of => TrappedCompression.ShareEnclosed(new SliderCrank(of[0], of[1]), of[2]))
        : null;

    public IReadOnlyList<Influence> Influences() => Geometry is { } known
        ? TrappedCompression.Influences(known.Ratio, known.Stroke, known.Rod, Intake.AtRest.Closes)
        : SumRange.Influences(
            [new("intake opening", Intake.AtRest.Opens), new("exhaust closing", Exhaust.AtRest.Closes)], of => of[0] + of[1], overlap =>
                InDegrees(overlap, "0.#"));

    /// <summary>At shares of the phasers' travel.</summary>
    public TimingState State(string what, double intakeShare, double exhaustShare)
    {
        var (intake, exhaust) = (Intake.At(intakeShare), Exhaust.At(exhaustShare));
        return State(
            what, intake, exhaust, Intake.Shift + Intake.Phaser.At(intakeShare), Exhaust.Shift + Exhaust.Phaser.At(exhaustShare), Trapped(intake),
                Enclosed(intake)) with
        {
            Overlap = RangeInDegrees(Overlap(intake, exhaust)),
            Separation = SeparationOf(IsOneCamshaft ? Intake.OnMark : intake, IsOneCamshaft ? Exhaust.OnMark : exhaust),
        };
    }

    /// <summary>One camshaft shifts all its lobes together: their overlap stays what it is on the mark, however little is known of the shift.</summary>
    public Spread Overlap(LobeEvents intake, LobeEvents exhaust) => IsOneCamshaft ? LobeEvents.Overlap(Intake.OnMark, Exhaust.OnMark)
        : LobeEvents.Overlap(intake, exhaust);

    /// <summary>From rest outwards; one phaser alone, then the other, then both.</summary>
    public IEnumerable<TimingState> Swept()
    {
        var (intake, exhaust) = (Intake.Phaser.Moves, Exhaust.Phaser.Moves && !IsOneCamshaft);
        var both = IsOneCamshaft ? 1 : 0;
        if (intake)
        {
            yield return State(IsOneCamshaft ? "camshaft half moved" : "intake half moved", 0.5, 0.5 * both);
            yield return State(IsOneCamshaft ? "camshaft fully moved" : "intake fully moved", 1, both);
        }

        if (exhaust)
        {
            yield return State("exhaust half moved", 0, 0.5);
            yield return State("exhaust fully moved", 0, 1);
        }

        if (intake && exhaust)
        {
            yield return State("both fully moved", 1, 1);
        }
    }

    private static QuantityRange SeparationOf(LobeEvents intake, LobeEvents exhaust) =>
        RangeInDegrees(LobeEvents.Separation(intake, exhaust), " of the camshaft");

    public static TimingState State(string what, LobeEvents intake, LobeEvents exhaust, Spread intakeAdvance, Spread exhaustAdvance, Spread? trapped,
        Spread? enclosed) => new(
        what,
        TimingText.Advance(intakeAdvance),
        TimingText.Advance(exhaustAdvance),
        TimingText.IntakeOpens(intake.Opens),
        TimingText.IntakeCloses(intake.Closes),
        TimingText.ExhaustOpens(exhaust.Opens),
        TimingText.ExhaustCloses(exhaust.Closes),
        RangeInDegrees(intake.Duration),
        RangeInDegrees(exhaust.Duration),
        TimingText.Centre(Valve.Intake, intake.Centre(Valve.Intake)),
        TimingText.Centre(Valve.Exhaust, exhaust.Centre(Valve.Exhaust)),
        SeparationOf(intake, exhaust),
        RangeInDegrees(LobeEvents.Overlap(intake, exhaust)))
        {
            Trapped = trapped is { } known ? RangeOfRatio(known) : null,
            Enclosed = enclosed is { } share ? RangeInPercent(share) : null,
        };
}
