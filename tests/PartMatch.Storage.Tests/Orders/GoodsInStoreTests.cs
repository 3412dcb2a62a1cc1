using PartMatch.Core.Catalogue;
using PartMatch.Core.Orders;
using PartMatch.Storage.Editing;
using PartMatch.Storage.Items;
using PartMatch.Storage.Orders;
using PartMatch.Storage.Tests.Books;
using Xunit;

namespace PartMatch.Storage.Tests.Orders;

/// <summary>An arrival that was measured: its item and what is told of its order are there together or not at all.</summary>
public sealed class GoodsInStoreTests : IDisposable
{
    private readonly TempBase _base = new();
    private readonly OrderStore _orders;
    private readonly GoodsInStore _goods;

    public GoodsInStoreTests()
    {
        _base.Load(SampleBook.Common().Files, SampleBook.Family().Files);
        var clock = new StoppedClock("2026-11-02T12:00:00Z");
        _orders = new OrderStore(_base.Database, clock);
        _goods = new GoodsInStore(_base.Database, _orders, clock);
        _orders.Add("cart", new OrderTerms(
            null, "2026-11-02", null, "EUR", "0.00", [new OrderLine("marl:S-100", "Main shaft", 1, "80.00", "0.00", IsNew: true)]), ChangeNote.None);
    }

    public void Dispose() => _base.Dispose();

    [Fact]
    public void Item_and_event_are_kept_and_the_event_is_made_of_the_item_as_it_was_read()
    {
        var told = Assert.IsType<GoodsInOutcome.Told>(Keep(read => Checked with { Note = read.Readings[0].Reading.Text }));

        Assert.Equal("24.985 mm", Assert.IsType<OrderOutcome.Done>(told.Outcome).Now.Events[^1].Did.Note);
        Assert.Equal("marl:S-100", Kept?.Part);
        Assert.Equal(2, _orders.Find("cart", 1)?.Version);
    }

    // The power is cut, or the program ends, between the two.
    [Fact]
    public void Crash_before_the_event_leaves_no_item()
    {
        Assert.Throws<TimeoutException>(() => Keep(_ => throw new TimeoutException()));

        Assert.Equal((null, 1), (Kept, _orders.Find("cart", 1)?.Version));
    }

    [Fact]
    public void Event_that_cannot_be_leaves_no_item()
    {
        var told = Assert.IsType<GoodsInOutcome.Told>(Keep(_ => Checked with { Pieces = 2 })); // one was ordered

        Assert.Equal("pieces", Assert.IsType<OrderOutcome.Faulty>(told.Outcome).Fault.Field);
        Assert.Null(Kept);
    }

    [Fact]
    public void Order_that_somebody_told_of_meanwhile_leaves_no_item()
    {
        Assert.IsType<OrderOutcome.Stale>(Assert.IsType<GoodsInOutcome.Told>(Keep(_ => Checked, seen: 7)).Outcome);

        Assert.Null(Kept);
    }

    [Fact]
    public void Readings_that_cannot_be_kept_tell_nothing_of_the_order()
    {
        Assert.IsType<EditOutcome.Faulty>(Assert.IsType<GoodsInOutcome.NotKept>(Keep(_ => Checked, feature: "colour-of-the-box")).Outcome);

        Assert.Equal((null, 1), (Kept, _orders.Find("cart", 1)?.Version));
    }

    private static OrderEvent Checked => new(OrderAct.Checked, "2026-11-02") { WithoutCheck = true, Item = "lark-2/it-0077" };

    private Item? Kept => new ItemStore(_base.Database).Find("lark-2", "it-0077");

    private GoodsInOutcome Keep(Func<Item, OrderEvent> make, int? seen = 1, string feature = "outer") => _goods.Keep(
        "cart", 1, seen, "lark-2",
        [
            new RowChange("items", null, null, new Dictionary<string, string> { ["item"] = "it-0077", ["part"] = "marl:S-100", ["origin"] = "arrival" }),
            new RowChange("readings", null, null, new Dictionary<string, string>
            {
                ["item"] = "it-0077", ["feature"] = feature, ["value"] = "24.985", ["unit"] = "mm", ["uncertainty"] = "0.004", ["readOn"] = "2026-11-02",
            }),
        ],
        "it-0077", make, ChangeNote.None, TestContext.Current.CancellationToken);
}
