using PartMatch.Core.Measures;
using PartMatch.Core.Sums;

namespace PartMatch.Core.Compression;

/// <summary>
/// Pressure at the end of compression, as a ratio to that of another engine that closes its valve on the same pressure: (trapped ÷ trapped of the other) to
/// the power n.
/// </summary>
/// <remarks>p·Vⁿ = constant from closing to top dead centre. Never compression ratio × boost: pressure grows with the power of the ratio, and heat with
/// it.</remarks>
public static class EndOfCompression
{
    public static Figure Exponent { get; } = new(1.25, 1.30, 1.35,
        "polytropic exponent of compression, 1.3 ± 0.05: Heywood 1988, 9.2.2 (from memory, medium confidence)");

    /// <param name="trapped">Of the engine asked about.</param>
    /// <param name="other">Of the engine it is compared with.</param>
    public static Spread Ratio(Spread trapped, double other)
    {
        // The exponent raises what is above 1 and lowers what is below it: each end is taken with the exponent that is worst there.
        var (low, high) = (trapped.Low / other, trapped.High / other);
        var n = Exponent.Spread;
        return new Spread(
            Math.Min(Math.Pow(low, n.Low), Math.Pow(low, n.High)), Math.Pow(trapped.Expected / other, n.Expected),
            Math.Max(Math.Pow(high, n.Low), Math.Pow(high, n.High)));
    }
}
