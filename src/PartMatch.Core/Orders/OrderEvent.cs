namespace PartMatch.Core.Orders;

/// <summary>What can happen to an order.</summary>
public enum OrderAct
{
    Ordered,
    Paid,
    Arrived,

    /// <summary>Held against what tells the part from its look-alikes, and right.</summary>
    Checked,

    /// <summary>Not what was ordered, or not as it was ordered.</summary>
    Wrong,
    Returned,
    Refunded,
    Cancelled,

    /// <summary>A deposit came back for an old part.</summary>
    DepositBack,

    /// <summary>A deposit that does not come back: the seller keeps it, and it is spent.</summary>
    DepositKept,

    /// <summary>What the seller takes for taking it back: kept of what would come back, or to be paid.</summary>
    Charged,

    /// <summary>An earlier event was told by mistake: it does not count. Nothing is removed.</summary>
    Withdrawn,
}

/// <summary>What is wrong with what came.</summary>
public enum ArrivalFault
{
    /// <summary>Something else than was ordered: it counts against the seller and for the danger of the two parts.</summary>
    OtherPart,

    /// <summary>The right number, worn beyond a limit.</summary>
    BeyondLimits,

    /// <summary>The right number, damaged.</summary>
    Damaged,
}

/// <summary>One thing that happened to an order. It is one document, and none is ever changed.</summary>
/// <param name="On">The day on which it happened.</param>
public sealed record OrderEvent(OrderAct Act, string On)
{
    /// <summary>Of the order, 1 for the first; null for all of them, or for the only one.</summary>
    public int? Line { get; init; }

    /// <summary>Null: all there are.</summary>
    public int? Pieces { get; init; }

    /// <summary>In the currency of the order: paid, refunded, back for old parts, or paid for sending it back.</summary>
    public string? Amount { get; init; }

    /// <summary>More of what was agreed is still to be paid.</summary>
    public bool InPart { get; init; }

    /// <summary>It is less than was agreed, and no more is to be paid: what the bank took counts.</summary>
    public bool Settles { get; init; }

    /// <summary>It is more than was agreed, and was paid all the same.</summary>
    public bool AboveAgreed { get; init; }

    public ArrivalFault? Fault { get; init; }

    /// <summary>What came instead: the id of a part, or the number as it stands on the thing where no book has it.</summary>
    public string? Sent { get; init; }

    /// <summary>The example that it is, as <c>book/item</c>: what was read on it stands there.</summary>
    public string? Item { get; init; }

    /// <summary>What was seen of it, as an answer of its key writes it.</summary>
    public IReadOnlyList<string> Seen { get; init; } = [];

    /// <summary>It was looked at, and no check was made of what tells it from its look-alikes.</summary>
    public bool WithoutCheck { get; init; }

    /// <summary>Number of the event that does not count.</summary>
    public int? Withdraws { get; init; }

    public string? Note { get; init; }

    /// <summary>Of the first event, what was agreed.</summary>
    public OrderTerms? Terms { get; init; }
}

/// <summary>An event as it was stored.</summary>
/// <param name="Event">1 for the first.</param>
/// <param name="At">UTC.</param>
public sealed record OrderEventSaved(int Event, string At, string? Who, string? Why, OrderEvent Did)
{
    /// <summary>Was it withdrawn later?</summary>
    public bool IsWithdrawn { get; init; }
}

/// <summary>Why an event cannot be.</summary>
public sealed record OrderFault(string Field, string Found, string Expected, string Mend);
