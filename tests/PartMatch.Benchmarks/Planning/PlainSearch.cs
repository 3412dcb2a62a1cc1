using Google.OrTools.Sat;
using PartMatch.Core.Planning;

namespace PartMatch.Benchmarks.Planning;

/// <summary>
/// The peers: the same choices, offers and parcels written down plainly for the same solver, least cost only; and each place by itself, parcels not
/// thought of.
/// </summary>
internal static class PlainSearch
{
    public static long Solve(PlanProblem problem)
    {
        var model = new CpModel();
        var cost = new List<LinearExpr> { LinearExpr.Constant(problem.FixedCost) };
        var choices = problem.Places.Select(place => place.Choices.Select(_ => model.NewBoolVar("")).ToList()).ToList();
        var packs = problem.Offers.Select(offer => model.NewIntVar(0, offer.Packs, "")).ToList();
        var lacking = problem.Products.Select(product => new List<LinearExpr> { LinearExpr.Constant(-product.InHand) }).ToList();
        foreach (var (place, flags) in problem.Places.Zip(choices))
        {
            model.AddExactlyOne(flags);
            foreach (var (choice, flag) in place.Choices.Zip(flags))
            {
                cost.Add(choice.Cost * flag);
                choice.Uses.ToList().ForEach(use => lacking[use.Product].Add(use.Pieces * flag));
            }
        }

        foreach (var (offer, count) in problem.Offers.Zip(packs))
        {
            cost.Add(offer.Price * count);
            offer.Holds.ToList().ForEach(held => lacking[held.Product].Add(-held.Pieces * count));
            if (offer.OwnSending is { } own)
            {
                var bought = model.NewBoolVar("");
                model.Add(count <= offer.Packs * bought);
                cost.Add(own * bought);
            }
        }

        lacking.ForEach(sum => model.Add(LinearExpr.Sum(sum) <= 0));
        for (var seller = 0; seller < problem.Sellers.Count; seller++)
        {
            cost.Add(Parcel(model, problem, seller, packs));
        }

        foreach (var rule in problem.Rules)
        {
            model.AddBoolOr([.. rule.If.Cast<ChoiceMade>().Select(fact => choices[fact.Place][fact.Choice].Not()),
                .. rule.Then.Cast<ChoiceMade>().Select(fact => choices[fact.Place][fact.Choice])]);
        }

        model.Minimize(LinearExpr.Sum(cost));
        var solver = new CpSolver { StringParameters = "num_workers:1 random_seed:42 linearization_level:2 max_deterministic_time:40" };
        return solver.Solve(model) is CpSolverStatus.Optimal ? (long)solver.ObjectiveValue : -(long)solver.ObjectiveValue;
    }

    /// <summary>Each place takes the choice and the offers that are cheapest by themselves; rules are not kept. What it comes to with the parcels.</summary>
    public static long EachByItself(PlanProblem problem)
    {
        var offersOf = problem.Offers.ToLookup(offer => offer.Holds[0].Product);
        var bought = new List<(PlanOffer Offer, int Packs)>();
        var cost = problem.FixedCost;
        foreach (var place in problem.Places)
        {
            var best = place.Choices.Select(choice => (choice, lines: Cheapest(offersOf, choice.Uses[0]))).Where(pair => pair.lines is not null)
                .MinBy(pair => pair.choice.Cost + pair.lines!.Sum(line => line.Offer.Price * line.Packs));
            cost += best.choice.Cost;
            bought.AddRange(best.lines!);
        }

        cost += bought.Sum(line => (line.Offer.Price * line.Packs) + (line.Offer.OwnSending ?? 0));
        foreach (var parcel in bought.Where(line => line.Offer.OwnSending is null).GroupBy(line => line.Offer.Seller))
        {
            var terms = problem.Sellers[parcel.Key];
            cost += parcel.Sum(line => line.Offer.GoodsValue * line.Packs) >= terms.FreeFrom
                ? 0 : terms.ParcelCost + (terms.PieceCost * parcel.Sum(line => line.Packs * line.Offer.SentAs));
        }

        return cost;
    }

    private static List<(PlanOffer Offer, int Packs)>? Cheapest(ILookup<int, PlanOffer> offersOf, PlanPieces use)
    {
        var lines = new List<(PlanOffer, int)>();
        var missing = use.Pieces;
        foreach (var offer in offersOf[use.Product].OrderBy(offer => offer.Price))
        {
            var packs = int.Min(offer.Packs, missing);
            missing -= packs;
            if (packs > 0)
            {
                lines.Add((offer, packs));
            }
        }

        return missing == 0 ? lines : null;
    }

    private static LinearExpr Parcel(CpModel model, PlanProblem problem, int seller, List<IntVar> packs)
    {
        var inParcel = problem.Offers.Zip(packs).Where(line => line.First.OwnSending is null && line.First.Seller == seller).ToList();
        if (inParcel.Count == 0)
        {
            return LinearExpr.Constant(0);
        }

        var terms = problem.Sellers[seller];
        var (sent, free) = (model.NewBoolVar(""), model.NewBoolVar(""));
        inParcel.ForEach(line => model.Add(line.Second == 0).OnlyEnforceIf(sent.Not()));
        model.Add(LinearExpr.Sum(inParcel.Select(line => line.First.GoodsValue * line.Second)) >= (terms.FreeFrom ?? long.MaxValue / 4)).OnlyEnforceIf(free);
        var charge = model.NewIntVar(0, terms.ParcelCost + (terms.PieceCost * inParcel.Sum(line => (long)line.First.Packs)), "");
        var whole = (terms.ParcelCost * sent) + (terms.PieceCost * LinearExpr.Sum(inParcel.Select(line => line.Second)));
        model.Add(charge >= whole).OnlyEnforceIf(free.Not());
        return charge;
    }
}
