namespace PartMatch.Core.Planning;

/// <summary>Products of one place of which no plan needs two: every choice takes at most one of them, and no other place takes any.</summary>
internal static class PlanFamilies
{
    /// <summary>Shares of a family are whole numbers of this at most: beyond it the rows would say little and weigh much.</summary>
    private const long MostWhole = 840;

    public static IReadOnlyList<PlanFamily> Of(PlanProblem problem, PlanNeeds needs)
    {
        var families = new List<PlanFamily>();
        var atPlace = problem.Places.Select(_ => new List<int>()).ToArray();
        for (var product = 0; product < problem.Products.Count; product++)
        {
            var (takes, missing) = (needs.Takes[product], needs.Missing[product]);
            if (missing is 0 or > MostWhole || takes.Any(take => take.Place != takes[0].Place))
            {
                continue;
            }

            var choices = takes.Select(take => take.Choice).ToHashSet();
            var here = atPlace[takes[0].Place];
            var found = here.FindIndex(family => !families[family].Choices.Overlaps(choices) && CommonMultiple(families[family].Whole, missing) <= MostWhole);
            if (found >= 0)
            {
                var family = families[here[found]];
                families[here[found]] = new PlanFamily([.. family.Products, product], [.. family.Choices, .. choices], CommonMultiple(family.Whole, missing));
            }
            else
            {
                here.Add(families.Count);
                families.Add(new PlanFamily([product], choices, missing));
            }
        }

        return families;
    }

    /// <summary>No plan that is worth more buys beyond the need of these: a pack is a piece.</summary>
    public static bool IsOnePiece(PlanOffer offer) => offer.Holds is [{ Pieces: 1 }];

    private static long CommonMultiple(long one, long other)
    {
        var (large, small) = (one, other);
        while (small > 0)
        {
            (large, small) = (small, large % small);
        }

        return one / large * other;
    }
}

/// <param name="Whole">What the missing pieces of each of its products divide.</param>
internal sealed record PlanFamily(IReadOnlyList<int> Products, HashSet<int> Choices, long Whole);
