using PartMatch.Core.Builds;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Identification;
using PartMatch.Core.Items;
using PartMatch.Core.LookAlikes;

namespace PartMatch.Core.Orders;

/// <summary>One line of an order as it is looked at when it comes in.</summary>
/// <param name="Version">Of its order, to be named by whoever tells what came.</param>
/// <param name="Number">Of the part, as it should stand on it.</param>
/// <param name="Key">How it is told apart from what can be taken for it, in hand; null where no book describes the part any more.</param>
/// <param name="Measure">Limits that hold for it: what to read on it.</param>
/// <param name="Items">Examples of the line that were measured, held against the limits.</param>
/// <param name="Cautions">Of its kind: what to mind before it is handled.</param>
public sealed record Arrival(
    int Order, int Version, int Line, string? Seller, string Part, string Number, string Name, string? Kind, LineState State, LinePieces Pieces,
    DateOnly? ArrivedOn, DateOnly? ExpectedOn, bool IsLate, TellApartAnswer? Key, IReadOnlyList<LimitAnswer> Measure, IReadOnlyList<ItemAnswer> Items,
    IReadOnlyList<CameWrong> CameWrong, DateOnly? ReturnBy, string? ReturnText, IReadOnlyList<Caution> Cautions)
{
    /// <summary>Of a kit or an assembly, what the books say is in it: each may be another than it should be. Empty where it is one part, or nothing is recorded.</summary>
    public IReadOnlyList<InsideArrival> Inside { get; init; } = [];
}

/// <summary>A part inside a kit or an assembly that came.</summary>
/// <param name="IsCertain">Is it surely in there, as far as the books say?</param>
/// <param name="Key">How it is told apart from what can be taken for it, in hand; null where no book describes the part.</param>
public sealed record InsideArrival(string Part, string Number, string Name, int? Pieces, bool IsCertain, TellApartAnswer? Key);

/// <summary>What is to be held against what was ordered: everything that is on the way, there and not looked at, or wrong and not back yet.</summary>
public static class GoodsIn
{
    /// <param name="orders">Of one build.</param>
    /// <returns>What is there and not looked at first, then what is wrong, then what is on the way, each by order and line.</returns>
    public static IReadOnlyList<Arrival> Of(BuildFacts facts, LookAlikeFacts lookAlikes, IReadOnlyList<Order> orders, DateOnly today) =>
    [
        .. orders.SelectMany(order => order.Lines.Select(line => (order, line)))
            .Where(one => one.line.State is LineState.Ordered or LineState.Arrived or LineState.Wrong)
            .OrderBy(one => one.line.State switch { LineState.Arrived => 0, LineState.Wrong => 1, _ => 2 })
            .Select(one => ArrivalOf(facts, lookAlikes, one.order, one.line, today)),
    ];

    /// <summary>One line, whatever its state.</summary>
    public static Arrival ArrivalOf(BuildFacts facts, LookAlikeFacts lookAlikes, Order order, LineNow line, DateOnly today)
    {
        var part = facts.Family.FindPart(line.Agreed.Part);
        var kind = part is null ? null : facts.Family.FindKind(part.Kind);
        var expected = OrderText.FindDay(order.Terms.ExpectedOn);
        return new Arrival(
            order.Number, order.Version, line.Line, order.Terms.Seller, line.Agreed.Part, part?.Number ?? line.Agreed.Part, line.Agreed.Name, part?.Kind, line.State,
            line.Pieces, line.ArrivedOn, expected, line.Pieces.OnTheWay > 0 && expected < today, part is null ? null : KeyOf(lookAlikes, part.Id),
            part is null || kind is null ? [] : Check(facts, kind, part, new Item("", "", part.Id, null, null, null, null, [], [])).Limits,
            part is null || kind is null ? [] : [.. line.Items.Select(address => facts.Items.FirstOrDefault(item => item.Address == address)).OfType<Item>()
                .Select(item => Check(facts, kind, part, item))],
            line.CameWrong, line.ReturnBy, line.State == LineState.Ordered ? null : line.ReturnText, kind is null ? [] : Cautions.Of(kind.Cautions))
        {
            Inside = [.. facts.Contents[line.Agreed.Part].Where(row => row.Part != line.Agreed.Part).Select(row => InsideOf(facts, lookAlikes, row))],
        };
    }

    private static InsideArrival InsideOf(BuildFacts facts, LookAlikeFacts lookAlikes, ContentsRow row)
    {
        var part = facts.Family.FindPart(row.Part);
        return new InsideArrival(
            row.Part, part?.Number ?? row.Part, part?.Name ?? row.Part, row.Quantity, row.Certainty == Certainty.Certain, part is null ? null : KeyOf(lookAlikes, part.Id));
    }

    private static TellApartAnswer? KeyOf(LookAlikeFacts lookAlikes, string part) =>
        PartIdentification.Decide(lookAlikes, [part], new TellApartTerms(CheckMode.InHand, TellApartTerms.AllTools, [])) is TellApartDecided decided
            ? decided.Answer with
            {
                Permalink = new Permalink("/api/tell-apart").With("parts", string.Join(',', decided.Answer.Asked.Parts)).With("mode", Codes.Of(CheckMode.InHand)).ToString(),
            }
            : null;

    private static ItemAnswer Check(BuildFacts facts, Kind kind, Part part, Item item) =>
        ItemCheck.Decide(facts.Family, kind, facts.Family.Limits, part, item, facts.Family.Selects);
}
