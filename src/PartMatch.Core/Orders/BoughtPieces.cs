using System.Globalization;

namespace PartMatch.Core.Orders;

/// <summary>Everything that was bought for a build already. A plan rests on it: it is there from its day at no further cost.</summary>
/// <param name="Currency">Of the build.</param>
/// <param name="Pieces">What is on the way, there or checked, in the order of the orders and their lines; what came wrong is none of it.</param>
/// <param name="Spent">Minor units: paid less what came back.</param>
/// <param name="Committed">Minor units: agreed and not paid.</param>
/// <param name="DepositsOwed">Minor units: paid besides, and to come back for old parts.</param>
public sealed record BuildBought(string Currency, IReadOnlyList<BoughtPieces> Pieces, long Spent, long Committed, long DepositsOwed)
{
    /// <summary>What was ordered of offers, whatever became of it: the seller has so much less.</summary>
    public IReadOnlyList<OrderedOf> Ordered { get; init; } = [];

    public static BuildBought None { get; } = new("", [], 0, 0, 0);

    /// <summary>The same for all that makes the same plans: part of what names a question that was answered.</summary>
    public string Key => string.Create(
        CultureInfo.InvariantCulture, $"{Currency};{Spent};{Committed};{DepositsOwed};{string.Join('|', Pieces)};{string.Join('|', Ordered)}");

    /// <param name="orders">Of one build, all in one currency.</param>
    public static BuildBought Of(string currency, IReadOnlyList<Order> orders) => new(
        currency, [.. orders.SelectMany(PiecesOf)],
        orders.Sum(order => Minor(order.Money.Spent.Amount, currency)), orders.Sum(order => Minor(order.Money.Committed.Amount, currency)),
        orders.Sum(order => Minor(order.Money.DepositsOwed.Amount, currency)))
    {
        Ordered =
        [
            .. orders.SelectMany(order => order.Lines.Where(line => line.Agreed.Offer is not null && line.Agreed.Pieces > line.Pieces.Cancelled)
                .Select(line => new OrderedOf(line.Agreed.Offer!, line.Agreed.Pieces - line.Pieces.Cancelled, OrderText.Day(order.Terms.OrderedOn)))), // filtered
        ],
    };

    private static IEnumerable<BoughtPieces> PiecesOf(Order order)
    {
        foreach (var line in order.Lines)
        {
            var (agreed, pieces) = (line.Agreed, line.Pieces);
            foreach (var (state, count) in new[] { (LineState.Checked, pieces.Checked), (LineState.Arrived, pieces.Arrived), (LineState.Ordered, pieces.OnTheWay) })
            {
                // An item is one piece: what was not read is as its number says.
                string[] read = state == LineState.Checked ? [.. line.CheckedItems.Take(count)] : [];
                foreach (var (item, some) in read.Select(one => (one, 1)).Append(("", count - read.Length)).Where(one => one.Item2 > 0))
                {
                    yield return new BoughtPieces(
                        order.Number, line.Line, agreed.Part, some, state, state == LineState.Ordered ? OrderText.FindDay(order.Terms.ExpectedOn) : line.ArrivedOn,
                        agreed.IsNew, order.Terms.Seller, ReturnDeadline.Of(agreed.Returns, line.ArrivedOn))
                    {
                        For = string.Join(' ', agreed.For),
                        Item = item,
                    };
                }
            }
        }
    }

    private static long Minor(string amount, string currency) => OrderText.Minor(amount, currency);
}

/// <param name="Offer">As <c>book/offer</c>.</param>
public sealed record OrderedOf(string Offer, int Pieces, DateOnly On);

/// <summary>Pieces that were bought and are not wrong.</summary>
/// <param name="State">Ordered, arrived or checked.</param>
/// <param name="ThereOn">Since when it is there, or the day by which it should be; null where the seller says nothing of it.</param>
/// <param name="Seller">As <c>book/seller</c>.</param>
/// <param name="ReturnBy">The last day on which it can go back; null where that is not known or it cannot.</param>
public sealed record BoughtPieces(
    int Order, int Line, string Part, int Pieces, LineState State, DateOnly? ThereOn, bool IsNew, string? Seller, DateOnly? ReturnBy)
{
    /// <summary>The example that was measured when they came in and found right, as <c>book/item</c>; empty where none was.</summary>
    public string Item { get; init; } = "";

    /// <summary>Positions it was bought for, parted by blanks; empty where nobody said.</summary>
    public string For { get; init; } = "";

    /// <summary>As <c>order 3, line 1</c>.</summary>
    public string Name => string.Create(CultureInfo.InvariantCulture, $"order {Order}, line {Line}");
}
