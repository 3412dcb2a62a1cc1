using System.Globalization;
using PartMatch.Core.Measures;

namespace PartMatch.Core.Buying;

/// <summary>What so many pieces of an offer cost at the door. What is not known is never counted as nothing.</summary>
/// <param name="Pieces">As asked.</param>
/// <param name="Packs">How many times the price is paid; absent where it is not known how many pieces it is for.</param>
/// <param name="Surplus">Pieces that come beyond those asked for; absent where it is not known.</param>
/// <param name="Goods">Price times packs.</param>
/// <param name="Total">Goods, sending and import charge; absent unless all three are known. The core deposit is no part of it.</param>
/// <param name="AtLeast">What is known of the total where not all of it is.</param>
/// <param name="CoreDeposit">Paid besides, and paid back for the old parts.</param>
/// <param name="NotKnown">What keeps the total from being known.</param>
/// <param name="ShortBy">Packs that the seller lacks, of those that the pieces need; absent where the stock suffices or is not known.</param>
public sealed record LandedPrice(
    int Pieces, int? Packs, int? Surplus, Money? Goods, Sending Sending, ImportCharge Import, Money? Total, Money? AtLeast, Money? CoreDeposit,
    IReadOnlyList<string> NotKnown, int? ShortBy, string Text)
{
    /// <param name="pieces">1 to <see cref="OfferBounds.MostPieces"/>.</param>
    /// <param name="home">Country of the door; null where it is not known.</param>
    public static LandedPrice Of(Offer offer, Seller seller, int pieces, string? home = null)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(pieces, 1);

        // Whatever a pack holds, one of it is one piece at least.
        int? packs = offer.Pack is { } pack ? (pieces + pack - 1) / pack : pieces == 1 ? 1 : null;
        var bought = packs * offer.Pack;
        Amount? goods = packs is { } times ? Amount.Of(offer.Price).Times(times) : null;
        var sending = Sending.Of(offer, seller, bought, goods);
        var import = ImportCharge.Of(seller, goods, home);
        string[] notKnown =
        [
            .. packs is null ? ["how many pieces the price is for"] : Array.Empty<string>(),
            .. sending.Cost is null ? ["sending"] : Array.Empty<string>(),
            .. import.Cost is null ? ["import charge"] : Array.Empty<string>(),
        ];
        Amount? known = goods is { } paid ? Sum(paid, sending.Cost ?? sending.AtLeast, import.Cost) : null;
        Amount? deposit = packs is { } deposits && offer.CoreDeposit is { } each ? Amount.Of(each).Times(deposits) : null;
        return new LandedPrice(
            pieces, packs, bought - pieces, goods?.ToMoney(), sending, import, notKnown is [] ? known?.ToMoney() : null,
            notKnown is [] ? null : known?.ToMoney(), deposit?.ToMoney(), notKnown, offer.Stock < (packs ?? 1) ? (packs ?? 1) - offer.Stock : null,
            Say(goods, sending, import, known, notKnown, deposit));
    }

    private static Amount Sum(Amount goods, params IEnumerable<Money?> others) =>
        others.OfType<Money>().Aggregate(goods, (sum, money) => sum + Amount.Of(money));

    private static string Say(Amount? goods, Sending sending, ImportCharge import, Amount? known, string[] notKnown, Amount? deposit)
    {
        var sum = goods is null
            ? $"not known: {notKnown[0]}"
            : $"{goods} + {sending.Text} + {import.Text} = {(notKnown is [] ? "" : "at least ")}{known}";
        return deposit?.Minor > 0 ? $"{sum}; besides {deposit} deposit, paid back for the old part" : sum;
    }
}

/// <summary>What sending costs, and who says so.</summary>
/// <param name="Cost">Absent where it is not known.</param>
/// <param name="AtLeast">What is known of it where not all is.</param>
public sealed record Sending(SendingTerms From, Money? Cost, Money? AtLeast, string Text)
{
    /// <param name="pieces">In the parcel; null where it is not known.</param>
    internal static Sending Of(Offer offer, Seller seller, int? pieces, Amount? goods)
    {
        if (offer.Shipping is { } own)
        {
            return new Sending(SendingTerms.Offer, own, null, $"{Amount.Of(own)} sending");
        }

        if (seller.Currency is { } currency && currency != offer.Price.Currency)
        {
            return NotKnown($"sending not known (the seller's usual is in {currency}, the price in {offer.Price.Currency})");
        }

        if (seller.FreeFrom is { } from && goods is { } value && value.Minor >= Amount.Of(from).Minor)
        {
            return new Sending(SendingTerms.FreeAbove, new Amount(0, value.Currency).ToMoney(), null, $"nothing for sending from {Amount.Of(from)} on");
        }

        if (seller is { ShippingFixed: { } parcel, ShippingPerItem: { } each } && (pieces is not null || Amount.Of(each).Minor == 0))
        {
            var cost = Amount.Of(parcel) + Amount.Of(each).Times(pieces ?? 0);
            return new Sending(SendingTerms.SellersUsual, cost.ToMoney(), null, $"{cost} sending");
        }

        return seller.ShippingFixed is { } least
            ? new Sending(SendingTerms.NotKnown, null, least, $"sending of at least {Amount.Of(least)} (what a piece adds is not known)")
            : NotKnown("sending not known");
    }

    private static Sending NotKnown(string text) => new(SendingTerms.NotKnown, null, null, text);
}

/// <summary>Whose terms of sending hold.</summary>
public enum SendingTerms
{
    /// <summary>The offer says what it costs.</summary>
    Offer,

    /// <summary>The offer says nothing, the seller's usual terms hold.</summary>
    SellersUsual,

    /// <summary>The goods are worth so much that the seller sends them free.</summary>
    FreeAbove,
    NotKnown,
}

/// <summary>What is added at a border.</summary>
/// <param name="Percent">Of the goods; absent where it is not known.</param>
/// <param name="Missing">What would have to be recorded; absent where it is known.</param>
public sealed record ImportCharge(decimal? Percent, Money? Cost, string Text, string? Missing)
{
    internal static ImportCharge Of(Seller seller, Amount? goods, string? home)
    {
        if (seller.ImportChargePercent is not { } percent)
        {
            // Two countries may still have no border for goods between them: that is for the seller's row to say.
            return home is not null && seller.Country == home
                ? new ImportCharge(0, goods is { } value ? new Amount(0, value.Currency).ToMoney() : null,
                    $"no import charge (the seller is in {home} as well)", null)
                : new ImportCharge(null, null, "import charge not known", MissingOf(seller.Country, home));
        }

        var cost = goods?.Percent(percent);
        return new ImportCharge(
            percent, cost?.ToMoney(), string.Create(CultureInfo.InvariantCulture, $"{cost} import charge ({percent} %)").TrimStart(), null);
    }

    private static string MissingOf(string? country, string? home) => "the import charge in the seller's row" + (country, home) switch
    {
        (null, null) => "; or the seller's country there and your own in the setting PartMatch:Country, in case they are one",
        (null, { } own) => $"; or the seller's country there, in case it is {own} as well",
        ({ } theirs, null) => $"; or your own country in the setting PartMatch:Country, in case it is {theirs} as well",
        ({ } theirs, { } own) => $", for goods from {theirs} to {own}",
    };
}
