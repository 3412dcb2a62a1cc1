namespace PartMatch.Core.Orders;

/// <summary>What was found of pieces that came.</summary>
/// <param name="Order">Its number.</param>
/// <param name="Line">1 for the first.</param>
/// <param name="IsRight">Is it what was ordered, as it was ordered?</param>
public sealed record GoodsInRecord(int Order, int Line, bool IsRight)
{
    /// <summary>Today when left out.</summary>
    public string? On { get; init; }

    /// <summary>Null: all that there are.</summary>
    public int? Pieces { get; init; }

    /// <summary>What is wrong with it; only where it is not right.</summary>
    public ArrivalFault? Fault { get; init; }

    /// <summary>What came instead: the id of a part, or the number as it stands on it.</summary>
    public string? Sent { get; init; }

    /// <summary>What was seen of it, as the answers of its key write it.</summary>
    public IReadOnlyList<string> Seen { get; init; } = [];

    /// <summary>It was looked at and no check of its key was made; only where it is right.</summary>
    public bool WithoutCheck { get; init; }

    /// <summary>What was read on one example of it: kept as an item of the family's book.</summary>
    public IReadOnlyList<ReadingTold> Readings { get; init; } = [];

    public string? Note { get; init; }

    /// <param name="today">The day where none is told.</param>
    /// <param name="item">Where what was read is kept.</param>
    /// <param name="isBeyondLimits">Does a reading lie beyond a limit? Then it is not right, whatever stands on it.</param>
    public OrderEvent ToEvent(string today, string? item, bool isBeyondLimits) =>
        new(IsRight && !isBeyondLimits ? OrderAct.Checked : OrderAct.Wrong, On ?? today)
        {
            Line = Line,
            Pieces = Pieces,
            Fault = IsRight ? isBeyondLimits ? ArrivalFault.BeyondLimits : null : Fault,
            Sent = Sent,
            Seen = Seen,
            WithoutCheck = WithoutCheck && IsRight && !isBeyondLimits,
            Item = item,
            Note = Note,
        };
}

/// <param name="Feature">Of the kind of the part.</param>
/// <param name="Value">As typed; a quantity may carry its unit.</param>
public sealed record ReadingTold(string Feature, string Value)
{
    public string? Unit { get; init; }

    /// <summary>± how well it was read; left out, the reading decides nothing.</summary>
    public string? Uncertainty { get; init; }

    public string? Instrument { get; init; }
}
