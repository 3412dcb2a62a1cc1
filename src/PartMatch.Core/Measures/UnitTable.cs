using System.Collections.Frozen;
using System.Text;

namespace PartMatch.Core.Measures;

/// <summary>
/// The units PartMatch reads and writes. Base units are SI, except that angles stay in degrees (of the crank, unless a feature says
/// otherwise) and speeds of rotation in 1/min, because that is how the trade records them.
/// </summary>
/// <remarks>Factors: NIST Special Publication 811 (2008), appendix B, and the exact definitions behind its rounded rows.</remarks>
public static class UnitTable
{
    private const int LongestSpelling = 20;

    private const decimal Pound = 0.45359237m;
    private const decimal Inch = 0.0254m;
    private const decimal PoundForce = 4.4482216152605m;
    private const decimal HorsepowerMechanical = 550m * 0.3048m * PoundForce;
    private const decimal GallonUs = 0.003785411784m;
    private const decimal GallonUk = 0.00454609m;
    private const decimal Psi = PoundForce / (Inch * Inch);

    // Bases that were written before it was asked about hold it; whoever types it is asked which horsepower.
    private const string BarePoundsPerHorsepowerHour = "lb/(hp·h)";

    private static readonly FrozenSet<string> _bareHorsepower =
        new[]
        {
            BarePoundsPerHorsepowerHour, "lb/(hp.h)", "lb/(hp h)", "lb/hp/h", "lb/(hp·hr)", "lb/hph", "lb/hp-h", "lb/hp-hr", "lb/hp·h",
            "lb/(bhp·h)", "lb/bhp/h",
        }.ToFrozenSet(StringComparer.Ordinal);

    /// <summary>Every unit, grouped by dimension; the first of a dimension is its base unit.</summary>
    public static IReadOnlyList<Unit> All { get; } =
    [
        new("1", Dimension.Ratio, 1), new("%", Dimension.Ratio, 0.01m),
        new("m", Dimension.Length, 1), new("mm", Dimension.Length, 0.001m), new("um", Dimension.Length, 0.000001m),
        new("cm", Dimension.Length, 0.01m), new("in", Dimension.Length, Inch), new("ft", Dimension.Length, 0.3048m),
        new("m2", Dimension.Area, 1), new("cm2", Dimension.Area, 0.0001m), new("mm2", Dimension.Area, 0.000001m),
        new("m3", Dimension.Volume, 1), new("cm3", Dimension.Volume, 0.000001m), new("mL", Dimension.Volume, 0.000001m),
        new("L", Dimension.Volume, 0.001m), new("in3", Dimension.Volume, Inch * Inch * Inch),
        new("gal(US)", Dimension.Volume, GallonUs), new("gal(UK)", Dimension.Volume, GallonUk),
        new("kg", Dimension.Mass, 1), new("g", Dimension.Mass, 0.001m), new("mg", Dimension.Mass, 0.000001m),
        new("lb", Dimension.Mass, Pound), new("oz", Dimension.Mass, Pound / 16),
        new("s", Dimension.Time, 1), new("ms", Dimension.Time, 0.001m), new("us", Dimension.Time, 0.000001m),
        new("min", Dimension.Time, 60), new("h", Dimension.Time, 3600),
        new("deg", Dimension.Angle, 1), new("rad", Dimension.Angle, 180m / 3.1415926535897932384626433833m),
        new("K", Dimension.Temperature, 1), new("degC", Dimension.Temperature, 1, 273.15m),
        new("degF", Dimension.Temperature, 5m / 9m, 273.15m - (32m * 5m / 9m)),
        new("Pa", Dimension.Pressure, 1), new("kPa", Dimension.Pressure, 1000), new("MPa", Dimension.Pressure, 1_000_000),
        new("bar", Dimension.Pressure, 100_000), new("mbar", Dimension.Pressure, 100), new("psi", Dimension.Pressure, Psi),
        new("atm", Dimension.Pressure, 101_325), new("inHg", Dimension.Pressure, 3386.389m),
        new("N", Dimension.Force, 1), new("kN", Dimension.Force, 1000), new("lbf", Dimension.Force, PoundForce),
        new("N·m", Dimension.Torque, 1), new("lbf·ft", Dimension.Torque, PoundForce * 0.3048m),
        new("lbf·in", Dimension.Torque, PoundForce * Inch),
        new("W", Dimension.Power, 1), new("kW", Dimension.Power, 1000), new("PS", Dimension.Power, 735.49875m),
        new("hp(I)", Dimension.Power, HorsepowerMechanical),
        new("1/min", Dimension.Speed, 1), new("1/s", Dimension.Speed, 60),
        new("m3/s", Dimension.VolumeFlow, 1), new("cm3/min", Dimension.VolumeFlow, 0.000001m / 60),
        new("cm3/s", Dimension.VolumeFlow, 0.000001m), new("L/h", Dimension.VolumeFlow, 0.001m / 3600),
        new("L/min", Dimension.VolumeFlow, 0.001m / 60), new("gal(US)/h", Dimension.VolumeFlow, GallonUs / 3600),
        new("kg/s", Dimension.MassFlow, 1), new("g/s", Dimension.MassFlow, 0.001m), new("g/min", Dimension.MassFlow, 0.001m / 60),
        new("mg/ms", Dimension.MassFlow, 0.001m), new("kg/h", Dimension.MassFlow, 1m / 3600), new("lb/h", Dimension.MassFlow, Pound / 3600),
        new("kg/m3", Dimension.Density, 1), new("g/cm3", Dimension.Density, 1000),
        new("kg/J", Dimension.SpecificConsumption, 1), new("g/(kW·h)", Dimension.SpecificConsumption, 0.001m / 3_600_000),
        new("lb/(hp(I)·h)", Dimension.SpecificConsumption, Pound / (HorsepowerMechanical * 3600)),
        new("J/kg", Dimension.SpecificEnergy, 1), new("MJ/kg", Dimension.SpecificEnergy, 1_000_000),
        new("ohm", Dimension.Resistance, 1), new("kohm", Dimension.Resistance, 1000), new("Mohm", Dimension.Resistance, 1_000_000),
        new("V", Dimension.Voltage, 1), new("mV", Dimension.Voltage, 0.001m),
        new("A", Dimension.Current, 1), new("mA", Dimension.Current, 0.001m),
        new("Hz", Dimension.Frequency, 1), new("kHz", Dimension.Frequency, 1000),
        new("H", Dimension.Inductance, 1), new("mH", Dimension.Inductance, 0.001m),
        new("N/m", Dimension.Stiffness, 1), new("N/mm", Dimension.Stiffness, 1000),
    ];

