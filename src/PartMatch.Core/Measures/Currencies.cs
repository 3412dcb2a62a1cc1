namespace PartMatch.Core.Measures;

/// <summary>The currencies that money may be written in, and how many decimal digits each has.</summary>
/// <remarks>Source: ISO 4217, list one (current currency codes and minor units); written down from memory.</remarks>
public static class Currencies
{
    private static readonly HashSet<string> _noDigits =
        ["BIF", "CLP", "DJF", "GNF", "ISK", "JPY", "KMF", "KRW", "PYG", "RWF", "UGX", "UYI", "VND", "VUV", "XAF", "XOF", "XPF"];

    private static readonly HashSet<string> _threeDigits = ["BHD", "IQD", "JOD", "KWD", "LYD", "OMR", "TND"];

    private static readonly HashSet<string> _fourDigits = ["CLF", "UYW"];

    private static readonly HashSet<string> _twoDigits =
    [
        "AED", "AFN", "ALL", "AMD", "AOA", "ARS", "AUD", "AWG", "AZN", "BAM", "BBD", "BDT", "BGN", "BMD", "BND", "BOB", "BRL", "BSD", "BTN", "BWP", "BYN", "BZD",
        "CAD", "CDF", "CHF", "CNY", "COP", "CRC", "CUP", "CVE", "CZK", "DKK", "DOP", "DZD", "EGP", "ERN", "ETB", "EUR", "FJD", "FKP", "GBP", "GEL", "GHS", "GIP",
        "GMD", "GTQ", "GYD", "HKD", "HNL", "HTG", "HUF", "IDR", "ILS", "INR", "IRR", "JMD", "KES", "KGS", "KHR", "KPW", "KYD", "KZT", "LAK", "LBP", "LKR", "LRD",
        "LSL", "MAD", "MDL", "MGA", "MKD", "MMK", "MNT", "MOP", "MRU", "MUR", "MVR", "MWK", "MXN", "MYR", "MZN", "NAD", "NGN", "NIO", "NOK", "NPR", "NZD", "PAB",
        "PEN", "PGK", "PHP", "PKR", "PLN", "QAR", "RON", "RSD", "RUB", "SAR", "SBD", "SCR", "SDG", "SEK", "SGD", "SHP", "SLE", "SOS", "SRD", "SSP", "STN", "SVC",
        "SYP", "SZL", "THB", "TJS", "TMT", "TOP", "TRY", "TTD", "TWD", "TZS", "UAH", "USD", "UYU", "UZS", "VES", "WST", "XCD", "YER", "ZAR", "ZMW",
    ];

    /// <summary>Decimal digits of a currency (0, 2, 3 or 4), or null when the code is none.</summary>
    public static int? FindDigits(string code) =>
        _twoDigits.Contains(code) ? 2
        : _noDigits.Contains(code) ? 0
        : _threeDigits.Contains(code) ? 3
        : _fourDigits.Contains(code) ? 4
        : null;
}
