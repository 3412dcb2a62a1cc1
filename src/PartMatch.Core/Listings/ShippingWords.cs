using System.Globalization;
using System.Text.RegularExpressions;

namespace PartMatch.Core.Listings;

/// <summary>Words of sending, in English, German, French, Swedish and Spanish. Trade usage, from memory.</summary>
internal static class ShippingWords
{
    private const RegexOptions Linear = RegexOptions.NonBacktracking | RegexOptions.IgnoreCase | RegexOptions.CultureInvariant;

    private static readonly Regex _free = new(
        @"\b(?:free (?:shipping|postage|delivery|p&p)|(?:shipping|postage|delivery|p&p) (?:is )?(?:free|included)|post free|postage paid|"
            + @"versandkostenfrei\w*|kostenlose[rn]? versand|versand (?:kostenlos|frei|inklusive)|"
        + @"portofrei|(?:frais de port|port|livraison) (?:gratuite?s?|offerte?s?|inclus|compris)|franco de port|fri frakt|frakt ingår|fraktfritt|"
        + @"envío (?:gratis|gratuito|incluido)|portes incluidos)\b", Linear);

    // "Free from 50 euros on", "free over 100": not free for this.
    private static readonly Regex _above = new(@"\b(?:free|frei|kostenlos\w*|gratuite?s?|offerte?s?|gratis|fri)\b[^.;\n]{0,30}\b(?:over|above|from|"
        + @"orders? of|ab|über|dès|à partir de|över|desde|a partir de)\b\D{0,6}\d"
        + @"|\b(?:over|above|from|ab|über|dès|à partir de|över|desde|a partir de)\b\D{0,6}\d[^.;\n]{0,30}\b(?:free|frei|kostenlos\w*|portofrei|gratuite?s?|offerte?s?|gratis|fri|fraktfritt)\b", Linear);

    private static readonly Regex _words = new(
        @"\b(?:shipping|postage|post & packing|p&p|p\+p|delivery|post|carriage|freight|parcel|packet|envelope|paket|päckchen|umschlag|colis|kuvert|paquete|versand\w*|porto|fracht|frais de port|port|livraison|expédition|frakt|"
            + @"fraktkostnad|envío|gastos de envío|portes)\b", Linear);

    private static readonly Regex _collectOnly = new(@"\b(?:collection only|pick-?up only|no shipping|nur abholung|kein versand|"
        + @"remise en main propre uniquement|endast avhämtning|solo recogida)\b", Linear);

    public static bool Speaks(string text) => _words.IsMatch(text);

    /// <summary>Nothing is sent: whatever is said of freight elsewhere is of something else.</summary>
    public static bool CollectOnly(string text) => _collectOnly.IsMatch(text);

    public static bool IsFree(string text) => _free.IsMatch(text) && !_above.IsMatch(text);

    /// <summary>A text that says nothing but what sending costs.</summary>
    public static ReadShipping? Stated(string text, string? currency) =>
        IsFree(text) || Regex.IsMatch(text, @"^\W*(?:free|frei|kostenlos|gratuite?|gratis|fri|0)\W*$", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)
            ? new(StatedPrices.Freight("0", currency), null)
        : PriceText.Find(text, currency) is [var one] ? new(one.Price, null)
        : PriceText.Find(text, currency).Count > 1 ? new(PriceText.Several(text, [.. PriceText.Find(text, currency).Select(found => found.Price)]), null)
        : null;
}

/// <summary>Days to wait, in words.</summary>
internal static class DayWords
{
    private const RegexOptions Linear = RegexOptions.NonBacktracking | RegexOptions.IgnoreCase | RegexOptions.CultureInvariant;
    private const string Units = @"(?:(?:working |business |werk|arbeits|arbets)?(?<day>days?|tage\w?|jours|dagar|días|dias)|(?<week>weeks?|wochen?|"
        + @"semaines?|veckor|semanas?))";

    private static readonly Regex _days = new(@"(?<least>\d{1,3})(?:\s*(?:-|–|to|bis|à|till|a)\s*(?<most>\d{1,3}))?\s*" + Units + @"\b", Linear);

    private static readonly Regex _delivery = new(
        @"\b(?:deliver\w*|delivery time|lead time|dispatch\w*|ships? (?:in|within)|lieferzeit\w*|lieferung|délai|livr\w*|expédi\w*|leverans\w*|levereras|"
            + @"skickas|plazo|entrega)\b[^.;\n]{0,30}?\d", Linear);

    /// <summary>Of a sentence that speaks of delivery; null where there is none.</summary>
    public static DayRange? Find(string line) =>
        line.Split([". ", "; ", " | "], StringSplitOptions.None)
            .Where(sentence => _delivery.IsMatch(sentence) && !TermWords.SpeaksOfReturns(sentence)).Select(Stated).OfType<DayRange>().FirstOrDefault();

    /// <summary>Does it name days and no money?</summary>
    public static bool IsAll(string text) => _days.IsMatch(text) && !PriceText.Find(text, null).Any(found => found.Marked);

    public static DayRange? Stated(string text)
    {
        var match = _days.Match(text);
        if (!match.Success)
        {
            return StatedTerms.Whole(text) is { } bare ? new(bare, bare) : null;
        }

        var times = match.Groups["week"].Success ? 7 : 1;
        var least = int.Parse(match.Groups["least"].Value, CultureInfo.InvariantCulture);
        var most = match.Groups["most"].Success ? int.Parse(match.Groups["most"].Value, CultureInfo.InvariantCulture) : least;
        return most < least ? null : new(least * times, most * times);
    }
}
