using PartMatch.Core.Buying;
using PartMatch.Core.Listings;
using PartMatch.Core.Measures;
using PartMatch.Storage.Offers;
using PartMatch.Storage.Tests.Books;
using PartMatch.Storage.Tests.Editing;
using PartMatch.Storage.Tests.Keeping;
using Xunit;

namespace PartMatch.Storage.Tests.Offers;

/// <summary>Offers as the sample book holds them, and what a store makes of new ones.</summary>
public sealed class OfferStoreTests : IDisposable
{
    private readonly EditBase _base = new();
    private readonly OfferStore _offers;
    private readonly OfferEntry _entry;

    public OfferStoreTests()
    {
        _offers = new OfferStore(_base.Base.Database);
        _entry = new OfferEntry(_base.Base.Database, _offers, _base.Edits);
    }

    public void Dispose() => _base.Dispose();

    [Fact]
    public void Offer_is_read_with_everything_that_its_row_says()
    {
        var offer = _offers.Facts().Offers[0];

        Assert.Equal(("lark-2", "of-0001", "lark-2", "millrace", "marl:B-1/2", "Front bush", "bush", "B 1.2"),
            (offer.Book, offer.Code, offer.SellerBook, offer.Seller, offer.Part, offer.PartName, offer.Kind, offer.NumberAsWritten));
        Assert.Equal("B12", offer.NumberKey);
        Assert.Equal((new Money("84.00", "GBP"), 2, 4), (offer.Price, offer.Pack, offer.Stock));
        Assert.Equal(new Money("42.00", "GBP"), offer.UnitPrice);
        Assert.Equal((ItemCondition.Used, AssemblyLevel.NotStated, new Money("20.00", "GBP")), (offer.Condition, offer.Level, offer.CoreDeposit));
        Assert.Equal((new DateOnly(2026, 6, 1), 3L, 6L), (offer.SeenOn, offer.DaysMin, offer.DaysMax));
        Assert.Equal(new OfferReturns(Returnable.Yes, 30, 10m, FreightBack.Buyer, "the old bush"), offer.Returns);
    }

    [Fact]
    public void What_is_not_recorded_of_an_offer_is_absent_and_never_nothing()
    {
        var offer = _offers.Facts().Offers[2];

        Assert.Equal(("of-0003", "QZ-77", "QZ77"), (offer.Code, offer.NumberAsWritten, offer.NumberKey));
        Assert.Null(offer.Part);
        Assert.Null(offer.Pack);
        Assert.Null(offer.UnitPrice);
        Assert.Null(offer.Shipping);
        Assert.Equal(ItemCondition.NotStated, offer.Condition);
        Assert.Equal(new OfferReturns(Returnable.NotStated, null, null, FreightBack.NotStated, null), offer.Returns);
    }

    // The columns from core_part on were added to the format; a file without them is whole.
    [Fact]
    public void File_without_the_columns_that_came_later_comes_in()
    {
        var book = SampleBook.Family().Write("offers.csv", """
            offer,seller,part,number_as_written,price,currency,pack,stock,condition,level,core_deposit,seen_on,days_min,days_max,shipping,note
            of-0001,millrace,marl:S-100,S 100,84.00,GBP,1,2,used,,,2026-06-01,,,,

            """);
        _base.Base.Load(book.Files);
        Assert.Equal("of-0001", Assert.Single(_offers.Facts().Offers).Code);
    }

    [Fact]
    public void Seller_is_read_with_the_terms_and_what_was_counted()
    {
        Assert.Null(Assert.Single(_offers.Facts().Sellers).Deliveries);
        KeptBase.Execute(_base.Base.Path, "insert into seller_deliveries (seller, deliveries, wrong) values ('millrace', 12, 1)");

        var seller = Assert.Single(_offers.Facts().Sellers);
        Assert.Equal(("lark-2", "millrace", new Money("9.50", "GBP"), new Money("1.20", "GBP"), new Money("120.00", "GBP"), 4.5m),
            (seller.Book, seller.Code, seller.ShippingFixed, seller.ShippingPerItem, seller.FreeFrom, seller.ImportChargePercent));
        Assert.Equal(new DeliveryCount(12, 1), seller.Deliveries);
    }

    [Fact]
    public void Offer_its_words_and_its_seller_are_one_change_that_can_be_taken_back()
    {
        var before = _base.Everything();
        var done = Done(Store([Draft("abel", "9.50", ("part", "orrin:B-77"))], Listing("Bush B-77, new"), EditBase.Cells("seller=abel", "name=Abel",
            "currency=EUR")));

        var taken = Assert.Single(done.Offers);
        Assert.Equal(("lark-2", true, null), (taken.Book, taken.IsNew, taken.Earlier));
        Assert.Equal(taken.Code, Assert.Single(_offers.Facts().Offers, offer => offer.Seller == "abel").Code);
        Assert.Equal("Bush B-77, new", _offers.FindListing("lark-2", ListingText.DigestOf("Bush B-77, new"))?.Text);
        Assert.Equal(["listings", "offers", "sellers"], _base.Told(done.Change!.Value).Rows.Select(row => row.Table).Order(StringComparer.Ordinal)); // stored

        _base.Undo(done.Change.Value);
        Assert.Equal(before, _base.Everything());
    }

