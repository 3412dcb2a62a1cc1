using PartMatch.Core.Buying;
using PartMatch.Core.Listings;
using Xunit;
using static PartMatch.Core.Tests.Buying.Shop;

namespace PartMatch.Core.Tests.Buying;

public sealed class OfferSearchTests
{
    private static readonly BuyingFacts _facts = new(
        [
            Pump, Pump with { Code = "of-0002", SeenOn = new DateOnly(2026, 6, 20), Price = Euros("70.00") },
            Pump with { Code = "of-0003", Part = null, PartName = null, Kind = null, NumberAsWritten = "12 34", SeenOn = new DateOnly(2026, 5, 1) },
            Pump with { Code = "of-0004", Part = null, PartName = null, Kind = null, NumberAsWritten = "A-1", Condition = ItemCondition.New },
        ],
        [Abel]);

    [Theory]
    [InlineData(30, false, "seen 30 days before 2026-07-01")]
    [InlineData(31, true, "old: seen 31 days before 2026-07-02, more than 30 days; ask whether it still stands")]
    [InlineData(0, false, "seen on 2026-06-01")]
    [InlineData(1, false, "seen 1 day before 2026-06-02")]
    [InlineData(-2, false, "seen 2 days after 2026-05-30")]
    public void Age_is_counted_to_the_day_of_the_question(int days, bool isOld, string text)
    {
        var age = OfferAge.Of(new DateOnly(2026, 6, 1), new DateOnly(2026, 6, 1).AddDays(days), 30);
        Assert.Equal((days, isOld, text), (age.Days, age.Old, age.Text));
    }

    [Fact]
    public void Offers_come_by_number_then_the_latest_first() =>
        Assert.Equal(["of-0002", "of-0001", "of-0003", "of-0004"], Ask(Question()).Offers.Select(offer => offer.Offer));

    [Fact]
    public void Part_finds_the_offers_from_before_it_was_recorded() =>
        Assert.Equal(["of-0002", "of-0001", "of-0003"], Ask(Question() with { Part = "ardlow:12/34", NumberKey = "1234" }).Offers.Select(offer => offer.Offer));

    [Fact]
    public void Number_in_no_book_finds_the_offers_of_that_number() =>
        Assert.Equal(["of-0004"], Ask(Question() with { NumberKey = "A1" }).Offers.Select(offer => offer.Offer));

    [Fact]
    public void Filters_are_taken_together()
    {
        Assert.Equal(["of-0002"], Ask(Question() with { Currency = "EUR" }).Offers.Select(offer => offer.Offer));
        Assert.Equal(["of-0004"], Ask(Question() with { Condition = ItemCondition.New, Seller = "abel" }).Offers.Select(offer => offer.Offer));
        Assert.Empty(Ask(Question() with { Condition = ItemCondition.New, Currency = "EUR" }).Offers);
    }

    [Fact]
    public void Pages_hold_every_offer_once()
    {
        var first = Ask(Question() with { Limit = 3 });
        var second = Ask(Question() with { Limit = 3, Cursor = first.Cursor });
        Assert.Equal((4, 3), (first.Total, first.Offers.Count));
        Assert.Equal(["of-0004"], second.Offers.Select(offer => offer.Offer));
        Assert.Null(second.Cursor);
        Assert.False(OfferSearch.IsCursor("nonsense"));
    }

    // On 2 July: 1 June is 31 days ago, 1 May 62.
    [Fact]
    public void Old_offers_are_counted_over_all_pages() => Assert.Equal(3, Ask(Question() with { On = new DateOnly(2026, 7, 2), Limit = 1 }).Old);

    [Fact]
    public void Terms_that_the_offer_leaves_out_are_the_sellers()
    {
        var shown = Ask(Question()).Offers[0];
        Assert.Equal((3L, 6L, 14L, 15m), (shown.DaysMin, shown.DaysMax, shown.Returns.Days, shown.Returns.RestockingPercent));
    }

    // However the number and the price are written; another price is another offer.
    [Fact]
    public void Code_of_an_offer_is_made_of_what_identifies_it()
    {
        var seen = new OfferSeen("abel", null, "1234", ItemCondition.Used, Pounds("84"), new DateOnly(2026, 6, 1), null);
        Assert.Matches("^of-20260601-[0-9a-f]{10}$", seen.Code);
        Assert.Equal(seen.Code, (seen with { Part = "ardlow:12/34", Price = Pounds("84.00") }).Code);
        Assert.NotEqual(seen.Code, (seen with { Price = Pounds("84.01") }).Code);
        Assert.NotEqual(seen.Code, (seen with { Listing = "0" }).Code);
    }

    private static OfferQuestion Question() => new(new DateOnly(2026, 6, 30), 30, 1);

    private static OfferPage Ask(OfferQuestion question) => OfferSearch.Decide(_facts, null, question);
}
