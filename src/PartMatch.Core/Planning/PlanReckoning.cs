namespace PartMatch.Core.Planning;

/// <summary>What decisions come to, added up from the problem and not from the model that made them.</summary>
internal static class PlanReckoning
{
    public static PlanTotals Add(
        PlanProblem problem, IReadOnlyList<int?> choices, IReadOnlyList<int> packs, IReadOnlyList<int?> jobs, IReadOnlyList<bool> doubts, int days)
    {
        var cost = problem.FixedCost;
        var (risk, kept) = (0L, 0);
        for (var place = 0; place < choices.Count; place++)
        {
            if (choices[place] is { } made)
            {
                var choice = problem.Places[place].Choices[made];
                (cost, risk, kept) = (cost + choice.Cost, risk + choice.Risk, kept + choice.Kept);
            }
        }

        for (var offer = 0; offer < packs.Count; offer++)
        {
            cost += problem.Offers[offer].Price * packs[offer];
            risk += packs[offer] > 0 ? problem.Offers[offer].Risk : 0;
        }

        cost += problem.Jobs.Where((_, job) => jobs[job] is not null).Sum(job => job.Cost);
        risk += problem.Doubts.Where((_, doubt) => doubts[doubt]).Sum(doubt => doubt.Risk);
        var sending = Sending(problem, choices, packs, [.. jobs.Select(start => start is not null)]);
        return new PlanTotals(cost + sending, sending, days, risk, kept);
    }

    /// <summary>What all sellers charge. What has a sending of its own is not in the seller's parcel and does not make it free.</summary>
    public static long Sending(PlanProblem problem, IReadOnlyList<int?> choices, IReadOnlyList<int> packs, IReadOnlyList<bool> isDone)
    {
        var bought = problem.Offers.Index().Where(offer => packs[offer.Index] > 0).ToList();
        return bought.Sum(offer => offer.Item.OwnSending ?? 0) + bought.Where(offer => offer.Item.OwnSending is null)
            .GroupBy(offer => (offer.Item.Seller, PlanLater.IsLater(problem, offer.Item, choices, isDone)))
            .Sum(parcel => Parcel(problem.Sellers[parcel.Key.Seller], [.. parcel.Select(offer => (offer.Item, packs[offer.Index]))]));
    }

    /// <summary>What a seller charges for one parcel; nothing where there is nothing in it.</summary>
    public static long Parcel(PlanSeller seller, IReadOnlyList<(PlanOffer Offer, int Packs)> goods) =>
        goods.Count == 0 || goods.Sum(one => one.Packs * one.Offer.GoodsValue) >= seller.FreeFrom
            ? 0 : seller.ParcelCost + (seller.PieceCost * goods.Sum(one => (long)one.Packs * one.Offer.SentAs));
}
