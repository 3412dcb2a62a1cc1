using System.Globalization;

namespace PartMatch.Core.Measures;

/// <summary>The ways in which a text is not a quantity: found, expected, how to mend it.</summary>
internal static class QuantityRefusals
{
    public static QuantityRefused Unreadable(string text, Dimension dimension) =>
        Refuse("quantity-unreadable", "Not a quantity", text, dimension, ForExample(dimension));

    public static QuantityRefused NeedsUnit(string text, Dimension dimension) =>
        Refuse("quantity-needs-unit", "Which unit?", text, dimension, ForExample(dimension));

    public static QuantityRefused Fraction(string text, Dimension dimension) =>
        Refuse("quantity-unreadable", "A fraction", text, dimension, "write the fraction as a decimal number: 0.75 in, not 3/4 in");

    public static QuantityRefused HasExponent(string text, Dimension dimension) =>
        Refuse("quantity-unreadable", "A number with an exponent", text, dimension, "write the number out, or take a larger or smaller unit");

    public static QuantityRefused UnknownUnit(string text, string written, string symbol, Dimension dimension) =>
        Refuse("quantity-wrong-unit", "Unknown unit", text, dimension,
            UnitGuess.Of(written, symbol, dimension) is { } meant ? meant : ForExample(dimension));

    public static QuantityRefused OtherDimension(string text, Unit found, Dimension wanted) =>
        Refuse("quantity-wrong-unit", "A unit of another kind", text, wanted, (found.Dimension, wanted) switch
        {
            (Dimension.MassFlow, Dimension.VolumeFlow) or (Dimension.VolumeFlow, Dimension.MassFlow) =>
                $"mass flow and volume flow differ by a density that has to be stated; {ForExample(wanted)}",
            _ => $"{found.Symbol} is a unit of {Words(found.Dimension)}; {ForExample(wanted)}",
        });

    public static QuantityRefused TooLarge(string text, Dimension dimension) =>
        Refuse("quantity-unreadable", "Too large or too long a number", text, dimension, "at most 28 characters and 1000000000000; take a larger unit");

    /// <summary>The number is not digits with one decimal point: offers each reading it can have.</summary>
    public static QuantityRefused NotPlain(string text, string written, string symbol, Dimension dimension)
    {
        var hasComma = written.Contains(',', StringComparison.Ordinal);
        var readings = Readings(written).Select(number => symbol is ['/', ..] ? number + symbol : $"{number} {symbol}".TrimEnd()).ToList();
        var mend = readings.Count == 0 ? "write digits and one decimal point, without separators or a plus sign" : $"write {string.Join(" or ", readings)}";
        return hasComma
            ? Refuse("quantity-decimal-comma", "Is the comma a decimal point?", text, dimension, mend)
            : Refuse("quantity-unreadable", "Not a plain number", text, dimension, mend);
    }

    /// <summary>A unit name that two units share, or null. Bare hp and gal are asked about only where they could be meant.</summary>
    public static QuantityRefused? Ambiguous(string text, string written, decimal number, string symbol, Dimension dimension) => (symbol, dimension) switch
    {
        ("hp" or "bhp" or "HP" or "BHP" or "Hp" or "cv" or "CV" or "Cv" or "ch" or "CH", Dimension.Power) =>
            Ask("Which horsepower?", text, "kW, W, PS (metric) or hp(I) (mechanical)",
                $"{written} hp(I) is {In("kW", number, "hp(I)"):0.00} kW; {written} PS is {In("kW", number, "PS"):0.00} kW"),
        (_, Dimension.SpecificConsumption) when UnitTable.HasBareHorsepower(symbol) =>
            Ask("Which horsepower?", text, "g/(kW·h), or lb/(hp(I)·h) for the mechanical horsepower",
                $"{written} lb/(hp(I)·h) is {PerMechanical(number):0.00} g/(kW·h); with the metric horsepower it is {PerMetric(number):0.00} g/(kW·h)"),
        ("gal" or "gals" or "gallon" or "gallons", Dimension.Volume) =>
            Ask("Which gallon?", text, "L, gal(US) or gal(UK)",
                $"{written} gal(US) is {In("L", number, "gal(US)"):0.000} L; {written} gal(UK) is {In("L", number, "gal(UK)"):0.000} L"),
        ("gal/h" or "gal/hr" or "gph" or "GPH", Dimension.VolumeFlow) =>
            Ask("Which gallon?", text, "L/h or gal(US)/h",
                $"{written} gal(US)/h is {In("L", number, "gal(US)"):0.000} L/h; {written} gal(UK)/h is {In("L", number, "gal(UK)"):0.000} L/h"),
        _ => null,
    };

