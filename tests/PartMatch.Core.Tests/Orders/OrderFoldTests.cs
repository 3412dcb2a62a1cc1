using PartMatch.Core.Orders;
using Xunit;
using static PartMatch.Core.Tests.Orders.TestOrder;

namespace PartMatch.Core.Tests.Orders;

/// <summary>What an order is after what happened to it, each by hand: see <see cref="TestOrder"/>.</summary>
public sealed class OrderFoldTests
{
    [Fact]
    public void Order_that_was_made_is_on_the_way_and_committed()
    {
        var order = Of();

        Assert.Equal([LineState.Ordered, LineState.Ordered], order.Lines.Select(line => line.State));
        Assert.Equal(("0.00", "133.80", "0.00"), MoneyOf(order)); // 96.00 + 4.80 + 24.00 + 9.00
    }

    [Fact]
    public void Paid_without_an_amount_is_everything_and_the_deposit_is_owed() =>
        Assert.Equal(("133.80", "0.00", "20.00"), MoneyOf(Of(Did(OrderAct.Paid)))); // 153.80 paid, 20.00 of it to come back

    [Fact]
    public void Paid_in_part_leaves_the_rest_committed_and_pays_the_goods_first()
    {
        Assert.Equal(("100.00", "33.80", "0.00"), MoneyOf(Of(InPart("100.00"))));
        Assert.Equal(("133.80", "0.00", "6.20"), MoneyOf(Of(InPart("140.00")))); // 140.00 − 133.80
    }

    [Fact]
    public void What_the_bank_took_counts_and_not_what_was_agreed() =>
        Assert.Equal(("131.55", "0.00", "20.00"), MoneyOf(Of(Did(OrderAct.Paid, amount: "151.55")))); // a rate that moved: 151.55 − 20.00

    [Fact]
    public void Deposit_that_came_back_is_owed_no_more_and_was_never_spent() =>
        Assert.Equal(("133.80", "0.00", "0.00"), MoneyOf(Of(Did(OrderAct.Paid), Did(OrderAct.DepositBack))));

    // 153.80 were paid; nothing of the 20.00 comes back any more.
    [Fact]
    public void Deposit_that_the_seller_keeps_is_spent() =>
        Assert.Equal(("153.80", "0.00", "0.00"), MoneyOf(Of(Did(OrderAct.Paid), Did(OrderAct.DepositKept))));

    [Fact]
    public void Deposit_that_is_kept_in_part_leaves_the_rest_owed() => // 133.80 + 5.00; 20.00 − 5.00
        Assert.Equal(("138.80", "0.00", "15.00"), MoneyOf(Of(Did(OrderAct.Paid), Did(OrderAct.DepositKept, amount: "5.00"))));

    [Fact]
    public void What_is_charged_for_taking_back_before_paying_is_to_be_paid() => // bolts 24.00 + sending 9.00 + charged 9.60
        Assert.Equal(("0.00", "42.60", "0.00"), MoneyOf(Of(Did(OrderAct.Arrived), Did(OrderAct.Returned, 1), Did(OrderAct.Charged, amount: "9.60"))));

    [Fact]
    public void What_is_charged_after_paying_is_kept_of_what_comes_back() // 153.80 paid, 9.60 kept: 144.20 can come back
    {
        OrderEvent[] charged = [Did(OrderAct.Paid), Did(OrderAct.Arrived), Did(OrderAct.Returned, 1), Did(OrderAct.Charged, amount: "9.60")];

        Assert.Equal(("9.60", "0.00", "0.00"), MoneyOf(Of([.. charged, Did(OrderAct.Refunded, amount: "144.20")])));
        Assert.Equal("amount", Try([.. charged, Did(OrderAct.Refunded, amount: "144.21")]).Fault?.Field);
    }

    [Fact]
    public void Wrong_pump_stays_paid_until_the_money_is_back()
    {
        OrderEvent[] wrong = [Did(OrderAct.Paid), Did(OrderAct.Arrived), Wrong(1, "alder:PUMP-2"), Did(OrderAct.Returned, 1, amount: "6.00")];

        // Sent back, its deposit is no deposit any more: 153.80 + 6.00 for sending it back.
        Assert.Equal(("159.80", "0.00", "0.00"), MoneyOf(Of(wrong)));
        Assert.Equal(("39.00", "0.00", "0.00"), MoneyOf(Of([.. wrong, Did(OrderAct.Refunded, amount: "120.80")]))); // 96.00 + 4.80 + 20.00 came back
        Assert.Equal(LineState.Returned, Of(wrong).Lines[0].State);
        Assert.Equal(LineState.Refunded, Of([.. wrong, Did(OrderAct.Refunded, amount: "120.80")]).Lines[0].State);
    }

    [Fact]
    public void Cancelled_before_paying_owes_nothing() => Assert.Equal(("0.00", "0.00", "0.00"), MoneyOf(Of(Did(OrderAct.Cancelled))));

