namespace PartMatch.Core.Orders;

/// <summary>What of an event cannot be read, whatever order it is told of.</summary>
public static class OrderEventCheck
{
    private const int LongestNote = 2000;
    private const int LongestText = 120;
    private const int MostSeen = 100;

    /// <summary>What comes, comes by today. A day ahead is let pass: where the sun rises first it is tomorrow already.</summary>
    /// <param name="today">UTC.</param>
    public static OrderFault? FaultOfDay(OrderEvent did, DateOnly today) => OrderText.FindDay(did.On) is { } day && day > today.AddDays(1)
        ? new OrderFault("on", did.On, FormattableString.Invariant($"a day not after {today:yyyy-MM-dd}, which is today"), "tell it when it has happened; give the day on which it did")
        : null;

    /// <summary>
    /// What is right was there to be looked at, and was looked at: both are told, not taken for granted. Asked when it is told and not when the order is read:
    /// orders from before keep what they came to.
    /// </summary>
    public static OrderFault? FaultOfLook(Order order, OrderEvent did) => did.Act != OrderAct.Checked ? null
        : order.Lines.ElementAtOrDefault((did.Line ?? (order.Lines.Count == 1 ? 1 : 0)) - 1) is { Pieces: { Arrived: 0, OnTheWay: > 0 } }
            ? new OrderFault("act", "checked", "pieces that have come and were not looked at", "tell first that they arrived")
        : did is { Seen.Count: 0, WithoutCheck: false }
            ? new OrderFault(
                "seen", "nothing", "at least one check of its key, as the key writes it",
                "tell what was seen; where none was made, say that it was looked at without a check (withoutCheck)")
        : did is { Seen.Count: > 0, WithoutCheck: true }
            ? new OrderFault("withoutCheck", "true", "nothing, because checks are told", "leave it out")
        : null;

    /// <param name="currency">Of the order.</param>
    public static OrderFault? FaultOf(OrderEvent did, string currency)
    {
        if (did.Act == OrderAct.Ordered || did.Terms is not null)
        {
            return new OrderFault("act", "ordered", "what happened to an order that is there", "what is ordered anew is an order of its own");
        }

        if (OrderText.FindDay(did.On) is null)
        {
            return new OrderFault("on", did.On, "a day as 2026-11-23", "give the day on which it happened");
        }

        if (did.Amount is { } typed && OrderText.FindMinor(typed, currency) is not > 0)
        {
            return new OrderFault("amount", typed, $"an amount of {currency} above 0", "as 84.00; leave it out where nothing was paid");
        }

        if (did.Amount is not null && did.Act is not (OrderAct.Paid or OrderAct.Refunded or OrderAct.DepositBack or OrderAct.DepositKept or OrderAct.Charged or OrderAct.Returned))
        {
            return new OrderFault("amount", did.Amount, "nothing", "money is told by paid, refunded, deposit-back, deposit-kept, charged, or, for what sending it back cost, returned");
        }

        if (did.WithoutCheck && did.Act != OrderAct.Checked)
        {
            return new OrderFault("withoutCheck", "true", "nothing", "only what is told as checked was looked at without a check: leave it out");
        }

        return did.Note?.Length > LongestNote ? new OrderFault("note", "too much", "at most 2000 characters", "shorten it")
            : did.Sent?.Length > LongestText || did.Sent?.Any(char.IsControl) == true
                ? new OrderFault("sent", "too much", "a part or a number of at most 120 characters in one line", "give what stands on it")
            : did.Seen.Count > MostSeen || did.Seen.Any(seen => seen.Length > 4 * LongestText)
                ? new OrderFault("seen", "too much", "at most 100 observations, as the key writes them", "leave out what rules nothing out")
            : null;
    }
}
