using Dapper;
using PartMatch.Core.LookAlikes;
using PartMatch.Core.Orders;
using PartMatch.Storage.Builds;
using PartMatch.Storage.Editing;
using PartMatch.Storage.Keeping;
using PartMatch.Storage.LookAlikes;
using PartMatch.Storage.Offers;
using PartMatch.Storage.Orders;
using PartMatch.Storage.Tests.Books;
using PartMatch.Storage.Tests.Builds;
using Xunit;

namespace PartMatch.Storage.Tests.Orders;

public sealed class OrderStoreTests : IDisposable
{
    private const string Noon = "2026-11-02T12:00:00Z";

    private static readonly ChangeNote _ada = new("Ada", "needed");

    private readonly TempBase _base = new();
    private readonly OrderStore _orders;

    public OrderStoreTests()
    {
        _base.Load(SampleBook.Common().Files, SampleBook.Family().Files);
        _orders = new OrderStore(_base.Database, new StoppedClock(Noon));
    }

    public void Dispose() => _base.Dispose();

    [Fact]
    public void Orders_of_a_build_are_numbered_from_one_and_found_as_they_were_made()
    {
        var first = Assert.IsType<OrderOutcome.Done>(_orders.Add("cart", Terms(), _ada)).Now;
        Assert.Equal(2, Assert.IsType<OrderOutcome.Done>(_orders.Add("cart", Terms(), _ada)).Now.Number);
        Assert.Equal(1, Assert.IsType<OrderOutcome.Done>(_orders.Add("sidecar", Terms(), _ada)).Now.Number);

        var found = _orders.Find("cart", 1)!; // just made
        Assert.Equal((1, 1, "Ada", "needed"), (found.Number, found.Version, found.Events[0].Who, found.Events[0].Why));
        Assert.Equal(first.Money, found.Money);
        Assert.Equal([1, 2], _orders.List("cart").Select(order => order.Number));
        Assert.Null(_orders.Find("cart", 3));
    }

    [Fact]
    public void Order_of_who_saw_fewer_orders_stores_nothing_and_tells_the_others()
    {
        Assert.IsType<OrderOutcome.Done>(_orders.Add("cart", Terms(), _ada, seen: 0));
        Assert.IsType<OrderOutcome.Done>(_orders.Add("cart", Terms(), _ada, seen: 1));

        Assert.Equal([2], Assert.IsType<OrderOutcome.Overtaken>(_orders.Add("cart", Terms(), _ada, seen: 1)).Since.Select(order => order.Number));
        Assert.Empty(Assert.IsType<OrderOutcome.Overtaken>(_orders.Add("cart", Terms(), _ada, seen: 3)).Since);
        Assert.Equal(2, _orders.List("cart").Count);
    }

    [Fact]
    public void Event_of_another_version_is_stale_and_what_cannot_be_stores_nothing()
    {
        _orders.Add("cart", Terms(), _ada);
        _orders.Append("cart", 1, 1, Did(OrderAct.Arrived), _ada);

        Assert.Equal(2, Assert.IsType<OrderOutcome.Stale>(_orders.Append("cart", 1, 1, Did(OrderAct.Paid), _ada)).Present.Version);
        Assert.Equal("act", Assert.IsType<OrderOutcome.Faulty>(_orders.Append("cart", 1, 2, Did(OrderAct.Arrived), _ada)).Fault.Field);
        Assert.IsType<OrderOutcome.Absent>(_orders.Append("cart", 2, null, Did(OrderAct.Paid), _ada));
        Assert.Equal(2, _orders.Find("cart", 1)?.Version);
    }

    // S-100 is another part of the sample; one of two deliveries of B-1/2 held it.
    [Fact]
    public void What_came_instead_is_counted_for_the_pair_and_the_seller_and_forgotten_when_withdrawn()
    {
        _orders.Add("cart", Terms(), _ada);
        _orders.Add("cart", Terms(), _ada);
        _orders.Append("cart", 1, null, Did(OrderAct.Checked), _ada);
        var before = Wrong();
        _orders.Append("cart", 2, null, Did(OrderAct.Wrong) with { Fault = ArrivalFault.OtherPart, Sent = "marl:S-100" }, _ada);

        Assert.Equal(new MixUpCount("marl:B-1/2", "marl:S-100", 2, 1), Assert.Single(new OddsStore(_base.Database).Get().MixUps));
        Assert.Equal((before.Deliveries + 1, before.Wrong + 1), Wrong()); // the first was counted already

        _orders.Append("cart", 2, null, Did(OrderAct.Withdrawn) with { Withdraws = 2 }, _ada);
        Assert.Empty(new OddsStore(_base.Database).Get().MixUps);
        Assert.Equal(before, Wrong());
    }

