using PartMatch.Core.Planning;
using Xunit;

namespace PartMatch.Core.Tests.Planning;

/// <summary>Baskets and warehouses whose answer is known from elsewhere.</summary>
public sealed class PlanShoppingTests
{
    /// <summary>
    /// By hand. All from seller 2: 92 + 48 + 20 + 55 + 9 = 224. Each where it is cheapest (2, 3, 2, 2): 92 + 35 + 20 + 55 = 202, two parcels 9 + 15: 226.
    /// Seller 1 alone:
    /// 100 + 40 + 25 + 60 + 12 = 237. Seller 3 does not have the third.
    /// </summary>
    [Fact]
    public void One_seller_may_beat_each_item_where_it_is_cheapest()
    {
        var solution = Cheapest(Basket([12, 9, 15], [100, 40, 25, 60], [92, 48, 20, 55], [97, 35, null, 58]));

        Assert.Equal((224, 9), (solution.Totals.Cost, solution.Totals.Sending));
        Assert.Equal([0, 0, 0, 0, 1, 1, 1, 1, 0, 0, 0], solution.Packs);
    }

    /// <summary>
    /// By hand. Items 1 and 2 from seller 3: 95 + 85 + 6; items 3 and 4 from seller 2: 45 + 25 + 14: 270. Each where it is cheapest (3, 1, 2, 2): 245
    /// + 30 = 275.
    /// </summary>
    [Fact]
    public void Where_nobody_has_everything_the_parcels_are_weighed()
    {
        var solution = Cheapest(Basket([10, 14, 6], [100, 80, null, 30], [130, null, 45, 25], [95, 85, 60, null]));

        Assert.Equal((270, 20), (solution.Totals.Cost, solution.Totals.Sending));
    }

    /// <summary>
    /// By hand. Seller 1: 70 + 30 + 20 = 120, with its parcel 129. Seller 2: 60 + 33 + 24 + 9 = 126. 60 + 30 + 20 from both: 110 + 18 = 128.
    /// </summary>
    [Theory]
    [InlineData(null, 126)]
    [InlineData(119L, 120)]
    [InlineData(120L, 120)]
    [InlineData(121L, 126)]
    public void Free_sending_turns_the_answer_at_its_value(long? freeFrom, long cost)
    {
        var basket = Basket([9, 9], [70, 30, 20], [60, 33, 24]);
        var solution = Cheapest(basket with { Sellers = [basket.Sellers[0] with { FreeFrom = freeFrom }, basket.Sellers[1]] });

        Assert.Equal(cost, solution.Totals.Cost);
    }

    /// <summary>
    /// By hand. Goods of 90 and a parcel of 20 are 110. A cloth that nobody needs costs 8: with one the goods are 98, with two 106; from the value on,
    /// sending is free.
    /// </summary>
    [Theory]
    [InlineData(98, 98, 2)]
    [InlineData(99, 106, 3)]
    [InlineData(106, 106, 3)]
    [InlineData(107, 110, 1)]
    public void A_pack_too_many_is_bought_where_it_makes_sending_free(long freeFrom, long cost, int packs)
    {
        var problem = new PlanProblem(
            [Takes("head", 0, 1)],
            [new PlanProduct("gasket"), new PlanProduct("cloth")],
            [
                new PlanOffer("gasket", 0, 90, 1, [new PlanPieces(0, 1)], GoodsValue: 90),
                new PlanOffer("cloth", 0, 8, 2, [new PlanPieces(1, 1)], GoodsValue: 8, ArrivesOn: 30),
            ],
            [new PlanSeller("seller", 20, 0, freeFrom)],
            [],
            [],
            []);

        var solution = Cheapest(problem);

        // The cloth comes after a month, and nothing waits for it.
        Assert.Equal((cost, packs, 0), (solution.Totals.Cost, solution.Packs.Sum(), solution.Totals.Days));
    }

    /// <summary>
    /// By hand. The new head needs its gasket and both come in one parcel: 60 + 15 + 9. The kit of another seller holds both for 70 and 12.
    /// </summary>
    [Fact]
    public void One_choice_takes_two_products_out_of_one_parcel_or_one_kit()
    {
        var problem = new PlanProblem(
            [new PlanPlace("head", [new PlanChoice("new", 0, [new PlanPieces(0, 1), new PlanPieces(1, 1)]),
                new PlanChoice("another", 0, [new PlanPieces(2, 1)])])],
            [new PlanProduct("head"), new PlanProduct("gasket"), new PlanProduct("other head")],
            [
                new PlanOffer("head", 0, 60, 1, [new PlanPieces(0, 1)]),
                new PlanOffer("gasket", 0, 15, 1, [new PlanPieces(1, 1)]),
                new PlanOffer("kit", 1, 70, 1, [new PlanPieces(0, 1), new PlanPieces(1, 1)]),
                new PlanOffer("other head", 0, 80, 1, [new PlanPieces(2, 1)]),
            ],
            [new PlanSeller("one", 9), new PlanSeller("other", 12)],
            [],
            [],
            []);

        Assert.Equal((82, 12), (Cheapest(problem).Totals.Cost, Cheapest(problem).Totals.Sending));
        Assert.Equal(84, Cheapest(problem with { Sellers = [problem.Sellers[0], new PlanSeller("other", 15)] }).Totals.Cost);
    }

