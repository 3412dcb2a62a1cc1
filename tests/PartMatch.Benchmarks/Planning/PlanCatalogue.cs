using PartMatch.Core.Planning;

namespace PartMatch.Benchmarks.Planning;

/// <summary>
/// Invented problems, the same in every run: every choice takes a product of its own, every product has offers of several sellers, sellers send for a
/// parcel cost.
/// </summary>
internal static class PlanCatalogue
{
    /// <summary>The offers of a product are from as many different sellers.</summary>
    public static PlanProblem Draw(int places, int choicesEach, int sellers, int offersEach)
    {
        var random = new Random(7);
        var products = new List<PlanProduct>();
        var offers = new List<PlanOffer>();
        var drawn = new List<PlanPlace>();
        for (var place = 0; place < places; place++)
        {
            var choices = new List<PlanChoice>();
            var usual = random.Next(500, 20_000);
            for (var choice = 0; choice < choicesEach; choice++)
            {
                var pieces = random.Next(6) == 0 ? 4 : 1;
                choices.Add(new PlanChoice($"choice {choice}", random.Next(4) == 0 ? random.Next(0, 4000) : 0,
                    [new PlanPieces(products.Count, pieces)], random.Next(0, 5)));
                foreach (var seller in Enumerable.Range(0, sellers).OrderBy(_ => random.Next()).Take(offersEach))
                {
                    var price = usual * random.Next(80, 140) / 100 / pieces;
                    offers.Add(new PlanOffer($"offer {offers.Count}", seller, price, random.Next(5) == 0 ? 2 : 8, [new PlanPieces(products.Count, 1)],
                        random.Next(10) == 0 ? 450 : null, price, random.Next(2, 15), random.Next(0, 3)));
                }

                products.Add(new PlanProduct($"product {products.Count}"));
            }

            drawn.Add(new PlanPlace($"place {place}", choices));
        }

        var sent = Enumerable.Range(0, sellers)
            .Select(seller => new PlanSeller($"seller {seller}", random.Next(400, 2500), random.Next(3) == 0 ? 60 : 0,
                random.Next(3) == 0 ? random.Next(5_000, 30_000) : null))
            .ToList();
        var rules = Enumerable.Range(0, places)
            .Select(_ => (one: random.Next(places), other: random.Next(places)))
            .Where(pair => pair.one != pair.other)
            .Select(pair => new PlanRule([new ChoiceMade(pair.one, random.Next(choicesEach)), new ChoiceMade(pair.other, random.Next(choicesEach))], []))
            .ToList();
        return new PlanProblem(drawn, products, offers, sent, [], [], rules);
    }

    /// <summary>
    /// The same with nothing in the way: one piece of everything, stock enough, every parcel at its price, nothing sent by itself or free, nothing that excludes
    /// another.
    /// </summary>
    public static PlanProblem DrawOpen(int places, int choicesEach, int sellers, int offersEach)
    {
        var drawn = Draw(places, choicesEach, sellers, offersEach);
        return drawn with
        {
            Places = [.. drawn.Places.Select(place => place with
            {
                Choices = [.. place.Choices.Select(choice => choice with { Uses = [choice.Uses[0] with { Pieces = 1 }] })],
            })],
            Offers = [.. drawn.Offers.Select(offer => offer with { Packs = 8, OwnSending = null })],
            Sellers = [.. drawn.Sellers.Select(seller => seller with { PieceCost = 0, FreeFrom = null })],
            Rules = [],
        };
    }
}
