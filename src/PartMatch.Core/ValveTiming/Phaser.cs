using PartMatch.Core.Measures;

namespace PartMatch.Core.ValveTiming;

/// <summary>Where a cam drive stands with the engine stopped: at one end of its travel. The recorded events hold there.</summary>
public enum PhaserRest
{
    /// <summary>A fixed wheel.</summary>
    None,
    Advanced,
    Retarded,
}

/// <summary>How far a cam drive can move a camshaft from its rest.</summary>
/// <param name="Range">Degrees of the crank from end to end.</param>
public sealed record Phaser(Spread Range, PhaserRest Rest)
{
    public static Phaser Fixed { get; } = new(Spread.Exactly(0), PhaserRest.None);

    public bool Moves => Rest != PhaserRest.None && Range.High > 0;

    /// <summary>The advance at a share of the travel from its rest; negative = retard.</summary>
    public Spread At(double share)
    {
        var travel = Range * share;
        return Rest == PhaserRest.Advanced ? Spread.Exactly(0) - travel : travel;
    }
}
