using PartMatch.Core.Listings;

namespace PartMatch.Core.Builds;

/// <summary>What grades cost before anybody knows which one is needed.</summary>
internal static class GradePrices
{
    /// <summary>Price of the cheapest pack by its pieces, in minor units; null where nobody sells it.</summary>
    public static decimal? CheapestPiece(OfferScreen screen, string part, bool onlyNew) => screen.Offers
        .Where(offer => offer.Offer.Part == part && (!onlyNew || offer.Offer.Condition == ItemCondition.New))
        .Select(offer => (decimal?)offer.Landed / offer.Pieces).Min();
}
