using PartMatch.Core.Measures;
using PartMatch.Core.Sums;

namespace PartMatch.Core.Mixture;

/// <summary>Fuel burnt for work at the crank (BSFC), kg/J.</summary>
/// <remarks>efficiency = 1 ÷ (BSFC × heating value). Heywood, Internal Combustion Engine Fundamentals, 1988, section 2.8 (from memory).</remarks>
public static class SpecificConsumption
{
    private const double GramPerKilowattHour = 0.001 / 3_600_000;

    // 180 g/(kW·h) of petrol at 43 MJ/kg is 46.5 %: better than any petrol engine that a builder will meet. A judgement, no source.
    private const double PlausiblePetrol = 180 * GramPerKilowattHour;

    /// <summary>Natural aspiration: 250 … 350 over the whole map; expected = the middle, as peak power is not the best point.</summary>
    private static readonly Figure _natural = InGrams(250, 300, 350,
        "250 … 350 g/(kW·h), van Basshuysen and Schäfer, Handbuch Verbrennungsmotor, 2005 (at second hand); expected = the middle; "
        + "best point about 270, Heywood 1988, 2.8 (from memory)");

    private static readonly Figure _boosted = InGrams(280, 330, 380,
        "280 … 380 g/(kW·h) at full load, Bosch Automotive Handbook, comparative data of piston engines (from memory, not certain); expected = the middle");

    /// <summary>A published range for petrol, carried over to the fuel at equal efficiency.</summary>
    public static Figure Published(bool boosted, Fuel fuel)
    {
        var petrol = boosted ? _boosted : _natural;
        return fuel.Code == Fuels.Petrol.Code
            ? petrol
            : new Figure(OnFuel(petrol.Spread, fuel), $"petrol {petrol.Source}; carried over to {fuel.Name} at equal efficiency by heating value ({fuel.HeatingValue.Source})");
    }

    /// <summary>What a consumption on petrol of 43 MJ/kg becomes on another fuel at equal efficiency.</summary>
    public static Spread OnFuel(Spread onPetrol, Fuel fuel) =>
        onPetrol * Fuels.Petrol.HeatingValue.Spread.Expected / fuel.HeatingValue.Spread;

    /// <summary>At this consumption all the heat of the fuel would be work at the crank; nothing can be lower.</summary>
    public static double ImpossibleBelow(Fuel fuel) => 1 / fuel.HeatingValue.Spread.Expected;

    /// <summary>Below this an engine of this sort is not to be expected.</summary>
    public static double ImplausibleBelow(Fuel fuel) => PlausiblePetrol * Fuels.Petrol.HeatingValue.Spread.Expected / fuel.HeatingValue.Spread.Expected;

    /// <summary>Share of the fuel's heat that becomes work at the crank, 0 to 1.</summary>
    public static double Efficiency(double bsfcKgPerJ, Fuel fuel) => 1 / (bsfcKgPerJ * fuel.HeatingValue.Spread.Expected);

    private static Figure InGrams(double low, double expected, double high, string source) => new(new Spread(low, expected, high) * GramPerKilowattHour, source);
}