    [Fact]
    public void Damaged_goods_are_no_other_part()
    {
        _orders.Add("cart", Terms(), _ada);
        _orders.Append("cart", 1, null, Did(OrderAct.Wrong) with { Fault = ArrivalFault.Damaged }, _ada);

        Assert.Empty(new OddsStore(_base.Database).Get().MixUps);
        Assert.Equal((1, 0), Wrong());
    }

    [Fact]
    public void Base_with_orders_is_sound()
    {
        _orders.Add("cart", Terms(), _ada);

        Assert.IsType<Sound>(BaseCheck.Run(_base.Database.Path, TestContext.Current.CancellationToken));
    }

    [Theory]
    [InlineData("update order_events set document = '{}'")]
    [InlineData("update order_events set document = replace(document, '96.00', 'much')")]
    [InlineData("delete from order_events where event = 1")]
    public void Order_that_was_changed_outside_is_told_so(string statement)
    {
        _orders.Add("cart", Terms(), _ada);
        _orders.Append("cart", 1, null, Did(OrderAct.Paid), _ada);
        using (var connection = _base.Database.Connect())
        {
            connection.Execute(statement);
        }

        Assert.Contains("Restore a backup", Assert.Throws<DatabaseException>(() => _orders.Find("cart", 1)).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Build_made_anew_under_the_code_of_a_deleted_one_has_none_of_its_orders_and_the_seller_keeps_its_record()
    {
        var builds = new BuildStore(_base.Database, new StoppedClock(Noon));
        var code = AnyBuild.Of().Code;
        builds.Create(AnyBuild.Of(), _ada);
        _orders.Add(code, Terms(), _ada);
        _orders.Add(code, Terms(), _ada);
        _orders.Append(code, 1, null, Did(OrderAct.Wrong) with { Fault = ArrivalFault.OtherPart, Sent = "marl:S-100" }, _ada);
        var counted = Wrong();
        builds.Delete(code, null, _ada);
        builds.Restore(code, 1, null, _ada);
        Assert.Equal([1, 2], _orders.List(code).Select(order => order.Number)); // brought back, it is the same build

        builds.Delete(code, null, _ada);
        builds.Create(AnyBuild.Of(), _ada);

        Assert.Empty(_orders.List(code));
        Assert.Null(_orders.Find(code, 1));
        Assert.IsType<OrderOutcome.Absent>(_orders.Append(code, 1, null, Did(OrderAct.Paid), _ada));
        Assert.Equal(counted, Wrong());
        Assert.Equal(1, Assert.IsType<OrderOutcome.Done>(_orders.Add(code, Terms(), _ada)).Now.Number);
        Assert.IsType<OrderOutcome.Done>(_orders.Append(code, 1, null, Did(OrderAct.Checked), _ada));
        Assert.Equal((counted.Deliveries + 1, counted.Wrong), Wrong());
    }

    [Theory]
    [InlineData(OrderAct.DepositKept)]
    [InlineData(OrderAct.Charged)]
    public void What_a_seller_keeps_is_stored(OrderAct act)
    {
        var terms = Terms();
        _orders.Add("cart", terms with { Lines = [terms.Lines[0] with { Deposit = "20.00" }] }, _ada);
        _orders.Append("cart", 1, null, Did(OrderAct.Paid), _ada);

        var outcome = _orders.Append("cart", 1, null, Did(act) with { Amount = "12.00" }, _ada);

        Assert.Equal(act, Assert.IsType<OrderOutcome.Done>(outcome).Now.Events[^1].Did.Act);
    }

    private (int Deliveries, int Wrong) Wrong() => new OfferStore(_base.Database).Facts().Sellers.Single(seller => seller.Code == "millrace").Deliveries is { } counted
        ? (counted.Deliveries, counted.Wrong) : (0, 0);

    private static OrderTerms Terms() =>
        new("common/millrace", "2026-11-02", null, "EUR", "9.00", [new OrderLine("marl:B-1/2", "A bolt", 1, "96.00", "0.00", IsNew: true)]);

    private static OrderEvent Did(OrderAct act) => new(act, "2026-11-03");
}
