namespace PartMatch.Core.Air;

/// <summary>Air at a height above the sea, on a day that nobody has measured.</summary>
/// <remarks>
/// U.S. Standard Atmosphere 1976, lowest layer: T = 288.15 − 0.0065 h; ρ = 1.225 (1 − h ÷ 44 329)^4.255876; p = 101 325 (1 − h ÷ 44 329)^5.255876.
/// </remarks>
public static class StandardAtmosphere
{
    /// <summary>Gas constant of dry air, J/(kg·K).</summary>
    public const double GasConstant = 287.05;

    /// <summary>Top of the lowest layer, m: the formulas hold no higher.</summary>
    public const double TopM = 11_000;

    private const double SeaLevelPa = 101_325;
    private const double SeaLevelKgM3 = 1.225;
    private const double SeaLevelK = 288.15;
    private const double LapseKPerM = 0.0065;
    private const double ScaleM = 44_329;
    private const double DensityExponent = 4.255876;

    /// <summary>kg/m3 at a height in m.</summary>
    public static double Density(double heightM) => SeaLevelKgM3 * Math.Pow(1 - (heightM / ScaleM), DensityExponent);

    /// <summary>K at a height in m.</summary>
    public static double Temperature(double heightM) => SeaLevelK - (LapseKPerM * heightM);

    /// <summary>Pa at a height in m.</summary>
    public static double Pressure(double heightM) => SeaLevelPa * Math.Pow(1 - (heightM / ScaleM), DensityExponent + 1);
}
