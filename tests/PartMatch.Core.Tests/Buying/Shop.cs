using PartMatch.Core.Buying;
using PartMatch.Core.Listings;
using PartMatch.Core.Measures;

namespace PartMatch.Core.Tests.Buying;

/// <summary>An invented seller and an offer of hers, to be changed by each test.</summary>
internal static class Shop
{
    /// <summary>9.50 a parcel, 1.20 a piece, free from 120.00, 4.5 % at the border.</summary>
    public static Seller Abel { get; } = new(
        "shop", "abel", "Abel", "GB", "GBP", Pounds("9.50"), Pounds("1.20"), Pounds("120.00"), 4.5m, 3, 6, 14, 15m, null, null);

    /// <summary>84.00 for one piece, seen on 1 June 2026.</summary>
    public static Offer Pump { get; } = new(
        "duo-2", "of-0001", "shop", "abel", "ardlow:12/34", "Coolant pump", "pump", "12-34", Pounds("84.00"), 1, null, ItemCondition.Used,
            AssemblyLevel.NotStated, null,
        new DateOnly(2026, 6, 1), null, null, null, null, NoTerms, null);

    public static OfferReturns NoTerms => new(Returnable.NotStated, null, null, FreightBack.NotStated, null);

    public static Money Pounds(string amount) => new(amount, "GBP");

    public static Money Euros(string amount) => new(amount, "EUR");
}
