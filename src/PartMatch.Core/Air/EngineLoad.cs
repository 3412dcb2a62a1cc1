using PartMatch.Core.Measures;
using PartMatch.Core.Sums;

namespace PartMatch.Core.Air;

/// <summary>How hard an engine works, whatever its size.</summary>
public static class EngineLoad
{
    /// <summary>Published mean effective pressures at full load, Pa.</summary>
    private static readonly Figure _naturalBmep = new(
        850_000, 950_000, 1_050_000, "natural aspiration 8.5 … 10.5 bar at the greatest torque, 10 … 15 % less at rated power: Heywood 1988, 2.7 (at second hand)");

    private static readonly Figure _boostedBmep = new(
        1_250_000, 1_475_000, 1_700_000,
            "turbocharged petrol cars 12.5 … 17.0 bar at the greatest torque: Heywood 1988, 2.7 (at second hand); newer engines reach more (common practice, no source)");

    /// <summary>Published mean piston speeds at the greatest power of cars, m/s.</summary>
    public static Figure PublishedPistonSpeed { get; } = new(8, 12, 15,
        "8 … 15 m/s, Heywood 1988, 2.2 (from memory); racing engines reach 25 m/s (common practice, no source)");

    public static Figure PublishedBmep(bool boosted) => boosted ? _boostedBmep : _naturalBmep;

    /// <summary>Brake mean effective pressure of a four-stroke engine, Pa: power × 2 turns ÷ (displacement × speed).</summary>
    public static Spread Bmep(Spread powerW, Spread displacementM3, Spread speedPerMinute) => powerW * 120 / (displacementM3 * speedPerMinute);

    /// <summary>Mean piston speed, m/s: two strokes a turn.</summary>
    public static Spread PistonSpeed(Spread strokeM, Spread speedPerMinute) => strokeM * speedPerMinute / 30;
}