    /// <summary>
    /// Other spellings of the same unit, in the plain form of <see cref="Plain"/>. Ambiguous names (bare hp, gal, oz of volume) are left
    /// out on purpose.
    /// </summary>
    private static readonly FrozenDictionary<string, string> _alsoWritten = new (string Symbol, string[] Spellings)[]
    {
        ("um", ["\u03BCm", "micron"]), ("in", ["\"", "\u2032\u2032", "inch"]), ("cm3", ["cc", "ccm"]), ("mL", ["ml"]), ("L", ["l"]),
        ("us", ["\u03BCs"]), ("s", ["sec"]), ("h", ["hr"]), ("deg", ["°"]), ("degC", ["°C"]), ("degF", ["°F"]),
        ("N·m", ["Nm", "N.m", "N m"]), ("lbf·ft", ["lb·ft", "lbf.ft", "lbf ft", "ft·lbf", "ft.lbf"]), ("lbf·in", ["lb·in", "lbf.in", "lbf in", "in·lbf"]),
        ("hp(I)", ["hpI", "hp (I)", "bhp(I)"]), ("PS", ["hp(metric)", "hp(M)"]),
        ("1/min", ["/min", "rpm", "r/min", "min-1"]), ("1/s", ["/s", "s-1"]),
        ("cm3/min", ["cc/min", "ccm/min", "mL/min", "ml/min"]), ("L/h", ["l/h", "L/hr"]), ("L/min", ["l/min"]), ("lb/h", ["lb/hr"]),
        ("g/(kW·h)", ["g/kWh", "g/(kWh)", "g/(kW.h)", "g/(kW h)", "g/kW/h"]),
        ("lb/(hp(I)·h)", ["lb/(hp(I).h)", "lb/(hp(I) h)", "lb/hp(I)/h", "lb/(hp(I)·hr)", BarePoundsPerHorsepowerHour]),
        ("ohm", ["\u03A9"]), ("kohm", ["k\u03A9"]), ("Mohm", ["M\u03A9"]),
    }.SelectMany(row => row.Spellings, (row, spelling) => (row.Symbol, spelling)).ToFrozenDictionary(pair => pair.spelling, pair => pair.Symbol, StringComparer.Ordinal);

    private static readonly FrozenDictionary<string, Unit> _bySymbol = All.ToFrozenDictionary(unit => unit.Symbol, StringComparer.Ordinal);

    private static readonly FrozenDictionary<Dimension, Unit> _baseUnits =
        All.GroupBy(unit => unit.Dimension).ToFrozenDictionary(group => group.Key, group => group.First());

    /// <summary>The unit of that symbol or of one of its usual spellings, or null. Case counts: mm and Mm are not the same.</summary>
    public static Unit? Find(string symbol) =>
        _bySymbol.GetValueOrDefault(symbol) ?? (symbol.Length <= LongestSpelling && !symbol.Any(char.IsSurrogate) ? FindPlain(Plain(symbol)) : null);

    /// <summary>Every way in which a unit of a dimension may be written.</summary>
    internal static IEnumerable<(string Spelling, Unit Unit)> SpellingsOf(Dimension dimension) =>
        _bySymbol.Select(pair => (pair.Key, pair.Value)).Concat(_alsoWritten.Select(pair => (pair.Key, Get(pair.Value)))).Where(one => one.Item2.Dimension == dimension);

    /// <summary>Is it a consumption for an hour of a horsepower that could be either?</summary>
    public static bool HasBareHorsepower(string symbol) =>
        symbol.Length <= LongestSpelling && !symbol.Any(char.IsSurrogate) && _bareHorsepower.Contains(Plain(symbol));

    private static Unit? FindPlain(string plain) => _bySymbol.GetValueOrDefault(_alsoWritten.GetValueOrDefault(plain, plain));

    /// <summary>
    /// Without what only typography adds: NFKC makes a superscript 3 a 3, the ohm sign an omega, the micro sign a mu; every raised dot reads as
    /// the middle dot and the minus sign as a hyphen.
    /// </summary>
    private static string Plain(string symbol) =>
        symbol.Normalize(NormalizationForm.FormKC).Replace('\u22C5', '·').Replace('\u2219', '·').Replace('\u2022', '·').Replace('*', '·').Replace('\u2212', '-');

    public static Unit Get(string symbol) =>
        Find(symbol) ?? throw new ArgumentException($"'{symbol}' is not in the unit table.", nameof(symbol));

    public static Unit BaseOf(Dimension dimension) => _baseUnits[dimension];

    /// <summary>The symbols of one dimension as a sentence for error messages, base unit first.</summary>
    public static string SymbolsOf(Dimension dimension) =>
        string.Join(", ", All.Where(unit => unit.Dimension == dimension).Select(unit => unit.Symbol));
}
