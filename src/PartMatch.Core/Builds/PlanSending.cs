using System.Globalization;
using PartMatch.Core.Buying;

namespace PartMatch.Core.Builds;

/// <summary>What a seller's basket costs to send, as the plan reckons it.</summary>
internal static class PlanSending
{
    public static (long Cost, string Text) Of(BuildTerms terms, SolvedPlan solved, Seller seller, IReadOnlyList<(int Offer, int Packs)> bought)
    {
        var problem = solved.Written.Problem;
        var own = bought.Where(one => problem.Offers[one.Offer].OwnSending is not null).Sum(one => problem.Offers[one.Offer].OwnSending ?? 0);
        var parcel = bought.Where(one => problem.Offers[one.Offer].OwnSending is null).ToList();
        var sender = problem.Sellers[problem.Offers[bought[0].Offer].Seller];
        var pieces = parcel.Sum(one => one.Packs * problem.Offers[one.Offer].SentAs);
        var goods = parcel.Sum(one => problem.Offers[one.Offer].GoodsValue * one.Packs);
        var isFree = goods >= sender.FreeFrom;
        var usual = pieces == 0 || isFree ? 0 : sender.ParcelCost + (sender.PieceCost * pieces);
        string[] words =
        [
            .. pieces == 0 ? Array.Empty<string>()
                : isFree ? [$"nothing for sending: the goods reach {Say(seller)}"]
                : [string.Create(
                    CultureInfo.InvariantCulture,
                    $"{terms.Say(usual)} for the parcel ({terms.Say(sender.ParcelCost)} and {terms.Say(sender.PieceCost)} for each of {pieces} pieces)")],
            .. own > 0 || parcel.Count < bought.Count ? [$"{terms.Say(own)} as its offers say"] : Array.Empty<string>(),
        ];
        return (own + usual, string.Join("; ", words));
    }

    private static string Say(Seller seller) => seller.FreeFrom is { } from ? $"{from.Amount} {from.Currency}" : "the seller's limit";
}
