using System.Text;
using PartMatch.Core.Listings;
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

/// <summary>A price as a price list holds it: read as every written price is, in the list's currency, and settled by its column where it is open.</summary>
internal static class PriceCell
{
    // Longer is words, and a cell can be megabytes. Ours, no source.
    private const int Longest = 100;

    /// <summary>Is it an amount with decimals, or with the sign of a currency? A whole number alone may be anything.</summary>
    public static bool LooksLikeAmount(string cell)
    {
        var text = Plain(cell);
        return Find(text, null) is [{ Start: 0 } one] && (one.Marked || one.Decimals.Any(mark => mark is not null))
            && !text.AsSpan(one.Length).ContainsAnyInRange('0', '9');
    }

    /// <summary>The decimal mark that the cell can only mean; null where it shows none, or can mean either.</summary>
    public static char? FindMark(string cell) => Find(Plain(cell), null) is [{ Decimals: [{ } only] }] ? only : null;

    /// <summary>Can its mark part thousands or decimals?</summary>
    public static bool IsOpen(string cell, string currency) => Find(Plain(cell), currency) is [{ Decimals.Count: > 1 }];

    /// <param name="mark">The decimal mark of the column; null where it is not settled.</param>
    public static PriceCellReading Of(string cell, string currency, char? mark)
    {
        var text = Plain(cell);
        if (text.Length > Longest)
        {
            return new PriceCellReading.Faulty("an amount such as 84.00", $"the cell holds {text.Length} characters: take another column for the prices");
        }

        return PriceText.Read(text, currency, mark) switch
        {
            ReadPrice.Stated { Money: var money } when money.Currency == currency => new PriceCellReading.Read(money),
            ReadPrice.Ambiguous open => Open(text, open, currency),
            ReadPrice.Unread when mark is { } expected && FindMark(text) is { } own && own != expected => new PriceCellReading.Faulty(
                $"a decimal {PriceMark.NameOf(expected)} as in the rest of the column",
                $"write it as {text.Replace(expected, ' ').Replace(own, expected).Replace(" ", "", StringComparison.Ordinal)}"),
            ReadPrice.Unread unread when text.AsSpan().ContainsAnyInRange('0', '9') => new PriceCellReading.Faulty(
                $"an amount such as 84.00 ({unread.Why})", "leave the row out where the price is on request"),
            _ => new PriceCellReading.Faulty("an amount such as 84.00", "leave rows without a price out with leave-out=without-price"),
        };
    }

    private static PriceCellReading.Faulty Open(string text, ReadPrice.Ambiguous open, string currency)
    {
        if (open.Readings.FirstOrDefault(money => money.Currency != currency) is { Currency: var said })
        {
            return new($"an amount in {currency}", $"the cell says {said}: split the list by currency, or ask with currency={said}");
        }

        return IsOpen(text, currency)
            ? new("an amount whose separator has one meaning",
                $"{text} can be {string.Join(" or ", open.Readings.Select(money => money.Amount))}: ask with decimal=point or decimal=comma")
            : open.Readings.Count > 1 ? new("one price", open.Why)
            : new($"an amount of {currency} with at most {Currencies.FindDigits(currency)} decimals", "write it without marks between the thousands");
    }

    private static IReadOnlyList<FoundPrice> Find(string text, string? currency) => text.Length > Longest ? [] : PriceText.Find(text, currency);

    // Full-width forms are digits as well.
    private static string Plain(string cell) => PageWalk.Tidy(cell.Normalize(NormalizationForm.FormKC));
}
