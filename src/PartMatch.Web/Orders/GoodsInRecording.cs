using System.Globalization;
using PartMatch.Core.Builds;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Items;
using PartMatch.Core.Orders;
using PartMatch.Storage.Editing;
using PartMatch.Storage.Items;
using PartMatch.Storage.Orders;
using PartMatch.Web.Builds;
using PartMatch.Web.Editing;
using PartMatch.Web.Http;
using PartMatch.Web.LookAlikes;
using PartMatch.Web.Offers;

namespace PartMatch.Web.Orders;

/// <summary>Keeps what was found of what came: what was read, as an item of the family's book, and what it makes of the order, in one write.</summary>
internal sealed class GoodsInRecording(
    OrderStore orders, GoodsInStore goods, ItemStore items, BuildSource source, LookAlikeSource lookAlikes, TimeProvider time)
{
    public (GoodsInRecorded? Recorded, ProblemAnswer? Refusal) Record(Build build, GoodsInRecord record, int? seen, ChangeNote note, CancellationToken cancellation)
    {
        var today = time.Today();
        var day = today.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
        if (orders.Find(build.Code, record.Order) is not { } order)
        {
            return (null, OrderProblems.NoOrder(build.Code, record.Order.ToString(CultureInfo.InvariantCulture)));
        }

        if (seen is { } version && version != order.Version)
        {
            return (null, OrderProblems.Outdated(order, seen));
        }

        // Judged before anything is kept: what cannot have happened leaves no readings behind.
        if (FaultOf(build, order, record, day) is { } fault)
        {
            return (null, OrderProblems.Faulty(fault));
        }

        var isBeyond = false;
        if (record.Readings.Count == 0)
        {
            return Tell(orders.Append(build.Code, order.Number, seen, record.ToEvent(day, null, isBeyondLimits: false), note), null);
        }

        var item = FreeCode(build.Family);
        var address = $"{build.Family}/{item}";
        return goods.Keep(build.Code, order.Number, seen, build.Family, [.. Rows(order, record, item, day)], item, read =>
        {
            isBeyond = ConditionOf(build.Family, read) == ItemCondition.BeyondLimits;
            return record.ToEvent(day, address, isBeyond);
        }, note, cancellation) switch
        {
            GoodsInOutcome.Told told => Tell(told.Outcome, address),
            GoodsInOutcome.NotKept notKept => (null, Refusal(notKept.Outcome, build.Family)),
            var other => throw new InvalidOperationException($"Goods in ended as {other.GetType().Name}, which no answer names."),
        };

        (GoodsInRecorded?, ProblemAnswer?) Tell(OrderOutcome outcome, string? kept) => outcome switch
        {
            OrderOutcome.Done done => (Answer(build, record, done.Now, kept, isBeyond, today), null),
            OrderOutcome.Faulty late => (null, OrderProblems.Faulty(late.Fault)),
            OrderOutcome.Stale stale => (null, OrderProblems.Outdated(stale.Present, seen)),
            _ => (null, OrderProblems.NoOrder(build.Code, record.Order.ToString(CultureInfo.InvariantCulture))),
        };
    }

    /// <summary>Why readings are not kept.</summary>
    internal static ProblemAnswer Refusal(EditOutcome notKept, string book) => notKept switch
    {
        EditOutcome.Faulty faulty => EditProblems.Faulty(faulty.Faults, inChanges: true),
        EditOutcome.InUse inUse => EditProblems.InUse(inUse.Users, inUse.Total, "mend those rows first"),
        EditOutcome.NoBook => EditProblems.NoBook(book),
        var other => throw new InvalidOperationException($"An item that is new ended as {other.GetType().Name}, which no answer names."),
    };

    private OrderFault? FaultOf(Build build, Order order, GoodsInRecord record, string day) =>
        record.IsRight && (record.Fault is not null || record.Sent is not null)
            ? new OrderFault("isRight", "true", "false where something is wrong with it", "leave fault and sent out, or say that it is not right")
            : record is { Readings.Count: > 0, IsRight: false, Fault: ArrivalFault.OtherPart } && source.Find(build.Family)?.Facts.Family.FindPart(record.Sent ?? "") is null
                ? new OrderFault("readings", record.Sent ?? "nothing", "readings of a part that the books describe", "record the part that came first, or leave the readings out")
            : FaultOfLook(order, record)
                ?? OrderEventCheck.FaultOfDay(record.ToEvent(day, null, isBeyondLimits: false), time.Today())
                ?? OrderFold.FaultOf(order, record.ToEvent(day, null, isBeyondLimits: false));

    /// <summary>What is right was there to be looked at, and was looked at: both are told, not taken for granted.</summary>
    private static OrderFault? FaultOfLook(Order order, GoodsInRecord record) => !record.IsRight ? null
        : OrderEventCheck.FaultOfLook(order, record.ToEvent(order.Terms.OrderedOn, null, isBeyondLimits: false)) is { } fault
            ? fault.Field == "act" ? fault with { Field = "isRight", Found = "true" } : fault
            : null;

    private static IEnumerable<RowChange> Rows(Order order, GoodsInRecord record, string item, string day)
    {
        var part = record is { IsRight: false, Fault: ArrivalFault.OtherPart, Sent: { } other } ? other : order.Lines[record.Line - 1].Agreed.Part; // judged: the line is there
        yield return new RowChange("items", null, null, new Dictionary<string, string>
        {
            ["item"] = item,
            ["part"] = part,
            ["origin"] = Codes.Of(ItemOrigin.Arrival),
            ["note"] = string.Create(CultureInfo.InvariantCulture, $"{order.Build}, order {order.Number}, line {record.Line}"),
        });
        foreach (var reading in record.Readings)
        {
            yield return new RowChange("readings", null, null, new Dictionary<string, string>
            {
                ["item"] = item,
                ["feature"] = reading.Feature,
                ["value"] = reading.Value,
                ["unit"] = reading.Unit ?? "",
                ["uncertainty"] = reading.Uncertainty ?? "",
                ["instrument"] = reading.Instrument ?? "",
                ["readOn"] = record.On ?? day,
            });
        }
    }

    /// <summary>As by custom, the next after the highest.</summary>
    private string FreeCode(string book)
    {
        var highest = items.List(book).Select(item => item.Code.StartsWith("it-", StringComparison.Ordinal) && int.TryParse(item.Code.AsSpan(3), out var number) ? number : 0)
            .DefaultIfEmpty(0).Max();
        return string.Create(CultureInfo.InvariantCulture, $"it-{highest + 1:0000}");
    }

    private ItemCondition? ConditionOf(string family, Item item)
    {
        if (source.Find(family) is not { Facts: var facts } || item.Part is not { } id)
        {
            return null;
        }

        var part = facts.Family.GetPart(id);
        return ItemCheck.Decide(facts.Family, facts.Family.GetKind(part.Kind), facts.Family.Limits, part, item, facts.Family.Selects).Condition;
    }

    private GoodsInRecorded Answer(Build build, GoodsInRecord record, Order now, string? item, bool isBeyond, DateOnly today)
    {
        var facts = source.Find(build.Family)?.Facts ?? throw new InvalidOperationException("The family was there when its order was judged.");
        var line = now.Lines[record.Line - 1];
        var isRight = record.IsRight && !isBeyond;
        var text = isRight ? item is null ? "Right: it is counted as there."
                : "Right: it is counted as there, and the plan asks its fit with what was read; see there whether it still counts as good."
            : $"{(isBeyond && record.IsRight ? "The right number, and a reading lies beyond its limit: it is told as wrong. " : "")}"
                + $"It no longer counts for the plan, which finds another way. {line.ReturnText}";
        return new GoodsInRecorded(now, GoodsIn.ArrivalOf(facts, lookAlikes.Get(), now, line, today), item, text, OrderLinks.To(now));
    }
}
