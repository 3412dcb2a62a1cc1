using System.Globalization;
using System.Text.RegularExpressions;

namespace PartMatch.Core.Measures;

/// <summary>
/// Reads "44.60 mm", "6800/min", "43.5 psi". Strict: digits, one decimal point, an optional leading minus, then a unit of the unit table.
/// What could mean two things (a decimal comma, a bare hp, a bare gal) is asked about, never guessed.
/// </summary>
public static partial class QuantityParser
{
    /// <summary>Longest text that is read; nothing anybody means is longer.</summary>
    public const int MaxLength = 60;

    private const NumberStyles PlainNumber = NumberStyles.AllowDecimalPoint | NumberStyles.AllowLeadingSign;

    // Far beyond any engine, and far inside decimal after the largest factor of the unit table.
    private const decimal LargestNumber = 1_000_000_000_000m;

    // Digits and everything that people put between digits, greedily: "6801/min" must not end as 680 and "1/min". One class, so linear.
    [GeneratedRegex(@"^(?<number>[-+\u2212]?[0-9][0-9.,'\u2019_\u00A0\u2009\u202F ]*)(?<unit>.*)\z", RegexOptions.CultureInvariant)]
    private static partial Regex Shape();

    [GeneratedRegex(@"^-?[0-9]+(\.[0-9]+)?\z", RegexOptions.CultureInvariant)]
    private static partial Regex StrictNumber();

    [GeneratedRegex(@"^[eE][-+\u2212]?[0-9]|^(\u00D7|x|\*|\u00B7) ?10", RegexOptions.CultureInvariant)]
    private static partial Regex Exponent();

    /// <summary>Reads a bare number by the strict rule, or gives null; also null beyond ± 10¹².</summary>
    public static decimal? FindNumber(string text) =>
        text.Length <= 28
        && StrictNumber().IsMatch(text)
        && decimal.TryParse(text, PlainNumber, CultureInfo.InvariantCulture, out var number)
        && Math.Abs(number) <= LargestNumber
            ? number
            : null;

    // A compression ratio is said as "nine to one".
    [GeneratedRegex(@"\s*(:|to)\s*1\z", RegexOptions.CultureInvariant)]
    private static partial Regex ToOne();

    /// <summary>Reads a quantity of one dimension; a ratio also as 9.5:1 or 9.5 to 1. A bare number is a quantity only where the dimension is a ratio.</summary>
    public static QuantityOutcome Parse(string text, Dimension dimension)
    {
        var bare = dimension == Dimension.Ratio && text.Length <= MaxLength ? ToOne().Replace(text.Trim(), "") : text;
        var match = text.Length <= MaxLength ? Shape().Match(bare.Trim()) : Match.Empty;
        if (!match.Success)
        {
            return QuantityRefusals.Unreadable(text, dimension);
        }

        var (written, symbol) = Split(match.Groups["number"].Value.Trim(), match.Groups["unit"].Value.Trim());
        if (symbol is ['/', ..] && symbol[1..].TrimStart() is [>= '0' and <= '9', ..])
        {
            return QuantityRefusals.Fraction(text, dimension);
        }

        if (Exponent().IsMatch(symbol))
        {
            return QuantityRefusals.HasExponent(text, dimension);
        }

        if (FindNumber(written) is { } number)
        {
            return WithUnit(text, written, number, symbol, dimension);
        }

        return StrictNumber().IsMatch(written) ? QuantityRefusals.TooLarge(text, dimension) : QuantityRefusals.NotPlain(text, written, symbol, dimension);
    }

    // "6800 1/min": the 1 belongs to the unit.
    private static (string Written, string Symbol) Split(string written, string symbol) =>
        symbol is ['/', ..] && written.EndsWith(" 1", StringComparison.Ordinal) ? (written[..^2].TrimEnd(), "1" + symbol) : (written, symbol);

    private static QuantityOutcome WithUnit(string text, string written, decimal number, string symbol, Dimension dimension)
    {
        if (symbol.Length == 0 && dimension != Dimension.Ratio)
        {
            return QuantityRefusals.NeedsUnit(text, dimension);
        }

        if (QuantityRefusals.Ambiguous(text, written, number, symbol, dimension) is { } asked)
        {
            return asked;
        }

        var unit = symbol.Length == 0 ? UnitTable.BaseOf(dimension) : UnitTable.Find(symbol);
        if (unit is null)
        {
            return QuantityRefusals.UnknownUnit(text, written, symbol, dimension);
        }

        return unit.Dimension == dimension
            ? new QuantityRead(Quantity.From(number, unit) with { Text = Quantity.TextOf(written, unit) }, unit)
            : QuantityRefusals.OtherDimension(text, unit, dimension);
    }
}
