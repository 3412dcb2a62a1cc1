using PartMatch.Core.Measures;

namespace PartMatch.Core.Injectors;

/// <summary>An injector held open is an orifice: volume flow ∝ √(Δp/ρ), mass flow ∝ √(ρ·Δp).</summary>
/// <remarks>Q = Cd·A·√(2Δp/ρ), Bernoulli; any fluid-mechanics text. Cd is taken as the same in both fluids and at both pressures.</remarks>
public static class OrificeFlow
{
    /// <summary>Mass flow, kg/s, of another fluid at another pressure than those of the rating.</summary>
    /// <param name="ratedM3S">Rated volume flow, m3/s.</param>
    /// <param name="ratedPa">Pressure across it at the rating.</param>
    /// <param name="ratedKgM3">Density of the fluid of the rating.</param>
    /// <param name="acrossPa">Pressure across it now.</param>
    /// <param name="fuelKgM3">Density of the fuel now.</param>
    public static Spread MassFlow(Spread ratedM3S, Spread ratedPa, Spread ratedKgM3, Spread acrossPa, Spread fuelKgM3) =>
        ratedM3S * (ratedKgM3 * fuelKgM3 * acrossPa / ratedPa).SquareRoot();

    /// <summary>The same at a pressure across that is known exactly.</summary>
    public static Spread MassFlow(Spread ratedM3S, Spread ratedPa, Spread ratedKgM3, double acrossPa, Spread fuelKgM3) =>
        MassFlow(ratedM3S, ratedPa, ratedKgM3, Spread.Exactly(acrossPa), fuelKgM3);

    /// <summary>The rating, m3/s, that an injector needs in order to feed a mass flow: the mass flow turned round.</summary>
    /// <param name="massKgS">Mass flow wanted, kg/s.</param>
    public static Spread RatedVolumeFlow(Spread massKgS, Spread ratedPa, Spread ratedKgM3, Spread acrossPa, Spread fuelKgM3) =>
        massKgS * (ratedPa / (ratedKgM3 * fuelKgM3 * acrossPa)).SquareRoot();

    /// <summary>The same at a pressure across that is known exactly.</summary>
    public static Spread RatedVolumeFlow(Spread massKgS, Spread ratedPa, Spread ratedKgM3, double acrossPa, Spread fuelKgM3) =>
        RatedVolumeFlow(massKgS, ratedPa, ratedKgM3, Spread.Exactly(acrossPa), fuelKgM3);

    /// <summary>Volume flow of the same fluid at another pressure across, in the unit of <paramref name="flow"/>.</summary>
    public static double AtPressure(double flow, double fromPa, double toPa) => flow * Math.Sqrt(toPa / fromPa);

    /// <summary>The pressure across, Pa, at which the flow is another one: it grows with the square.</summary>
    public static double PressureFor(double wantedFlow, double flow, double atPa) => atPa * Math.Pow(wantedFlow / flow, 2);
}
