using System.Globalization;
using PartMatch.Core.Catalogue;
using PartMatch.Core.LookAlikes;
using PartMatch.Core.Orders;
using PartMatch.Core.Planning;

namespace PartMatch.Core.Builds;

/// <summary>The pairs of parts that endanger what a build has bought or is to buy, worst first.</summary>
/// <param name="Pairs">Ordered by danger (ease × harm, largest first), offers of both together, then the two parts; a pair once.</param>
public sealed record BuildLookAlikes(BuildLookAlikesAsked Asked, string HeadlineText, IReadOnlyList<EndangeredBy> Pairs)
{
    public string Permalink { get; init; } = "";

    /// <param name="plan">With what was bought and what is to be bought.</param>
    public static BuildLookAlikes Of(LookAlikeFacts facts, string family, BuildPlan plan, DangerLevel least)
    {
        var bought = plan.Bought.Where(piece => piece.State != LineState.Checked).ToLookup(piece => piece.Part, StringComparer.Ordinal);
        var toBuy = plan.Baskets.SelectMany(basket => basket.Items).Where(item => item.Part is not null).ToLookup(item => item.Part!, StringComparer.Ordinal); // filtered
        var parts = bought.Select(one => one.Key).Concat(toBuy.Select(one => one.Key)).ToHashSet(StringComparer.Ordinal);
        EndangeredBy[] pairs =
        [
            .. PairRanking.Endangering(facts, family, parts, least).Select(pair =>
            {
                var part = parts.Contains(pair.A.Part) ? pair.A.Part : pair.B.Part;
                string[] orders = [.. bought[part].Select(piece => string.Create(CultureInfo.InvariantCulture, $"order {piece.Order}, line {piece.Line}: {Codes.Of(piece.State)}"))];
                return new EndangeredBy(
                    part, part == pair.A.Part ? pair.B.Part : pair.A.Part,
                    [.. bought[part].SelectMany(piece => piece.For).Concat(toBuy[part].SelectMany(item => item.For)).Distinct(StringComparer.Ordinal)],
                    orders, [.. toBuy[part].Select(item => item.Offer)], pair);
            }),
        ];
        var text = pairs.Length == 0
            ? "Nothing that is on the way, unchecked or to be bought is known to be mixed up at this danger."
            : string.Create(CultureInfo.InvariantCulture, $"{pairs.Length} {(pairs.Length == 1 ? "pair" : "pairs")} to tell apart, the worst first: {pairs[0].Part} and {pairs[0].Other}.");
        return new BuildLookAlikes(new BuildLookAlikesAsked(plan.Asked.Build, plan.Asked.Version, plan.Asked.Objective, least), text, pairs);
    }
}

public sealed record BuildLookAlikesAsked(string Build, int Version, PlanObjective Objective, DangerLevel Danger);

/// <summary>A pair that one of the build's parts is in.</summary>
/// <param name="Part">The one that is wanted.</param>
/// <param name="Other">The one that may come, or be bought, instead.</param>
/// <param name="For">Positions it is for.</param>
/// <param name="Orders">Lines of orders that are on the way or not looked at.</param>
/// <param name="Offers">Offers that the plan buys, as <c>book/offer</c>.</param>
public sealed record EndangeredBy(
    string Part, string Other, IReadOnlyList<string> For, IReadOnlyList<string> Orders, IReadOnlyList<string> Offers, PairRow Pair);
