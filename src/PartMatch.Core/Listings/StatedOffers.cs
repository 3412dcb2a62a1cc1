namespace PartMatch.Core.Listings;

/// <summary>Offers as schema.org states them.</summary>
internal static class StatedOffers
{
    // Destinations or parts of a price: references can repeat a long list in every offer. Ours, no source.
    private const int Most = 50;

    /// <summary>The concrete offers of a thing: those inside an AggregateOffer too, the range itself not.</summary>
    public static List<StatedThing> Of(StatedThing thing, int most)
    {
        List<StatedThing> offers = [];
        HashSet<StatedThing> seen = [];
        var open = new Queue<StatedThing>(thing.Things("offers"));
        while (offers.Count < most && open.TryDequeue(out var next))
        {
            if (!seen.Add(next))
            {
                continue;
            }

            if (next.Is("AggregateOffer") || next.All("lowPrice").Count > 0)
            {
                next.Things("offers").ToList().ForEach(open.Enqueue);
            }
            else
            {
                offers.Add(next);
            }
        }

        return offers;
    }

    public static ReadOffer Read(
        StatedThing offer, StatedThing product, StatedThing? group, ItemCondition condition, string words, string? pageCurrency, List<ListingWarning> warnings)
    {
        var currency = StatedPrices.Currency(offer) ?? pageCurrency;
        var (price, pieces, deposit) = StatedPrices.Asked(offer, pageCurrency);
        var details = offer.Things("shippingDetails").Concat(offer.All("shippingDetails").Count == 0 ? product.Things("shippingDetails") : []).Take(Most)
            .ToList();
        var charges = offer.Things("priceSpecification").SelectMany(part => part.Things("priceComponent").Prepend(part)).Take(Most)
            .Where(part => part.Is("DeliveryChargeSpecification")).ToList();
        var shipping = StatedPrices.Shipping(details, currency)
            ?? (charges.Count == 1 && charges[0].FindText("price") is { } charge
            ? new ReadShipping(StatedPrices.Freight(charge, StatedPrices.Currency(charges[0]) ?? currency), null) : null);
        var times = details.SelectMany(detail => detail.Things("deliveryTime")).ToList();
        var own = StatedTerms.Condition(offer);
        var name = offer.FindText("name");
        Warn(offer, price, warnings);
        return new(
            price,
            pieces > 1 ? pieces : PieceWords.Find(name ?? words) ?? 1,
            own == ItemCondition.NotStated ? condition : own,
            StatedTerms.Availability(offer),
            shipping,
            StatedTerms.Days(times.Count > 0 ? times : offer.Things("deliveryLeadTime")),
            Seller(offer) ?? Seller(product),
            offer.FindText("url") ?? (product == offer ? null : product.FindText("url")) ?? group?.FindText("url"),
            Stock(offer) ?? Stock(product),
            StatedTerms.Terms(offer, product) with { CoreDeposit = deposit },
            LevelWords.Find(name is null ? words : $"{name} {words}"));
    }

    private static void Warn(StatedThing offer, ReadPrice? price, List<ListingWarning> warnings)
    {
        if (offer.FindText("priceValidUntil") is { } until)
        {
            Add(warnings, "price-valid-until", $"the page says that its price holds until {Short(until)}");
        }

        if (offer.FindText("priceCurrency") is { } currency && PriceCurrency.Of(currency).Count == 0)
        {
            Add(warnings, "currency-unknown", $"{Short(currency)} is no currency of ISO 4217");
        }

        if (price is ReadPrice.Stated { Written: var written } && written.Any(letter => letter is ',' or ' ' or '\u2019' or '\''))
        {
            Add(warnings, "price-not-as-schema", $"the page states its price as {Short(written)}; schema.org wants a decimal point and no mark for thousands");
        }

        if (offer.Things("eligibleQuantity").Select(quantity => StatedTerms.Whole(quantity.FindText("minValue"))).FirstOrDefault() is > 1 and var least)
        {
            Add(warnings, "least-quantity", $"an offer holds from {least} pieces on");
        }
    }

    private static string? Seller(StatedThing thing) =>
        Named(thing, "seller") ?? Named(thing, "offeredBy");

    /// <summary>Name of the thing that a property holds, or the property's own text.</summary>
    public static string? Named(StatedThing thing, string property) =>
        thing.Things(property).Select(named => named.FindText("name")).OfType<string>().FirstOrDefault() ?? thing.FindText(property);

    private static int? Stock(StatedThing thing) =>
        StatedTerms.Whole(thing.FindText("inventoryLevel") ?? thing.Things("inventoryLevel").Select(level => level.FindText("value")).FirstOrDefault());

    private static void Add(List<ListingWarning> warnings, string code, string text)
    {
        if (!warnings.Exists(warning => warning.Code == code))
        {
            warnings.Add(new(code, text));
        }
    }

    private static string Short(string text) => text.Length > 40 ? text[..40] : text;
}
