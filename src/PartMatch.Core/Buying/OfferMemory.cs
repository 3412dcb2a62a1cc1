using System.Globalization;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Listings;
using PartMatch.Core.Measures;

namespace PartMatch.Core.Buying;

/// <summary>What identifies an offer that is about to be stored.</summary>
/// <param name="Part">Id of the part; null where no book has the number.</param>
/// <param name="Listing">Digest of the words it was read from; null where none are kept.</param>
public sealed record OfferSeen(string Seller, string? Part, string NumberKey, ItemCondition Condition, Money Price, DateOnly SeenOn, string? Listing)
{
    // Of the digest: among a million offers of one day two with the same ten digits are improbable, and are told apart by a number behind them.
    private const int DigitsOfDigest = 10;

    /// <summary>A code made of what identifies it: two people who store the same offer in two bases give it one code, and a merge finds one offer.</summary>
    public string Code => string.Create(
        CultureInfo.InvariantCulture,
        $"of-{SeenOn:yyyyMMdd}-{ListingText.DigestOf(string.Join('\n', Seller, NumberKey, Codes.Of(Condition), Amount.Of(Price), Listing ?? ""))[..DigitsOfDigest]}");
}

/// <summary>Have we seen this offer before?</summary>
public static class OfferMemory
{
    /// <summary>
    /// The offer that this one is: of the same seller, number, condition and price, read from the same words. Where no words are kept, as with price lists,
    /// it has to be of the same day, because the same price on a later day is news: it still stands. Null when there is none.
    /// </summary>
    public static Offer? FindSame(IEnumerable<Offer> offers, OfferSeen seen) => offers.FirstOrDefault(offer =>
        IsOfSameThing(offer, seen) && IsSamePrice(offer.Price, seen.Price) && offer.Listing == seen.Listing && (seen.Listing is not null
            || offer.SeenOn == seen.SeenOn));

    /// <summary>The latest offer of the same seller, number and condition before this one that asked another price; null when there is none.</summary>
    public static EarlierPrice? FindEarlier(IEnumerable<Offer> offers, OfferSeen seen) => offers
        .Where(offer => IsOfSameThing(offer, seen) && offer.SeenOn < seen.SeenOn)
        .OrderByDescending(offer => offer.SeenOn).ThenBy(offer => offer.Book, StringComparer.Ordinal).ThenBy(offer => offer.Code, StringComparer.Ordinal)
        .Take(1).Where(offer => !IsSamePrice(offer.Price, seen.Price)).Select(EarlierPrice.Of).FirstOrDefault();

    private static bool IsOfSameThing(Offer offer, OfferSeen seen) =>
        offer.Seller == seen.Seller && offer.Condition == seen.Condition
        && (offer.NumberKey == seen.NumberKey || (offer.Part is { } part && part == seen.Part));

    // 84 and 84.00 are one price.
    private static bool IsSamePrice(Money one, Money other) => one.Currency == other.Currency && Amount.Of(one) == Amount.Of(other);
}

/// <summary>What the same seller asked before.</summary>
public sealed record EarlierPrice(string Offer, string Book, Money Price, DateOnly SeenOn, string Text)
{
    internal static EarlierPrice Of(Offer offer) => new(
        offer.Code, offer.Book, offer.Price, offer.SeenOn,
        string.Create(CultureInfo.InvariantCulture, $"the same seller had it for {Amount.Of(offer.Price)} on {offer.SeenOn:yyyy-MM-dd}"));
}
