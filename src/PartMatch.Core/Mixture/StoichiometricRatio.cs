namespace PartMatch.Core.Mixture;

/// <summary>How much air a fuel needs to burn completely, from what it is made of.</summary>
/// <remarks>
/// CHyOz + (1 + y/4 − z/2) O2 → CO2 + y/2 H2O. Heywood, Internal Combustion Engine Fundamentals, 1988, eq. 3.6 (from memory);
/// dry air 20.95 % oxygen by volume, 28.9647 g/mol; IUPAC atomic weights.
/// </remarks>
public static class StoichiometricRatio
{
    private const double OxygenShareOfAir = 0.2095;
    private const double AirGramPerMol = 28.9647;
    private const double CarbonGramPerMol = 12.011;
    private const double HydrogenGramPerMol = 1.008;
    private const double OxygenGramPerMol = 15.999;

    /// <summary>Mass of air to mass of fuel.</summary>
    /// <param name="hydrogen">Atoms of hydrogen to one of carbon.</param>
    /// <param name="oxygen">Atoms of oxygen to one of carbon.</param>
    public static double Of(double hydrogen, double oxygen = 0)
    {
        var air = (1 + (hydrogen / 4) - (oxygen / 2)) / OxygenShareOfAir * AirGramPerMol;
        return air / (CarbonGramPerMol + (hydrogen * HydrogenGramPerMol) + (oxygen * OxygenGramPerMol));
    }
}
