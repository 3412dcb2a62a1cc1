namespace PartMatch.Core.Tightening;

/// <summary>How much more a bolt is stressed while it is tightened than its pull alone stresses it: it is twisted as well.</summary>
/// <remarks>
/// √(1 + 3 r²), r = shear ÷ tension = 4 × G ÷ d0 over the round section of the stress area, d0 = d − 0.9382 P, G = P ÷ 2π + 0.577 × µ × d2 the arm of the
/// torque that the thread takes (flanks at 30°, 1 ÷ (√3) = 0.577), d2 = d − 0.6495 P. µ follows from the nut factor: K × d = G + 0.65 × µ × d.
/// </remarks>
internal static class BoltTorsion
{
    public const string Source =
        "von Mises, √(tension² + 3 × shear²), elastic, over the stress area (Shigley, Mechanical Engineering Design, chapters 5 and 8, from memory); thread and "
        + "head taken to rub alike, the head at 1.3 × the diameter (common practice, no source). Part of it springs back once the wrench is off";

    private const double OfFlank = 0.577;
    private const double OfHead = 0.65;

    /// <param name="factor">Nut factor.</param>
    public static double Times(MetricThread thread, double factor)
    {
        var (diameter, pitch) = ((double)thread.DiameterMm, (double)thread.PitchMm);
        var (rise, pitchDiameter) = (pitch / (2 * Math.PI), diameter - (0.6495 * pitch));
        var friction = Math.Max(0, ((factor * diameter) - rise) / ((OfFlank * pitchDiameter) + (OfHead * diameter)));
        var shear = 4 * (rise + (OfFlank * friction * pitchDiameter)) / (diameter - (0.9382 * pitch));
        return Math.Sqrt(1 + (3 * shear * shear));
    }
}
