using System.Globalization;
using System.Text.RegularExpressions;
using PartMatch.Core.Measures;

namespace PartMatch.Core.Listings;

/// <summary>A price as written, and all it can mean. Nothing is guessed: what can be read in two ways is given in both.</summary>
public static class PriceText
{
    private const RegexOptions Linear = RegexOptions.NonBacktracking | RegexOptions.IgnoreCase | RegexOptions.CultureInvariant;

    // More is a list, not a choice.
    private const int MostReadings = 12;

    private static readonly string _signs = string.Join('|', PriceCurrency.Written.Select(Regex.Escape));

    // An amount: thousands parted by a mark, or plain digits; then decimals, or the stroke that stands for none ("1299:-", "84.–").
    internal static readonly string Amount = "(?:[0-9]{1,3}(?:[ .,'\u00A0\u2009\u202F\u2019][0-9]{3})+(?:[.,][0-9]{1,2})?|[0-9]+(?:[.,][0-9]+)*)";

    // Nothing that follows the amount can fail, so that even the engine that could go back never does; it is the faster one for groups.
    private const RegexOptions Compiled = RegexOptions.Compiled | RegexOptions.IgnoreCase | RegexOptions.CultureInvariant;

    private static readonly Regex _price = new(
        $"(?:(?<before>{_signs})\\s{{0,2}})?(?<amount>{Amount})(?<none>\\s?[.,:]?[-–—]+)?(?:\\s{{0,2}}(?<after>{_signs}))?", Compiled);

    private static readonly Regex _range = new($"[0-9]\\s*(?:{_signs})?\\s*(?:-|–|—|to|bis|à|till|hasta)\\s*(?:{_signs})?\\s*[0-9]", Linear);

    private static readonly Regex _lowest = new(@"^\W*(?:from|ab|à partir de|dès|från|fr\.|desde|a partir de|starting at)\b", Linear);

    private static readonly Regex _monthly = new(@"(?:per|a|pro|par|por|/)\s*(?:month|mo\b|monat|mois|månad|mån\b|mes\b)|\bmonthly\b|\bmonatlich|\bmtl\b|"
        + @"\bmensuel", Linear);

    /// <summary>The whole text as one price.</summary>
    /// <param name="currency">As the page declares it; it settles which of several a sign means.</param>
    /// <param name="decimals">The decimal mark that its neighbours show; null where nothing shows it.</param>
    public static ReadPrice Read(string written, string? currency, char? decimals = null)
    {
        var text = PageWalk.Tidy(written);
        var found = WithoutCounts(text, Find(text, currency, decimals));
        return _range.IsMatch(text) ? new ReadPrice.Unread(text, "a range, not a price")
            : found.Count == 0 ? new ReadPrice.Unread(text, "no amount in it")
            : Regex.IsMatch(text, @"^[-−]\s?[0-9]") || PriceText.Readings(found[0].Price).All(money => money.Amount.All(letter => letter is '0' or '.'))
                ? new ReadPrice.Unread(text, "nothing is asked, or less than nothing: a placeholder, not a price")
            : _monthly.IsMatch(text) ? new ReadPrice.Unread(text, "a price by month, not the price")
            : _lowest.IsMatch(text) ? new ReadPrice.Unread(text, "a lowest price, not the price")
            : found.Count > 1 ? Several(text, [.. found.Select(one => one.Price)])
            : found[0].Price switch
            {
                ReadPrice.Stated stated => stated with { Written = text },
                ReadPrice.Ambiguous open => open with { Written = text },
                var unread => unread,
            };
    }

    // "£11.50 each, 4 available": behind an amount with its currency, a number before a word is a count.
    private static IReadOnlyList<FoundPrice> WithoutCounts(string text, IReadOnlyList<FoundPrice> found) =>
        found is [{ Marked: true }, ..] && found.Skip(1).All(later => !later.Marked && _word.IsMatch(text[(later.Start + later.Length)..])) ? [found[0]] : found;

    private static readonly Regex _word = new(@"^\s+\p{L}{4,}", Linear);

    /// <summary>A price as schema.org states it: a decimal point and no mark for thousands; other ways of writing are read like text.</summary>
    public static ReadPrice Stated(string written, string? currency)
    {
        var text = PageWalk.Tidy(written);
        var plain = Regex.IsMatch(text, @"^[0-9]{1,13}(\.[0-9]{1,2}0*)?$");
        return plain && text.Any(letter => letter is > '0' and <= '9') && currency is not null && Currencies.FindDigits(currency) is not null
            ? Make(text, [decimal.Parse(text, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture)], [currency])
            : Read(text, currency);
    }

    /// <summary>Several prices for one thing, of which no word says which one counts.</summary>
    internal static ReadPrice Several(string written, IReadOnlyList<ReadPrice> prices)
    {
        var readings = prices.SelectMany(Readings).Distinct().ToList();
        return readings.Count switch
        {
            0 => prices.Count > 0 ? prices[0] : new ReadPrice.Unread(written, "no amount in it"),
            1 when prices.OfType<ReadPrice.Stated>().FirstOrDefault() is { } stated => stated,
            _ when prices.Select(price => price.Written).Distinct(StringComparer.Ordinal).Take(2).Count() == 1 => prices[0], // one amount; its own reason says more
            > MostReadings => new ReadPrice.Unread(written, $"{readings.Count} amounts, of which no word says which is asked"),
            _ => new ReadPrice.Ambiguous(written, readings, $"{readings.Count} readings: no word says which of them is asked"),
        };
    }

