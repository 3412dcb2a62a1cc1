using PartMatch.Core.Measures;

namespace PartMatch.Core.Orders;

/// <summary>How far a line of an order has come: what asks for something to be done is told first.</summary>
public enum LineState
{
    Ordered,
    Arrived,
    Checked,
    Wrong,
    Returned,
    Refunded,
    Cancelled,
}

/// <summary>An order as its events make it.</summary>
/// <param name="Number">Within its build, 1 for the first.</param>
/// <param name="Version">How many events it has had.</param>
/// <param name="Events">In the order in which they were told.</param>
public sealed record Order(
    string Build, int Number, int Version, OrderTerms Terms, IReadOnlyList<LineNow> Lines, OrderMoney Money, IReadOnlyList<OrderEventSaved> Events);

/// <summary>A line of an order as it is now.</summary>
/// <param name="Line">Its place, 1 for the first.</param>
/// <param name="ArrivedOn">The day of the first arrival; null before.</param>
/// <param name="CameWrong">What was found wrong, in the order in which it was told.</param>
/// <param name="Items">Examples that were measured when they came in, as <c>book/item</c>.</param>
public sealed record LineNow(
    int Line, OrderLine Agreed, LineState State, LinePieces Pieces, DateOnly? ArrivedOn, IReadOnlyList<CameWrong> CameWrong, IReadOnlyList<string> Items)
{
    /// <summary>
    /// Of <see cref="Items"/>, those of pieces that were found right, and are: each speaks for one piece in the plan. None where some went that nobody named.
    /// </summary>
    public IReadOnlyList<string> CheckedItems { get; init; } = [];

    /// <summary>Has anybody held what came against what was ordered? Also where it went back since.</summary>
    public bool WasLookedAt { get; init; }

    /// <summary>The last day on which it can go back; null where that is not known, or it cannot.</summary>
    public DateOnly? ReturnBy { get; init; }

    /// <summary>By when it goes back, and on whose cost; null before it came.</summary>
    public string? ReturnText { get; init; }
}

/// <summary>Where the pieces of a line are; they add up to what was ordered.</summary>
/// <param name="Arrived">There, and nobody has looked at them.</param>
public sealed record LinePieces(int OnTheWay, int Arrived, int Checked, int Wrong, int Returned, int Cancelled)
{
    /// <summary>Those a plan can count on.</summary>
    internal int Counted => OnTheWay + Arrived + Checked;

    /// <summary>Those that are still to be paid, or stay paid.</summary>
    internal int Held => Counted + Wrong;
}

/// <param name="Sent">Id of a part, or a number as it stands on the thing; null where the number is right.</param>
public sealed record CameWrong(int Pieces, ArrivalFault Fault, string? Sent, DateOnly On, string? Note);

/// <summary>The money of one order, in the currency of its build.</summary>
/// <param name="Agreed">Goods, import charges and sending of what was neither cancelled nor sent back.</param>
/// <param name="Paid">Everything that was paid, sending it back and deposits included.</param>
/// <param name="Back">Refunds, and deposits that came back.</param>
/// <param name="Spent">Paid less what came back, and less the deposits that are still to come back.</param>
/// <param name="Committed">Agreed and not paid.</param>
/// <param name="DepositsOwed">Paid, and to come back for old parts: it is not counted as spent.</param>
public sealed record OrderMoney(Money Agreed, Money Paid, Money Back, Money Spent, Money Committed, Money DepositsOwed)
{
    /// <summary>Is everything paid that will be?</summary>
    public bool IsSettled { get; init; }

    /// <summary>What is still to be paid, deposits included; nothing where it is settled.</summary>
    public required Money Owed { get; init; }
}
