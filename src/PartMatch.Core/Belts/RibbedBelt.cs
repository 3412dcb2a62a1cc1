namespace PartMatch.Core.Belts;

/// <summary>Ribbed belts and pulleys of the profile PK, which drive the accessories of road engines.</summary>
public static class RibbedBelt
{
    /// <summary>ISO 9981:2020; SAE J1459 (pitch from memory, high confidence).</summary>
    public const double RibPitchM = 0.00356;

    /// <summary>From the effective diameter out to the line of the cords, b_e: ISO 9981:2020, 5.4.</summary>
    public const double LineDifferentialM = 0.002;

    /// <summary>ISO 9981:2020, 5.2.</summary>
    public const double LeastEffectiveDiameterM = 0.045;

    /// <summary>Nominal width: as many pitches as ribs.</summary>
    public static double WidthM(int ribs)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(ribs, 1);
        return ribs * RibPitchM;
    }

    /// <summary>On which the belt's cords run: d_p = d_e + 2 b_e.</summary>
    public static double PitchDiameterM(double effectiveDiameterM) => effectiveDiameterM + (2 * LineDifferentialM);

    /// <summary>Turns of the driven pulley for one of the driving one, both on the ribbed side of the belt, without slip.</summary>
    public static double SpeedRatio(double drivingEffectiveM, double drivenEffectiveM)
    {
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(drivingEffectiveM, 0);
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(drivenEffectiveM, 0);
        return PitchDiameterM(drivingEffectiveM) / PitchDiameterM(drivenEffectiveM);
    }
}
