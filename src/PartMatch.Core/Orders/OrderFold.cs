using System.Globalization;
using PartMatch.Core.Measures;

namespace PartMatch.Core.Orders;

/// <summary>Makes of everything that happened to an order what it is now. The same steps decide whether a further event can be.</summary>
public static class OrderFold
{
    /// <summary>The order, or the first event that cannot be, and why.</summary>
    /// <param name="events">In the order in which they were told; the first is that it was ordered.</param>
    public static (Order? Order, OrderFault? Fault) Of(string build, int number, IReadOnlyList<OrderEventSaved> events)
    {
        if (events is not [{ Did: { Act: OrderAct.Ordered, Terms: { } terms } }, ..])
        {
            return (null, new OrderFault("act", "no order", "an order before what happens to it", "order it first"));
        }

        OrderEventSaved[] later = [.. events.Skip(1)];
        var withdrawn = later.Where(one => one.Did.Act == OrderAct.Withdrawn).Select(one => one.Did.Withdraws ?? 0).ToHashSet();
        var (lines, money) = (new OrderedPieces(terms), new OrderPayments(terms));
        foreach (var one in later)
        {
            var fault = FaultOfDay(terms, one.Did) ?? (one.Did.Act == OrderAct.Withdrawn ? FaultOfWithdrawal(events, one)
                : withdrawn.Contains(one.Event) ? null
                : lines.Apply(one.Did) ?? money.Apply(one.Did, lines));
            if (fault is not null)
            {
                return (null, fault);
            }
        }

        return (new Order(
            build, number, events.Count, terms, lines.Now(money.HasRefunds), money.Now(lines),
            [.. events.Select(one => one with { IsWithdrawn = withdrawn.Contains(one.Event) })]), null);
    }

    /// <summary>The order as it was known on a day: what was told before anything of a later day. Null where it was ordered later.</summary>
    public static Order? AsOf(Order order, DateOnly day) =>
        order.Events.TakeWhile(one => OrderText.Day(one.Did.On) <= day).ToList() is [_, ..] known ? Of(order.Build, order.Number, known).Order : null;

    /// <summary>Why this cannot happen to the order as it is; null where it can.</summary>
    public static OrderFault? FaultOf(Order order, OrderEvent next) =>
        (OrderEventCheck.FaultOf(next, order.Terms.Currency) ?? PaymentCheck.FaultOf(order, next)
            ?? Of(order.Build, order.Number, [.. order.Events, new OrderEventSaved(order.Version + 1, "", null, null, next)]).Fault) is not { } fault ? null
            : next.Act == OrderAct.Withdrawn && fault.Field != "withdraws"
                ? new OrderFault(
                    "withdraws", string.Create(CultureInfo.InvariantCulture, $"{next.Withdraws}"), "an event that nothing later rests on",
                    $"withdraw first what rests on it: without it, {fault.Mend}")
                : fault;

    private static OrderFault? FaultOfDay(OrderTerms terms, OrderEvent did) => string.CompareOrdinal(did.On, terms.OrderedOn) >= 0 ? null
        : new OrderFault("on", did.On, $"a day not before {terms.OrderedOn}, on which it was ordered", "give the day on which it happened");

    private static OrderFault? FaultOfWithdrawal(IReadOnlyList<OrderEventSaved> events, OrderEventSaved one)
    {
        var taken = events.FirstOrDefault(other => other.Event == one.Did.Withdraws && other.Event < one.Event);
        var isTwice = events.Any(other => other.Did.Act == OrderAct.Withdrawn && other.Event < one.Event && other.Did.Withdraws == one.Did.Withdraws);
        return taken is { Did.Act: not (OrderAct.Ordered or OrderAct.Withdrawn) } && !isTwice ? null
            : new OrderFault(
                "withdraws", string.Create(CultureInfo.InvariantCulture, $"{one.Did.Withdraws}"), "the number of an event that counts",
                "an order itself is cancelled; what was withdrawn is told again");
    }
}

/// <summary>Reads the days and amounts that an order holds as text.</summary>
internal static class OrderText
{
    // As for every amount of a build.
    private const long MostMinor = 1_000_000_000_000;

    /// <exception cref="ArgumentException">It was to be checked before it was stored.</exception>
    public static DateOnly Day(string typed) => FindDay(typed) ?? throw new ArgumentException($"'{typed}' is no day.", nameof(typed));

    public static DateOnly? FindDay(string? typed) =>
        DateOnly.TryParseExact(typed, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var day) ? day : null;

    /// <summary>Null where it is no amount, or one beyond what a plan reckons with.</summary>
    public static long? FindMinor(string typed, string currency) =>
        Amount.Find(typed, currency) is { } amount && amount.Minor < MostMinor && amount.Minor > -MostMinor ? (long)amount.Minor : null;

    /// <exception cref="ArgumentException">It was to be checked before it was stored.</exception>
    public static long Minor(string? typed, string currency) => typed is null ? 0
        : (long)(Amount.Find(typed, currency) ?? throw new ArgumentException($"'{typed}' is no amount of {currency}.", nameof(typed))).Minor;

    /// <summary>The share of an amount that so many of all pieces have, rounded half to even.</summary>
    public static long Share(long amount, int pieces, int all) =>
        pieces == all ? amount : (long)Math.Round((decimal)amount * pieces / all, MidpointRounding.ToEven);
}
