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
            left join (
              select seller, sum(deliveries) as deliveries, sum(wrong) as wrong
              from (
                select seller, deliveries, wrong
                from seller_deliveries
                union all
                select seller, 1, max(other_part)
                from deliveries
                where seller is not null
                group by seller, build, since, order_number
              )
              group by seller
            ) d on d.seller = s.seller
            order by s.seller, s.book
            """).Select(SellerOf),
    ];

    private static Seller SellerOf(SellerRow row) => new(
        row.Book, row.Seller, row.Name, row.Country, row.Currency, MoneyOf(row.ShippingFixed, row.Currency), MoneyOf(row.ShippingPerItem, row.Currency),
        MoneyOf(row.FreeFrom, row.Currency), Readings.FindNumber(row.ImportCharge), Readings.FindWhole(row.DaysMin), Readings.FindWhole(row.DaysMax),
        Readings.FindWhole(row.ReturnsDays), Readings.FindNumber(row.Restocking), row.Note,
        row is { Deliveries: { } deliveries, Wrong: { } wrong }
            ? new DeliveryCount((int)Math.Min(deliveries, int.MaxValue), (int)Math.Min(wrong, int.MaxValue))
            : null);

    // The books' checks see to it that an amount has a currency.
    private static Money? MoneyOf(string? amount, string? currency) => amount is null || currency is null ? null : new Money(amount, currency);

    // Not positional: a sum has no type in an empty base.
    private sealed record SellerRow
    {
        public string Book { get; init; } = "";

        public string Seller { get; init; } = "";

        public string Name { get; init; } = "";

        public string? Country { get; init; }

        public string? Currency { get; init; }

        public string? ShippingFixed { get; init; }

        public string? ShippingPerItem { get; init; }

        public string? FreeFrom { get; init; }

        public string? ImportCharge { get; init; }

        public string? DaysMin { get; init; }

        public string? DaysMax { get; init; }

        public string? ReturnsDays { get; init; }

        public string? Restocking { get; init; }

        public string? Note { get; init; }

        public long? Deliveries { get; init; }

        public long? Wrong { get; init; }
    }
}
