namespace PartMatch.Core.Planning;

/// <summary>What follows from the problem before anything is decided: how much of each product can be needed at most, how many packs can be of use.</summary>
internal sealed class PlanNeeds
{
    public PlanNeeds(PlanProblem problem)
    {
        Most = new long[problem.Products.Count];
        foreach (var place in problem.Places)
        {
            var here = new Dictionary<int, long>();
            foreach (var choice in place.Choices)
            {
                foreach (var (product, pieces) in Pieces(choice.Uses))
                {
                    here[product] = long.Max(here.GetValueOrDefault(product), pieces);
                }
            }

            foreach (var (product, pieces) in here)
            {
                Most[product] += pieces;
            }
        }

        NeededPacks = [.. problem.Offers.Select(offer => long.Min(offer.Packs, Needed(problem, offer)))];
        Packs = [.. problem.Offers.Select((offer, index) => long.Max(NeededPacks[index], long.Min(offer.Packs, Freeing(problem, offer))))];
    }

    /// <summary>For each product, the pieces that all places together can take.</summary>
    public long[] Most { get; }

    /// <summary>For each offer, the packs that cover every need.</summary>
    public long[] NeededPacks { get; }

    /// <summary>For each offer, the packs beyond which another one only costs: they cover every need, or make sending free by themselves.</summary>
    public long[] Packs { get; }

    /// <summary>Each product once.</summary>
    public static Dictionary<int, long> Pieces(IReadOnlyList<PlanPieces> pieces)
    {
        var sums = new Dictionary<int, long>();
        foreach (var (product, count) in pieces)
        {
            sums[product] = sums.GetValueOrDefault(product) + count;
        }

        return sums;
    }

    private long Needed(PlanProblem problem, PlanOffer offer)
    {
        var needed = 0L;
        foreach (var (product, pieces) in Pieces(offer.Holds))
        {
            var missing = Most[product] - problem.Products[product].InHand;
            if (missing > 0 && pieces > 0)
            {
                needed = long.Max(needed, Quotient(missing, pieces));
            }
        }

        return needed;
    }

    private static long Freeing(PlanProblem problem, PlanOffer offer) =>
        offer is { OwnSending: null, GoodsValue: > 0 } && problem.Sellers[offer.Seller].FreeFrom is { } freeFrom and > 0 ? Quotient(freeFrom, offer.GoodsValue) : 0;

    private static long Quotient(long all, long each) => (all - 1) / each + 1;
}
