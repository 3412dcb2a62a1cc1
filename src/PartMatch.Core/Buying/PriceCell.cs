using System.Text.RegularExpressions;
using PartMatch.Core.Measures;

namespace PartMatch.Core.Buying;

/// <summary>How a cell of prices was read.</summary>
internal abstract record PriceCellReading
{
    private PriceCellReading()
    {
    }

    public sealed record Read(Money Money) : PriceCellReading;

    public sealed record Faulty(string Expected, string Mend) : PriceCellReading;
}

/// <summary>Prices as sellers' tables write them. What a lone separator means is settled by its column, never guessed of one cell.</summary>
internal static partial class PriceCell
{
    private static readonly Dictionary<string, string> _signs = new(StringComparer.Ordinal) { ["€"] = "EUR", ["£"] = "GBP" };

    // Signs that several currencies share say nothing against the one given.
    private static readonly HashSet<string> _shared = new(StringComparer.OrdinalIgnoreCase) { "$", "kr", "kr.", ":-", "-", "–", "—" };

    /// <summary>Is it an amount with decimals, or with the sign of a currency? A whole number alone may be anything.</summary>
    public static bool LooksLikeAmount(string cell)
    {
        var (digits, sign) = Split(cell);
        return Shape().IsMatch(digits) && (sign.Length > 0 || digits.AsSpan().ContainsAny('.', ','));
    }

    /// <summary>Can it be read as an amount, whatever its separators mean?</summary>
    public static bool CanBeAmount(string cell) => Shape().IsMatch(Split(cell).Digits);

    /// <summary>The decimal mark of a column: the one that some cell can only mean so; null where no cell settles it, or two contradict each other.</summary>
    public static char? FindMark(IEnumerable<string> cells)
    {
        char[] marks = [.. cells.Select(cell => MarkOf(Split(cell).Digits)).OfType<char>().Distinct().Take(2)];
        return marks is [var only] ? only : null;
    }

    /// <param name="mark">Of the column; null where it is not settled.</param>
    public static PriceCellReading Of(string cell, string currency, char? mark)
    {
        var (digits, sign) = Split(cell);
        if (!Shape().IsMatch(digits))
        {
            return new PriceCellReading.Faulty("an amount such as 84.00", "leave the row out where the price is on request");
        }

        if ((_signs.GetValueOrDefault(sign) ?? (sign.Length == 0 || _shared.Contains(sign) ? currency : sign.ToUpperInvariant())) is var said
            && said != currency)
        {
            return new PriceCellReading.Faulty($"an amount in {currency}", $"the cell says {said}: split the list by currency, or ask with currency={said}");
        }

        var separators = digits.Where(letter => letter is '.' or ',').Distinct().Count();
        if (separators == 1 && (mark ?? MarkOf(digits)) is null)
        {
            var plain = digits.Replace(",", "", StringComparison.Ordinal).Replace(".", "", StringComparison.Ordinal);
            return new PriceCellReading.Faulty(
                "an amount whose separator has one meaning", $"{digits} can be {plain} or {digits.Replace(',', '.')}: ask with decimal=point or decimal=comma");
        }

        var decimals = MarkOf(digits) ?? mark ?? '.';
        var thousands = decimals == '.' ? ',' : '.';
        var number = new string([.. digits.Where(letter => char.IsAsciiDigit(letter) || letter == decimals)]).Replace(decimals, '.');
        if (mark is { } expected && MarkOf(digits) is { } own && own != expected)
        {
            return new PriceCellReading.Faulty($"a decimal {(expected == '.' ? "point" : "comma")} as in the rest of the column",
                $"write it as {number.Replace('.', expected)}");
        }

        return !Grouped(digits, decimals, thousands) || Amount.Find(number, currency) is not { Minor: var minor } amount
            ? new PriceCellReading.Faulty($"an amount of {currency} with at most {Currencies.FindDigits(currency)} decimals",
                "write it without marks between the thousands")
            : minor <= 0
                ? new PriceCellReading.Faulty("more than 0", "leave the row out where the price is on request")
                : new PriceCellReading.Read(amount.ToMoney());
    }

    /// <summary>The decimal mark that a number shows by itself: the last of two different ones, or a lone one that groups no thousands.</summary>
    private static char? MarkOf(string digits)
    {
        var (point, comma) = (digits.LastIndexOf('.'), digits.LastIndexOf(','));
        if (point >= 0 && comma >= 0)
        {
            return point > comma ? '.' : ',';
        }

        var at = Math.Max(point, comma);
        if (at < 0)
        {
            return null;
        }

        var mark = digits[at];
        var other = mark == '.' ? ',' : '.';
        return digits.IndexOf(mark) < at ? other // several of one: thousands
            : digits.Length - at - 1 != 3 || at > 3 || digits[0] == '0' ? mark
            : null;
    }

    // 1.299,00 and 12,345.60, not 1.29,00: groups of three behind the first, and one decimal mark at most.
    private static bool Grouped(string digits, char decimals, char thousands)
    {
        var whole = digits.Split(decimals) is [var before, _] ? before : digits;
        var groups = whole.Split(thousands);
        return digits.Count(letter => letter == decimals) <= 1 && groups.Skip(1).All(group => group.Length == 3 && group.All(char.IsAsciiDigit))
            && groups[0].Length > 0
            && (groups.Length == 1 || groups[0].Length <= 3);
    }

    /// <summary>Digits with their separators, blanks between thousands taken out, and what stands before or after them.</summary>
    private static (string Digits, string Sign) Split(string cell)
    {
        var match = WithSign().Match(cell.Normalize(System.Text.NormalizationForm.FormKC).Trim());
        return match.Success
            ? (Blanks().Replace(match.Groups["digits"].Value, "").TrimEnd(',', '.'), match.Groups["before"].Value.Trim() + match.Groups["after"].Value.Trim())
            : (cell.Trim(), "");
    }

    [GeneratedRegex(@"^(?<before>[^\d\s.,\-]*)\s*(?<digits>\d[\d\s.,'’]*)\s*(?<after>[^\d]*)$", RegexOptions.CultureInvariant)]
    private static partial Regex WithSign();

    [GeneratedRegex(@"^\d[\d.,]*$", RegexOptions.CultureInvariant)]
    private static partial Regex Shape();

    // Thousands stand apart by blanks (ISO 80000-1) or by an apostrophe.
    [GeneratedRegex(@"[\s'’]", RegexOptions.CultureInvariant)]
    private static partial Regex Blanks();
}
