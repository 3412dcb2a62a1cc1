namespace PartMatch.Core.Air;

/// <summary>How much air a four-stroke engine breathes.</summary>
public static class AirFlow
{
    /// <summary>Density of dry air, kg/m3: p ÷ (R T).</summary>
    /// <param name="pascals">Absolute.</param>
    public static double Density(double pascals, double kelvin) => pascals / (StandardAtmosphere.GasConstant * kelvin);

    /// <summary>Mass flow of air, kg/s: displacement × half the turns × volumetric efficiency × density.</summary>
    /// <remarks>Heywood, Internal Combustion Engine Fundamentals, 1988, eq. 2.27 (from memory).</remarks>
    /// <param name="displacementM3">Of the whole engine.</param>
    /// <param name="volumetricEfficiency">Against the air in the manifold, 1 = filled with it.</param>
    public static double Mass(double displacementM3, double speedPerMinute, double volumetricEfficiency, double manifoldKgM3) =>
        displacementM3 * speedPerMinute / 120 * volumetricEfficiency * manifoldKgM3;
}
