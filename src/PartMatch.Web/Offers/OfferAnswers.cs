using PartMatch.Core.Buying;
using PartMatch.Core.Listings;
using PartMatch.Core.Plots;

namespace PartMatch.Web.Offers;

/// <summary>Offers of the base.</summary>
/// <param name="Total">On all pages together.</param>
/// <param name="Old">How many of those are old.</param>
/// <param name="Offers">By number, the latest first, then book and code.</param>
public sealed record OffersAnswer(OffersAsked Asked, int Total, int Old, string? Cursor, IReadOnlyList<OfferShown> Offers, string Permalink);

/// <param name="NumberKey">Of the number asked about.</param>
public sealed record OffersAsked(
    string? Part, string? NumberKey, string? Seller, string? Family, string? Position, string? Currency, ItemCondition? Condition, int Pieces, DateOnly On,
        int StaleAfter,
    int Limit, string? Cursor);

/// <summary>One offer, with the words that are kept of it.</summary>
public sealed record OfferAnswer(OfferAsked Asked, OfferShown Offer, string Permalink);

public sealed record OfferAsked(string Offer, string? Book, int Pieces, DateOnly On, int StaleAfter);

/// <summary>What has been asked for a number over time.</summary>
/// <param name="Known">Parts that the number can mean; empty when no book has it.</param>
/// <param name="Points">By the day seen, then seller.</param>
/// <param name="Ranges">Least, middle and greatest price of one piece, per currency and condition.</param>
public sealed record PricesAnswer(
    PricesAsked Asked, IReadOnlyList<string> Known, IReadOnlyList<PricePoint> Points, IReadOnlyList<PriceRange> Ranges, IReadOnlyList<PlotLink> Plots,
        string Permalink);

public sealed record PricesAsked(string Number, string NumberKey, string? Maker);

/// <summary>What became of an offer that was sent.</summary>
/// <param name="Change">Its number in the history; absent when nothing was stored.</param>
/// <param name="Offer">As it is stored, now or before; absent for a dry run that would store it.</param>
/// <param name="Number">What the number is that the seller wrote; absent where only a part was given.</param>
/// <param name="Earlier">What the same seller asked before, where that was another price.</param>
/// <param name="ListingCut">Was the text longer than what is kept?</param>
public sealed record OfferStored(
    OfferStoreAsked Asked, OfferResult Result, long? Change, OfferShown? Offer, SoldNumber? Number, EarlierPrice? Earlier, bool ListingCut, string Permalink);

public sealed record OfferStoreAsked(string Book, bool DryRun, string? Who, string? Why);

public enum OfferResult
{
    Stored,
    AlreadyStored,
    WouldStore,
}
