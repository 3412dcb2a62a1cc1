using System.Globalization;
using PartMatch.Core.Measures;

namespace PartMatch.Core.Sums;

/// <summary>Numbers of the sums in units of the trade: what goes in is in the base unit.</summary>
internal static class SumText
{
    public static readonly Unit Bars = UnitTable.Get("bar");
    public static readonly Unit Percent = UnitTable.Get("%");
    public static readonly Unit Milliseconds = UnitTable.Get("ms");
    public static readonly Unit GramsPerMinute = UnitTable.Get("g/min");
    public static readonly Unit KilogramsPerHour = UnitTable.Get("kg/h");
    public static readonly Unit CubicCentimetresPerMinute = UnitTable.Get("cm3/min");
    public static readonly Unit GramsPerKilowattHour = UnitTable.Get("g/(kW·h)");
    public static readonly Unit Kilowatts = UnitTable.Get("kW");
    public static readonly Unit LitresPerHour = UnitTable.Get("L/h");
    public static readonly Unit PerMinute = UnitTable.Get("1/min");
    public static readonly Unit Volt = UnitTable.Get("V");
    public static readonly Unit Ratio = UnitTable.Get("1");
    public static readonly Unit KilogramsPerCubicMetre = UnitTable.Get("kg/m3");

    public static string InBar(decimal pascals) => InBar((double)pascals);

    public static string InBar(double pascals) => In(Bars, pascals, "0.00");

    public static string InBar(Spread pascals) => pascals.In(Bars, "0.00").Text;

    public static string InMilliseconds(double seconds, string format = "0.00") => In(Milliseconds, seconds, format);

    public static string InPercent(double share, string format = "0.00") => In(Percent, share, format);

    public static string InGramsPerMinute(double kgS) => In(GramsPerMinute, kgS, "0.0");

    public static string InKilogramsPerHour(double kgS) => In(KilogramsPerHour, kgS, "0.00");

    public static string InCm3PerMinute(double m3S) => In(CubicCentimetresPerMinute, m3S, "0.0");

    public static string InGramsPerKilowattHour(double kgJ) => In(GramsPerKilowattHour, kgJ, "0.##");

    /// <summary>A density as the pencil wants it next to cm3 and g, without its unit.</summary>
    public static string BareGramsPerCm3(double kgM3) => Number(kgM3 / 1000, "0.0000");

    /// <summary>A pressure without its unit, for a quotient.</summary>
    public static string BareBar(double pascals) => Number(pascals / 100_000, "0.00");

    public static string In(Unit unit, double value, string format) => Quantity.TextOf(Number(value / (double)unit.Factor, format), unit);

    public static string Number(double value, string format) => value.ToString(format, CultureInfo.InvariantCulture);
}
