using PartMatch.Core.Measures;
using PartMatch.Core.Sums;

namespace PartMatch.Core.Mixture;

/// <summary>Petrol with a share of ethanol by volume, when somebody has measured that share.</summary>
public static class Blend
{
    private const string Volumes = "computed by volume from petrol and ethanol; the volumes are added, although they shrink a little when mixed (under 0.5 %, from memory)";

    /// <summary>Can a share of ethanol be given for this fuel? Pure alcohols have none.</summary>
    public static bool Takes(Fuel fuel) => fuel.Code is not ("ethanol" or "methanol");

    /// <summary>The same fuel with the figures of its share of ethanol.</summary>
    /// <param name="ethanol">Share by volume, 0 to 1.</param>
    public static Fuel Of(Fuel fuel, Spread ethanol)
    {
        var (petrol, alcohol) = (Fuels.Petrol, Fuels.Ethanol);
        double Density(double share, double petrolKgM3) => (share * alcohol.Density.Spread.Expected) + ((1 - share) * petrolKgM3);
        double ByMass(double share, Func<Fuel, double> figure)
        {
            var (ofAlcohol, ofPetrol) = (share * alcohol.Density.Spread.Expected, (1 - share) * petrol.Density.Spread.Expected);
            return ((ofAlcohol * figure(alcohol)) + (ofPetrol * figure(petrol))) / (ofAlcohol + ofPetrol);
        }

        // More ethanol: denser, less heat, less air. So the richest blend gives the low heating value and the high density.
        Spread Falling(Func<Fuel, double> figure) => new(ByMass(ethanol.High, figure), ByMass(ethanol.Expected, figure), ByMass(ethanol.Low, figure));
        var measured = petrol.Density.Spread;
        return fuel with
        {
            Name = $"{fuel.Name}, {SumText.InPercent(ethanol.Expected, "0.#")} ethanol",
            Density = new Figure(new Spread(Density(ethanol.Low, measured.Low), Density(ethanol.Expected, measured.Expected),
                Density(ethanol.High, measured.High)), Volumes),
            AirFuelRatio = new Figure(Falling(one => one.AirFuelRatio.Spread.Expected), Volumes),
            HeatingValue = new Figure(Falling(one => one.HeatingValue.Spread.Expected), Volumes),
            Expansion = (ethanol.Expected * alcohol.Expansion) + ((1 - ethanol.Expected) * petrol.Expansion),
            IsAlcohol = ethanol.High > 0.1, // above E10 the parts made for road petrol are out of their depth: common practice, no source
        };
    }
}
