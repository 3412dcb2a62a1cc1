using System.Globalization;

namespace PartMatch.Core.Buying;

/// <summary>A seller with what the base knows of what came and what is for sale.</summary>
/// <param name="Offers">Offers of this seller that are recorded.</param>
/// <param name="LatestSeenOn">The day of the latest of them; absent without one.</param>
/// <param name="DeliveriesText">How often something else came than was ordered, in words.</param>
public sealed record SellerShown(Seller Terms, int Offers, DateOnly? LatestSeenOn, string DeliveriesText, string Link)
{
    /// <summary>Every seller of the base, in ordinal order of code, then book.</summary>
    public static IReadOnlyList<SellerShown> All(BuyingFacts facts)
    {
        var offers = facts.Offers.ToLookup(offer => (offer.SellerBook, offer.Seller));
        return [.. facts.Sellers.Select(seller => Of(seller, [.. offers[(seller.Book, seller.Code)]]))];
    }

    private static SellerShown Of(Seller seller, Offer[] offers) => new(
        seller, offers.Length, offers.Length == 0 ? null : offers.Max(offer => offer.SeenOn),
        seller.Deliveries is not { } counted ? "nothing counted yet" : string.Create(
            CultureInfo.InvariantCulture, $"{counted.Wrong} of {counted.Deliveries} {(counted.Deliveries == 1 ? "delivery" : "deliveries")} held something else than was ordered"),
        Catalogue.Permalink.To("/api/sellers", seller.Code).With("book", seller.Book).ToString());
}
