using PartMatch.Core.Listings;

namespace PartMatch.Core.Buying;

/// <summary>Which offers are there, and what do they cost at the door?</summary>
/// <param name="On">The day to which ages are counted.</param>
/// <param name="Part">Id of the part wanted; null for any.</param>
/// <param name="NumberKey">Key of the number that was asked for; null for any. With a part it finds the offers from before the part was recorded.</param>
/// <param name="Position">Of the family: offers of the kind of part that sits there.</param>
/// <param name="Limit">Rows of a page, at least 1.</param>
/// <param name="Cursor">From the page before; null for the first page.</param>
public sealed record OfferQuestion(
    DateOnly On, int StaleAfter, int Pieces, string? Part = null, string? NumberKey = null, string? Seller = null, string? Family = null,
        string? Position = null,
    string? Currency = null, ItemCondition? Condition = null, int Limit = 20, string? Cursor = null);

/// <summary>One page of offers.</summary>
/// <param name="Total">Offers that the filters leave, on all pages together.</param>
/// <param name="Old">How many of those are old.</param>
/// <param name="Cursor">Asks for the next page; null on the last one.</param>
/// <param name="Offers">By number, the latest first, then book and code.</param>
public sealed record OfferPage(int Total, int Old, string? Cursor, IReadOnlyList<OfferShown> Offers);

/// <summary>An offer with what it costs and how old it is.</summary>
/// <param name="Number">As the seller writes it, else as the part's own.</param>
/// <param name="Name">Of the part; absent where no book has the number.</param>
/// <param name="UnitPrice">Of one piece; absent where it is not known how many the price is for.</param>
/// <param name="DaysMin">From order to door, of the offer, else the seller's usual; absent where neither is known.</param>
/// <param name="Listing">Digest of the words that are kept of it; absent where none are.</param>
public sealed record OfferShown(
    string Offer, string Book, string Seller, string SellerName, string? Part, string Number, string? Name, string? Kind, Measures.Money Price, int? Pack,
    Measures.Money? UnitPrice, int? Stock, ItemCondition Condition, AssemblyLevel Level, OfferAge Age, LandedPrice Landed, long? DaysMin, long? DaysMax,
    OfferReturns Returns, string? Note, string? Listing, string Link)
{
    /// <summary>The words that it was read from, where they are kept and shown.</summary>
    public KeptListing? Kept { get; init; }

    internal static OfferShown Of(BuyingFacts facts, Offer offer, DateOnly on, int staleAfter, int pieces)
    {
        var seller = facts.SellerOf(offer);
        var hasDays = offer.DaysMin is not null || offer.DaysMax is not null;
        return new OfferShown(
            offer.Code, offer.Book, offer.Seller, seller.Name, offer.Part, offer.NumberAsWritten ?? Catalogue.PartId.Find(offer.Part ?? "")?.Number ?? "",
            offer.PartName, offer.Kind, offer.Price, offer.Pack, offer.UnitPrice, offer.Stock, offer.Condition, offer.Level,
            OfferAge.Of(offer.SeenOn, on, staleAfter), LandedPrice.Of(offer, seller, pieces, facts.Home),
            hasDays ? offer.DaysMin : seller.DaysMin, hasDays ? offer.DaysMax : seller.DaysMax,
            offer.Returns.OrUsualOf(seller),
            offer.Note, offer.Listing, Catalogue.Permalink.To("/api/offers", offer.Code).With("book", offer.Book).ToString());
    }
}

/// <summary>A listing as it was kept.</summary>
/// <param name="Listing">SHA-256 of the text.</param>
public sealed record KeptListing(string Listing, DateOnly SeenOn, string? Title, string? Address, string Text);