    [Fact]
    public void Some_bolts_cancelled_owe_their_share() =>
        Assert.Equal(("0.00", "124.80", "0.00"), MoneyOf(Of(Did(OrderAct.Cancelled, 2, 3)))); // 24.00 × 5 / 8 = 15.00

    [Fact]
    public void Pieces_are_told_one_by_one()
    {
        var bolts = Of(Did(OrderAct.Arrived, 2, 6), Did(OrderAct.Checked, 2, 4), Wrong(2, "alder:BOLT-2", pieces: 2)).Lines[1];

        Assert.Equal(new LinePieces(2, 0, 4, 2, 0, 0), bolts.Pieces);
        Assert.Equal((LineState.Wrong, "alder:BOLT-2"), (bolts.State, Assert.Single(bolts.CameWrong).Sent));
    }

    [Fact]
    public void What_is_checked_has_come() => Assert.Equal(new DateOnly(2026, 11, 7), Of(Did(OrderAct.Checked, 1)).Lines[0].ArrivedOn);

    [Fact]
    public void What_was_right_may_be_found_wrong_when_it_is_fitted() =>
        Assert.Equal(LineState.Wrong, Of(Did(OrderAct.Checked, 1), Wrong(1, fault: ArrivalFault.Damaged)).Lines[0].State);

    [Fact]
    public void Returned_can_go_back_as_many_days_as_agreed_after_it_came()
    {
        var pump = Of(Did(OrderAct.Arrived)).Lines[0];

        Assert.Equal(new DateOnly(2026, 11, 21), pump.ReturnBy); // the 7th and 14 days
        Assert.Contains("10 % is kept back", pump.ReturnText, StringComparison.Ordinal);
    }

    [Fact]
    public void Withdrawn_event_does_not_count_and_stays()
    {
        var order = Of(Did(OrderAct.Paid), Did(OrderAct.Withdrawn) with { Withdraws = 2 });

        Assert.Equal(("0.00", "133.80", "0.00"), MoneyOf(order));
        Assert.Equal([false, true, false], order.Events.Select(one => one.IsWithdrawn));
    }

    [Theory]
    [MemberData(nameof(Impossible))]
    public void What_cannot_have_happened_names_its_field(string field, OrderEvent[] events)
    {
        var before = Of(events[..^1]);

        Assert.Equal(field, OrderFold.FaultOf(before, events[^1])?.Field);
    }

    public static TheoryData<string, OrderEvent[]> Impossible => new()
    {
        { "line", [Did(OrderAct.Checked)] },
        { "line", [Did(OrderAct.Checked, 3)] },
        { "pieces", [Did(OrderAct.Arrived, 2, 9)] },
        { "pieces", [Did(OrderAct.Arrived, 2, 0)] },
        { "act", [Did(OrderAct.Arrived), Did(OrderAct.Cancelled)] },
        { "act", [Did(OrderAct.Returned, 1)] },
        { "amount", [Did(OrderAct.Paid), Did(OrderAct.Paid)] },
        { "amount", [Did(OrderAct.Refunded, amount: "0.01")] },
        { "amount", [Did(OrderAct.Paid), Did(OrderAct.DepositBack, amount: "20.01")] },
        { "amount", [Did(OrderAct.Paid), Did(OrderAct.DepositKept, amount: "20.01")] },
        { "amount", [Did(OrderAct.Paid), Did(OrderAct.DepositKept), Did(OrderAct.DepositBack)] },
        { "amount", [Did(OrderAct.Paid), Did(OrderAct.Charged)] },
        { "amount", [Did(OrderAct.Paid, amount: "1.001")] },
        { "amount", [Did(OrderAct.Arrived, amount: "1.00")] },
        { "amount", [Did(OrderAct.Paid, amount: "153.79")] }, // 133.80 + 20.00 are owed: a cent less, and nobody said what that means
        { "amount", [Did(OrderAct.Paid, amount: "153.81")] },
        { "amount", [InPart("153.81")] },
        { "amount", [InPart("100.00"), Did(OrderAct.Paid, amount: "53.81")] },
        { "amount", [Did(OrderAct.Paid), Did(OrderAct.Paid, amount: "0.01")] },
        { "settles", [Settles("153.80")] },
        { "aboveAgreed", [AboveAgreed("153.80")] },
        { "settles", [InPart("100.00") with { Settles = true }] },
        { "inPart", [Did(OrderAct.Paid) with { InPart = true }] },
        { "settles", [Did(OrderAct.Arrived) with { Settles = true }] },
        { "fault", [Did(OrderAct.Wrong, 1)] },
        { "sent", [Wrong(1, "alder:PUMP-2", ArrivalFault.Damaged)] },
        { "on", [Did(OrderAct.Paid) with { On = "2026-11-01" }] },
        { "on", [Did(OrderAct.Paid) with { On = "soon" }] },
        { "act", [new OrderEvent(OrderAct.Ordered, Day) { Terms = Terms }] },
        { "withdraws", [Did(OrderAct.Withdrawn) with { Withdraws = 1 }] },
        { "withdraws", [Did(OrderAct.Paid), Did(OrderAct.Withdrawn) with { Withdraws = 2 }, Did(OrderAct.Withdrawn) with { Withdraws = 2 }] },
        { "withdraws", [Did(OrderAct.Paid), Did(OrderAct.Refunded, amount: "5.00"), Did(OrderAct.Withdrawn) with { Withdraws = 2 }] },
    };