    [Fact]
    public void Same_listing_read_twice_stores_one_offer()
    {
        var first = Done(Store([Draft("millrace", "9.50", ("numberAsWritten", "B-77"))], Listing("B-77, 9.50")));
        var second = Done(Store([Draft("millrace", "9.5", ("numberAsWritten", "b 77"), ("seenOn", "2026-07-09"))], Listing("B-77, 9.50")));

        Assert.Null(second.Change);
        Assert.Equal(new OfferTaken("lark-2", first.Offers[0].Code, IsNew: false, null), Assert.Single(second.Offers));
        Assert.Equal(4, _offers.Facts().Offers.Count);
    }

    [Theory]
    [InlineData("9.60", "B-77", "used", "B-77, 9.50")] // another price
    [InlineData("9.50", "B-78", "used", "B-77, 9.50")] // another number
    [InlineData("9.50", "B-77", "new", "B-77, 9.50")] // another condition
    [InlineData("9.50", "B-77", "used", "B-77, 9.50 now")] // other words
    public void Anything_that_matters_makes_another_offer(string price, string number, string condition, string words)
    {
        Done(Store([Draft("millrace", "9.50", ("numberAsWritten", "B-77"), ("condition", "used"))], Listing("B-77, 9.50")));
        Done(Store([Draft("millrace", price, ("numberAsWritten", number), ("condition", condition))], Listing(words)));
        Assert.Equal(5, _offers.Facts().Offers.Count);
    }

    [Fact]
    public void New_price_on_a_later_day_tells_what_the_same_seller_asked_before()
    {
        Done(Store([Draft("millrace", "9.50", ("numberAsWritten", "B-77"))]));
        var later = Done(Store([Draft("millrace", "11.00", ("numberAsWritten", "B-77"), ("seenOn", "2026-08-01"))]));
        Assert.Equal("the same seller had it for 9.50 GBP on 2026-07-01", Assert.Single(later.Offers).Earlier?.Text);
    }

    [Fact]
    public void Price_list_of_the_same_day_is_recognised_row_by_row_and_that_of_a_later_day_is_news()
    {
        OfferDraft[] rows = [Draft("millrace", "9.50", ("numberAsWritten", "A-1")), Draft("millrace", "9.50", ("numberAsWritten", "A-2")), Draft("millrace",
            "9.50", ("numberAsWritten", "A 1"))];
        Assert.Equal([true, true, false], Done(Store(rows)).Offers.Select(offer => offer.IsNew)); // a row twice in one list
        Assert.All(Done(Store(rows)).Offers, offer => Assert.False(offer.IsNew));
        Assert.True(Done(Store([Draft("millrace", "9.50", ("numberAsWritten", "A-1"), ("seenOn", "2026-07-02"))])).Offers[0].IsNew);
    }

    [Fact]
    public void One_faulty_row_keeps_all_out_and_is_told_by_its_index()
    {
        var faulty = Assert.IsType<OfferOutcome.Faulty>(Store(
            [Draft("millrace", "9.50", ("numberAsWritten", "A-1")), Draft("millrace", "9.505", ("numberAsWritten", "A-2"))], Listing("two"),
                EditBase.Cells("seller=abel", "name=Abel")));

        Assert.Equal((1, "price"), Assert.Single(faulty.Faults.Select(fault => (fault.Row, fault.Column))));
        Assert.Equal(3, _offers.Facts().Offers.Count);
        Assert.Single(_offers.Facts().Sellers);
    }

    [Fact]
    public void Dry_run_judges_and_stores_nothing()
    {
        var before = _base.Everything();
        var done = Done(Store([Draft("millrace", "9.50", ("numberAsWritten", "A-1"))], Listing("A-1"), isDryRun: true));
        Assert.Null(done.Change);
        Assert.Equal(before, _base.Everything());
    }

    [Fact]
    public void Seller_of_a_book_that_offers_name_cannot_be_removed()
    {
        var inUse = Assert.IsType<Storage.Editing.EditOutcome.InUse>(_base.Apply(EditBase.Remove("sellers", "millrace")));
        Assert.Contains(inUse.Users, user => user is { File: "offers.csv", Key: "of-0001" });
    }

    private OfferOutcome Store(
        IReadOnlyList<OfferDraft> drafts, ListingDraft? listing = null, IReadOnlyDictionary<string, string>? seller = null, bool isDryRun = false) =>
        _entry.Store(EditBase.Book, drafts, listing, seller, Storage.Editing.ChangeNote.None, isDryRun, TestContext.Current.CancellationToken);

    private static OfferOutcome.Done Done(OfferOutcome outcome)
    {
        Assert.True(outcome is OfferOutcome.Done, outcome is OfferOutcome.Faulty faulty ? string.Join('\n', faulty.Faults) : outcome.ToString());
        return (OfferOutcome.Done)outcome;
    }

    private static ListingDraft Listing(string text) => new(ListingText.Keep(text), null, null);

    /// <summary>In pounds, seen on 1 July 2026 unless a cell says otherwise.</summary>
    private static OfferDraft Draft(string seller, string price, params IEnumerable<(string Column, string Cell)> cells)
    {
        var all = new Dictionary<string, string> { ["seller"] = seller, ["price"] = price, ["currency"] = "GBP", ["seenOn"] = "2026-07-01" };
        foreach (var (column, cell) in cells)
        {
            all[column] = cell;
        }

        return new OfferDraft(all);
    }
}
