using System.Globalization;
using System.Text;
using PartMatch.Core.Catalogue;

namespace PartMatch.Benchmarks.Listings;

/// <summary>
/// An invented shop's page as a browser saves it, the same in every run: style, JSON-LD, a menu, microdata of other goods, a price list, opinions
/// and questions in running text, a script. It sells one pump whose number it writes right, broken and with a letter for a figure.
/// </summary>
internal static class SellersPage
{
    private const int MenuEntries = 150;
    private const int OtherGoods = 40;
    private const int ListRows = 60;

    private static readonly string[] _words =
    [
        "the", "pump", "was", "quiet", "and", "came", "well", "packed", "from", "a", "running", "engine", "with", "gasket", "shaft", "housing", "after", "two", "summers", "on",
        "our", "stand", "it", "never", "leaked", "so", "we", "kept", "one", "more", "shelf", "within", "3", "days", "returns", "accepted", "Dichtung", "dabei", "very", "clean",
        "moteur", "remonté", "sans", "souci", "2019", "12", "V", "9.6", "mm", "<b>honest</b>", "seller,", "would", "ask", "again.", "Thank", "you.", "<i>bearing</i>", "play", "none",
    ];

    /// <param name="sold">Number of the pump on offer.</param>
    /// <param name="numbers">Numbers of the base, of which the page names some hundred.</param>
    /// <param name="bytes">How long the page is, to within one opinion.</param>
    public static byte[] Of(string sold, PartNumber[] numbers, int bytes)
    {
        var random = new Random(3);
        string Known() => numbers[random.Next(numbers.Length)].Written;
        var page = new StringBuilder();
        Head(page, sold, Known);
        Menu(page);
        Offer(page, sold);
        Others(page, random, Known);
        PriceList(page, random, Known);
        var end = End();
        page.Append("<section><h2>What others say</h2>\n");
        while (page.Length + end.Length < bytes)
        {
            page.Append("<article class=\"opinion\"><p>");
            for (var word = 0; word < 60; word++)
            {
                page.Append(random.Next(400) switch
                {
                    0 => Known(),
                    1 => Known().Replace('-', ' '), // broken
                    2 => Invariant($"ZX{random.Next(10, 100)}-{random.Next(1000, 10_000)}-Q"), // in no book
                    3 => Invariant($"{random.Next(10, 200)}.00 EUR"),
                    _ => _words[random.Next(_words.Length)],
                }).Append(' ');
            }

            page.Append("</p></article>\n");
        }

        return Encoding.UTF8.GetBytes(page.Append(end).ToString());
    }

    private static void Head(StringBuilder page, string sold, Func<string> known)
    {
        page.Append("<!DOCTYPE html>\n<html lang=\"en\"><head><meta charset=\"utf-8\"><title>Coolant pump ").Append(sold).Append(" | Invented Spares</title>\n<style>\n");
        for (var rule = 0; rule < 250; rule++)
        {
            page.Append(Invariant($".box-{rule} > a:hover{{margin:{rule % 7}px;color:#3b2f{rule % 90 + 10};padding:.{rule % 9}rem 1rem}}\n"));
        }

        page.Append("</style>\n<script type=\"application/ld+json\">{\"@context\":\"https://schema.org\",\"@graph\":[\n");
        page.Append("{\"@type\":\"Product\",\"@id\":\"#goods\",\"name\":\"Coolant pump\",\"brand\":{\"@type\":\"Brand\",\"name\":\"Harl\"},\"mpn\":\"").Append(sold)
            .Append("\",\"sku\":\"IS-40417\",\"description\":\"With its ring, without pulley.\",\"offers\":{\"@type\":\"Offer\",\"price\":\"118.00\",\"priceCurrency\":\"EUR\",")
            .Append("\"itemCondition\":\"https://schema.org/NewCondition\",\"availability\":\"https://schema.org/InStock\",")
            .Append("\"hasMerchantReturnPolicy\":{\"@type\":\"MerchantReturnPolicy\",\"merchantReturnDays\":30}},\n\"isRelatedTo\":[");
        for (var other = 0; other < 20; other++)
        {
            page.Append(other == 0 ? "" : ",\n").Append("{\"@type\":\"Product\",\"name\":\"Other part\",\"mpn\":\"").Append(known()).Append("\",\"url\":\"https://spares.example/p/other\"}");
        }

        page.Append("]}]}</script>\n</head><body>\n");
    }

    private static void Menu(StringBuilder page)
    {
        page.Append("<nav><ul>\n");
        for (var entry = 0; entry < MenuEntries; entry++)
        {
            page.Append(Invariant($"<li class=\"menu-entry level-{entry % 3}\"><a class=\"box-{entry}\" href=\"/shelf/{entry}\"><span class=\"name\">Shelf {_words[entry % 40]}</span></a></li>\n"));
        }

        page.Append("</ul></nav>\n");
    }

    private static void Offer(StringBuilder page, string sold) => page.Append("<main><div class=\"goods\"><div><div><img src=\"/img/pump-").Append(sold)
        .Append(".jpg\" alt=\"Pump from the front\"></div><h1>Coolant pump ").Append(sold).Append("</h1>\n<dl><dt>Part number</dt><dd>").Append(sold.Replace('-', ' '))
        .Append("</dd><dt>Condition</dt><dd>new</dd></dl>\n<p>Some write it ").Append(sold.Replace('1', 'I')).Append(". Returns within 30 days, postage 7.50 EUR.</p></div></div>\n");

    private static void Others(StringBuilder page, Random random, Func<string> known)
    {
        page.Append("<section class=\"also\"><h2>Others looked at</h2>\n");
        for (var other = 0; other < OtherGoods; other++)
        {
            page.Append(Invariant($"<article itemscope itemtype=\"https://schema.org/Product\" class=\"card\"><a href=\"/p/{other}\"><span itemprop=\"name\">Part {_words[other]}</span></a>"))
                .Append("<span itemprop=\"mpn\">").Append(known()).Append("</span><div itemprop=\"offers\" itemscope itemtype=\"https://schema.org/Offer\">")
                .Append(Invariant($"<span itemprop=\"price\" content=\"{random.Next(5, 300)}.00\">€</span><meta itemprop=\"priceCurrency\" content=\"EUR\"></div></article>\n"));
        }

        page.Append("</section>\n");
    }

    private static void PriceList(StringBuilder page, Random random, Func<string> known)
    {
        page.Append("<table class=\"list\"><tr><th>Part no.</th><th>Description</th><th>Condition</th><th>Price EUR</th><th>Stock</th></tr>\n");
        for (var row = 0; row < ListRows; row++)
        {
            page.Append("<tr><td><tt>").Append(known()).Append(Invariant($"</tt></td><td>{_words[row % 40]} part</td><td>used</td><td>{random.Next(5, 300)}.00</td><td>{row % 9}</td></tr>\n"));
        }

        page.Append("</table>\n");
    }

    private static string End()
    {
        var end = new StringBuilder("</section></main><footer><p>Prices with tax. The number decides.</p></footer>\n<script>var seen=[");
        for (var entry = 0; entry < 1500; entry++)
        {
            end.Append(Invariant($"{{\"k\":{entry * 7919}}},"));
        }

        return end.Append("];</script>\n</body></html>\n").ToString();
    }

    private static string Invariant(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
