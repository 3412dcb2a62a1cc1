using CsCheck;
using PartMatch.Core.Air;
using PartMatch.Core.Measures;
using Xunit;
using static PartMatch.Core.Tests.Injectors.InjectorExamples;

namespace PartMatch.Core.Tests.Air;

public sealed class AirFormulasTests
{
    // U.S. Standard Atmosphere 1976: 15 °C, 101 325 Pa and 1.2250 kg/m3 at the sea; higher by ρ = 1.225 (1 − h ÷ 44 329)^4.255876.
    [Theory]
    [InlineData(0, 1.2250)]
    [InlineData(500, 1.1673)]
    [InlineData(1000, 1.1116)]
    [InlineData(1500, 1.0581)]
    [InlineData(2000, 1.0065)]
    [InlineData(3000, 0.9091)]
    public void Air_thins_with_height(double metres, double expected) => Near(expected, StandardAtmosphere.Density(metres), 5e-4);

    [Fact]
    public void Sea_level_is_one_atmosphere_at_15_degrees()
    {
        Near(101_325, StandardAtmosphere.Pressure(0), 1e-3);
        Near(288.15, StandardAtmosphere.Temperature(0), 1e-12);
    }

    // p ÷ (R T) with R = 287.05 J/(kg·K).
    [Theory]
    [InlineData(25, 101.325, 1.18393)]
    [InlineData(25, 99, 1.15676)]
    [InlineData(50, 200, 2.15610)]
    public void Density_follows_the_gas_law(double celsius, double kilopascal, double expected) =>
        Near(expected, AirFlow.Density(kilopascal * 1000, celsius + 273.15), 1e-4);

    // Heywood 1988, eq. 2.27 (formula from memory), by hand: 2.0 L × 6500/min ÷ 2 ÷ 60 × 0.95 × 1.18393 g/L = 121.846 g/s; ÷ 12.5 = 9.7477 g/s = 35.092 kg/h
    // of fuel; ÷ 300 g/(kW·h) = 116.97 kW = 156.86 hp.
    [Fact]
    public void Air_of_a_two_litre_engine_carries_117_kilowatts()
    {
        var air = AirFlow.Mass(0.002, 6500, 0.95, AirFlow.Density(101_325, 298.15));
        Near(0.121846, air, 1e-4);
        Near(9.7477e-3, air / 12.5, 1e-4);
        Near(35.092, air / 12.5 * 3600, 1e-4);
        var power = air / (12.5 * 300 / 3.6e9);
        Near(116_970, power, 1e-4);
        Near(156.86, In("hp(I)", power), 1e-4);
    }

    // The two routes: air for a kilowatt hour = air-fuel ratio × consumption: 12.5 × 0.300 = 3.75 kg; in pounds 12.5 × 0.50 ÷ 60 = 0.10417 lb/min for each hp.
    [Fact]
    public void Air_side_and_fuel_side_agree()
    {
        Near(3.75, 12.5 * 0.300, 1e-12);
        Near(0.10417, 12.5 * 0.50 / 60, 1e-4);
        Gen.Select(Gen.Double[0.0005, 0.006], Gen.Double[1000, 9000], Gen.Double[0.6, 1.1], Gen.Double[0.8, 4], Gen.Double[9, 15], Gen.Double[6e-8, 2e-7])
            .Sample((displacement, speed, efficiency, density, ratio, bsfc) =>
            {
                var air = AirFlow.Mass(displacement, speed, efficiency, density);
                var power = air / (ratio * bsfc);
                Near(air, power * bsfc * ratio, 1e-12); // fuel of that power × air-fuel ratio is that air again
            });
    }

    // By hand: 180 kW × 120 ÷ (1.6002 L × 6800/min) = 19.85 bar; 120 kW at 5500 16.36 bar; 2 × 94 mm × 6800 ÷ 60 = 21.31 m/s.
    [Theory]
    [InlineData(180, 6800, 19.85)]
    [InlineData(120, 5500, 16.36)]
    public void Mean_effective_pressure_follows_from_power_and_speed(double kilowatts, double speed, double expectedBar) =>
        Near(expectedBar * 1e5, EngineLoad.Bmep(Spread.Exactly(kilowatts * 1000), Spread.Exactly(0.0016002), Spread.Exactly(speed)).Expected, 5e-4);

    // Heywood 1988, eq. 2.9 (number from memory): 2 × stroke × turns: 2 × 0.086 m × 7000/min ÷ 60 = 20.067 m/s; 2 × 0.094 × 6800 ÷ 60 = 21.307.
    [Theory]
    [InlineData(86, 7000, 20.067)]
    [InlineData(94, 6800, 21.307)]
    public void Piston_speed_is_two_strokes_a_turn(double strokeMm, double speed, double expected) =>
        Near(expected, EngineLoad.PistonSpeed(Spread.Exactly(strokeMm / 1000), Spread.Exactly(speed)).Expected, 1e-4);

    // ISO 1585:2020 and UN R85, annex 5 (formula from memory, high confidence): αa = (99 ÷ ps)^1.2 × (T ÷ 298)^0.6.
    [Theory]
    [InlineData(95, 308, 1.07175)]
    [InlineData(90, 288, 1.09844)]
    [InlineData(99, 298, 1.00000)]
    public void Measured_power_is_brought_to_the_reference_air(double kilopascal, double kelvin, double expected) =>
        Near(expected, PowerCorrection.Factor(kilopascal * 1000, kelvin), 2e-4);

    [Fact]
    public void Thin_and_warm_air_is_corrected_upwards() =>
        Gen.Select(Gen.Double[80_000, 105_000], Gen.Double[270, 320], Gen.Double[0.5, 5], Gen.Double[1, 500]).Sample(
        (pascals, kelvin, warmer, thinner) => PowerCorrection.Factor(pascals - thinner, kelvin + warmer) > PowerCorrection.Factor(pascals, kelvin));
}
