using System.Text.RegularExpressions;

namespace PartMatch.Core.Listings;

/// <summary>What an amount in running text is for.</summary>
internal enum AmountRole
{
    Price,
    Shipping,
    Deposit,

    /// <summary>An old price, a saving, a month's rate, a range, a least sum: money, and not what is asked.</summary>
    Other,
}

/// <summary>Tells the price of a line from the other amounts in it, by the words around each.</summary>
internal static class AmountRoles
{
    private const RegexOptions Linear = RegexOptions.NonBacktracking | RegexOptions.IgnoreCase | RegexOptions.CultureInvariant;

    private static readonly Regex _other = new(
        @"\b(?:rrp|msrp|list price|instead of|you save|discount|uvp|ersparnis|rabatt|au lieu de|prix conseillé|remise|économisez|ord\.? ?pris|ordinarie|"
        + @"istället för|descuento|ahorr\w*|orders? (?:over|of|above)|installments?|raten?|per month|monatlich|mtl|par mois|per månad|al mes|"
        + @"i paid|we paid|cost me|i gave|habe ich (?:\w+ )?bezahlt|j['’]ai payé|jag betalade|yo pagué|(?:current|next|highest|starting|opening|last) bids?|"
        + @"bids? (?:of|from|at|so far)|reserve|hammer price|startgebot|höchstgebot|gebote?|mise à prix|enchères?|utropspris|högsta bud|puja|vat|mwst|tva|moms|"
        + @"iva|labou?r|new costs?|neupreis)\b", Linear);

    // Words of every day, "off my van", "was on it", "from a running engine", "ab Lager": they speak of an amount only straight before it.
    private static readonly Regex _otherStraight = new(
        @"\b(?:was|reg\.|save|statt|früher|spara|antes|from|starting at|ab|à partir de|dès|från|desde|a partir de|up to|bis zu|over|über|bud|fee|gebühr|"
        + @"value|worth|np)(?:\s+\w+)?\s*[:=]?\s*$", Linear);

    private static readonly Regex _otherAfter = new(@"^\s*(?:per month|a month|/\s?mo|pro monat|/\s?monat|monatlich|mtl|par mois|per månad|al mes|off\b|"
        + @"discount|rabatt|(?:-|–|to|bis|à)\s*\d)", Linear);

    // "Free shipping over 100": the sum from which on, not the freight.
    private static readonly Regex _threshold = new(@"\b(?:over|above|from|orders? of|ab|über|dès|à partir de|över|desde|a partir de|superior a)\s*$", Linear);

    private static readonly Regex _parts = new(@"[+;|•·]|,\s|\bplus\b|\bzzgl|\band\b|\bund\b|\bet\b|\boch\b|\by\b", Linear);

    /// <summary>The amounts of a line that are money, each with what it is for.</summary>
    public static IReadOnlyList<(AmountRole Role, ReadPrice Price)> Read(string line, string? currency)
    {
        var found = PriceText.Find(line, currency);
        List<(AmountRole, ReadPrice)> amounts = [];
        for (var index = 0; index < found.Count; index++)
        {
            var from = index == 0 ? 0 : found[index - 1].Start + found[index - 1].Length;
            var end = found[index].Start + found[index].Length;
            var until = index + 1 < found.Count ? found[index + 1].Start : line.Length;
            var before = line[from..found[index].Start];
            var after = line[end..until];
            // A number without a currency is money only where a word for freight or deposit stands straight before it.
            var role = Role(Nearest(before), after, index + 1 < found.Count);
            if (found[index].Marked || role is AmountRole.Shipping or AmountRole.Deposit && before.Length < 30 && !StockWords.Counts(after))
            {
                amounts.Add((role, found[index].Price));
            }
        }

        return amounts;
    }

    private static AmountRole Role(string before, string after, bool more)
    {
        if (_otherAfter.IsMatch(after) || _threshold.IsMatch(before))
        {
            return AmountRole.Other;
        }

        if (Named(before) is { } named)
        {
            return named;
        }

        // Words after an amount belong to it unless another amount follows and nothing parts them from that one.
        after = Sentence(after);
        var parts = _parts.Match(after);
        var own = parts.Success ? after[..parts.Index] : more ? "" : after;
        return (own.Length <= 40 && !ShippingWords.IsFree(own) ? Named(own) : null) is { } later and not AmountRole.Other ? later : AmountRole.Price;
    }

    private static AmountRole? Named(string words) =>
        TermWords.IsDeposit(words) ? AmountRole.Deposit
        : ShippingWords.Speaks(words) ? AmountRole.Shipping
        : _other.IsMatch(words) || _otherStraight.IsMatch(words) ? AmountRole.Other
        : null;

    private static string Sentence(string after) => after.IndexOf(". ", StringComparison.Ordinal) is >= 0 and var end ? after[..end] : after;

    // Only the last sentence before an amount says what it is for.
    private static string Nearest(string before)
    {
        var tail = before.Length > 60 ? before[^60..] : before;
        var end = tail.LastIndexOfAny(['.', ';', '|', '!', '?', '•', '·']);
        return end >= 0 && end + 1 < tail.Length && char.IsWhiteSpace(tail[end + 1]) ? tail[(end + 1)..] : tail;
    }
}
