using PartMatch.Core.Listings;
using PartMatch.Core.Measures;

namespace PartMatch.Core.Buying;

/// <summary>What has been asked for a number, offer by offer.</summary>
/// <param name="Points">By the day seen, then seller, book and code.</param>
/// <param name="Ranges">Per currency and condition, in that order; nothing is ever converted.</param>
public sealed record PriceHistory(IReadOnlyList<PricePoint> Points, IReadOnlyList<PriceRange> Ranges)
{
    /// <param name="parts">Ids of the parts that the number can mean; empty when no book has it.</param>
    public static PriceHistory Of(BuyingFacts facts, IReadOnlyCollection<string> parts, string numberKey)
    {
        PricePoint[] points =
        [
            .. facts.Offers.Where(offer => offer.Part is { } part ? parts.Contains(part) : offer.NumberKey == numberKey)
                .OrderBy(offer => offer.SeenOn).ThenBy(offer => offer.Seller, StringComparer.Ordinal).ThenBy(offer => offer.Book, StringComparer.Ordinal)
                .ThenBy(offer => offer.Code, StringComparer.Ordinal)
                .Select(offer => new PricePoint(
                    offer.SeenOn, offer.Code, offer.Book, offer.Seller, facts.SellerOf(offer).Name, offer.Part, offer.Condition, offer.Price, offer.Pack,
                        offer.UnitPrice)),
        ];
        return new PriceHistory(
            points,
            [
                .. points.Where(point => point.UnitPrice is not null).GroupBy(point => (point.Price.Currency, point.Condition))
                    .OrderBy(group => group.Key.Currency, StringComparer.Ordinal).ThenBy(group => group.Key.Condition)
                    .Select(group => RangeOf(group.Key.Currency, group.Key.Condition,
                        [.. group.Select(point => Amount.Of(point.UnitPrice!)).OrderBy(price => price.Minor)])), // filtered above
            ]);
    }

    private static PriceRange RangeOf(string currency, ItemCondition condition, Amount[] prices)
    {
        var (left, right) = (prices[(prices.Length - 1) / 2], prices[prices.Length / 2]);
        return new PriceRange(currency, condition, prices.Length, prices[0].ToMoney(), (left + right).DividedBy(2).ToMoney(), prices[^1].ToMoney());
    }
}

/// <summary>One offer in the history of its price.</summary>
/// <param name="UnitPrice">Of one piece; absent where it is not known how many the price is for.</param>
public sealed record PricePoint(
    DateOnly SeenOn, string Offer, string Book, string Seller, string SellerName, string? Part, ItemCondition Condition, Money Price, int? Pack,
        Money? UnitPrice);

/// <summary>Least, middle and greatest price of one piece.</summary>
/// <param name="Middle">Of an even number of offers halfway between the two in the middle, rounded half to even.</param>
public sealed record PriceRange(string Currency, ItemCondition Condition, int Offers, Money Low, Money Middle, Money High);
