using System.Globalization;

namespace PartMatch.Core.Listings;

/// <summary>Condition, availability, days and terms as schema.org states them.</summary>
internal static class StatedTerms
{
    /// <remarks>Source: schema.org, OfferItemCondition: exactly four; bare words and words for people are taken as well.</remarks>
    public static ItemCondition Condition(StatedThing thing)
    {
        if (thing.FindText("itemCondition") is not { } written)
        {
            return ItemCondition.NotStated;
        }

        var name = SchemaName.Find(written) ?? written;
        return Named<ItemCondition>(name.EndsWith("Condition", StringComparison.OrdinalIgnoreCase) ? name[..^"Condition".Length] : name)
            ?? ConditionWords.Stated(written);
    }

    /// <remarks>Source: schema.org, ItemAvailability: exactly twelve.</remarks>
    public static Availability Availability(StatedThing offer) =>
        offer.FindText("availability") is not { } written ? Listings.Availability.NotStated
        : Named<Availability>(SchemaName.Find(written) ?? "") ?? StockWords.Find(written);

    public static OfferTerms Terms(StatedThing offer, StatedThing product)
    {
        var policy = offer.Things("hasMerchantReturnPolicy").Concat(product.Things("hasMerchantReturnPolicy")).FirstOrDefault();
        if (policy is null)
        {
            return OfferTerms.NotStated;
        }

        var category = SchemaName.Find(policy.FindText("returnPolicyCategory") ?? "") ?? "";
        var days = Whole(policy.FindText("merchantReturnDays"));
        var returnable = category is "MerchantReturnNotPermitted" ? Returnable.No
            : category is "MerchantReturnFiniteReturnWindow" or "MerchantReturnUnlimitedWindow" || days > 0 ? Returnable.Yes
            : Returnable.NotStated;
        var back = SchemaName.Find(policy.FindText("returnFees") ?? policy.FindText("customerRemorseReturnFees") ?? "") switch
        {
            "FreeReturn" => FreightBack.Seller,
            "ReturnFeesCustomerResponsibility" or "ReturnShippingFees" or "OriginalShippingFees" => FreightBack.Buyer,
            _ => FreightBack.NotStated,
        };
        return new(null, null, returnable, returnable == Returnable.Yes ? days : null, Percent(policy.FindText("restockingFee")), back);
    }

    /// <summary>Handling and transit together; null as soon as an end is open, because half a time is no time.</summary>
    public static DayRange? Days(IEnumerable<StatedThing> times)
    {
        DayRange? all = null;
        foreach (var time in times)
        {
            var parts = time.Is("ShippingDeliveryTime") || time.All("transitTime").Count > 0 || time.All("handlingTime").Count > 0
                ? time.Things("handlingTime").Take(1).Concat(time.Things("transitTime").Take(1)).ToList()
                : [time];
            var ranges = parts.Select(Range).ToList();
            if (ranges.Count == 0 || ranges.Contains(null))
            {
                return null;
            }

            var sum = ranges.OfType<DayRange>().Aggregate((one, next) => new(one.Least + next.Least, one.Most + next.Most));
            all = all is null ? sum : new(Math.Min(all.Least, sum.Least), Math.Max(all.Most, sum.Most));
        }

        return all;
    }

    public static int? Whole(string? text) =>
        decimal.TryParse(text, NumberStyles.AllowDecimalPoint | NumberStyles.AllowLeadingWhite, CultureInfo.InvariantCulture, out var value)
            && value is >= 0 and <= 1_000_000 && value % 1 == 0
            ? (int)value
            : null;

    /// <summary>The value of a bounded enumeration by its name, however it is spaced.</summary>
    private static T? Named<T>(string name)
        where T : struct, Enum
    {
        var bare = new string([.. name.Where(char.IsAsciiLetter)]);
        foreach (var value in Enum.GetValues<T>())
        {
            if (string.Equals(value.ToString(), bare, StringComparison.OrdinalIgnoreCase) && !EqualityComparer<T>.Default.Equals(value, default))
            {
                return value;
            }
        }

        return null;
    }

    // Codes of UN/CEFACT recommendation 20, as schema.org's unitCode takes them.
    private static DayRange? Range(StatedThing quantity)
    {
        var unit = (quantity.FindText("unitCode") ?? quantity.FindText("unitText") ?? "DAY").Trim().ToUpperInvariant();
        var days = unit is "DAY" or "D" or "DAYS" ? 1m : unit is "WEE" or "WEEK" or "WEEKS" ? 7m : unit is "HUR" or "HOUR" or "HOURS" or "H" ? 1m / 24 : 0m;
        var most = Whole(quantity.FindText("maxValue") ?? quantity.FindText("value"));
        var least = Whole(quantity.FindText("minValue") ?? quantity.FindText("value")) ?? 0;
        return days == 0 || most is null || most < least ? null : new((int)Math.Floor(least * days), (int)Math.Ceiling(most.Value * days));
    }

    private static decimal? Percent(string? text) =>
        decimal.TryParse(text?.TrimEnd('%', ' '), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var value) && value <= 100 ? value : null;
}
