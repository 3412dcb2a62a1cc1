using PartMatch.Core.Catalogue;
using PartMatch.Core.Fit;
using PartMatch.Core.Sums;
using PartMatch.Core.ValveTiming;

namespace PartMatch.Core.Compression;

/// <summary>What the sums see of a variant with other parts at some of its positions.</summary>
internal sealed class EngineStateReading
{
    private readonly FamilyFacts _facts;
    private readonly FitQuestion _question;
    private readonly IReadOnlyDictionary<string, Part?> _there;
    private readonly EngineSpan _on;

    /// <param name="there">What really sits at a position, by its code; everywhere else what the maker fitted.</param>
    /// <param name="on">The stretch of engines whose fitments count.</param>
    /// <param name="byVolumes">Build the ratio up from its volumes; else the recorded one counts.</param>
    public EngineStateReading(FamilyFacts facts, FitQuestion question, IReadOnlyDictionary<string, Part?> there, EngineSpan on, bool byVolumes)
    {
        (_facts, _question, _there, _on) = (facts, question, there, on);
        var (intakePosition, exhaustPosition) = (RoleParts.FindPosition(facts, Roles.IntakeCamshaft), RoleParts.FindPosition(facts, Roles.ExhaustCamshaft));
        var intakeParts = At(intakePosition);
        var exhaustParts = exhaustPosition is null ? intakeParts : At(exhaustPosition);
        var wheels = intakePosition is null ? [] : At(RoleParts.FindWheel(facts, intakePosition));
        var exhaustWheels = exhaustPosition is null ? [] : At(RoleParts.FindWheel(facts, exhaustPosition));
        var intake = AsBuiltEvents.Of(intakeParts, Valve.Intake);
        var engine = EngineGeometry.Read(facts, question.Variant);
        var (cylinder, lacking) = !byVolumes ? (null, null) : FindMissing() is { } missing ? (null, missing) : CylinderReading.Read(facts, Asked());

        var recorded = byVolumes ? null : engine.Ratio.Figure?.Spread.Expected;
        Lacking = lacking;
        State = new EngineState
        {
            Intake = intake,
            Exhaust = AsBuiltEvents.Of(exhaustParts, Valve.Exhaust),
            IntakeLiftM = AsBuiltEvents.Lift(intakeParts).Figure?.Spread.Expected,
            ExhaustLiftM = exhaustPosition is null ? null : AsBuiltEvents.Lift(exhaustParts).Figure?.Spread.Expected,
            Phaser = PhaserReading.Of(facts, wheels) is { MayMove: false, Phaser: var phaser } ? phaser : null,
            IntakeTeeth = (int?)LookedUp.Feature(wheels, "teeth").Figure?.Spread.Expected,
            ExhaustTeeth = (int?)LookedUp.Feature(exhaustWheels, "teeth").Figure?.Spread.Expected,
            Ratio = recorded ?? cylinder?.Ratio.Expected,
            Trapped = (HasNo(Roles.IntakeCamshaft) ? null : cylinder?.Trapped?.Expected)
                ?? (recorded is { } ratio && intake is { } lobe && engine is { Stroke.Figure: { } stroke, Rod.Figure: { } rod }
                    ? TrappedCompression.Of(ratio, new SliderCrank(stroke.Spread.Expected, rod.Spread.Expected), lobe.Closes.Expected)
                    : null),
            SquishM = cylinder?.Squish.Expected,
        };
    }

    public EngineState State { get; }

    /// <summary>Why the volumes could not be added up; null where they could, or need not.</summary>
    public SumRefused? Lacking { get; }

    /// <summary>Is it said that nothing sits at the position of that role? Then what the maker fitted there does not count.</summary>
    private bool HasNo(string role) =>
        RoleParts.FindPosition(_facts, role) is { } position && _there.TryGetValue(position.Code, out var part) && part is null;

    private SumRefused? FindMissing() => new[] { Roles.Head, Roles.HeadGasket, Roles.Piston }.FirstOrDefault(HasNo) is { } role
        ? new SumRefused("not-recorded", role, "Nothing sits there in this question.", "nothing put there", "a part",
            "name the part that will sit there")
        : null;

    private CompressionQuestion Asked()
    {
        Part? Chosen(string role) => RoleParts.FindPosition(_facts, role) is { } position ? _there.GetValueOrDefault(position.Code) : null;
        return new CompressionQuestion(_question.Variant)
        {
            Head = Chosen(Roles.Head),
            HeadGasket = Chosen(Roles.HeadGasket),
            Piston = Chosen(Roles.Piston),
            IntakeCamshaft = Chosen(Roles.IntakeCamshaft),
            On = _on,
        };
    }

    private IReadOnlyList<Part> At(Position? position) =>
        position is null || !_there.TryGetValue(position.Code, out var part) ? RoleParts.Fitted(_facts, _question.Variant, position, _on)
        : part is null ? []
        : [part];
}
