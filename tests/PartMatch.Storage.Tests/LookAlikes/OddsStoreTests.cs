using Dapper;
using Microsoft.Data.Sqlite;
using PartMatch.Core.LookAlikes;
using PartMatch.Storage.Books;
using PartMatch.Storage.LookAlikes;
using PartMatch.Storage.Tests.Books;
using Xunit;

namespace PartMatch.Storage.Tests.LookAlikes;

public sealed class OddsStoreTests : IDisposable
{
    private readonly TempBase _temp = new();
    private readonly OddsStore _store;

    public OddsStoreTests()
    {
        _temp.Load(SampleBook.Common().Files, SampleBook.Family().Files);
        _store = new OddsStore(_temp.Database);
    }

    public void Dispose() => _temp.Dispose();

    [Fact]
    public void Nothing_counted_gives_none()
    {
        Execute("delete from offers");
        Assert.Same(Odds.None, _store.Get());
    }

    // The sample has one offer of each of two parts, and one of a number in no book.
    [Fact]
    public void Every_offer_of_a_part_counts_beside_those_that_were_only_counted()
    {
        Execute("insert into part_odds (part_key, offers) values ('marl:B12', 7)");
        Assert.Equal(new Dictionary<string, int> { ["marl:B-1/2"] = 8, ["marl:S-100"] = 1 }, _store.Get().OffersByPart);
    }

    // The sample's offer of B-1/2, seen a month later at another price: still one. Two of the later day: two. Another condition, seller's page or level: one more each.
    [Theory]
    [InlineData("'used', null, '2026-07-01', null", 1)]
    [InlineData("'used', null, '2026-06-01', null", 2)]
    [InlineData("'new', null, '2026-07-01', null", 2)]
    [InlineData("null, null, '2026-07-01', null", 2)]
    [InlineData("'used', 'bare', '2026-07-01', null", 2)]
    [InlineData("'used', null, '2026-07-01', 'page'", 2)]
    public void One_thing_for_sale_counts_once_however_often_it_was_seen(string condition, int offers)
    {
        Execute("update offers set listing = null where offer = 'of-0001'");
        Execute("insert into listings (book, listing, seen_on, address, text) select book, 'page', '2026-07-01', 'https://millrace.example/77', 'words' from offers where offer = 'of-0001'");
        Execute(
            $"""
            insert into offers (book, offer, seller, part, price, currency, part_key, seller_book, condition, level, seen_on, listing)
            select book, 'of-0009', seller, part, '79.00', currency, part_key, seller_book, {condition} from offers where offer = 'of-0001'
            """);
        Assert.Equal(offers, _store.Get().OffersByPart["marl:B-1/2"]);
    }

    // New words on the same page, a month later: the same listing.
    [Fact]
    public void Listing_that_was_rewritten_counts_once_by_its_address()
    {
        Execute("update listings set address = 'https://millrace.example/77'");
        Execute("insert into listings (book, listing, seen_on, address, text) select book, 'page', '2026-07-01', 'https://millrace.example/77', 'words' from offers where offer = 'of-0001'");
        Execute(
            """
            insert into offers (book, offer, seller, part, price, currency, part_key, seller_book, condition, seen_on, listing)
            select book, 'of-0009', seller, part, '79.00', currency, part_key, seller_book, condition, '2026-07-01', 'page' from offers where offer = 'of-0001'
            """);
        Assert.Equal(1, _store.Get().OffersByPart["marl:B-1/2"]);
    }

    [Fact]
    public void Counts_come_by_the_ids_of_the_parts_in_order()
    {
        Execute("delete from offers");
        Execute("insert into part_odds (part_key, offers) values ('marl:B12', 7), ('orrin:B77', 0)");
        Execute(
            """
            insert into mix_up_odds (asked_part_key, sent_part_key, deliveries, wrong)
            values ('orrin:B77', 'marl:B12', 4, 4), ('marl:B12', 'orrin:B77', 20, 3), ('marl:B12', 'marl:B13', 20, 0)
            """);
        var odds = _store.Get();
        Assert.Equal(new Dictionary<string, int> { ["marl:B-1/2"] = 7, ["orrin:B-77"] = 0 }, odds.OffersByPart);
        Assert.Equal(
            [new MixUpCount("marl:B-1/2", "marl:B-1/3", 20, 0), new MixUpCount("marl:B-1/2", "orrin:B-77", 20, 3), new MixUpCount("orrin:B-77", "marl:B-1/2", 4, 4)],
            odds.MixUps);
    }

    [Fact]
    public void Counts_are_kept_until_the_base_changes()
    {
        Execute("delete from offers");
        Execute("insert into part_odds (part_key, offers) values ('marl:B12', 7)");
        var before = _store.Get();
        Assert.Same(before, _store.Get());
        Execute("update part_odds set offers = 8");
        Assert.Equal(8, _store.Get().OffersByPart["marl:B-1/2"]);
        Assert.Equal(7, before.OffersByPart["marl:B-1/2"]);
    }

    [Fact]
    public void Count_outlives_its_part_and_holds_no_book_back()
    {
        Execute("delete from offers");
        Execute("insert into part_odds (part_key, offers) values ('marl:X9', 7)");
        Execute("insert into mix_up_odds (asked_part_key, sent_part_key, deliveries, wrong) values ('marl:B12', 'marl:X9', 5, 1)");
        Assert.Empty(_store.Get().OffersByPart);
        Assert.Empty(_store.Get().MixUps);

        var with = SampleBook.Family().Add("parts.csv", "marl:X-9,bush,Third bush,,");
        _temp.Load(with.Files);
        Assert.Equal(7, _store.Get().OffersByPart["marl:X-9"]);
        Assert.Equal(new MixUpCount("marl:B-1/2", "marl:X-9", 5, 1), Assert.Single(_store.Get().MixUps));

        Assert.IsType<ImportOutcome.Imported>(_temp.Import(SampleBook.Family().Files, ImportMode.Replace));
        Assert.False(_store.Get().OffersByPart.ContainsKey("marl:X-9"));
    }

    [Theory]
    [InlineData("insert into part_odds (part_key, offers) values ('marl:B12', -1)")]
    [InlineData("insert into part_odds (part_key, offers) values ('marl:B12', 2147483648)")]
    [InlineData("insert into mix_up_odds (asked_part_key, sent_part_key, deliveries, wrong) values ('marl:B12', 'marl:B12', 5, 1)")]
    [InlineData("insert into mix_up_odds (asked_part_key, sent_part_key, deliveries, wrong) values ('marl:B12', 'marl:B13', 5, 6)")]
    [InlineData("insert into mix_up_odds (asked_part_key, sent_part_key, deliveries, wrong) values ('marl:B12', 'marl:B13', 5, -1)")]
    public void Count_that_cannot_be_is_refused(string sql)
    {
        var refused = Assert.Throws<SqliteException>(() => Execute(sql));
        Assert.Contains("CHECK constraint failed", refused.Message, StringComparison.Ordinal);
    }

    private void Execute(string sql)
    {
        using var connection = _temp.Database.Connect();
        connection.Execute(sql);
    }
}
