namespace PartMatch.Core.Planning;

/// <summary>What follows from the problem before anything is decided: how much of each product can be needed at most, how many packs can be of use.</summary>
internal sealed class PlanNeeds
{
    private readonly PlanProblem _problem;

    public PlanNeeds(PlanProblem problem)
    {
        _problem = problem;
        var takes = problem.Products.Select(_ => new List<PlanTake>()).ToArray();
        for (var place = 0; place < problem.Places.Count; place++)
        {
            for (var choice = 0; choice < problem.Places[place].Choices.Count; choice++)
            {
                foreach (var (product, pieces) in Pieces(problem.Places[place].Choices[choice].Uses).Where(use => use.Value > 0))
                {
                    takes[product].Add(new PlanTake(place, choice, pieces));
                }
            }
        }

        Takes = takes;
        Missing = [.. takes.Select((all, product) =>
            long.Max(0, all.GroupBy(take => take.Place).Sum(here => here.Max(take => take.Pieces)) - problem.Products[product].InHand))];
        Packs = [.. problem.Offers.Select(offer => long.Min(offer.Packs, Needed(offer)))];
        SparePacks = [.. problem.Offers.Select(offer => long.Min(offer.Packs, Freeing(problem, offer)))];
    }

    /// <summary>For each product, who can take it, by places.</summary>
    public IReadOnlyList<IReadOnlyList<PlanTake>> Takes { get; }

    /// <summary>For each product, the pieces to be bought at most: all that the places can take together, without what is in hand.</summary>
    public long[] Missing { get; }

    /// <summary>For each offer, the packs that cover every need.</summary>
    public long[] Packs { get; }

    /// <summary>For each offer, the packs that make the parcel free by themselves: none are bought beyond the need but for that.</summary>
    public long[] SparePacks { get; }

    public long MostPacks(int offer) => long.Min(_problem.Offers[offer].Packs, Packs[offer] + SparePacks[offer]);

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

    private long Needed(PlanOffer offer)
    {
        var needed = 0L;
        foreach (var (product, pieces) in Pieces(offer.Holds))
        {
            if (Missing[product] > 0 && pieces > 0)
            {
                needed = long.Max(needed, Quotient(Missing[product], pieces));
            }
        }

        return needed;
    }

    private static long Freeing(PlanProblem problem, PlanOffer offer) =>
        offer is { OwnSending: null, GoodsValue: > 0 } && problem.Sellers[offer.Seller].FreeFrom is { } freeFrom and > 0 ? Quotient(freeFrom, offer.GoodsValue) : 0;

    private static long Quotient(long all, long each) => ((all - 1) / each) + 1;
}

/// <summary>A choice that takes a product.</summary>
internal sealed record PlanTake(int Place, int Choice, long Pieces);
