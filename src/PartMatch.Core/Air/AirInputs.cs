using PartMatch.Core.Measures;
using PartMatch.Core.Sums;

namespace PartMatch.Core.Air;

/// <summary>The air as the sums take it: every default filled in.</summary>
internal sealed record AirInputs(Spread AmbientPa, Spread ChargeK, Spread VolumetricEfficiency, Spread AirFuelRatio, IReadOnlyList<Assumption> Assumed)
{
    private const double ZeroC = 273.15;

    private static readonly Figure _efficiency = new(
        0.80, 0.90, 1.00, "against the air in the manifold: natural engines reach 0.80 … 0.90, Heywood 1988, 2.10 (from memory); tuned ones 1.00 (common practice, no source)");

    private static readonly Figure _coolCharge = new(ZeroC + 15, ZeroC + 25, ZeroC + 40, "natural aspiration, 15 … 25 … 40 °C (common practice, no source)");
    private static readonly Figure _warmCharge = new(ZeroC + 35, ZeroC + 50, ZeroC + 80,
        "boosted, behind a charge cooler, 35 … 50 … 80 °C (common practice, no source): measure");

    private static readonly Figure _lambda = new(0.80, 0.87, 0.95, "full load is run rich: 0.80 … 0.87 … 0.95 of stoichiometric (common practice, no source)");

    public static AirInputs Of(AirQuestion question)
    {
        var typed = question.Typed;
        var height = typed.Altitude is { } altitude ? Spread.Of(altitude) : Spread.Exactly(0);
        var charge = Filled(typed.ChargeTemperature, question.Boosted ? _warmCharge : _coolCharge);
        var efficiency = Filled(typed.VolumetricEfficiency, _efficiency);
        var lambda = Filled(typed.Lambda, _lambda);
        var ambient = new Spread(StandardAtmosphere.Pressure(height.High), StandardAtmosphere.Pressure(height.Expected),
            StandardAtmosphere.Pressure(height.Low));
        return new AirInputs(ambient, charge.Spread, efficiency.Spread, lambda.Spread * question.Fuel.AirFuelRatio.Spread,
            [
                new Assumption("ambient-pressure", ambient.In(UnitTable.Get("kPa"), "0.0"),
                    $"U.S. Standard Atmosphere 1976 at {height.In(UnitTable.Get("m"), "0").Text}"),
                new Assumption("charge-temperature", typed.ChargeTemperature ?? InCelsius(charge.Spread), charge.Source),
                new Assumption("volumetric-efficiency", typed.VolumetricEfficiency ?? efficiency.Spread.In(SumText.Ratio, "0.00"), efficiency.Source),
                new Assumption("lambda", typed.Lambda ?? lambda.Spread.In(SumText.Ratio, "0.00"), lambda.Source),
                new Assumption("air-fuel-ratio", question.Fuel.AirFuelRatio.Spread.In(SumText.Ratio, "0.00"), question.Fuel.AirFuelRatio.Source),
            ]);
    }

    private static Figure Filled(QuantityRange? typed, Figure otherwise) => typed is { } given ? new Figure(Spread.Of(given), "given in the question")
        : otherwise;

    private static QuantityRange InCelsius(Spread kelvin)
    {
        static string Show(double value) => SumText.Number(value - ZeroC, "0.#");
        return new QuantityRange(kelvin.Low, kelvin.Expected, kelvin.High, "K", $"{Show(kelvin.Low)} … {Show(kelvin.Expected)} … {Show(kelvin.High)} °C");
    }
}
