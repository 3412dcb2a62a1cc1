using System.Globalization;
using PartMatch.Core.Catalogue;
using PartMatch.Core.LookAlikes;
using PartMatch.Core.Orders;
using PartMatch.Core.Planning;

namespace PartMatch.Core.Builds;

/// <summary>The pairs of parts that endanger what a build has bought or is to buy, what came wrong first, then the worst.</summary>
/// <param name="Pairs">Those that came wrong in this build first; then ordered by danger (ease × harm, largest first), offers of both together,
/// then the two parts; a pair once.</param>
public sealed record BuildLookAlikes(BuildLookAlikesAsked Asked, string HeadlineText, IReadOnlyList<EndangeredBy> Pairs)
{
    public string Permalink { get; init; } = "";

    /// <param name="plan">With what was bought and what is to be bought.</param>
    /// <param name="orders">Of the build: a pair of which the one came for the other is listed whatever its danger.</param>
    public static BuildLookAlikes Of(LookAlikeFacts facts, string family, BuildPlan plan, DangerLevel least, IReadOnlyList<Order> orders)
    {
        var wrong = orders.SelectMany(order => order.Lines.SelectMany(line => line.CameWrong
            .Where(came => came is { Fault: ArrivalFault.OtherPart, Sent: not null })
            .Select(came => (Part: KeyOf(line.Agreed.Part), Sent: KeyOf(came.Sent!), Text: Say(order, line, came))))).ToList(); // filtered just above
        string[] CameWrong(string one, string other) =>
            [.. wrong.Where(came => (came.Part, came.Sent) == (one, other) || (came.Part, came.Sent) == (other, one)).Select(came => came.Text)];
        var bought = plan.Bought.Where(piece => piece.State != LineState.Checked).ToLookup(piece => piece.Part, StringComparer.Ordinal);
        var toBuy = plan.Baskets.SelectMany(basket => basket.Items).Where(item => item.Part is not null).ToLookup(item => item.Part!, StringComparer.Ordinal); // filtered
        var parts = bought.Select(one => one.Key).Concat(toBuy.Select(one => one.Key)).ToHashSet(StringComparer.Ordinal);
        EndangeredBy[] pairs =
        [
            .. PairRanking.Endangering(facts, family, parts, DangerLevel.None)
                .Select(pair => (pair, CameWrong: CameWrong(KeyOf(pair.A.Part), KeyOf(pair.B.Part))))
                .Where(one => one.pair.Danger >= least || one.CameWrong.Length > 0)
                .OrderByDescending(one => one.CameWrong.Length > 0).Select(one =>
            {
                var pair = one.pair;
                var part = parts.Contains(pair.A.Part) ? pair.A.Part : pair.B.Part;
                string[] orders = [.. bought[part].Select(piece => string.Create(CultureInfo.InvariantCulture, $"order {piece.Order}, line {piece.Line}: {Codes.Of(piece.State)}"))];
                return new EndangeredBy(
                    part, part == pair.A.Part ? pair.B.Part : pair.A.Part,
                    [.. bought[part].SelectMany(piece => piece.For).Concat(toBuy[part].SelectMany(item => item.For)).Distinct(StringComparer.Ordinal)],
                    orders, [.. toBuy[part].Select(item => item.Offer)], pair)
                {
                    CameWrong = one.CameWrong,
                };
            }),
        ];
        var text = pairs.Length == 0
            ? "Nothing that is on the way, unchecked or to be bought is known to be mixed up at this danger."
            : string.Create(
                CultureInfo.InvariantCulture,
                $"{pairs.Length} {(pairs.Length == 1 ? "pair" : "pairs")} to tell apart, "
                    + $"{(pairs[0].CameWrong.Count > 0 ? "what came wrong first" : "the worst first")}: {pairs[0].Part} and {pairs[0].Other}.");
        return new BuildLookAlikes(new BuildLookAlikesAsked(plan.Asked.Build, plan.Asked.Version, plan.Asked.Objective, least), text, pairs);
    }

    /// <summary>One number is written in many ways.</summary>
    private static string KeyOf(string part) => PartId.FindKey(part) ?? part;

    private static string Say(Order order, LineNow line, CameWrong came) => string.Create(
        CultureInfo.InvariantCulture,
        $"{came.Sent} came for {line.Agreed.Part} in this build: order {order.Number}, line {line.Line}, {came.On:yyyy-MM-dd}"
            + $"{(order.Terms.Seller is { } seller ? $", from {seller}" : "")}");
}

public sealed record BuildLookAlikesAsked(string Build, int Version, PlanObjective Objective, DangerLevel Danger);

/// <summary>A pair that one of the build's parts is in.</summary>
/// <param name="Part">The one that is wanted.</param>
/// <param name="Other">The one that may come, or be bought, instead.</param>
/// <param name="For">Positions it is for.</param>
/// <param name="Orders">Lines of orders that are on the way or not looked at.</param>
/// <param name="Offers">Offers that the plan buys, as <c>book/offer</c>.</param>
public sealed record EndangeredBy(
    string Part, string Other, IReadOnlyList<string> For, IReadOnlyList<string> Orders, IReadOnlyList<string> Offers, PairRow Pair)
{
    /// <summary>How the one came for the other in this build already, in words; it stands first for that. Empty where it did not.</summary>
    public IReadOnlyList<string> CameWrong { get; init; } = [];
}
