using PartMatch.Core.Measures;

namespace PartMatch.Core.ValveTiming;

/// <summary>When one valve opens and closes, at one lift. Degrees of the crank.</summary>
/// <param name="Opens">Before the dead centre it opens at: top for an intake valve, bottom for an exhaust valve. Negative = after.</param>
/// <param name="Closes">After the dead centre it closes at: bottom for an intake valve, top for an exhaust valve. Negative = before.</param>
/// <remarks>Definitions: Blair, Design and Simulation of Four-Stroke Engines, 1999 (from memory).</remarks>
public readonly record struct LobeEvents(Spread Opens, Spread Closes)
{
    private const double HalfTurn = 180;

    private Spread? OwnDuration { get; init; }

    /// <summary>Opens + 180° + closes. A shift moves both and leaves it, however little is known of the shift.</summary>
    public Spread Duration => OwnDuration ?? Opens + Spread.Exactly(HalfTurn) + Closes;

    /// <summary>
    /// The middle between opening and closing: after the top dead centre for an intake valve, that is duration ÷ 2 − opens; before it for an exhaust valve,
    /// duration ÷ 2 − closes. The lobe's top lies there only where both flanks are alike.
    /// </summary>
    public Spread Centre(Valve valve) => (Spread.Exactly(HalfTurn) + (valve == Valve.Intake ? Closes - Opens : Opens - Closes)) / 2;

    /// <summary>The same lobe earlier: it opens more degrees before, and closes fewer after.</summary>
    /// <param name="by">Degrees of the crank; negative = retarded.</param>
    public LobeEvents Advanced(Spread by) => new(Opens + by, Closes - by) { OwnDuration = Duration };

    /// <summary>A lobe of that duration set around a centre: <see cref="Centre"/> turned round.</summary>
    public static LobeEvents Around(Valve valve, Spread duration, Spread centre)
    {
        var (near, far) = ((duration / 2) - centre, (duration / 2) + centre - Spread.Exactly(HalfTurn));
        return (valve == Valve.Intake ? new LobeEvents(near, far) : new LobeEvents(far, near)) with { OwnDuration = duration };
    }

    /// <summary>
    /// Degrees of the crank, around top dead centre, in which both valves are open; negative where the exhaust valve shuts before the intake valve opens.
    /// </summary>
    public static Spread Overlap(LobeEvents intake, LobeEvents exhaust) => intake.Opens + exhaust.Closes;

    /// <summary>Angle between the two lobe centres, in degrees of the CAM: half of what lies between them at the crank.</summary>
    public static Spread Separation(LobeEvents intake, LobeEvents exhaust) => (intake.Centre(Valve.Intake) + exhaust.Centre(Valve.Exhaust)) / 2;
}

public enum Valve
{
    Intake,
    Exhaust,
}
