using PartMatch.Core.Measures;

namespace PartMatch.Core.Listings;

/// <summary>Prices and freight as schema.org states them.</summary>
internal static class StatedPrices
{
    // Old and recommended prices stand beside the asked one (schema.org, PriceTypeEnumeration).
    private static readonly HashSet<string> _notAsked = ["StrikethroughPrice", "ListPrice", "MSRP", "SRP", "RegularPrice", "MinimumAdvertisedPrice",
        "InvoicePrice"];

    /// <summary>What is asked, how many pieces for, and what is paid back for an old part.</summary>
    public static (ReadPrice? Price, int Pieces, ReadPrice? Deposit) Asked(StatedThing offer, string? currency)
    {
        var specifications = offer.Things("priceSpecification").SelectMany(Components).Take(50).Where(IsAsked).ToList();
        var deposits = specifications.Where(part => TermWords.IsDeposit(part.FindText("name") ?? "")).ToList();
        var prices = specifications.Except(deposits).Where(part => part.All("price").Count > 0).ToList();
        var single = prices.Where(part => !part.Things("eligibleQuantity").Any(quantity => StatedTerms.Whole(quantity.FindText("minValue")) > 1)).ToList();
        var counted = single.Count > 0 ? single : prices;
        var own = One(offer, "price", Currency(offer) ?? currency);
        var price = own ?? (counted.Count == 0 ? null
            : PriceText.Several("several prices", [.. counted.Select(part => One(part, "price", Currency(part) ?? Currency(offer) ?? currency))
            .OfType<ReadPrice>()]));
        if (counted.Exists(IsMonthly))
        {
            price = new ReadPrice.Unread(price?.Written ?? "", "a price by month, not the price");
        }

        var pieces = counted.Count == 1 && (own is null || Equal(own, One(counted[0], "price", Currency(counted[0]) ?? Currency(offer) ?? currency)))
            ? Pieces(counted[0]) : 1;
        var deposit = deposits.Count == 1 ? One(deposits[0], "price", Currency(deposits[0]) ?? Currency(offer) ?? currency) : null;
        return (price, pieces, deposit);
    }

    /// <summary>A price by the name of its property; a property said twice with two values is open.</summary>
    public static ReadPrice? One(StatedThing thing, string property, string? currency)
    {
        var prices = thing.All(property).Take(10).Where(value => value.Text is { Length: > 0 })
            .Select(value => PriceText.Stated(value.Text!, currency ?? ShownCurrency(value.Shown))) // the where above
            .ToList();
        return prices.Count == 0 ? null : prices.Count == 1 ? prices[0]
            : PriceText.Several(string.Join(" / ", prices.Select(price => price.Written).Distinct()), prices);
    }

    public static string? Currency(StatedThing thing) =>
        thing.FindText("priceCurrency") is { } written && PriceCurrency.Of(written) is [var only] ? only : null;

    /// <summary>Several destinations with several rates are an open price: it depends on where the buyer lives.</summary>
    public static ReadShipping? Shipping(IReadOnlyList<StatedThing> details, string? currency)
    {
        var rates = details.Where(detail => detail.FindText("doesNotShip") is not ("true" or "True"))
            .Select(detail => (To: To(detail), Rate: Rate(detail, currency)))
            .Where(pair => pair.Rate is not null).Select(pair => (pair.To, Rate: pair.Rate!)).Distinct().ToList(); // the where before it
        if (rates.Count == 0)
        {
            return null;
        }

        var to = string.Join(", ", rates.Select(pair => pair.To).OfType<string>().Distinct());
        var amounts = rates.Select(pair => pair.Rate).DistinctBy(rate => string.Join(' ', PriceText.Readings(rate))).ToList();
        var rate = amounts.Count == 1 ? amounts[0]
            : new ReadPrice.Ambiguous(
                string.Join("; ", rates.Select(pair => $"{pair.Rate.Written} to {pair.To ?? "a place not named"}")),
                    [.. amounts.SelectMany(PriceText.Readings).Distinct()],
                "it depends on where it is sent");
        return new(rate, to.Length == 0 ? null : to);
    }

    private static ReadPrice? Rate(StatedThing detail, string? currency)
    {
        // Newer examples of schema.org write a bare 0 for the whole amount.
        if (detail.FindText("shippingRate") is { } bare)
        {
            return Freight(bare, currency);
        }

        var amount = detail.Things("shippingRate").FirstOrDefault();
        return amount?.FindText("value") is { } value ? Freight(value, amount.FindText("currency") is { } code && PriceCurrency.Of(code) is [var only] ? only
            : currency)
            : amount?.FindText("maxValue") is { } most ? new ReadPrice.Unread($"up to {most}", "a range, not a price")
            : null;
    }

    /// <summary>Freight may be nothing; a price may not.</summary>
    public static ReadPrice Freight(string written, string? currency) =>
        written.Length > 0 && written.Any(letter => letter == '0') && written.All(letter => letter is '0' or '.' or ',')
            ? currency is null ? new ReadPrice.Ambiguous(written, [new Money("0.00", "")], "nothing to pay; no currency is named")
                : new ReadPrice.Stated(written, new Money((Currencies.FindDigits(currency) ?? 2) is var digits && digits > 0 ? "0." + new string('0', digits)
                : "0", currency))
            : PriceText.Stated(written, currency);

    private static string? To(StatedThing detail)
    {
        var places = detail.Things("shippingDestination").SelectMany(place =>
            place.Texts("addressCountry").Concat(place.Things("addressCountry").SelectMany(country => country.Texts("name")))
                .Concat(place.Texts("addressRegion")).Concat(place.Texts("name")));
        var text = string.Join(", ", places.Concat(detail.Texts("shippingDestination")).Distinct().Take(20));
        return text.Length == 0 ? null : text;
    }

    private static IEnumerable<StatedThing> Components(StatedThing specification) =>
        specification.All("price").Count == 0 && specification.Things("priceComponent").Any() ? specification.Things("priceComponent")
        : specification.Things("priceComponent").Where(part => TermWords.IsDeposit(part.FindText("name") ?? "")).Prepend(specification);

    private static bool IsAsked(StatedThing part) =>
        !part.Is("DeliveryChargeSpecification", "PaymentChargeSpecification") && !_notAsked.Contains(SchemaName.Find(part.FindText("priceType") ?? "") ?? "");

    private static bool IsMonthly(StatedThing part) =>
        part.All("billingDuration").Count > 0 || part.All("billingIncrement").Count > 0 || part.FindText("unitCode") == "MON"
            || part.Things("referenceQuantity").Any(quantity => quantity.FindText("unitCode") == "MON");

    private static int Pieces(StatedThing part) =>
        StatedTerms.Whole(part.Things("referenceQuantity").Select(quantity => quantity.FindText("value")).FirstOrDefault()
            ?? part.FindText("referenceQuantity")) is > 1 and var pieces ? pieces : 1;

    private static bool Equal(ReadPrice one, ReadPrice? other) => other is not null && PriceText.Readings(one).SequenceEqual(PriceText.Readings(other));

    private static string? ShownCurrency(string? shown) => shown is not null && PriceText.Find(shown, null) is [{ Price: ReadPrice.Stated stated }]
        ? stated.Money.Currency : null;
}
