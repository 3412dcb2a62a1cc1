using System.Globalization;
using System.Text.RegularExpressions;

namespace PartMatch.Core.Measures;

/// <summary>The outcome of reading a quantity: <see cref="QuantityRead"/> or <see cref="QuantityRefused"/>.</summary>
public abstract record QuantityOutcome;

/// <summary>The text was understood.</summary>
public sealed record QuantityRead(Quantity Quantity, Unit Unit) : QuantityOutcome;

/// <summary>The text was not understood, or could mean two things: found, expected and how to mend it.</summary>
/// <param name="Code"><c>quantity-needs-unit</c>, <c>quantity-unreadable</c>, <c>quantity-wrong-unit</c> or <c>quantity-decimal-comma</c>.</param>
public sealed record QuantityRefused(string Code, string Title, string Found, string Expected, string Mend) : QuantityOutcome;

/// <summary>
/// Reads "44.60 mm", "6800/min", "43.5 psi". Strict: digits, one decimal point, an optional leading minus, then a unit of the unit table.
/// What could mean two things (a decimal comma, a bare hp, a bare gal) is asked about, never guessed.
/// </summary>
public static partial class QuantityParser
{
    private const NumberStyles PlainNumber = NumberStyles.AllowDecimalPoint | NumberStyles.AllowLeadingSign;

    [GeneratedRegex(@"^(?<number>-?[0-9][0-9.,' \u00A0\u202F]*?)\s*(?<unit>[^0-9.,\s].*|1/.*|/.*)?$")]
    private static partial Regex Shape();

    [GeneratedRegex(@"^-?[0-9]+(\.[0-9]+)?$")]
    private static partial Regex StrictNumber();

    /// <summary>Reads a bare number by the strict rule, or gives null.</summary>
    public static decimal? FindNumber(string text) =>
        text.Length <= 28 && StrictNumber().IsMatch(text) && decimal.TryParse(text, PlainNumber, CultureInfo.InvariantCulture, out var number) ? number : null;

    /// <summary>Reads a quantity of one dimension.</summary>
    public static QuantityOutcome Parse(string text, Dimension dimension)
    {
        var trimmed = text.Trim();
        var match = Shape().Match(trimmed);
        var expected = $"a number and a unit of: {UnitTable.SymbolsOf(dimension)}";
        var example = $"for example {Example(dimension)}";
        if (!match.Success)
        {
            return new QuantityRefused("quantity-unreadable", "Not a quantity", text, expected, example);
        }

        var written = match.Groups["number"].Value.Trim();
        var symbol = match.Groups["unit"].Value.Trim();
        if (FindNumber(written) is not { } number)
        {
            return RefuseNumber(text, written, symbol, expected);
        }

        if (symbol.Length == 0)
        {
            return new QuantityRefused("quantity-needs-unit", "Which unit?", text, expected, example);
        }

        if (Ambiguous(number, symbol) is { } question)
        {
            return question with { Found = text };
        }

        var unit = UnitTable.Find(symbol);
        if (unit is null)
        {
            return new QuantityRefused("quantity-wrong-unit", "Unknown unit", text, expected, example);
        }

        return unit.Dimension == dimension
            ? new QuantityRead(Quantity.From(number, unit) with { Text = $"{written} {unit.Symbol}" }, unit)
            : new QuantityRefused("quantity-wrong-unit", "A unit of another kind", text, expected, Mend(unit, dimension, example));
    }

    private static QuantityRefused RefuseNumber(string text, string written, string symbol, string expected)
    {
        if (!written.Contains(',', StringComparison.Ordinal))
        {
            return new QuantityRefused("quantity-unreadable", "Not a plain number", text, expected, "write digits and one decimal point, without separators");
        }

        var asPoint = written.Replace(',', '.');
        var without = written.Replace(",", "", StringComparison.Ordinal);
        return new QuantityRefused(
            "quantity-decimal-comma", "Is the comma a decimal point?", text, expected, $"write {asPoint} {symbol} or {without} {symbol}".TrimEnd());
    }

    private static QuantityRefused? Ambiguous(decimal number, string symbol) => symbol switch
    {
        "hp" or "bhp" or "HP" or "BHP" or "cv" or "ch" => new(
            "quantity-needs-unit", "Which horsepower?", "", "kW, W, PS (metric) or hp(I) (mechanical)",
            string.Create(CultureInfo.InvariantCulture, $"{number} hp(I) is {InKilowatt(number, "hp(I)"):0.00} kW; {number} PS is {InKilowatt(number, "PS"):0.00} kW")),
        "gal" or "gallon" or "gal/h" or "gph" => new(
            "quantity-needs-unit", "Which gallon?", "", "L, gal(US) or gal(UK)",
            string.Create(CultureInfo.InvariantCulture, $"{number} gal(US) is {number * 3.785411784m:0.000} L; {number} gal(UK) is {number * 4.54609m:0.000} L")),
        _ => null,
    };

    private static decimal InKilowatt(decimal number, string symbol) => UnitTable.Get(symbol).ToBase(number) / 1000;

    private static string Mend(Unit found, Dimension wanted, string example) => (found.Dimension, wanted) switch
    {
        (Dimension.MassFlow, Dimension.VolumeFlow) or (Dimension.VolumeFlow, Dimension.MassFlow) =>
            "mass flow and volume flow differ by a density that has to be stated; " + example,
        _ => $"{found.Symbol} measures {found.Dimension.ToString().ToLowerInvariant()}; {example}",
    };

    private static string Example(Dimension dimension) => dimension switch
    {
        Dimension.Power => "180 kW, 240 hp(I) or 245 PS",
        Dimension.Pressure => "3.0 bar or 43.5 psi",
        Dimension.Speed => "6800/min",
        Dimension.Ratio => "85 %",
        Dimension.Length => "44.60 mm",
        Dimension.SpecificConsumption => "330 g/(kW·h)",
        Dimension.VolumeFlow => "440 cm3/min",
        _ => $"12.5 {UnitTable.BaseOf(dimension).Symbol}",
    };
}
