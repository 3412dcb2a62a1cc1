using System.Globalization;

namespace PartMatch.Core.Listings;

/// <summary>An amount as it is written somewhere in the world.</summary>
internal static class PriceAmount
{
    // 13 digits are more than any price; what is longer is a number of something.
    private const int MostDigits = 13;

    /// <summary>What it can mean: one value, or two where a mark can part thousands or decimals; none where it is no amount.</summary>
    /// <param name="written">Digits with marks between them.</param>
    /// <param name="digits">Decimal digits of its currency; null where the currency is not known.</param>
    /// <param name="commaParts">Is the comma never the decimal mark where this currency is at home (dollars, pounds)?</param>
    public static IReadOnlyList<AmountReading> Read(string written, int? digits, bool commaParts)
    {
        var text = new string([.. written.Trim().Select(letter => char.IsWhiteSpace(letter) || letter is '\'' or '\u2019' ? ' ' : letter)]);
        if (text.Count(char.IsAsciiDigit) > MostDigits || text.Any(letter => !char.IsAsciiDigit(letter) && letter is not (' ' or '.' or ',')))
        {
            return [];
        }

        var mark = text.LastIndexOfAny(['.', ',']);
        if (text.Contains(' ', StringComparison.Ordinal))
        {
            // A space or an apostrophe parts thousands, so that a mark after it is the decimal one.
            var whole = mark < 0 ? text : text[..mark];
            return IsGrouped(whole, ' ') && (mark < 0 || text.Length - mark - 1 is 1 or 2)
                ? [new(Value(whole, mark < 0 ? "" : text[(mark + 1)..]), mark < 0 ? null : text[mark])] : [];
        }

        if (mark < 0)
        {
            return text.Length == 0 ? [] : [new(Value(text, ""), null)];
        }

        var (before, after) = (text[..mark], text[(mark + 1)..]);
        if (before.Length == 0 || after.Length == 0)
        {
            return [];
        }

        var other = text[mark] == '.' ? ',' : '.';
        if (before.Contains(other, StringComparison.Ordinal))
        {
            return before.Contains(text[mark], StringComparison.Ordinal) || !IsGrouped(before, other) ? [] : [new(Value(before, after), text[mark])];
        }

        if (before.Contains(text[mark], StringComparison.Ordinal))
        {
            return IsGrouped(text, text[mark]) ? [new(Value(text, ""), other)] : [];
        }

        return One(before, after, text[mark], digits, commaParts);
    }

    // A single mark. Three digits after it are thousands where the currency has no decimals or its home never writes a decimal comma, decimals after
    // a nought, and open otherwise: "1.299" is written for 1299 and for 1.299.
    private static IReadOnlyList<AmountReading> One(string before, string after, char mark, int? digits, bool commaParts)
    {
        var decimals = new AmountReading(Value(before, after), mark);
        if (after.Length != 3 || before.Length > 3 || before[0] == '0')
        {
            return [decimals];
        }

        var thousands = new AmountReading(Value(before + after, ""), mark == '.' ? ',' : '.');
        return digits == 0 || (mark == ',' && commaParts) ? [thousands] : [thousands, decimals];
    }

    private static bool IsGrouped(string whole, char mark)
    {
        var groups = whole.Split(mark);
        var inner = groups[1..];
        // The Indian way parts twos before the last three.
        return groups[0].Length is 1 or 2 or 3 && groups[0][0] != '0' && groups.All(group => group.All(char.IsAsciiDigit))
            && (inner.All(group => group.Length == 3) || (groups[0].Length < 3 && inner[^1].Length == 3 && inner[..^1].All(group => group.Length == 2)));
    }

    private static decimal Value(string whole, string decimals) =>
        decimal.Parse(new string([.. whole.Where(char.IsAsciiDigit)]) + "." + decimals + "0", NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture);
}

/// <summary>One meaning of a written amount.</summary>
/// <param name="Decimals">The decimal mark of whoever means it so, also where the amount has no decimals; null where it shows none.</param>
internal readonly record struct AmountReading(decimal Value, char? Decimals);
