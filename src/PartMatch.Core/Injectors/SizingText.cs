using System.Globalization;
using PartMatch.Core.Measures;

namespace PartMatch.Core.Injectors;

/// <summary>Numbers of the sums in units of the trade.</summary>
internal static class SizingText
{
    public static readonly Unit Bars = UnitTable.Get("bar");
    public static readonly Unit Percent = UnitTable.Get("%");
    public static readonly Unit Milliseconds = UnitTable.Get("ms");
    public static readonly Unit GramsPerMinute = UnitTable.Get("g/min");
    public static readonly Unit KilogramsPerHour = UnitTable.Get("kg/h");
    public static readonly Unit CubicCentimetresPerMinute = UnitTable.Get("cm3/min");
    public static readonly Unit GramsPerKilowattHour = UnitTable.Get("g/(kW·h)");
    public static readonly Unit Kilowatts = UnitTable.Get("kW");
    public static readonly Unit KilogramsPerCubicMetre = UnitTable.Get("kg/m3");

    public static string Bar(decimal pascals) => Bar((double)pascals);

    public static string Bar(double pascals) => In(Bars, pascals, "0.00");

    public static string In(Unit unit, double value, string format) => Quantity.TextOf(Number(value / (double)unit.Factor, format), unit);

    public static string Number(double value, string format) => value.ToString(format, CultureInfo.InvariantCulture);

    /// <summary>A density as the pencil wants it next to cm3 and g.</summary>
    public static string GramsPerCm3(double kgM3) => Number(kgM3 / 1000, "0.0000");
}
