using System.Globalization;

namespace PartMatch.Core.Listings;

/// <summary>Whose crowns "kr" are, where the page says in which Nordic language it is written: each of them has one country with crowns.</summary>
internal static class CrownCurrency
{
    private static readonly string[] _crowns = ["DKK", "ISK", "NOK", "SEK"];

    /// <param name="language">As the page declares it (BCP 47); null where it does not.</param>
    public static IReadOnlyList<ReadProduct> Settle(IReadOnlyList<ReadProduct> products, string? language) => Find(language) is { } currency
        ? [.. products.Select(product => product with { Offers = [.. product.Offers.Select(offer => Settle(offer, currency))] })]
        : products;

    private static string? Find(string? language) => language?.Split('-')[0].ToLowerInvariant() switch
    {
        "sv" => "SEK",
        "da" => "DKK",
        "nb" or "nn" or "no" => "NOK",
        "is" => "ISK",
        _ => null,
    };

    private static ReadOffer Settle(ReadOffer offer, string currency) => offer with
    {
        Price = offer.Price is null ? null : Settle(offer.Price, currency),
        Shipping = offer.Shipping is null ? null : offer.Shipping with { Rate = Settle(offer.Shipping.Rate, currency) },
    };

    // Only where the one thing that is open is whose crowns they are.
    private static ReadPrice Settle(ReadPrice price, string currency) =>
        // 850:- is written of crowns alone, and on such a page of its own: common practice, no source.
        price is ReadPrice.Ambiguous { Readings: [{ Currency: "" } bare] } && price.Written.EndsWith(":-", StringComparison.Ordinal)
            ? new ReadPrice.Stated(price.Written, bare with { Currency = currency })
        : price is ReadPrice.Ambiguous { Readings: var readings } && readings.All(reading => _crowns.Contains(reading.Currency, StringComparer.Ordinal))
        && readings.Select(reading => decimal.Parse(reading.Amount, CultureInfo.InvariantCulture)).Distinct().Take(2).Count() == 1
        && readings.FirstOrDefault(reading => reading.Currency == currency) is { } own
            ? new ReadPrice.Stated(price.Written, own)
            : price;
}
