using PartMatch.Core.Measures;

namespace PartMatch.Core.Air;

/// <summary>Brings a measured power of a petrol engine to the reference air of ISO 1585: 99 kPa dry, 298 K.</summary>
/// <remarks>
/// αa = (99 kPa ÷ ps)^1.2 × (T ÷ 298 K)^0.6. ISO 1585:2020 and UN R85, annex 5 (from memory). SAE J1349 is left out: no source of it could
/// be read here. The measurement should lie where 0.93 ≤ αa ≤ 1.07 (from memory, not certain).
/// </remarks>
public static class PowerCorrection
{
    public const double LeastFactor = 0.93;
    public const double GreatestFactor = 1.07;

    /// <summary>Corrected power ÷ measured power.</summary>
    /// <param name="dryPascals">Absolute pressure of the air that the engine drew, without its water vapour.</param>
    /// <param name="kelvin">Of that air.</param>
    public static double Factor(double dryPascals, double kelvin) => Math.Pow(99_000 / dryPascals, 1.2) * Math.Pow(kelvin / 298, 0.6);

    /// <summary>The same for a range: least with the densest air, greatest with the thinnest.</summary>
    public static Spread Factor(Spread dryPascals, Spread kelvin) =>
        new(Factor(dryPascals.High, kelvin.Low), Factor(dryPascals.Expected, kelvin.Expected), Factor(dryPascals.Low, kelvin.High));
}
