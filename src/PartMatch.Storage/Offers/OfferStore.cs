using System.Globalization;
using Dapper;
using Microsoft.Data.Sqlite;
using PartMatch.Core.Buying;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Listings;
using PartMatch.Core.Measures;
using PartMatch.Storage.Catalogue;
using PartMatch.Storage.Sellers;

namespace PartMatch.Storage.Offers;

/// <summary>Everything for sale that the books hold, and who sells it.</summary>
public sealed class OfferStore(Database database)
{
    private readonly Snapshot<BuyingFacts> _facts = new(database);

    /// <summary>Offers and sellers of every book. The same instance until the base changes.</summary>
    public BuyingFacts Facts() => _facts.Find("", Read) ?? throw new InvalidOperationException("The list of offers is never absent.");

    /// <summary>The words that are kept of an offer, or null.</summary>
    public KeptListing? FindListing(string book, string listing)
    {
        using var connection = database.Connect();
        return connection.QuerySingleOrDefault<ListingRow>(
            "select listing, seen_on, title, address, text from listings where book = @book and listing = @listing", new { book, listing }) is { } row
            ? new KeptListing(row.Listing, DayOf(row.SeenOn), row.Title, row.Address, row.Text)
            : null;
    }

    private static BuyingFacts Read(SqliteConnection connection) => new(
        [
            .. connection.Query<OfferRow>(
                """
                select o.book, o.offer, o.seller_book, o.seller, p.part, p.name, p.kind, o.number_as_written, o.price, o.currency, o.pack, o.stock, o.condition, o.level,
                  o.core_deposit, o.seen_on, o.days_min, o.days_max, o.shipping, o.note, o.returnable, o.returns_days, o.restocking, o.freight_back, o.core_part, o.listing
                from offers o
                left join parts p on p.part_key = o.part_key
                order by o.book, o.offer
                """).Select(OfferOf),
        ],
        SellerReader.Read(connection));

    private static Offer OfferOf(OfferRow row) => new(
        row.Book, row.Offer, row.SellerBook, row.Seller, row.Part, row.Name, row.Kind, row.NumberAsWritten, new Money(row.Price, row.Currency),
        (int?)Readings.FindWhole(row.Pack), (int?)Readings.FindWhole(row.Stock), Stated<ItemCondition>(row.Condition), Stated<AssemblyLevel>(row.Level),
        MoneyOf(row.CoreDeposit, row.Currency), DayOf(row.SeenOn), Readings.FindWhole(row.DaysMin), Readings.FindWhole(row.DaysMax), MoneyOf(row.Shipping,
            row.Currency), row.Note,
        new OfferReturns(
            Stated<Returnable>(row.Returnable), Readings.FindWhole(row.ReturnsDays), Readings.FindNumber(row.Restocking),
                Stated<FreightBack>(row.FreightBack), row.CorePart),
        row.Listing);

    // The first of each of these vocabularies is "not stated".
    private static T Stated<T>(string? code)
        where T : struct, Enum => code is null ? default : Codes.Get<T>(code);

    private static Money? MoneyOf(string? amount, string currency) => amount is null ? null : new Money(amount, currency);

    private static DateOnly DayOf(string day) => DateOnly.ParseExact(day, "yyyy-MM-dd", CultureInfo.InvariantCulture);

    private sealed record OfferRow(
        string Book, string Offer, string SellerBook, string Seller, string? Part, string? Name, string? Kind, string? NumberAsWritten, string Price,
            string Currency,
        string? Pack, string? Stock, string? Condition, string? Level, string? CoreDeposit, string SeenOn, string? DaysMin, string? DaysMax, string? Shipping,
        string? Note, string? Returnable, string? ReturnsDays, string? Restocking, string? FreightBack, string? CorePart, string? Listing);

    private sealed record ListingRow(string Listing, string SeenOn, string? Title, string? Address, string Text);
}
