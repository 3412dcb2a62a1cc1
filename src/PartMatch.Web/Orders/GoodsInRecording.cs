using System.Globalization;
using PartMatch.Core.Builds;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Items;
using PartMatch.Core.Orders;
using PartMatch.Storage.Editing;
using PartMatch.Storage.History;
using PartMatch.Storage.Items;
using PartMatch.Storage.Orders;
using PartMatch.Web.Builds;
using PartMatch.Web.Editing;
using PartMatch.Web.Http;
using PartMatch.Web.LookAlikes;
using PartMatch.Web.Offers;

namespace PartMatch.Web.Orders;

/// <summary>Keeps what was found of what came: first what was read, as an item of the family's book, then what it makes of the order.</summary>
internal sealed class GoodsInRecording(
    OrderStore orders, EditStore edits, ItemStore items, BuildSource source, LookAlikeSource lookAlikes, TimeProvider time)
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

        string? item = null;
        var isBeyond = false;
        if (record.Readings.Count > 0)
        {
            item = FreeCode(build.Family);
            if (edits.Apply(build.Family, [.. Rows(order, record, item, day)], note, Act.Edit, cancellation) is var outcome && outcome is not EditOutcome.Done)
            {
                return (null, outcome is EditOutcome.Faulty faulty ? EditProblems.Faulty(faulty.Faults, inChanges: true) : EditProblems.NoBook(build.Family));
            }

            isBeyond = Check(build.Family, item)?.Condition == Core.Items.ItemCondition.BeyondLimits;
        }

        var address = item is null ? null : $"{build.Family}/{item}";
        return orders.Append(build.Code, order.Number, seen, record.ToEvent(day, address, isBeyond), note) switch
        {
            OrderOutcome.Done done => (Answer(build, record, done.Now, address, isBeyond, today), null),
            OrderOutcome.Faulty late => (null, OrderProblems.Faulty(late.Fault)),
            OrderOutcome.Stale stale => (null, OrderProblems.Outdated(stale.Present, seen)),
            _ => (null, OrderProblems.NoOrder(build.Code, record.Order.ToString(CultureInfo.InvariantCulture))),
        };
    }

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
        : order.Lines.ElementAtOrDefault(record.Line - 1) is { State: LineState.Ordered }
            ? new OrderFault("isRight", "true", "a line of which something has come", "tell first that it arrived")
        : record is { Seen.Count: 0, WithoutCheck: false }
            ? new OrderFault("seen", "nothing", "at least one check of its key, as the key writes it", "tell what was seen; where none was made, say that it was looked at without a check (withoutCheck)")
        : record is { Seen.Count: > 0, WithoutCheck: true }
            ? new OrderFault("withoutCheck", "true", "nothing, because checks are told", "leave it out")
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

    private ItemAnswer? Check(string family, string code)
    {
        if (source.Find(family) is not { Facts: var facts } || items.Find(family, code) is not { Part: { } id } item)
        {
            return null;
        }

        var part = facts.Family.GetPart(id);
        return ItemCheck.Decide(facts.Family, facts.Family.GetKind(part.Kind), facts.Family.Limits, part, item, facts.Family.Selects);
    }

    private GoodsInRecorded Answer(Build build, GoodsInRecord record, Order now, string? item, bool isBeyond, DateOnly today)
    {
        var facts = source.Find(build.Family)?.Facts ?? throw new InvalidOperationException("The family was there when its order was judged.");
        var line = now.Lines[record.Line - 1];
        var isRight = record.IsRight && !isBeyond;
        var text = isRight ? "Right: it is counted as there."
            : $"{(isBeyond && record.IsRight ? "The right number, and a reading lies beyond its limit: it is told as wrong. " : "")}"
                + $"It no longer counts for the plan, which finds another way. {line.ReturnText}";
        return new GoodsInRecorded(now, GoodsIn.ArrivalOf(facts, lookAlikes.Get(), now, line, today), item, text, OrderLinks.To(now));
    }
}
