using System.Buffers;
using System.Text.RegularExpressions;

namespace PartMatch.Core.Listings;

/// <summary>
/// What has the shape of a part number and is something else: prices, dates, times, years, telephone numbers, sizes and quantities with a
/// unit, threads, tyres, oil grades, standards, GTINs, VINs, post codes with their place. Common practice, no source.
/// </summary>
/// <remarks>
/// A part number of twelve to fourteen digits whose last happens to be the right check digit is left out as well, one in ten of them. Where
/// it is stated outright, or told by words such as "part number", only amounts and what other words claim ("tel", "VIN") are left out.
/// </remarks>
internal static partial class OtherShapes
{
    private const int VinLength = 17;

    private static readonly SearchValues<char> _notInAVin = SearchValues.Create("IOQioq-/. ");

    public static bool IsOne(PassageText passage, int from, int to)
    {
        var keys = passage.Keys;
        var (start, end) = (keys.Start(from), keys.End(to - 1));
        if (passage.Passage.Stated is not null)
        {
            return false;
        }

        // What follows and what precedes is bounded, so that a text of a million of them stays linear.
        var written = keys.Written(from, to);
        var after = keys.Text.AsSpan(end, Math.Min(16, keys.Text.Length - end)).ToString();
        var before = keys.Text.AsSpan(Math.Max(0, start - 16), Math.Min(16, start)).ToString();
        var digitsOnly = !keys.Key[from..to].ContainsAnyExceptInRange('0', '9');
        if (IsAmount(before, after, digitsOnly) || IsClaimed(passage, start))
        {
            return true;
        }

        return !passage.IsToldAt(start)
            && (Measure().IsMatch(written) || Standard().IsMatch(written) || IsDigitsOfAnotherKind(written, before, digitsOnly, keys.Key[from..to])
                || (to - from == VinLength && !written.AsSpan().ContainsAny(_notInAVin)) || (PostCode().IsMatch(written) && PlaceName().IsMatch(after)));
    }

    private static bool IsAmount(string before, string after, bool digitsOnly) =>
        digitsOnly && (CurrencyBefore().IsMatch(before) || UnitAfter().IsMatch(after) || DecimalBefore().IsMatch(before) || DecimalAfter().IsMatch(after));

    private static bool IsClaimed(PassageText passage, int start) =>
        passage.FindCueBefore(start) is { Kind: CueKind.OtherNumber } cue && start - cue.End <= 24
        && passage.Passage.Text.AsSpan(cue.End, start - cue.End).IndexOfAny(";!?\n,") < 0;

    private static bool IsDigitsOfAnotherKind(string written, string before, bool digitsOnly, ReadOnlySpan<char> key) =>
        digitsOnly
        && (Date().IsMatch(written) || Telephone().IsMatch(written) || AbroadBefore().IsMatch(before) || (key.Length is >= 12 and <= 14 && Gtin.HasCheckDigit(key)));

    private const string Units =
        "mm|cm|dm|m|km|mi|miles|in|inch|zoll|ft|kg|g|lb|lbs|oz|t|l|ltr|litre|liter|ml|cl|cc|ccm|cm3|cm\u00B3|v|volt|w|kw|hp|bhp|ps|ch|cv|hk|bar|mbar|psi|kpa|mpa|nm|hz|khz|mhz|a|ah|mah|amp|ohm|\u03A9|"
        + "rpm|upm|min|h|std|s|sec|ms|days?|tage|jours?|dagar|d\u00EDas|pcs?|pieces?|st|stk|st\u00FCck|x|mal|pack|set|teilig|k|tkm|mil|c|f|deg|\u00B0|\u00B0c|valve|v\u00E4xlad|cyl|zyl|st|nd|rd|th|er|e|eme";

    [GeneratedRegex(@"^([MRG]?[0-9]+([.,][0-9]+)?[x\u00D7*/-])*[MRG]?[0-9]+([.,][0-9]+)?[ -]?(" + Units + @")([0-9](?![0-9]))?([/.-](" + Units
        + @"|[0-9.,]+(" + Units + @")?))*$|^[MRG]?[0-9]+([.,][0-9]+)?([x\u00D7][0-9]+([.,][0-9]+)?)+[LR]?$|^[0-9]{3}/[0-9]{2}-?[A-Z]{0,2}[0-9]{2}[A-Z]?$|^[0-9]{1,2}W-?[0-9]{2}$|^[0-9]\.[0-9][A-Z]{1,4}$",
        RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex Measure();

    [GeneratedRegex("^(DIN|ISO|EN|SAE|JIS|API|ACEA|EURO|RON|ROZ|UTC|GMT|CO|PM|IP|IATF|RAL)[ -]?(EN|ISO)?[ -]?[0-9]{1,6}(W|([:-][0-9]+)*)$|^[0-9]{4}-[0-9]{2}-[0-9]{2}T", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex Standard();

    [GeneratedRegex("^([0-3]?[0-9][./-][0-3]?[0-9][./-]([12][09])?[0-9]{2}|(19|20)[0-9]{2}[./-][01]?[0-9]([./-][0-3]?[0-9])?|[01]?[0-9][./-](19|20)[0-9]{2}|(19|20)[0-9]{2}[ /.-]+(19|20)?[0-9]{2})$", RegexOptions.CultureInvariant)]
    private static partial Regex Date();

    // Only the plainest: the digits after an area code.
    [GeneratedRegex("^(00[1-9][0-9]*|0[1-9][0-9]{1,4})[ /.-]([0-9]{2,}[ .-]?)+$|^00[1-9][0-9]{8,12}$|^0[1-9][0-9]{9}$", RegexOptions.CultureInvariant)]
    private static partial Regex Telephone();

    [GeneratedRegex("\\+[0-9 ()/.\u00A0-]*$", RegexOptions.CultureInvariant)]
    private static partial Regex AbroadBefore();

    [GeneratedRegex("^(D|DE|A|AT|CH|F|FR|B|BE|L|NL|S|SE|DK|E|ES|I|IT)-?[0-9]{4,5}$", RegexOptions.CultureInvariant)]
    private static partial Regex PostCode();

    [GeneratedRegex(@"^\s+\p{Lu}\p{Ll}+", RegexOptions.CultureInvariant)]
    private static partial Regex PlaceName();

    [GeneratedRegex(@"(\p{Sc}|\b(EUR|USD|GBP|SEK|NOK|DKK|CHF|PLN|CZK|CAD|AUD|JPY|kr))[ \u00A0]?$", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex CurrencyBefore();

    [GeneratedRegex(@"^[ \u00A0]?(\p{Sc}|%|(EUR|USD|GBP|SEK|NOK|DKK|CHF|PLN|CZK|CAD|AUD|JPY|kr|euros?|" + Units + @")(?![\p{L}0-9]))", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex UnitAfter();

    [GeneratedRegex("[0-9][,:'\u2019]$", RegexOptions.CultureInvariant)]
    private static partial Regex DecimalBefore();

    [GeneratedRegex("^[,:'\u2019][0-9]|^,-", RegexOptions.CultureInvariant)]
    private static partial Regex DecimalAfter();
}