    /// <summary>What has its own sending is not in the parcel: 100 of goods beside it do not make the parcel of the other free.</summary>
    [Fact]
    public void Own_sending_does_not_count_towards_free_sending()
    {
        var problem = new PlanProblem(
            [Takes("block", 0, 1), Takes("head", 1, 1)],
            [new PlanProduct("block"), new PlanProduct("gasket")],
            [
                new PlanOffer("block", 0, 100, 1, [new PlanPieces(0, 1)], OwnSending: 40, GoodsValue: 100),
                new PlanOffer("gasket", 0, 10, 1, [new PlanPieces(1, 1)], GoodsValue: 10),
            ],
            [new PlanSeller("seller", 5, 0, 50)],
            [],
            [],
            []);

        Assert.Equal((155, 45), (Cheapest(problem).Totals.Cost, Cheapest(problem).Totals.Sending));
    }

    /// <summary>
    /// By hand. Three at 20 and one at 24, parcels 8 + 5: 97. Two and two, or all four at 24: 101. Four at 20 would be 88, but only three are there.
    /// </summary>
    [Fact]
    public void Stock_limits_what_the_cheapest_seller_sends()
    {
        var problem = new PlanProblem(
            [Takes("injectors", 0, 4)],
            [new PlanProduct("injector")],
            [new PlanOffer("cheap", 0, 20, 3, [new PlanPieces(0, 1)]), new PlanOffer("dear", 1, 24, 4, [new PlanPieces(0, 1)])],
            [new PlanSeller("one", 8), new PlanSeller("other", 5)],
            [],
            [],
            []);

        Assert.Equal(97, Cheapest(problem).Totals.Cost);
        Assert.Equal([3, 1], Cheapest(problem).Packs);
        Assert.Equal(PlanStatus.Infeasible, Cheapest(problem with { MostCost = new PlanBound(96, null) }).Status);
        Assert.Equal(PlanStatus.ProvenOptimal, Cheapest(problem with { MostCost = new PlanBound(97, null) }).Status);
    }

    /// <summary>Optima: OR-Library, uncapopt; which sites of cap74 are open: solved with another program. In ten-thousandths.</summary>
    [Theory]
    [InlineData(7_500, 9_326_157_500)]
    [InlineData(12_500, 9_777_994_000)]
    [InlineData(17_500, 10_106_414_500)]
    [InlineData(25_000, 10_349_769_750)]
    public void Published_warehouses_have_their_published_cost(int fixedCost, long cost)
    {
        var problem = WarehouseInstances.Plan(fixedCost);
        var solution = Cheapest(problem);

        Assert.Equal((PlanStatus.ProvenOptimal, cost), (solution.Status, solution.Totals.Cost));
        Assert.Equal(cost, Cheapest(problem, narrowsFrom: int.MaxValue).Totals.Cost);
        if (fixedCost == 25_000)
        {
            Assert.Equal([2, 10, 11, 12], WarehouseInstances.Open(problem, solution));
        }

        // The free site is one of those that send, so the parcels are whole multiples of the fixed cost without it.
        Assert.Contains(10, WarehouseInstances.Open(problem, solution));
        Assert.Equal((WarehouseInstances.Open(problem, solution).Count() - 1L) * fixedCost * WarehouseInstances.UnitsPerOne, solution.Totals.Sending);
    }

    [Fact]
    public void Rows_in_another_order_have_the_same_cost()
    {
        var problem = WarehouseInstances.Plan(12_500);
        var shuffled = problem with { Places = [.. problem.Places.Reverse()], Offers = [.. problem.Offers.OrderBy(offer => offer.Price % 977)] };

        Assert.Equal(Cheapest(problem).Totals, Cheapest(shuffled).Totals);
    }

    private static PlanSolution Cheapest(PlanProblem problem, int narrowsFrom = 400) =>
        Solving.Best(problem, effort: PlanEffort.Ordinary with { NarrowsFrom = narrowsFrom });

    private static PlanPlace Takes(string name, int product, int pieces) => new(name, [new PlanChoice(name, 0, [new PlanPieces(product, pieces)])]);

    /// <param name="prices">For each seller of each item; null where it does not have it.</param>
    private static PlanProblem Basket(long[] parcels, params long?[][] prices) => new(
        [.. prices[0].Select((_, item) => Takes($"item {item}", item, 1))],
        [.. prices[0].Select((_, item) => new PlanProduct($"item {item}"))],
        [
            .. prices.SelectMany((row, seller) => row.Index().Where(cell => cell.Item is not null)
                .Select(cell => new PlanOffer($"{cell.Index} of {seller}", seller, cell.Item ?? 0, 1,
                    [new PlanPieces(cell.Index, 1)], GoodsValue: cell.Item ?? 0))),
        ],
        [.. parcels.Select((parcel, seller) => new PlanSeller($"seller {seller}", parcel))],
        [],
        [],
        []);
}
