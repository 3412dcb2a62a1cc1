using System.Globalization;
using CsCheck;
using PartMatch.Core.Orders;
using Xunit;
using static PartMatch.Core.Tests.Orders.TestOrder;

namespace PartMatch.Core.Tests.Orders;

/// <summary>Whatever happens to an order, in whatever order: what cannot have happened is refused, and the rest adds up.</summary>
public sealed class AnyOrderTests
{
    private static readonly Gen<OrderEvent> _event = Gen.Select(
        Gen.Enum<OrderAct>(), Gen.Int[0, 3], Gen.Int[0, 9], Gen.Int[-1, 20_000], Gen.Int[0, 3], Gen.Int[0, 8],
        (act, line, pieces, cents, word, withdraws) => new OrderEvent(act, "2026-11-07")
        {
            Line = line == 0 ? null : line,
            Pieces = pieces == 0 ? null : pieces,
            Amount = act is OrderAct.Paid or OrderAct.Refunded or OrderAct.Returned or OrderAct.DepositBack or OrderAct.DepositKept or OrderAct.Charged && cents > 0 ? Text(cents) : null,
            InPart = act == OrderAct.Paid && cents > 0 && word == 1,
            Settles = act == OrderAct.Paid && cents > 0 && word == 2,
            AboveAgreed = act == OrderAct.Paid && cents > 0 && word == 3,
            Fault = act == OrderAct.Wrong ? ArrivalFault.OtherPart : null,
            Withdraws = act == OrderAct.Withdrawn ? withdraws : null,
        });

    [Fact]
    public void Money_adds_up_to_the_cent_in_every_state() => _event.Array[0, 14].Sample(events =>
    {
        var order = Of();
        foreach (var did in events.Where(did => OrderFold.FaultOf(order, did) is null))
        {
            order = Of([.. order.Events.Skip(1).Select(one => one.Did), did]);

            // Counted here by itself: everything that was paid, less everything that came back, is spent or still to come back.
            var counted = order.Events.Where(one => !one.IsWithdrawn).Select(one => one.Did).ToList();
            var back = counted.Where(one => one.Act == OrderAct.Refunded).Sum(one => Cents(one.Amount ?? "")) + (Cents(order.Money.Back.Amount) - Refunds(counted));
            Assert.Equal(Cents(order.Money.Paid.Amount) - back, Cents(order.Money.Spent.Amount) + Cents(order.Money.DepositsOwed.Amount));
            Assert.InRange(Cents(order.Money.Spent.Amount), 0, long.MaxValue);
            Assert.InRange(Cents(order.Money.Committed.Amount), 0, Cents(order.Money.Agreed.Amount));
            Assert.InRange(Cents(order.Money.DepositsOwed.Amount), 0, 2000);
            Assert.All(order.Lines, line => Assert.Equal(line.Agreed.Pieces, AllOf(line.Pieces)));
        }
    });

    [Fact]
    public void What_is_withdrawn_at_once_leaves_the_order_as_it_was() => Gen.Select(_event.Array[0, 8], _event).Sample((events, last) =>
    {
        var order = events.Aggregate(Of(), (now, did) => OrderFold.FaultOf(now, did) is null ? Of([.. now.Events.Skip(1).Select(one => one.Did), did]) : now);
        if (last.Act == OrderAct.Withdrawn || OrderFold.FaultOf(order, last) is not null)
        {
            return;
        }

        var taken = Did(OrderAct.Withdrawn) with { Withdraws = order.Version + 1 };
        var undone = Of([.. order.Events.Skip(1).Select(one => one.Did), last, taken]);

        Assert.Equal(order.Money, undone.Money);
        Assert.Equal(order.Lines.Select(line => line.Pieces), undone.Lines.Select(line => line.Pieces));
        Assert.Equal(order.Version + 2, undone.Version);
    });

    private static long Refunds(List<OrderEvent> counted) => counted.Where(one => one.Act == OrderAct.Refunded).Sum(one => Cents(one.Amount ?? ""));

    private static int AllOf(LinePieces pieces) => pieces.OnTheWay + pieces.Arrived + pieces.Checked + pieces.Wrong + pieces.Returned + pieces.Cancelled;

    private static string Text(int cents) => (cents / 100m).ToString("0.00", CultureInfo.InvariantCulture);

    private static long Cents(string amount) => amount.Length == 0 ? 0 : (long)(decimal.Parse(amount, CultureInfo.InvariantCulture) * 100);
}
