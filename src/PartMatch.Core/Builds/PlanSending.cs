using System.Globalization;
using PartMatch.Core.Buying;
using PartMatch.Core.Planning;

namespace PartMatch.Core.Builds;

/// <summary>What a seller's basket costs to send, as the plan reckons it: a parcel of what is ordered at once, one of what is ordered later.</summary>
internal static class PlanSending
{
    public static (long Cost, string Text) Of(BuildTerms terms, SolvedPlan solved, Seller seller, IReadOnlyList<(int Offer, int Packs)> bought)
    {
        var problem = solved.Written.Problem;
        var own = bought.Sum(one => problem.Offers[one.Offer].OwnSending ?? 0);
        var parcels = bought.Where(one => problem.Offers[one.Offer].OwnSending is null).GroupBy(one => solved.IsLater(one.Offer)).OrderBy(parcel => parcel.Key)
            .Select(parcel => ParcelOf(terms, problem, seller, [.. parcel.Select(one => (problem.Offers[one.Offer], one.Packs))])).ToList();
        string[] words =
        [
            .. parcels.Select((parcel, index) => parcels.Count > 1 ? $"{parcel.Text}, {(index == 0 ? "ordered at once" : "ordered when it has been measured for")}" : parcel.Text),
            .. own > 0 || bought.Any(one => problem.Offers[one.Offer].OwnSending is not null) ? [$"{terms.Say(own)} as its offers say"] : Array.Empty<string>(),
        ];
        return (own + parcels.Sum(parcel => parcel.Cost), string.Join("; ", words));
    }

    private static (long Cost, string Text) ParcelOf(BuildTerms terms, PlanProblem problem, Seller seller, List<(PlanOffer Offer, int Packs)> goods)
    {
        var sender = problem.Sellers[goods[0].Offer.Seller];
        var cost = PlanReckoning.Parcel(sender, goods);
        return (cost, goods.Sum(one => one.Packs * one.Offer.GoodsValue) >= sender.FreeFrom
            ? $"nothing for sending: the goods reach {Say(seller)}"
            : string.Create(
                CultureInfo.InvariantCulture,
                $"{terms.Say(cost)} for the parcel ({terms.Say(sender.ParcelCost)} and {terms.Say(sender.PieceCost)} for each of {goods.Sum(one => one.Packs * one.Offer.SentAs)} pieces)"));
    }

    private static string Say(Seller seller) => seller.FreeFrom is { } from ? $"{from.Amount} {from.Currency}" : "the seller's limit";
}
