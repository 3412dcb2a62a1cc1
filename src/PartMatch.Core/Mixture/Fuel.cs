using PartMatch.Core.Measures;
using PartMatch.Core.Sums;

namespace PartMatch.Core.Mixture;

/// <summary>A fuel the sums know.</summary>
/// <param name="Code">As asked for: <c>petrol-e0</c>, <c>e85</c>.</param>
/// <param name="Density">kg/m3 at 15 °C unless the source says otherwise.</param>
/// <param name="AirFuelRatio">Stoichiometric, mass of air to mass of fuel.</param>
/// <param name="HeatingValue">Lower heating value, J/kg; expected = what the fuel is sized on.</param>
/// <param name="IsAlcohol">Mostly alcohol: attacks what petrol does not.</param>
public sealed record Fuel(string Code, string Name, Figure Density, Figure AirFuelRatio, Figure HeatingValue, bool IsAlcohol = false)
{
    private const string PetrolExpansion = "ASTM D1250 table 54B for 745 kg/m³ (from memory): 346.4228 ÷ 745² + 0.4388 ÷ 745";

    /// <summary>Loss of density for each degree, 1/K.</summary>
    public double Expansion { get; init; } = 0.001213;

    public string ExpansionSource { get; init; } = PetrolExpansion;

    /// <summary>kg/m3 at 15 °C where <see cref="Density"/> already spans several temperatures; else null.</summary>
    public Spread? DensityAt15 { get; init; }
}
