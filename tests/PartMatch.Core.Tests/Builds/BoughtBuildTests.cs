using CsCheck;
using PartMatch.Core.Builds;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Orders;
using PartMatch.Core.Planning;
using Xunit;
using static PartMatch.Core.Tests.Catalogue.TestFamily;

namespace PartMatch.Core.Tests.Builds;

/// <summary>Plans around what was bought already, each by hand: a swift wants WHEEL-2 or WHEEL-3, the lark's own stops there; the shaft is the same.</summary>
public sealed class BoughtBuildTests
{
    private static TestBuild Told => new TestBuild(
        WithWheelsAndShafts(
            wheel => wheel.CannotAlterRunning().Choice("colour", "red", "blue").Rule("colour", Effect.Stops), shaft => shaft.CannotAlterRunning().Length("width"))
            .Wheel("WHEEL-1", Has("colour", Word("red"))).Wheel("WHEEL-2", Has("colour", Word("blue"))).Wheel("WHEEL-3", Has("colour", Word("blue")))
            .Shaft("SHAFT-1", Has("width", Mm(10)))
            .Fitted("lark", "wheel", "WHEEL-1").Fitted("swift", "wheel", "WHEEL-2").Fitted("lark", "shaft", "SHAFT-1").Fitted("swift", "shaft", "SHAFT-1"))
        .Seller("mill", parcel: 500).Sold("WHEEL-2", 3000).Sold("WHEEL-3", 2000);

    [Fact]
    public void Cheaper_part_is_planned_where_nothing_was_bought()
    {
        var plan = Told.Plan();

        Assert.Equal((Id("WHEEL-3"), TestBuild.Euros(2500), TestBuild.Euros(2500)), (At(plan).Part, plan.Cost?.Total, plan.Cost?.ToGo)); // 20.00 and the parcel
    }

    [Theory]
    [InlineData(3500, 0)]
    [InlineData(0, 3500)]
    [InlineData(1000, 2500)]
    public void Bought_part_costs_nothing_more_and_its_money_is_in_the_whole(long spent, long committed)
    {
        var plan = (Told with { Bought = Bought(spent, committed, Piece()) }).Plan();

        var line = At(plan);
        Assert.Equal(Id("WHEEL-2"), line.Part);
        Assert.Equal(new LineBought(1, 1, 1, LineState.Checked, null), Assert.Single(line.Bought));
        Assert.Empty(line.Buy);
        Assert.Empty(plan.Baskets);
        Assert.Equal(
            (TestBuild.Euros(3500), TestBuild.Euros(spent), TestBuild.Euros(committed), TestBuild.Euros(0)),
            (plan.Cost?.Total, plan.Cost?.Spent, plan.Cost?.Committed, plan.Cost?.ToGo));
        Assert.Equal(["wheel"], Assert.Single(plan.Bought).For);
    }

    [Fact]
    public void Ordering_what_the_plan_says_changes_nothing_of_its_whole()
    {
        var told = Told;
        var first = told.Plan();
        var (terms, faults) = OrderMaking.Of(told.Facts(), told.Build, new OrderAsked([new OrderLineAsked { Offer = first.Baskets[0].Items[0].Offer }]), TestBuild.Today);
        Assert.Empty(faults);
        var order = OrderFold.Of("try", 1, [new OrderEventSaved(1, "", null, null, new OrderEvent(OrderAct.Ordered, terms!.OrderedOn) { Terms = terms })]).Order!; // no faults

        var second = (told with { Bought = BuildBought.Of("EUR", [order]) }).Plan();

        Assert.Equal(first.Cost?.Total, second.Cost?.Total);
        Assert.Equal(("0.00", "25.00", "0.00"), (second.Cost?.Spent.Amount, second.Cost?.Committed.Amount, second.Cost?.ToGo.Amount));
        Assert.Empty(second.Baskets);
    }

    [Fact]
    public void Part_on_the_way_is_there_on_its_day()
    {
        var bought = Piece() with { State = LineState.Ordered, ThereOn = TestBuild.Today.AddDays(9) };

        Assert.Equal(9, (Told with { Bought = Bought(3500, 0, bought) }).Plan().Days);
    }

