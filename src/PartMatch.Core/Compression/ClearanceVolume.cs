namespace PartMatch.Core.Compression;

/// <summary>Areas and volumes of one cylinder, and the compression ratio they make.</summary>
public static class ClearanceVolume
{
    /// <summary>Area of a round hole.</summary>
    public static double Area(double diameterM) => Math.PI / 4 * diameterM * diameterM;

    /// <summary>Swept by one piston, m3.</summary>
    public static double Swept(double boreM, double strokeM) => Area(boreM) * strokeM;

    /// <summary>Geometric compression ratio.</summary>
    public static double Ratio(double sweptM3, double clearanceM3) => (sweptM3 + clearanceM3) / clearanceM3;

    /// <summary>The clearance volume that a ratio needs, m3: <see cref="Ratio"/> turned round.</summary>
    /// <param name="ratio">More than 1.</param>
    public static double For(double ratio, double sweptM3) => sweptM3 / (ratio - 1);
}
