using PartMatch.Core.Sums;
namespace PartMatch.Core.Mixture;

/// <summary>A fuel the sums know.</summary>
/// <param name="Code">As asked for: <c>petrol-e0</c>, <c>e85</c>.</param>
/// <param name="Density">kg/m3 at 15 °C unless the source says otherwise.</param>
/// <param name="AirFuelRatio">Stoichiometric, mass of air to mass of fuel.</param>
/// <param name="HeatingValue">Lower heating value, J/kg; expected = what the fuel is sized on.</param>
/// <param name="IsAlcohol">Mostly alcohol: attacks what petrol does not.</param>
public sealed record Fuel(string Code, string Name, Figure Density, Figure AirFuelRatio, Figure HeatingValue, bool IsAlcohol = false);