    internal static IEnumerable<Money> Readings(ReadPrice price) => price switch
    {
        ReadPrice.Stated stated => [stated.Money],
        ReadPrice.Ambiguous open => open.Readings,
        _ => [],
    };

    /// <summary>Every amount in a text, in its order, with or without a currency beside it.</summary>
    internal static IReadOnlyList<FoundPrice> Find(string text, string? currency, char? decimals = null)
    {
        List<FoundPrice> found = [];
        if (!text.AsSpan().ContainsAnyInRange('0', '9'))
        {
            return found;
        }

        foreach (Match match in _price.Matches(text))
        {
            var amount = match.Groups["amount"];
            var sign = match.Groups["before"].Success ? match.Groups["before"] : match.Groups["after"].Success ? match.Groups["after"] : null;
            // Part of a longer word or code: "RB-6PK-1500", "M8x1.25".
            if (Joins(text, match.Index - 1, match.Index) || Joins(text, match.Index + match.Length, match.Index + match.Length - 1))
            {
                continue;
            }

            var none = match.Groups["none"].Success;
            if (none && match.Groups["after"].Success && match.Groups["none"].Value.Trim() is "-" or "–" or "—")
            {
                continue;
            }

            var named = sign is null ? [] : PriceCurrency.Of(sign.Value);
            var settled = Settle(named, currency);
            List<AmountReading> readings = [.. PriceAmount.Read(amount.Value, Digits(settled), PriceCurrency.CommaParts(settled))
                .Where(reading => decimals is null || reading.Decimals is null || reading.Decimals == decimals)];
            if (readings.Count > 0)
            {
                var price = Make(match.Value.Trim(), [.. readings.Select(reading => reading.Value)], settled);
                found.Add(new(match.Index, match.Length, sign is not null || none, price,
                    [.. readings.Select(reading => reading.Decimals)]));
            }
        }

        return found;
    }

    // What the sign can mean, cut down by what the page declares; a page that declares another currency than the sign leaves both open.
    private static IReadOnlyList<string> Settle(IReadOnlyList<string> named, string? declared)
    {
        var code = declared is not null && Currencies.FindDigits(declared) is not null ? declared : null;
        return named.Count == 0 ? code is null ? [""] : [code]
            : code is null ? named
            : named.Contains(code) ? [code]
            : [.. named, code];
    }

    private static int? Digits(IReadOnlyList<string> currencies)
    {
        var digits = currencies.Select(Currencies.FindDigits).Distinct().ToList();
        return digits.Count == 1 ? digits[0] : null;
    }

    private static ReadPrice Make(string written, IReadOnlyList<decimal> values, IReadOnlyList<string> currencies)
    {
        var readings = values.SelectMany(value => currencies.Select(currency => Money(value, currency))).ToList();
        return readings.Count == 1 && currencies[0].Length > 0 && IsPayable(values[0], currencies[0])
            ? new ReadPrice.Stated(written, readings[0])
            : new ReadPrice.Ambiguous(written, readings, Why(values, currencies));
    }

    private static bool IsPayable(decimal value, string currency) => Currencies.FindDigits(currency) is { } digits && decimal.Round(value, digits) == value;

    private static string Why(IReadOnlyList<decimal> values, IReadOnlyList<string> currencies) =>
        (values.Count > 1 ? "the mark can part thousands or decimals: ask whether it is " + string.Join(" or ",
            values.Select(value => value.ToString("0.###", CultureInfo.InvariantCulture))) : "")
        + (values.Count > 1 && (currencies.Count > 1 || currencies[0].Length == 0) ? "; " : "")
        + (currencies.Count > 1 ? $"the currency can be {string.Join(" or ", currencies)}: ask which"
            : currencies[0].Length == 0 ? "no currency is named: ask which"
            : values.Count == 1 ? $"finer than the smallest coin of {currencies[0]}: ask for the price of the whole" : "");

    private static Money Money(decimal value, string currency)
    {
        var digits = Currencies.FindDigits(currency) ?? 2;
        var least = value.ToString("0." + new string('0', digits), CultureInfo.InvariantCulture);
        var exact = value.ToString("0.############", CultureInfo.InvariantCulture);
        return new((exact.Length > least.Length ? exact : least).TrimEnd('.'), currency);
    }

    private static bool Joins(string text, int outside, int inside) =>
        outside >= 0 && outside < text.Length && ((char.IsLetterOrDigit(text[outside])
            && (char.IsLetterOrDigit(text[inside]) || text[inside] is '-' or '–' or '—')) || text[outside] is '_' or '#' or '%'
            || (char.IsAsciiDigit(text[inside]) && text[outside] is '-' or '–' or '—' or '/' or '.' or ',' && IsJoined(text, outside, inside)));

    // "1500-A", "4/2": a mark with a letter or digit on its far side.
    private static bool IsJoined(string text, int outside, int inside)
    {
        var far = outside + outside - inside;
        return far >= 0 && far < text.Length && char.IsLetterOrDigit(text[far]);
    }
}

/// <summary>An amount found in a text.</summary>
/// <param name="Marked">With a currency, or the stroke for no decimals: an amount that stands for money by itself.</param>
/// <param name="Decimals">The decimal mark of each of its meanings; null for a meaning that shows none.</param>
internal sealed record FoundPrice(int Start, int Length, bool Marked, ReadPrice Price, IReadOnlyList<char?> Decimals);
