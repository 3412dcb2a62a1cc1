using PartMatch.Core.Buying;
using PartMatch.Core.Listings;
using PartMatch.Core.Orders;

namespace PartMatch.Core.Tests.Orders;

/// <summary>
/// An order of a pump for 96.00 with a charge of 4.80 and a deposit of 20.00, and of eight bolts for 24.00, sent for 9.00: 133.80 without the deposit.
/// </summary>
internal static class TestOrder
{
    public const string Day = "2026-11-02";

    public static OrderTerms Terms { get; } = new("alder/mill", Day, "2026-11-06", "EUR", "9.00",
    [
        new OrderLine("alder:PUMP-1", "Pump", 1, "96.00", "4.80", IsNew: true)
        {
            Deposit = "20.00",
            Returns = new OfferReturns(Returnable.Yes, 14, 10, FreightBack.Buyer, null),
        },
        new OrderLine("alder:BOLT-1", "Bolt", 8, "24.00", "0.00", IsNew: true),
    ]);

    public static OrderEvent Did(OrderAct act, int? line = null, int? pieces = null, string? amount = null) => new(act, "2026-11-07") { Line = line, Pieces = pieces, Amount = amount };

    public static OrderEvent Wrong(int line, string? sent = null, ArrivalFault fault = ArrivalFault.OtherPart, int? pieces = null) =>
        Did(OrderAct.Wrong, line, pieces) with { Fault = fault, Sent = sent };

    public static Order Of(params IEnumerable<OrderEvent> events) => Try(events) is { Order: { } order } ? order : throw new ArgumentException($"{Try(events).Fault}");

    public static (Order? Order, OrderFault? Fault) Try(params IEnumerable<OrderEvent> events) => OrderFold.Of(
        "try", 1, [.. events.Prepend(new OrderEvent(OrderAct.Ordered, Day) { Terms = Terms }).Select((did, index) => new OrderEventSaved(index + 1, "", null, null, did))]);
}
