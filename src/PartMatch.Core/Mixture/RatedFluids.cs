using PartMatch.Core.Measures;
using PartMatch.Core.Sums;

namespace PartMatch.Core.Mixture;

/// <summary>Densities of the fluids on which injectors are rated, kg/m3.</summary>
public static class RatedFluids
{
    /// <summary>Density of n-heptane in the sums: at 20 °C.</summary>
    public const double HeptaneKgM3 = 683.8;

    /// <summary>The test fluid of SAE J1832.</summary>
    public static Figure Heptane { get; } = new(
        Spread.Exactly(HeptaneKgM3),
        "n-heptane at 20 °C, VDI Heat Atlas, coefficients evaluated; 15 … 25 °C is 688 … 680 kg/m³ and shifts a rating by 0.3 % at most, which is not carried");

    /// <summary>The fluid is not recorded: anything from n-heptane to the densest petrol, expected = the middle.</summary>
    public static Figure NotRecorded { get; } = new(
        HeptaneKgM3, (HeptaneKgM3 + Fuels.Petrol.Density.Spread.High) / 2, Fuels.Petrol.Density.Spread.High,
        "rating fluid not recorded: from n-heptane (683.8 kg/m³) to the densest petrol of EN 228 (775 kg/m³), expected = the middle");

    /// <summary>The density of a fluid by the code a part's <c>rated-fluid</c> has, or null when the sums know no density of it.</summary>
    public static Figure? Find(string code) => code switch
    {
        "n-heptane" => Heptane,
        "petrol" => Fuels.Petrol.Density,
        "iso-octane" => new Figure(690.3, 694.4, 698.5, "25 … 20 … 15 °C: Perry's Chemical Engineers' Handbook table 2-32, coefficients evaluated"),
        "test-oil" => new Figure(820, 825, 830, "calibration fluid of ISO 4113 at 15 °C (from memory, not certain)"),
        _ => Fuels.Find(code)?.Density,
    };
}
