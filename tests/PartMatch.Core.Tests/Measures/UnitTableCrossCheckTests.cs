using PartMatch.Core.Measures;
using UnitsNet;
using Xunit;

namespace PartMatch.Core.Tests.Measures;

/// <summary>
/// The factors against an independent units library. Its own factors are rounded in places (1 hp is 745.69 W there), hence 1e-4.
/// </summary>
public sealed class UnitTableCrossCheckTests
{
    public static TheoryData<string, Func<double, double>> Independent() => new()
    {
        { "%", one => Ratio.FromPercent(one).DecimalFractions },
        { "mm", one => Length.FromMillimeters(one).Meters },
        { "um", one => Length.FromMicrometers(one).Meters },
        { "cm", one => Length.FromCentimeters(one).Meters },
        { "in", one => Length.FromInches(one).Meters },
        { "ft", one => Length.FromFeet(one).Meters },
        { "mm2", one => Area.FromSquareMillimeters(one).SquareMeters },
        { "cm2", one => Area.FromSquareCentimeters(one).SquareMeters },
        { "cm3", one => Volume.FromCubicCentimeters(one).CubicMeters },
        { "mL", one => Volume.FromMilliliters(one).CubicMeters },
        { "L", one => Volume.FromLiters(one).CubicMeters },
        { "in3", one => Volume.FromCubicInches(one).CubicMeters },
        { "gal(US)", one => Volume.FromUsGallons(one).CubicMeters },
        { "gal(UK)", one => Volume.FromImperialGallons(one).CubicMeters },
        { "g", one => Mass.FromGrams(one).Kilograms },
        { "mg", one => Mass.FromMilligrams(one).Kilograms },
        { "lb", one => Mass.FromPounds(one).Kilograms },
        { "oz", one => Mass.FromOunces(one).Kilograms },
        { "ms", one => Duration.FromMilliseconds(one).Seconds },
        { "us", one => Duration.FromMicroseconds(one).Seconds },
        { "min", one => Duration.FromMinutes(one).Seconds },
        { "h", one => Duration.FromHours(one).Seconds },
        { "rad", one => Angle.FromRadians(one).Degrees },
        { "degC", one => Temperature.FromDegreesCelsius(one).Kelvins },
        { "degF", one => Temperature.FromDegreesFahrenheit(one).Kelvins },
        { "kPa", one => Pressure.FromKilopascals(one).Pascals },
        { "MPa", one => Pressure.FromMegapascals(one).Pascals },
        { "bar", one => Pressure.FromBars(one).Pascals },
        { "mbar", one => Pressure.FromMillibars(one).Pascals },
        { "psi", one => Pressure.FromPoundsForcePerSquareInch(one).Pascals },
        { "atm", one => Pressure.FromAtmospheres(one).Pascals },
        { "inHg", one => Pressure.FromInchesOfMercury(one).Pascals },
        { "kN", one => Force.FromKilonewtons(one).Newtons },
        { "lbf", one => Force.FromPoundsForce(one).Newtons },
        { "lbf·ft", one => Torque.FromPoundForceFeet(one).NewtonMeters },
        { "lbf·in", one => Torque.FromPoundForceInches(one).NewtonMeters },
        { "kW", one => (double)Power.FromKilowatts(one).Watts },
        { "PS", one => (double)Power.FromMetricHorsepower(one).Watts },
        { "hp(I)", one => (double)Power.FromMechanicalHorsepower(one).Watts },
        { "1/s", one => RotationalSpeed.FromRevolutionsPerSecond(one).RevolutionsPerMinute },
        { "cm3/min", one => VolumeFlow.FromCubicCentimetersPerMinute(one).CubicMetersPerSecond },
        { "cm3/s", one => VolumeFlow.FromMillilitersPerSecond(one).CubicMetersPerSecond },
        { "L/h", one => VolumeFlow.FromLitersPerHour(one).CubicMetersPerSecond },
        { "L/min", one => VolumeFlow.FromLitersPerMinute(one).CubicMetersPerSecond },
        { "gal(US)/h", one => VolumeFlow.FromUsGallonsPerHour(one).CubicMetersPerSecond },
        { "g/s", one => MassFlow.FromGramsPerSecond(one).KilogramsPerSecond },
        { "g/min", one => Mass.FromGrams(one).Kilograms / Duration.FromMinutes(1).Seconds },
        { "mg/ms", one => Mass.FromMilligrams(one).Kilograms / Duration.FromMilliseconds(1).Seconds },
        { "kg/h", one => MassFlow.FromKilogramsPerHour(one).KilogramsPerSecond },
        { "lb/h", one => MassFlow.FromPoundsPerHour(one).KilogramsPerSecond },
        { "g/cm3", one => Density.FromGramsPerCubicCentimeter(one).KilogramsPerCubicMeter },
        { "g/(kW·h)", one => BrakeSpecificFuelConsumption.FromGramsPerKiloWattHour(one).KilogramsPerJoule },
        { "lb/(hp(I)·h)", one => BrakeSpecificFuelConsumption.FromPoundsPerMechanicalHorsepowerHour(one).KilogramsPerJoule },
        { "MJ/kg", one => SpecificEnergy.FromMegajoulesPerKilogram(one).JoulesPerKilogram },
        { "kohm", one => ElectricResistance.FromKiloohms(one).Ohms },
        { "Mohm", one => ElectricResistance.FromMegaohms(one).Ohms },
        { "mV", one => ElectricPotential.FromMillivolts(one).Volts },
        { "mA", one => ElectricCurrent.FromMilliamperes(one).Amperes },
        { "kHz", one => Frequency.FromKilohertz(one).Hertz },
        { "mH", one => ElectricInductance.FromMillihenries(one).Henries },
        { "N/mm", one => ForcePerLength.FromNewtonsPerMillimeter(one).NewtonsPerMeter },
    };

    [Theory]
    [MemberData(nameof(Independent))]
    public void A_unit_agrees_with_an_independent_library(string symbol, Func<double, double> independent)
    {
        var expected = independent(17.3);
        Assert.Equal(expected, (double)UnitTable.Get(symbol).ToBase(17.3m), Math.Abs(expected) * 1e-4);
    }

    // So that a unit added to the table is cross-checked as well: base units are what the factors are stated in and need no check.
    [Fact]
    public void Every_unit_that_is_not_a_base_unit_is_cross_checked() =>
        Assert.Equal(
            UnitTable.All.Where(unit => unit != UnitTable.BaseOf(unit.Dimension)).Select(unit => unit.Symbol).Order(StringComparer.Ordinal),
            Independent().Select(row => row.Data.Item1).Order(StringComparer.Ordinal));
}