    [Theory]
    [MemberData(nameof(Possible))]
    public void Payment_that_is_owed_or_says_what_it_means_can_be(string spent, string committed, OrderEvent[] payments)
    {
        var order = Of();
        foreach (var payment in payments)
        {
            Assert.Null(OrderFold.FaultOf(order, payment));
            order = Of([.. order.Events.Skip(1).Select(one => one.Did), payment]);
        }

        Assert.Equal((spent, committed, "20.00"), MoneyOf(order));
    }

    // Of 153.80, 20.00 of it a deposit that comes back.
    public static TheoryData<string, string, OrderEvent[]> Possible => new()
    {
        { "133.80", "0.00", [Did(OrderAct.Paid, amount: "153.80")] },
        { "133.80", "0.00", [InPart("100.00"), Did(OrderAct.Paid, amount: "53.80")] },
        { "133.79", "0.00", [Settles("153.79")] },
        { "133.81", "0.00", [AboveAgreed("153.81")] },
        { "133.90", "0.00", [Did(OrderAct.Paid), AboveAgreed("0.10")] },
    };

    [Theory]
    [InlineData("2026-11-07", false)]
    [InlineData("2026-11-08", false)]
    [InlineData("2026-11-09", true)]
    public void What_has_happened_is_not_of_a_day_to_come(string on, bool isFaulty) =>
        Assert.Equal(isFaulty, OrderEventCheck.FaultOfDay(Did(OrderAct.Arrived) with { On = on }, new DateOnly(2026, 11, 7)) is { Field: "on" });

    // Of 8 bolts: the line is called wrong, ordered or arrived after the worst of its pieces, and only what has come and was not looked at can be looked at.
    public static TheoryData<string, OrderEvent[]> Looked => new()
    {
        { "act", [] }, // all 8 on the way
        { "act", [Wrong(2, pieces: 1)] }, // 1 wrong, 7 on the way
        { "act", [Did(OrderAct.Arrived, 2, 2), Did(OrderAct.Checked, 2)] }, // 2 checked, 6 on the way
        { "seen", [Did(OrderAct.Arrived, 2, 2)] }, // 2 there, 6 on the way: then it is asked what was seen
        { "seen", [Wrong(2, pieces: 1), Did(OrderAct.Arrived, 2, 3)] }, // 1 wrong, 3 there, 4 on the way
        { "seen", [Did(OrderAct.Arrived, 2), Did(OrderAct.Checked, 2)] }, // nothing on the way, nothing left: as it was
    };

    [Theory]
    [MemberData(nameof(Looked))]
    public void Only_pieces_that_have_come_can_be_told_as_checked(string field, OrderEvent[] before)
    {
        var fault = OrderEventCheck.FaultOfLook(Of(before), Did(OrderAct.Checked, 2));

        Assert.Equal(field, fault?.Field);
        Assert.Equal(field == "act", fault?.Expected == "pieces that have come and were not looked at");
    }

    [Fact]
    public void Order_is_known_of_a_day_as_far_as_it_was_told()
    {
        var order = Of(Did(OrderAct.Paid) with { On = "2026-11-03" }, Did(OrderAct.Arrived));

        Assert.Null(OrderFold.AsOf(order, new DateOnly(2026, 11, 1)));
        Assert.Equal(LineState.Ordered, OrderFold.AsOf(order, new DateOnly(2026, 11, 6))?.Lines[0].State);
        Assert.Equal(LineState.Arrived, OrderFold.AsOf(order, new DateOnly(2026, 11, 7))?.Lines[0].State);
    }

    private static OrderEvent InPart(string amount) => Did(OrderAct.Paid, amount: amount) with { InPart = true };

    private static OrderEvent Settles(string amount) => Did(OrderAct.Paid, amount: amount) with { Settles = true };

    private static OrderEvent AboveAgreed(string amount) => Did(OrderAct.Paid, amount: amount) with { AboveAgreed = true };

    private static (string Spent, string Committed, string DepositsOwed) MoneyOf(Order order) =>
        (order.Money.Spent.Amount, order.Money.Committed.Amount, order.Money.DepositsOwed.Amount);
}
