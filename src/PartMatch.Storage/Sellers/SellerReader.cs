using Dapper;
using Microsoft.Data.Sqlite;
using PartMatch.Core.Buying;
using PartMatch.Core.Measures;
using PartMatch.Storage.Catalogue;

namespace PartMatch.Storage.Sellers;

/// <summary>Who sells, as the books say it, with what was counted of what they sent.</summary>
internal static class SellerReader
{
    /// <summary>Every seller of the base, in ordinal order of code, then book.</summary>
    public static IReadOnlyList<Seller> Read(SqliteConnection connection) =>
    [
        .. connection.Query<SellerRow>(
            """
            select s.book, s.seller, s.name, s.country, s.currency, s.shipping_fixed, s.shipping_per_item, s.free_from, s.import_charge, s.days_min, s.days_max,
              s.returns_days, s.restocking, s.note, d.deliveries, d.wrong
            from sellers s
            left join seller_deliveries d on d.seller = s.seller
            order by s.seller, s.book
            """).Select(SellerOf),
    ];

    private static Seller SellerOf(SellerRow row) => new(
        row.Book, row.Seller, row.Name, row.Country, row.Currency, MoneyOf(row.ShippingFixed, row.Currency), MoneyOf(row.ShippingPerItem, row.Currency),
        MoneyOf(row.FreeFrom, row.Currency), Readings.FindNumber(row.ImportCharge), Readings.FindWhole(row.DaysMin), Readings.FindWhole(row.DaysMax),
        Readings.FindWhole(row.ReturnsDays), Readings.FindNumber(row.Restocking), row.Note,
        row is { Deliveries: { } deliveries, Wrong: { } wrong } ? new DeliveryCount((int)deliveries, (int)wrong)
            : null); // the table holds no count too large for an int

    // The books' checks see to it that an amount has a currency.
    private static Money? MoneyOf(string? amount, string? currency) => amount is null || currency is null ? null : new Money(amount, currency);

    private sealed record SellerRow(
        string Book, string Seller, string Name, string? Country, string? Currency, string? ShippingFixed, string? ShippingPerItem, string? FreeFrom,
        string? ImportCharge, string? DaysMin, string? DaysMax, string? ReturnsDays, string? Restocking, string? Note, long? Deliveries, long? Wrong);
}