    [Fact]
    public void Part_that_should_have_come_is_counted_as_coming_today()
    {
        var bought = Piece() with { State = LineState.Ordered, ThereOn = TestBuild.Today.AddDays(-9) };

        Assert.Equal(0, (Told with { Bought = Bought(3500, 0, bought) }).Plan().Days);
    }

    [Fact]
    public void Late_part_is_left_over_where_another_is_sooner()
    {
        var bought = Piece() with { State = LineState.Ordered, ThereOn = TestBuild.Today.AddDays(9), ReturnBy = TestBuild.Today.AddDays(23) };

        var plan = (Told with { Bought = Bought(3500, 0, bought) }).Plan(PlanObjective.Soonest);

        Assert.Equal(0, plan.Days);
        Assert.Equal(TestBuild.Euros(6000), plan.Cost?.Total); // 35.00 that are gone, 20.00 and the parcel: nothing is un-bought
        Assert.Equal(new LeftOver(Id("WHEEL-2"), "Wheel", 1, "order 1, line 1") { ReturnBy = TestBuild.Today.AddDays(23) }, Assert.Single(plan.LeftOver));
    }

    [Fact]
    public void Part_that_does_not_fit_is_left_over_and_stays_paid()
    {
        var plan = (Told with { Bought = Bought(1500, 0, Piece("WHEEL-1")) }).Wish(new Wish("wheel", null) { Refuse = [Id("WHEEL-1")] }).Plan();

        Assert.Equal((Id("WHEEL-3"), TestBuild.Euros(4000)), (At(plan).Part, plan.Cost?.Total));
        Assert.Equal(Id("WHEEL-1"), Assert.Single(plan.LeftOver).Part);
    }

    [Fact]
    public void Part_nobody_sells_any_more_is_there_all_the_same()
    {
        var told = Told with { Offers = [], Bought = Bought(3500, 0, Piece()) };

        Assert.Equal((PlanStatus.ProvenOptimal, Id("WHEEL-2")), (told.Plan().Status, At(told.Plan()).Part));
    }

    [Fact]
    public void Money_that_is_gone_counts_against_the_budget()
    {
        var told = Told with { Bought = Bought(3500, 0, Piece()) };

        Assert.Equal(PlanStatus.ProvenOptimal, told.With(build => build with { Budget = "35.00" }).Plan().Status);
        Assert.Equal(PlanStatus.Infeasible, told.With(build => build with { Budget = "34.99" }).Plan().Status);
    }

    // Two of the grades WHEEL-2 (30.00) and WHEEL-3 (20.00), which are needed is measured; each parcel is 5.00. One of each was bought for 55.00: measured before.
    [Fact]
    public void Grades_that_are_all_bought_are_neither_measured_for_nor_ordered_again()
    {
        var plan = (Graded with { Bought = Bought(5500, 0, Piece(), Piece("WHEEL-3") with { Order = 2 }) }).Plan();

        var line = At(plan);
        Assert.Equal((TestBuild.Euros(5500), TestBuild.Euros(5500), TestBuild.Euros(0)), (plan.Cost?.Total, plan.Cost?.Cheapest, plan.Cost?.ToGo));
        Assert.Equal([1, 2], line.Bought.Select(one => one.Order).Order());
        Assert.Null(line.PriceRange);
        Assert.DoesNotContain("measure, then order", line.Flags);
        Assert.DoesNotContain(plan.Works, work => work.Work.StartsWith("order:", StringComparison.Ordinal));
        Assert.Empty(plan.LeftOver);
    }

    // One of the two was bought for 25.00. The other is the dearer one at most: 30.00 and its parcel; the cheaper one at least: 20.00 and its parcel.
    [Fact]
    public void Grades_of_which_some_are_bought_are_measured_for_and_the_rest_is_counted_at_the_dearest()
    {
        var plan = (Graded with { Bought = Bought(2500, 0, Piece("WHEEL-3")) }).Plan();

        var line = At(plan);
        Assert.Equal((TestBuild.Euros(6000), TestBuild.Euros(5000), TestBuild.Euros(3500)), (plan.Cost?.Total, plan.Cost?.Cheapest, plan.Cost?.ToGo));
        Assert.Equal(1, Assert.Single(line.Bought).Pieces);
        Assert.Equal("20.00 … 30.00 EUR, by grade; counted at the dearest", line.PriceRange);
        Assert.Contains("measure, then order", line.Flags);
        Assert.Contains(Assert.Single(plan.Baskets).Items[0].Flags, flag => flag.StartsWith("measure first", StringComparison.Ordinal));
    }

