using CsCheck;
using PartMatch.Core.Planning;

namespace PartMatch.Core.Tests.Planning;

/// <summary>
/// Small problems drawn at random: kits, stock, free sending, own sending, rules, jobs, days, doubts, limits. Numbers are small, so that ties are
/// frequent.
/// </summary>
internal static class AnyPlan
{
    public const int Grounds = 6;

    public static Gen<PlanProblem> Of(int mostJobs = 2) =>
        from products in Product.Array[1, 3]
        from places in Place(products.Length).Array[1, 3]
        from sellers in Seller.Array[1, 2]
        from jobs in Gen.Int[0, mostJobs].SelectMany(count => Jobs(count, places.Length))
        from offers in Offer(products.Length, sellers.Length, jobs.Length).Array[0, 4]
        from doubts in Doubt.Array[0, 1]
        from rules in Rule(places, jobs.Length, doubts.Length).Array[0, 3]
        from limits in Gen.Select(Gen.Int[0, 3], Gen.Int[5, 60], Gen.Int[0, 3], Gen.Int[0, 9])
        select new PlanProblem(places, products, offers, sellers, jobs, doubts, rules)
        {
            FixedCost = 3,
            MostCost = limits.Item1 == 0 ? new PlanBound(limits.Item2, 4) : null,
            LastDay = limits.Item3 == 0 ? new PlanBound(limits.Item4, 5) : null,
        };

    private static Gen<PlanProduct> Product => Gen.Int[-2, 2].Select(inHand => new PlanProduct("product", int.Max(0, inHand)));

    private static Gen<PlanSeller> Seller => Gen.Select(Gen.Int[0, 9], Gen.Int[0, 2], Gen.Int[-10, 20], (parcel, piece, free) =>
        new PlanSeller("seller", parcel, piece, free < 0 ? null : free));

    private static Gen<PlanDoubt> Doubt => Gen.Select(Gen.Int[0, 2], Gen.Int[0, 3], (risk, admitted) => new PlanDoubt("doubt", risk, admitted > 0));

    private static Gen<PlanPlace> Place(int products) =>
        from choices in Gen.Select(Gen.Int[-4, 9], Pieces(products, 0), Gen.Int[0, 2], Gen.Int[0, 2], (cost, uses, risk, kept) =>
            new PlanChoice("choice", cost, uses, risk, kept)).Array[1, 3]
        from ground in Gen.Int[-3, Grounds - 1]
        select new PlanPlace("place", choices, ground < 0 ? null : ground);

    private static Gen<PlanPieces[]> Pieces(int products, int least) =>
        Gen.Select(Gen.Int[0, products - 1], Gen.Int[1, 2], (product, pieces) => new PlanPieces(product, pieces)).Array[least, 2];

    private static Gen<PlanOffer> Offer(int products, int sellers, int jobs) =>
        from seller in Gen.Int[0, sellers - 1]
        from price in Gen.Int[0, 9]
        from packs in Gen.Int[1, 2]
        from holds in Pieces(products, 1)
        from own in Gen.Int[-6, 4]
        from goods in Gen.Int[0, 9]
        from arrives in Gen.Int[0, 5]
        from risk in Gen.Int[-2, 2]
        from sentAs in Gen.Int[1, 3]
        from after in jobs == 0 ? Gen.Const(Array.Empty<int>()) : Gen.Int[0, jobs - 1].Array[0, 2]
        select new PlanOffer("offer", seller, price, packs, holds, own < 0 ? null : own, goods, arrives, int.Max(0, risk)) { SentAs = sentAs, OrderedAfter = after };

    private static Gen<PlanJob[]> Jobs(int count, int places)
    {
        var some = Gen.Int[0, places - 1].Array[0, 2];
        var jobs = Gen.Select(Gen.Int[-1, 4], Gen.Int[0, 3], some, some, Gen.Bool, Gen.Int[-2, places - 1],
            (cost, days, needs, holds, after, orders) => (cost, days, needs, holds, after, orders)).Array[count];
        return jobs.Select(drawn => drawn
            .Select((job, index) => new PlanJob("job", job.cost, job.days, job.needs, job.holds, job.after && index > 0 ? [index - 1] : [])
            {
                Orders = job.orders < 0 ? null : job.orders,
            }).ToArray());
    }

    private static Gen<PlanRule> Rule(PlanPlace[] places, int jobs, int doubts)
    {
        var facts = places.SelectMany((place, index) => place.Choices.Select((_, choice) => (PlanFact)new ChoiceMade(index, choice)))
            .Concat(Enumerable.Range(0, jobs).SelectMany(job => new PlanFact[] { new JobDone(job), new JobDone(job), new JobDone(job) }))
            .Concat(Enumerable.Range(0, doubts).SelectMany(doubt => new PlanFact[] { new DoubtTaken(doubt), new DoubtTaken(doubt) }))
            .ToArray();
        var some = Gen.Int[0, facts.Length - 1].Select(index => facts[index]);
        return Gen.Select(some.Array[0, 2], some.Array[0, 2], Gen.Int[-1, Grounds - 1], (when, then, ground) =>
            new PlanRule(when, when.Length + then.Length == 0 ? [facts[0]] : then, ground < 0 ? null : ground));
    }
}
