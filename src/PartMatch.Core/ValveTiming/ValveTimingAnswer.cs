using PartMatch.Core.Catalogue;
using PartMatch.Core.Compression;
using PartMatch.Core.Measures;
using PartMatch.Core.Plots;
using PartMatch.Core.Sums;

namespace PartMatch.Core.ValveTiming;

/// <summary>The valve events of an engine with the camshafts asked about, and what they trap.</summary>
/// <param name="Convention">The signs, in words.</param>
/// <param name="Parts">What it was reckoned with, in the order intake, exhaust; camshaft before wheel.</param>
/// <param name="AtRest">With every phaser at its rest.</param>
/// <param name="Swept">With the phasers moved, from rest outwards; empty where nothing moves.</param>
/// <param name="Changes">What differs from the variant as built, in words; empty where nothing does or the variant is not recorded.</param>
/// <param name="Wheels">What one tooth is worth.</param>
/// <param name="Variants">The family's own variants as built, as a yardstick; ordered by code.</param>
/// <param name="Influences">On the trapped compression, or on the overlap where that is not known; greatest first.</param>
public sealed record ValveTimingAnswer(
    ValveTimingAsked Asked,
    string Convention,
    IReadOnlyList<RolePart> Parts,
    IReadOnlyList<Assumption> Assumed,
    TimingState AtRest,
    IReadOnlyList<TimingState> Swept,
    IReadOnlyList<string> Changes,
    IReadOnlyList<WheelTooth> Wheels,
    IReadOnlyList<VariantYardstick> Variants,
    IReadOnlyList<Influence> Influences,
    IReadOnlyList<WorkingStep> Working,
    IReadOnlyList<SumWarning> Warnings,
    IReadOnlyList<Caution> Cautions) : SumOutcome
{
    /// <summary>The variant with its own camshafts at rest; absent where they are not recorded at the lift asked for.</summary>
    public TimingState? AsBuilt { get; init; }

    /// <summary>Which setting comes closest to the events wanted; absent where none were.</summary>
    public IReadOnlyList<WantedEvents> WantedEvents { get; init; } = [];

    /// <summary>Which closing gives the trapped ratio wanted; absent where none was.</summary>
    public WantedClosing? WantedClosing { get; init; }

    /// <summary>Drawings of this answer; the door fills them in.</summary>
    public IReadOnlyList<PlotLink> Plots { get; init; } = [];

    /// <summary>The engine whose trapped ratio is drawn over the closing; null where it is not known.</summary>
    internal TrappedCurve? Curve { get; init; }

    /// <summary>The address that asks this question again; the door fills it in.</summary>
    public string Permalink { get; init; } = "";
}

/// <summary>The question with its defaults filled in.</summary>
/// <param name="IntakeTeeth">Off its mark; positive = advanced.</param>
public sealed record ValveTimingAsked(
    string Family, string Variant, Quantity AtLift, int IntakeTeeth, int ExhaustTeeth, QuantityRange IntakeAdvance, QuantityRange ExhaustAdvance,
        Quantity CrankTurns, bool OneCamshaft);

/// <summary>All events at one setting. Angles in degrees of the crank, except the separation.</summary>
/// <param name="IntakeOpens">Before top dead centre.</param>
/// <param name="IntakeCloses">After bottom dead centre.</param>
/// <param name="ExhaustOpens">Before bottom dead centre.</param>
/// <param name="ExhaustCloses">After top dead centre.</param>
/// <param name="IntakeCentre">After top dead centre.</param>
/// <param name="ExhaustCentre">Before top dead centre.</param>
/// <param name="Separation">Degrees of the camshaft.</param>
public sealed record TimingState(
    string What,
    QuantityRange IntakeAdvance,
    QuantityRange ExhaustAdvance,
    QuantityRange IntakeOpens,
    QuantityRange IntakeCloses,
    QuantityRange ExhaustOpens,
    QuantityRange ExhaustCloses,
    QuantityRange IntakeDuration,
    QuantityRange ExhaustDuration,
    QuantityRange IntakeCentre,
    QuantityRange ExhaustCentre,
    QuantityRange Separation,
    QuantityRange Overlap)
{
    /// <summary>Trapped compression ratio; absent where ratio, stroke or rod length is not recorded.</summary>
    public QuantityRange? Trapped { get; init; }

    /// <summary>Share of the stroke that the closing encloses.</summary>
    public QuantityRange? Enclosed { get; init; }
}

/// <summary>What one tooth of a wheel is worth.</summary>
/// <param name="PerTooth">Degrees of the crank.</param>
/// <param name="Direction">Which way advance is, said with the end one looks from.</param>
public sealed record WheelTooth(string Valve, int Teeth, QuantityRange PerTooth, string Direction);

/// <summary>The setting that comes closest to the events wanted.</summary>
/// <param name="Advance">From how it is set now; the mean of what each wanted event asks for.</param>
/// <param name="Choices">Whole teeth from how it is set now, the closest first.</param>
public sealed record WantedEvents(string Valve, QuantityRange Advance, IReadOnlyList<TeethChoice> Choices, string Text);

/// <param name="Advance">What those teeth are worth.</param>
/// <param name="Off">How far the worst of the wanted events then is from what was wanted.</param>
public sealed record TeethChoice(int Teeth, QuantityRange Advance, QuantityRange Opens, QuantityRange Closes, QuantityRange Off);

/// <summary>Where the intake valve has to close for a trapped ratio.</summary>
/// <param name="Before">Closing early, in degrees after bottom dead centre, so negative; absent where nothing reaches it.</param>
/// <param name="After">Closing late.</param>
/// <param name="AdvanceToBefore">From how it is set now.</param>
public sealed record WantedClosing(Quantity Trapped, QuantityRange? Before, QuantityRange? After, QuantityRange? AdvanceToBefore,
    QuantityRange? AdvanceToAfter, string Text);
