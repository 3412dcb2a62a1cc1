namespace PartMatch.Core.Planning;

/// <summary>
/// Whether a problem can be reckoned with: indexes that exist, no amount below 0 where none makes sense, numbers that no sum of them overflows.
/// </summary>
public static class PlanProblemCheck
{
    /// <summary>
    /// All money of a problem together, every pack of use bought, and all risk together: at most so much. A double holds every whole number up to nine
    /// times that, and the solver's bounds are doubles.
    /// </summary>
    public const long Most = 1_000_000_000_000_000;

    /// <summary>No day, no number of pieces or packs is beyond this one.</summary>
    public const int MostCount = 1_000_000;

    /// <exception cref="ArgumentException">What was found, what was expected, and where.</exception>
    public static void Check(PlanProblem problem)
    {
        for (var place = 0; place < problem.Places.Count; place++)
        {
            foreach (var choice in problem.Places[place].Choices)
            {
                CheckPieces(problem, choice.Uses, $"choice \"{choice.Name}\" of place \"{problem.Places[place].Name}\"");
                AtLeastNothing(choice.Risk, $"the risk of choice \"{choice.Name}\" of place \"{problem.Places[place].Name}\"");
            }
        }

        foreach (var product in problem.Products)
        {
            AtLeastNothing(product.InHand, $"what is in hand of \"{product.Name}\"");
        }

        foreach (var seller in problem.Sellers)
        {
            AtLeastNothing(seller.ParcelCost, $"the parcel of seller \"{seller.Name}\"");
            AtLeastNothing(seller.PieceCost, $"the charge for a pack of seller \"{seller.Name}\"");
        }

        foreach (var offer in problem.Offers)
        {
            CheckOffer(problem, offer);
        }

        foreach (var doubt in problem.Doubts)
        {
            AtLeastNothing(doubt.Risk, $"the risk of \"{doubt.Name}\"");
        }

        foreach (var offer in problem.Offers)
        {
            AtLeastNothing(offer.Rank, $"the rank of \"{offer.Name}\"");
        }

        foreach (var job in problem.Jobs)
        {
            Count(job.Days, $"the days of job \"{job.Name}\"");
            int[] ordered = job.Orders is { } place ? [place] : [];
            Within([.. job.NeedsPlaces, .. job.HoldsPlaces, .. ordered], problem.Places.Count, $"place of job \"{job.Name}\"");
            Within(job.AfterJobs, problem.Jobs.Count, $"job before job \"{job.Name}\"");
        }

        if (PlanCalendar.Order(problem.Jobs) is null)
        {
            throw new ArgumentException("found jobs that wait for each other, expected an order in which they can be done: look at their AfterJobs");
        }

        foreach (var rule in problem.Rules)
        {
            foreach (var fact in rule.If.Concat(rule.Then))
            {
                CheckFact(problem, fact);
            }
        }

        CheckSums(problem);
    }

    private static void CheckOffer(PlanProblem problem, PlanOffer offer)
    {
        CheckPieces(problem, offer.Holds, $"offer \"{offer.Name}\"");
        Within([offer.Seller], problem.Sellers.Count, $"seller of offer \"{offer.Name}\"");
        AtLeastNothing(offer.Price, $"the price of offer \"{offer.Name}\"");
        Within(offer.OrderedAfter, problem.Jobs.Count, $"job before offer \"{offer.Name}\"");
        Count(offer.SentAs, $"the pieces that a pack of offer \"{offer.Name}\" is sent as");
        AtLeastNothing(offer.Packs, $"the packs of offer \"{offer.Name}\"");
        AtLeastNothing(offer.OwnSending ?? 0, $"the sending of offer \"{offer.Name}\"");
        AtLeastNothing(offer.GoodsValue, $"the value of the goods of offer \"{offer.Name}\"");
        AtLeastNothing(offer.Risk, $"the risk of offer \"{offer.Name}\"");
        Count(offer.ArrivesOn, $"the day on which offer \"{offer.Name}\" arrives");
    }

    private static void CheckFact(PlanProblem problem, PlanFact fact)
    {
        switch (fact)
        {
            case ChoiceMade made:
                Within([made.Place], problem.Places.Count, "place of a rule");
                Within([made.Choice], problem.Places[made.Place].Choices.Count, $"choice of a rule at place \"{problem.Places[made.Place].Name}\"");
                break;
            case JobDone done:
                Within([done.Job], problem.Jobs.Count, "job of a rule");
                break;
            case DoubtTaken taken:
                Within([taken.Doubt], problem.Doubts.Count, "doubt of a rule");
                break;
        }
    }

    private static void CheckPieces(PlanProblem problem, IReadOnlyList<PlanPieces> pieces, string where)
    {
        foreach (var (product, count) in pieces)
        {
            Within([product], problem.Products.Count, $"product of {where}");
            Count(count, $"the pieces of {where}");
        }
    }

    private static void CheckSums(PlanProblem problem)
    {
        var needs = new PlanNeeds(problem);
        var choices = problem.Places.SelectMany(place => place.Choices).ToList();
        var bought = problem.Offers.Select((offer, index) => (offer, packs: (Int128)needs.MostPacks(index))).ToList();
        Count((int)long.Min(problem.Jobs.Sum(job => (long)job.Days), int.MaxValue), "the days of all jobs together");
        Together("money", [
            problem.FixedCost,
            .. choices.Select(choice => (Int128)choice.Cost),
            .. problem.Jobs.Select(job => (Int128)job.Cost),
            .. problem.Sellers.Select(seller => 2 * (Int128)seller.ParcelCost),
            .. bought.Select(one => one.packs * ((Int128)one.offer.Price + ((Int128)problem.Sellers[one.offer.Seller].PieceCost * one.offer.SentAs))),
            .. bought.Select(one => (Int128)(one.offer.OwnSending ?? 0)),
        ]);
        Together("pieces", [.. bought.SelectMany(one => one.offer.Holds.Select(held => one.packs * held.Pieces))]);
        Together("value of goods", [
            .. bought.Select(one => one.packs * one.offer.GoodsValue),
            .. problem.Sellers.Select(seller => (Int128)(seller.FreeFrom ?? 0)),
        ]);
        Together("risk", [
            .. choices.Select(choice => (Int128)choice.Risk),
            .. problem.Doubts.Select(doubt => (Int128)doubt.Risk),
            .. problem.Offers.Select(offer => (Int128)offer.Risk),
        ]);
    }

    private static void Together(string what, IEnumerable<Int128> amounts)
    {
        var sum = amounts.Aggregate(Int128.Zero, (all, amount) => all + Int128.Abs(amount));
        if (sum > Most)
        {
            throw new ArgumentException(
                $"found {sum} as all {what} of the problem together, expected at most {Most}: state amounts in a larger unit, or offers of fewer packs");
        }
    }

    private static void Within(IEnumerable<int> indexes, int count, string where)
    {
        foreach (var index in indexes)
        {
            if (index < 0 || index >= count)
            {
                throw new ArgumentException($"found {index} as {where}, expected an index below {count}");
            }
        }
    }

    private static void Count(int count, string where)
    {
        AtLeastNothing(count, where);
        if (count > MostCount)
        {
            throw new ArgumentException($"found {count} as {where}, expected at most {MostCount}");
        }
    }

    private static void AtLeastNothing(long amount, string where)
    {
        if (amount < 0)
        {
            throw new ArgumentException($"found {amount} as {where}, expected 0 or more");
        }
    }
}
