using PartMatch.Core.Measures;
using PartMatch.Core.Sums;

namespace PartMatch.Core.ValveTiming;

/// <summary>One camshaft as it is set: every default filled in, every number known.</summary>
/// <param name="OnMark">Its events on its mark, or where its centre is set, drive at rest.</param>
/// <param name="Sources">Where opening and closing come from.</param>
/// <param name="Advance">Typed; teeth are beside it.</param>
/// <param name="WheelTeeth">Null where not recorded.</param>
/// <param name="MayMove">It is not recorded whether its drive moves it.</param>
internal sealed record LobeSetting(
    Valve Valve, LobeEvents OnMark, string Sources, Figure? Centre, Spread Advance, int Teeth, int? WheelTeeth, double CrankTurns, Phaser Phaser, bool MayMove,
        IReadOnlyList<RolePart> Parts)
{
    /// <summary>Lift at the valve, m; null where not recorded.</summary>
    public Spread? Lift { get; init; }

    /// <summary>Why camshaft and wheel do not go together, in words; null where they do, or nobody knows.</summary>
    public string? GoesNotOnWheel { get; init; }

    /// <summary>Degrees of the crank; null where the wheel's teeth are not recorded.</summary>
    public double? PerTooth => WheelTeeth is { } teeth ? TimingWheel.DegreesPerTooth(teeth, CrankTurns) : null;

    /// <summary>Typed advance and teeth together.</summary>
    public Spread Shift => Advance + Spread.Exactly(Teeth * (PerTooth ?? 0));

    /// <param name="share">Of the phaser's travel, from its rest.</param>
    public LobeEvents At(double share) => OnMark.Advanced(Shift + Phaser.At(share));

    public LobeEvents AtRest => At(0);
}
