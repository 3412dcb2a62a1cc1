using PartMatch.Core.Measures;
using PartMatch.Core.Sums;

namespace PartMatch.Core.Mixture;

/// <summary>Warm fuel is thinner.</summary>
public static class FuelDensity
{
    private const double PublishedAtC = 15;

    /// <summary>The density of a fuel at a temperature: density at 15 °C × (1 − expansion × (temperature − 15 °C)).</summary>
    /// <param name="celsius">Of the fuel, at the injectors or at the pump.</param>
    public static Figure At(Fuel fuel, Spread celsius)
    {
        var warmer = (celsius - Spread.Exactly(PublishedAtC)) * fuel.Expansion;
        var remaining = Spread.Exactly(1) - warmer;
        var cold = fuel.DensityAt15 ?? fuel.Density.Spread;
        return new Figure(
            cold * remaining,
            $"{fuel.Density.Source}; at {SumText.Number(celsius.Expected, "0.#")} °C by {SumText.Number(fuel.Expansion * 100, "0.000")} % for each degree over 15 °C ({fuel.ExpansionSource})");
    }
}
