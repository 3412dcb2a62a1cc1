using System.Text.RegularExpressions;
using PartMatch.Core.Measures;

namespace PartMatch.Core.Listings;

/// <summary>Currencies by their signs and words.</summary>
internal static class PriceCurrency
{
    private static readonly string[] _dollars = ["USD", "CAD", "AUD", "NZD"];
    private static readonly string[] _crowns = ["SEK", "NOK", "DKK", "ISK"];

    // Signs as shops write them: common practice, no source. A sign of several countries names them all.
    private static readonly Dictionary<string, string[]> _signs = new(StringComparer.OrdinalIgnoreCase)
    {
        ["€"] = ["EUR"],
        ["euro"] = ["EUR"],
        ["euros"] = ["EUR"],
        ["£"] = ["GBP"],
        ["pounds"] = ["GBP"],
        ["quid"] = ["GBP"],
        ["$"] = _dollars,
        ["dollar"] = _dollars,
        ["dollars"] = _dollars,
        ["US$"] = ["USD"],
        ["C$"] = ["CAD"],
        ["CA$"] = ["CAD"],
        ["CDN$"] = ["CAD"],
        ["A$"] = ["AUD"],
        ["AU$"] = ["AUD"],
        ["NZ$"] = ["NZD"],
        ["HK$"] = ["HKD"],
        ["S$"] = ["SGD"],
        ["R$"] = ["BRL"],
        ["MX$"] = ["MXN"],
        ["kr"] = _crowns,
        ["kr."] = _crowns,
        ["kronor"] = ["SEK"],
        ["kroner"] = ["NOK", "DKK"],
        ["Fr."] = ["CHF"],
        ["SFr."] = ["CHF"],
        ["SFr"] = ["CHF"],
        ["¥"] = ["JPY", "CNY"],
        ["₹"] = ["INR"],
        ["₺"] = ["TRY"],
        ["₽"] = ["RUB"],
        ["₩"] = ["KRW"],
        ["₴"] = ["UAH"],
        ["Kč"] = ["CZK"],
        ["zł"] = ["PLN"],
        ["Ft"] = ["HUF"],
        ["lei"] = ["RON"],
        ["лв"] = ["BGN"],
        ["лв."] = ["BGN"],
    };

    // Codes that are looked for in running text: those that are no word of a language read here.
    private static readonly string[] _codes =
    [
        "EUR", "USD", "GBP", "SEK", "NOK", "DKK", "ISK", "CHF", "PLN", "CZK", "HUF", "CAD", "AUD", "NZD", "JPY", "CNY", "INR", "RON", "BGN", "ZAR", "BRL",
            "MXN", "HKD", "SGD", "KRW",
        "UAH", "RUB", "KWD", "BHD", "OMR", "JOD", "TND", "ILS", "AED", "SAR", "THB", "TWD",
    ];

    // Where the comma is at home as the mark of thousands: from memory.
    private static readonly HashSet<string> _commaParts = ["USD", "GBP", "AUD", "NZD", "HKD", "SGD", "INR", "JPY", "CNY", "KRW", "THB", "TWD", "ILS", "MXN",
        "AED", "SAR"];

    /// <summary>Every way of writing a currency in text, longest first, for a search.</summary>
    public static IReadOnlyList<string> Written { get; } = [.. _signs.Keys.Concat(_codes).OrderByDescending(written => written.Length)
        .ThenBy(written => written, StringComparer.Ordinal)];

    private static readonly Regex _all = new(
        @"\b(?:prices|preise|prix|priser|precios)\b[^.;0-9]{0,20}?\b(?:in|en|i)\s+(\p{L}{2,6}|\p{Sc})(?:[\s.,;]|$)",
        RegexOptions.NonBacktracking | RegexOptions.IgnoreCase | RegexOptions.CultureInvariant);

    /// <summary>The currencies a sign, word or code can mean; empty for none of them.</summary>
    public static IReadOnlyList<string> Of(string written)
    {
        var text = written.Trim();
        var code = text.ToUpperInvariant();
        return _signs.GetValueOrDefault(text) ?? (Currencies.FindDigits(code) is null ? [] : [code]);
    }

    /// <summary>What a page says of all its prices ("All prices in CHF", "Preise in Euro"); null where it says nothing, or names a sign of several countries.</summary>
    public static string? FindOfAll(IEnumerable<string> lines) =>
        lines.Select(line => _all.Match(line)).Where(match => match.Success).Select(match => Of(match.Groups[1].Value)).FirstOrDefault() is [var only] ? only : null;

    public static bool CommaParts(IReadOnlyList<string> currencies) => currencies.Count > 0
        && currencies.All(currency => _commaParts.Contains(currency) || currency == "CAD" && currencies.Count > 1);
}