    // A grade that came is never bought twice, and one too many is told as left over.
    [Fact]
    public void Grade_too_many_is_left_over()
    {
        var plan = (Graded with { Bought = Bought(8500, 0, Piece() with { Pieces = 3 }) }).Plan();

        Assert.Equal((TestBuild.Euros(0), 1), (plan.Cost?.ToGo, Assert.Single(plan.LeftOver).Pieces));
    }

    private static TestBuild Graded => Told with
    {
        Family = WithWheelsAndShafts(
                wheel => wheel.CannotAlterRunning().Choice("colour", "red", "blue").Rule("colour", Effect.Stops), shaft => shaft.CannotAlterRunning().Length("width"))
            .Wheel("WHEEL-1", Has("colour", Word("red"))).Wheel("WHEEL-2", Has("colour", Word("blue"))).Wheel("WHEEL-3", Has("colour", Word("blue")))
            .Shaft("SHAFT-1", Has("width", Mm(10))).Fitted("lark", "wheel", "WHEEL-1", pieces: 2).Fitted("swift", "wheel", "WHEEL-2", pieces: 2).Fitted("swift", "wheel", "WHEEL-3", pieces: 2)
            .Fitted("lark", "shaft", "SHAFT-1").Fitted("swift", "shaft", "SHAFT-1")
            .Chosen("wheel", "shaft.width", 9, 10, "WHEEL-2").Chosen("wheel", "shaft.width", 10, 11, "WHEEL-3"),
    };

    /// <summary>Whatever was bought: its pieces are all used or told as left over, and the money of before is in the whole.</summary>
    [Fact]
    public void Planning_anew_never_un_buys() => Gen.Select(
        Gen.Select(Gen.OneOf(Gen.Const("WHEEL-1"), Gen.Const("WHEEL-2"), Gen.Const("WHEEL-3"), Gen.Const("SHAFT-1")), Gen.Int[1, 3], Gen.Int[-3, 9], Gen.Enum<LineState>().Where(state => state <= LineState.Checked)).Array[0, 4],
        Gen.Int[0, 9000], Gen.Int[0, 9000], Gen.Enum<PlanObjective>()).Sample(
        (pieces, spent, committed, objective) =>
        {
            var bought = Bought(spent, committed, [.. pieces.Select((one, index) => new BoughtPieces(
                index + 1, 1, Id(one.Item1), one.Item2, one.Item4, TestBuild.Today.AddDays(one.Item3), true, "alder/mill", null))]);

            var plan = (Told with { Bought = bought }).Plan(objective);

            Assert.Equal(PlanStatus.ProvenOptimal, plan.Status);
            Assert.Equal(Cents(plan.Cost?.Total), spent + committed + Cents(plan.Cost?.ToGo));
            Assert.Equal(Cents(plan.Cost?.ToGo), plan.Baskets.Sum(basket => Cents(basket.Total)));
            foreach (var piece in bought.Pieces)
            {
                var used = plan.Lines.SelectMany(line => line.Bought).Where(one => one.Order == piece.Order).Sum(one => one.Pieces);
                var left = plan.LeftOver.Where(one => one.From == piece.Name).Sum(one => one.Pieces);
                Assert.Equal(piece.Pieces, used + left);
            }
        }, iter: 40, threads: 1);

    private static long Cents(Core.Measures.Money? money) => (long)Core.Measures.Amount.Of(money!).Minor; // a plan was found

    private static BuildLine At(BuildPlan plan) => plan.Lines.Single(line => line.Position == "wheel");

    private static BoughtPieces Piece(string number = "WHEEL-2") => new(1, 1, Id(number), 1, LineState.Checked, null, IsNew: true, "alder/mill", null);

    private static BuildBought Bought(long spent, long committed, params IReadOnlyList<BoughtPieces> pieces) => new("EUR", pieces, spent, committed, 0);
}
