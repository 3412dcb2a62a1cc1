using System.Text.Json.Serialization;

namespace PartMatch.Core.Listings;

/// <summary>A thing that a listing describes.</summary>
/// <param name="From">How the page states it.</param>
/// <param name="Name">Null where it has none.</param>
/// <param name="Brand">Whose make it is said to be; null where nothing is said.</param>
/// <param name="Numbers">Every number that is stated outright, in the order of the document.</param>
/// <param name="Condition">Of the product; an offer may say otherwise of itself.</param>
/// <param name="Offers">In the order of the document; empty when nothing is for sale.</param>
/// <param name="Said">Range and number of offers that an AggregateOffer claims; null where there is none. A range is nothing that can be bought.</param>
public sealed record ReadProduct(
    StatementForm From, string? Name, string? Brand, IReadOnlyList<StatedNumber> Numbers, ItemCondition Condition, IReadOnlyList<ReadOffer> Offers,
        OfferRange? Said);

/// <summary>How a page states something.</summary>
public enum StatementForm
{
    JsonLd,
    Microdata,
    Rdfa,
    Table,
    DefinitionList,
    Text,
}

/// <summary>A number that a page states outright.</summary>
/// <param name="Value">As written, without a prefix such as <c>mpn:</c>.</param>
/// <param name="Gtin">Null unless the property is a GTIN: is its check digit right?</param>
public sealed record StatedNumber(NumberProperty Property, string Value, GtinCheck? Gtin = null);

/// <summary>Is a GTIN one? 8, 12, 13 or 14 digits, or a GS1 Digital Link, with the check digit of the GS1 General Specifications, 7.9.</summary>
public enum GtinCheck
{
    Valid,
    WrongCheckDigit,
    NotAGtin,
}

/// <summary>Something priced and shippable.</summary>
/// <param name="Price">Null where none is stated.</param>
/// <param name="Pieces">How many pieces the price is for; 1 where nothing else is said.</param>
/// <param name="Condition">As stated of the offer, else of its product.</param>
/// <param name="Shipping">Null where nothing is said: not known, never free.</param>
/// <param name="Days">From order to door, handling and transit together; null where nothing is said.</param>
/// <param name="Seller">As the page names it; null where it does not.</param>
/// <param name="Address">The offer's own address, as written; null where none is given.</param>
/// <param name="Stock">Packs there are: how often what the price is for can be bought; null where nothing is said.</param>
/// <param name="Terms">Deposit, return window and the like, as far as the page says anything.</param>
/// <param name="Level">How much of an assembly is sold, as far as the words say.</param>
public sealed record ReadOffer(
    ReadPrice? Price,
    int Pieces,
    ItemCondition Condition,
    Availability Availability,
    ReadShipping? Shipping,
    DayRange? Days,
    string? Seller,
    string? Address,
    int? Stock,
    OfferTerms Terms,
    AssemblyLevel Level);

/// <summary>What a price range claims.</summary>
public sealed record OfferRange(ReadPrice? Low, ReadPrice? High, int? Offers);

/// <summary>A price as a page gives it.</summary>
/// <param name="Written">As it stands there.</param>
[JsonPolymorphic(TypeDiscriminatorPropertyName = "as")]
[JsonDerivedType(typeof(Stated), "stated")]
[JsonDerivedType(typeof(Ambiguous), "ambiguous")]
[JsonDerivedType(typeof(Unread), "unread")]
public abstract record ReadPrice(string Written)
{
    /// <summary>One amount of one currency.</summary>
    public sealed record Stated(string Written, Measures.Money Money) : ReadPrice(Written);

    /// <summary>Can be read in several ways ("1.299", "$40" on a page of no country, an amount without a currency): shown so, never guessed.</summary>
    /// <param name="Readings">What it can mean; an amount whose currency is not known has the currency "".</param>
    /// <param name="Why">In words, with what would settle it.</param>
    public sealed record Ambiguous(string Written, IReadOnlyList<Measures.Money> Readings, string Why) : ReadPrice(Written);

    /// <summary>Not a price that can be read ("ask", "from 20").</summary>
    public sealed record Unread(string Written, string Why) : ReadPrice(Written);
}

/// <summary>What sending costs, and where to.</summary>
/// <param name="Rate">Free only where the page says so: an amount of 0.</param>
/// <param name="To">Country or region as written; null where none is named.</param>
public sealed record ReadShipping(ReadPrice Rate, string? To);

/// <summary>Days, both ends included.</summary>
public sealed record DayRange(int Least, int Most);

/// <summary>On what terms.</summary>
/// <param name="CoreDeposit">Paid back when an old part is sent in.</param>
/// <param name="CorePart">Which old part counts, as written.</param>
/// <param name="Returnable">Can it be sent back?</param>
/// <param name="ReturnDays">Within how many days.</param>
/// <param name="RestockingPercent">Kept back when it is.</param>
/// <param name="FreightBack">Who pays the way back.</param>
public sealed record OfferTerms(
    ReadPrice? CoreDeposit = null, string? CorePart = null, Returnable Returnable = Returnable.NotStated, int? ReturnDays = null,
        decimal? RestockingPercent = null,
    FreightBack FreightBack = FreightBack.NotStated)
{
    public static OfferTerms NotStated { get; } = new();
}

public enum Returnable
{
    NotStated,
    Yes,
    No,
}

public enum FreightBack
{
    NotStated,
    Buyer,
    Seller,
}

/// <summary>Condition of goods: the four of schema.org (OfferItemCondition), and what sellers write besides.</summary>
public enum ItemCondition
{
    NotStated,
    New,
    Refurbished,
    Used,
    Damaged,
}

/// <summary>The twelve of schema.org (ItemAvailability).</summary>
public enum Availability
{
    NotStated,
    BackOrder,
    Discontinued,
    InStock,
    InStoreOnly,
    LimitedAvailability,
    MadeToOrder,
    OnlineOnly,
    OutOfStock,
    PreOrder,
    PreSale,
    Reserved,
    SoldOut,
}

#pragma warning disable CA1720 // "short" and "long" are the trade's words for these, not types
/// <summary>How much of an engine is sold, least first; each holds all before it.</summary>
public enum AssemblyLevel
{
    NotStated,

    /// <summary>The block, or the casting, alone.</summary>
    Bare,

    /// <summary>With crankshaft, rods and pistons.</summary>
    Short,

    /// <summary>With head and valve gear.</summary>
    Long,

    /// <summary>With what is bolted on: manifolds, pumps, electrics.</summary>
    Complete,

    /// <summary>Complete, and heard running before it came out.</summary>
    HeardRunning,
}
#pragma warning restore CA1720