    private static QuantityRefused Ask(string title, string text, string expected, FormattableString mend) =>
        new("quantity-needs-unit", title, text, expected, "write the one that is meant: " + FormattableString.Invariant(mend));

    private static QuantityRefused Refuse(string code, string title, string text, Dimension dimension, string mend) =>
        new(code, title, Short(text), $"a number and a unit of: {UnitTable.SymbolsOf(dimension)}", mend);

    private static string Short(string text) =>
        text.Length <= QuantityParser.MaxLength ? text : string.Create(CultureInfo.InvariantCulture, $"{text[..QuantityParser.MaxLength]}… ({text.Length} characters)");

    private static decimal PerMechanical(decimal number) => In("g/(kW·h)", number, "lb/(hp(I)·h)");

    private static decimal PerMetric(decimal number) => PerMechanical(number) * UnitTable.Get("hp(I)").Factor / UnitTable.Get("PS").Factor;

    private static decimal In(string wanted, decimal number, string symbol) => UnitTable.Get(wanted).FromBase(UnitTable.Get(symbol).ToBase(number));

    // The comma as a decimal point, then every separator as a thousands mark where the groups would be whole thousands.
    private static IEnumerable<string> Readings(string written)
    {
        var separators = written.Where(letter => !char.IsAsciiDigit(letter) && letter != '-').ToList();
        var asPoint = written.Replace(',', '.');
        if (separators is [','] && QuantityParser.FindNumber(asPoint) is not null)
        {
            yield return asPoint;
        }

        var marks = separators.Distinct().ToList();
        var lastIsPoint = marks.Count == 2 && separators[^1] == marks[1] && separators.Count(mark => mark == marks[1]) == 1 && marks[1] is '.' or ',';
        var whole = lastIsPoint ? written[..written.LastIndexOf(marks[1])] : written;
        if ((lastIsPoint || marks is [not '.']) && InThousands(whole, marks[0]))
        {
            var plain = whole.Replace(marks[0].ToString(), "", StringComparison.Ordinal) + (lastIsPoint ? "." + written[(whole.Length + 1)..] : "");
            if (QuantityParser.FindNumber(plain) is not null)
            {
                yield return plain;
            }
        }
    }

    private static bool InThousands(string whole, char mark)
    {
        var groups = whole.TrimStart('-').Split(mark);
        return groups.Length > 1 && groups[0].Length is >= 1 and <= 3 && groups.Skip(1).All(group => group.Length == 3);
    }

    private static string Words(Dimension dimension) => dimension switch
    {
        Dimension.VolumeFlow => "volume flow",
        Dimension.MassFlow => "mass flow",
        Dimension.SpecificConsumption => "specific consumption",
        Dimension.SpecificEnergy => "specific energy",
        Dimension.Speed => "speed of rotation",
        _ => dimension.ToString().ToLowerInvariant(),
    };

    private static string ForExample(Dimension dimension) => "for example " + dimension switch
    {
        Dimension.Power => "180 kW, 240 hp(I) or 245 PS",
        Dimension.Pressure => "3.0 bar or 43.5 psi",
        Dimension.Speed => "6800/min",
        Dimension.Ratio => "85 %",
        Dimension.Length => "44.60 mm",
        Dimension.Time => "0.92 ms",
        Dimension.SpecificConsumption => "330 g/(kW·h)",
        Dimension.VolumeFlow => "440 cm3/min",
        Dimension.MassFlow => "220.6 g/min",
        _ => $"12.5 {UnitTable.BaseOf(dimension).Symbol}",
    };
}
