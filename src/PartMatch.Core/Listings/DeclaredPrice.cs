namespace PartMatch.Core.Listings;

/// <summary>The price that a shop declares to social networks in the head of its page: weaker than what it states of the offer itself.</summary>
/// <remarks>The properties are common practice beside the Open Graph protocol; from memory, no source.</remarks>
internal static class DeclaredPrice
{
    // A price in a sale is the one that is asked; the other is then the old one.
    private static readonly string[] _amounts = ["product:sale_price:amount", "product:price:amount", "og:price:amount"];
    private static readonly string[] _currencies = ["product:sale_price:currency", "product:price:currency", "og:price:currency"];

    public static string? Currency(IReadOnlyList<PageNode.Element> elements) =>
        _currencies.SelectMany(name => Contents(elements, name)).Select(PriceCurrency.Of)
            .Where(codes => codes.Count == 1).Select(codes => codes[0]).FirstOrDefault();

    /// <summary>Null where none is declared; declared twice with two amounts it is open.</summary>
    public static ReadPrice? Find(IReadOnlyList<PageNode.Element> elements, string? currency)
    {
        var prices = _amounts.Select(name => Contents(elements, name).Select(written => PriceText.Stated(written, currency)).ToList())
            .FirstOrDefault(found => found.Count > 0) ?? [];
        return prices.Count == 0 ? null : PriceText.Several(string.Join(" / ", prices.Select(price => price.Written).Distinct()), prices);
    }

    private static IEnumerable<string> Contents(IReadOnlyList<PageNode.Element> elements, string name) =>
        elements.Where(element => element.Name == "meta" && (element.Find("property") ?? element.Find("name"))?.Trim() == name)
            .Select(element => element.Find("content")?.Trim() ?? "").Where(content => content.Length > 0).Take(10);
}
