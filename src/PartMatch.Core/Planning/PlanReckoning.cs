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
        var sending = Sending(problem, packs);
        return new PlanTotals(cost + sending, sending, days, risk, kept);
    }

    /// <summary>What all sellers charge. What has a sending of its own is not in the seller's parcel and does not make it free.</summary>
    public static long Sending(PlanProblem problem, IReadOnlyList<int> packs)
    {
        var own = problem.Offers.Where((_, offer) => packs[offer] > 0).Sum(offer => offer.OwnSending ?? 0);
        return own + problem.Sellers.Select((_, seller) => Parcel(problem, seller, packs)).Sum();
    }

    private static long Parcel(PlanProblem problem, int seller, IReadOnlyList<int> packs)
    {
        var (count, goods) = (0L, 0L);
        for (var offer = 0; offer < packs.Count; offer++)
        {
            if (problem.Offers[offer] is { OwnSending: null } sent && sent.Seller == seller)
            {
                count += (long)packs[offer] * sent.SentAs;
                goods += packs[offer] * sent.GoodsValue;
            }
        }

        var terms = problem.Sellers[seller];
        return count == 0 || goods >= terms.FreeFrom ? 0 : terms.ParcelCost + (terms.PieceCost * count);
    }
}
