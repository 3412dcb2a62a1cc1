using PartMatch.Core.Catalogue;
using PartMatch.Core.Listings;
using PartMatch.Core.Measures;

namespace PartMatch.Core.Buying;

/// <summary>Something priced and shippable, as it was seen on one day.</summary>
/// <param name="Book">The parts book that holds it; codes of offers repeat between books.</param>
/// <param name="SellerBook">The book in which its seller stands.</param>
/// <param name="Part">Id of the part; null where no book has the number.</param>
/// <param name="PartName">As the part is named; null without a part.</param>
/// <param name="Kind">Of the part; null without one.</param>
/// <param name="NumberAsWritten">By the seller; null where only the part is recorded.</param>
/// <param name="Pack">Pieces that the price is for; null where it is not known.</param>
/// <param name="Stock">Packs there were: how often what the price is for could be bought; null where nothing was said.</param>
/// <param name="CoreDeposit">Paid back when an old part is sent in.</param>
/// <param name="DaysMin">From order to door, at least.</param>
/// <param name="Shipping">Of the parcel; null: the seller's usual.</param>
/// <param name="Listing">Digest of the words it was read from, kept in the same book; null where none are.</param>
public sealed record Offer(
    string Book, string Code, string SellerBook, string Seller, string? Part, string? PartName, string? Kind, string? NumberAsWritten, Money Price, int? Pack,
    int? Stock, ItemCondition Condition, AssemblyLevel Level, Money? CoreDeposit, DateOnly SeenOn, long? DaysMin, long? DaysMax, Money? Shipping, string? Note,
    OfferReturns Returns, string? Listing)
{
    /// <summary>By which it is found and ordered: of what the seller wrote, else of the part's own number.</summary>
    public string NumberKey => Catalogue.NumberKey.Of(NumberAsWritten ?? PartId.Find(Part ?? "")?.Number ?? "");

    /// <summary>Price by pieces, rounded half to even; null where it is not known how many pieces the price is for.</summary>
    public Money? UnitPrice => Pack is { } pieces ? Amount.Of(Price).DividedBy(pieces).ToMoney() : null;

    /// <summary>Is it of this part? An offer whose number no book had when it was stored is found by that number.</summary>
    public bool IsOf(string? part, string numberKey) => Part is null ? NumberKey == numberKey : Part == part;
}

/// <summary>On what terms it goes back.</summary>
/// <param name="CorePart">Which old part counts for the deposit, as the seller says it.</param>
/// <param name="Days">Within how many days; null: the seller's usual.</param>
/// <param name="RestockingPercent">Kept back then; null: the seller's usual.</param>
public sealed record OfferReturns(Returnable Returnable, long? Days, decimal? RestockingPercent, FreightBack FreightBack, string? CorePart)
{
    /// <summary>With the seller's usual terms where the offer says nothing.</summary>
    internal OfferReturns OrUsualOf(Seller seller) =>
        this with { Days = Days ?? seller.ReturnsDays, RestockingPercent = RestockingPercent ?? seller.RestockingPercent };
}

/// <summary>Who sells, and on what terms.</summary>
/// <param name="ShippingFixed">For a parcel; null where it is not known, 0 where it is free.</param>
/// <param name="ShippingPerItem">For each piece in it.</param>
/// <param name="FreeFrom">Value of goods from which the parcel is free.</param>
/// <param name="ImportChargePercent">Added at a border, of the price of the goods.</param>
/// <param name="Deliveries">What came of what was ordered; null where nothing is counted.</param>
public sealed record Seller(
    string Book, string Code, string Name, string? Country, string? Currency, Money? ShippingFixed, Money? ShippingPerItem, Money? FreeFrom,
    decimal? ImportChargePercent, long? DaysMin, long? DaysMax, long? ReturnsDays, decimal? RestockingPercent, string? Note, DeliveryCount? Deliveries);

/// <param name="Deliveries">Parcels that were checked.</param>
/// <param name="Wrong">Those in which something else came than was ordered.</param>
public sealed record DeliveryCount(int Deliveries, int Wrong);

/// <summary>Everything for sale that the base holds.</summary>
/// <param name="Offers">In ordinal order of book, then code.</param>
/// <param name="Sellers">In ordinal order of code, then book.</param>
public sealed record BuyingFacts(IReadOnlyList<Offer> Offers, IReadOnlyList<Seller> Sellers)
{
    private readonly Dictionary<(string Book, string Code), Seller> _sellers = Sellers.ToDictionary(seller => (seller.Book, seller.Code));

    /// <summary>Where the goods go to; null where it is not known.</summary>
    public string? Home { get; init; }

    /// <exception cref="ArgumentException">There is no such seller.</exception>
    public Seller GetSeller(string book, string code) =>
        _sellers.GetValueOrDefault((book, code)) ?? throw new ArgumentException($"{code} is no seller of {book}.", nameof(code));

    /// <summary>The seller of an offer; the base's checks see to it that there is one.</summary>
    public Seller SellerOf(Offer offer) => GetSeller(offer.SellerBook, offer.Seller);
}
