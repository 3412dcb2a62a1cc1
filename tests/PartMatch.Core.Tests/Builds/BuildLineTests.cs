using PartMatch.Core.Builds;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Fit;
using PartMatch.Core.Measures;
using PartMatch.Core.Planning;
using Xunit;
using static PartMatch.Core.Tests.Catalogue.TestFamily;

namespace PartMatch.Core.Tests.Builds;

/// <summary>Lines of plans, told by hand: each against a mistake that was once made.</summary>
public sealed class BuildLineTests
{
    // Both wheels of the swift are chosen by measurement, of grades that overlap: WHEEL-3 is the dearest of either.
    private static TestBuild Graded => new TestBuild(
        WithWheelsAndShafts(wheel => wheel.CannotAlterRunning().Length("bore"), shaft => shaft.Length("width")).Position("rear-wheel", "wheel")
            .Wheel("WHEEL-1", Has("bore", Mm(10))).Wheel("WHEEL-2", Has("bore", Mm(10))).Wheel("WHEEL-3", Has("bore", Mm(10))).Wheel("WHEEL-4", Has("bore", Mm(10)))
            .Shaft("SHAFT-1", Has("width", Mm(10)))
            .Fitted("lark", "wheel", "WHEEL-1").Fitted("lark", "rear-wheel", "WHEEL-1").Fitted("lark", "shaft", "SHAFT-1")
            .Fitted("swift", "wheel", "WHEEL-2").Fitted("swift", "wheel", "WHEEL-3").Fitted("swift", "rear-wheel", "WHEEL-3").Fitted("swift", "rear-wheel", "WHEEL-4")
            .Fitted("swift", "shaft", "SHAFT-1")
            .Chosen("wheel", "shaft.width", 9, 10, "WHEEL-2").Chosen("wheel", "shaft.width", 10, 11, "WHEEL-3")
            .Chosen("rear-wheel", "shaft.width", 9, 10, "WHEEL-3").Chosen("rear-wheel", "shaft.width", 10, 11, "WHEEL-4"))
        .Seller("mill").Sold("WHEEL-2", 1000).Sold("WHEEL-4", 1000).Donor("wheel", PartState.Damaged).Donor("rear-wheel", PartState.Missing);

    // 30.00 for each of the two.
    [Fact]
    public void A_grade_that_two_positions_may_need_is_bought_twice() => Assert.Equal(TestBuild.Euros(6000), Graded.Sold("WHEEL-3", 3000).Plan().Cost?.Total);

    [Fact]
    public void One_piece_of_a_grade_is_not_enough_for_two_positions() =>
        Assert.Equal(PlanStatus.Infeasible, Graded.Sold("WHEEL-3", 3000, stock: 1).Plan().Status);

    // One of each grade is in hand: one wheel is there whichever it turns out to be, the other may be the same grade.
    [Fact]
    public void Grades_in_hand_count_where_all_of_them_are() => Assert.Equal(
        TestBuild.Euros(3000),
        Graded.Sold("WHEEL-3", 3000).With(build => build with { InHand = [Held("WHEEL-2"), Held("WHEEL-3"), Held("WHEEL-4")] }).Plan().Cost?.Total);

    // Which of the two it will be is not known: one alone may be the wrong one.
    [Fact]
    public void A_grade_in_hand_alone_counts_for_nothing() => Assert.Equal(
        TestBuild.Euros(6000), Graded.Sold("WHEEL-3", 3000).With(build => build with { InHand = [Held("WHEEL-3")] }).Plan().Cost?.Total);

    [Fact]
    public void A_number_that_begins_like_the_donors_is_another_part()
    {
        var told = new TestBuild(
            WithWheels(wheel => wheel.CannotAlterRunning().Choice("colour", "red", "blue").Rule("colour", Effect.Stops))
                .Wheel("WHEEL-10", Has("colour", Word("red"))).Wheel("WHEEL-1", Has("colour", Word("blue")))
                .Fitted("lark", "wheel", "WHEEL-10").Fitted("swift", "wheel", "WHEEL-1"))
            .Seller("mill").Sold("WHEEL-1", 1000);

        Assert.Equal(LineAction.Replace, Assert.Single(told.Plan().Lines).Action);
    }

    // Turned, the shaft is as the wished engine's: 10 mm goes into the wheel, 12 mm does not.
    [Fact]
    public void What_a_work_makes_of_a_part_is_not_remembered_for_another_target()
    {
        var swift = new TestBuild(
            WithWheelsAndShafts(wheel => wheel.CannotAlterRunning().Length("bore"), shaft => shaft.CannotAlterRunning().Length("width"))
                .Variant("rook").Variant("kite").WorkOn("turn", 1, null, "shaft.width")
                .Wheel("WHEEL-1", Has("bore", Mm(10))).Wheel("WHEEL-2", Has("bore", Mm(10)))
                .Shaft("SHAFT-1", Has("width", Mm(11))).Shaft("SHAFT-2", Has("width", Mm(10))).Shaft("SHAFT-3", Has("width", Mm(12)))
                .Fitted("lark", "wheel", "WHEEL-1").Fitted("lark", "shaft", "SHAFT-1").Fitted("swift", "shaft", "SHAFT-2").Fitted("rook", "shaft", "SHAFT-3")
                .Fitted("kite", "wheel", "WHEEL-2").Fitted("kite", "shaft", "SHAFT-2")
                .Joint("seat", "wheel.bore", "shaft.width", min: -0.1m, max: 0.1m))
            .Wish(new Wish("wheel", null) { Like = ["kite"] }).Wish(new Wish("shaft", null) { Like = ["lark"] })
            .With(build => build with { Works = [new AskedWork("turn", null, null)] });
        var rook = swift.With(build => build with { Target = "rook" });

        Assert.Equal(PlanStatus.ProvenOptimal, swift.Plan().Status);
        Assert.Equal(PlanStatus.Infeasible, rook.Plan().Status);
    }

    // A new one costs 10.00; setting the donor's own costs 4.00, and then it has what the swift has there.
    [Fact]
    public void A_donors_part_stays_where_it_is_set_to_what_the_target_has_there()
    {
        var plan = Set(workCents: 400).Plan();

        var line = Assert.Single(plan.Lines);
        Assert.Equal((LineAction.KeepWithWork, Headline.FitsWithWork), (line.Action, line.Headline));
        Assert.Equal("The donor's own serves once this is done: set.", line.Because);
        Assert.Equal(TestBuild.Euros(400), plan.Cost?.Total);
    }

    [Theory]
    [InlineData(999, LineAction.KeepWithWork)]
    [InlineData(1001, LineAction.Replace)]
    public void It_is_set_only_where_that_is_cheaper_than_another_one(long workCents, LineAction action) =>
        Assert.Equal(action, Assert.Single(Set(workCents).Plan().Lines).Action);

    // Where the work sets another feature than the one that alters how it runs, the donor's own cannot stay.
    [Fact]
    public void A_work_that_changes_something_else_keeps_nothing() =>
        Assert.Equal((LineAction.Replace, TestBuild.Euros(1000)), (Assert.Single(Set(400, "wheel.width").Plan().Lines).Action, Set(400, "wheel.width").Plan().Cost?.Total));

    [Fact]
    public void Why_says_what_has_to_be_set() => Assert.Contains(
        Set(400).Why("wheel")!.Steps, step => step.Text.StartsWith("The donor's own needs work: ", StringComparison.Ordinal));

    private static TestBuild Set(long workCents, string changes = "wheel.mark") => new TestBuild(
        WithWheels(wheel => wheel.Length("mark").Length("width")
                .Rule("mark", Effect.Alters, allowance: 0.1m).Rule("mark", Effect.Work, allowance: 0.1m, work: "set"))
            .WorkOn("set", 0, TestBuild.Euros(workCents), changes)
            .Wheel("WHEEL-1", Has("mark", Mm(10))).Wheel("WHEEL-2", Has("mark", Mm(12))).Fitted("lark", "wheel", "WHEEL-1").Fitted("swift", "wheel", "WHEEL-2"))
        .Seller("mill").Sold("WHEEL-2", 1000);

    // The rule is of the swift alone, and both positions are wished like the lark.
    [Fact]
    public void A_rule_of_the_target_asks_nothing_of_lines_that_are_wished_like_another_engine()
    {
        var told = new TestBuild(
            WithWheelsAndShafts(
                wheel => wheel.CannotAlterRunning().Choice("colour", "red", "blue"), shaft => shaft.CannotAlterRunning().Choice("colour", "red", "blue"))
                .Wheel("WHEEL-1", Has("colour", Word("red"))).Shaft("SHAFT-1", Has("colour", Word("red")))
                .Fitted("lark", "wheel", "WHEEL-1").Fitted("lark", "shaft", "SHAFT-1").Fitted("swift", "wheel", "WHEEL-1").Fitted("swift", "shaft", "SHAFT-1")
                .Companion("pair", "wheel.colour", Word("red"), "shaft.colour", Word("blue"), variants: ["swift"]))
            .Wish(new Wish(null, "works") { Like = ["lark"] });

        Assert.Equal([LineAction.Keep, LineAction.Keep], told.Plan().Lines.Select(line => line.Action));
    }

    // The retracted row had the wheel measured on the shaft, whose own is damaged.
    [Fact]
    public void A_retracted_row_of_measuring_binds_no_grade_to_a_surface()
    {
        var told = new TestBuild(
            WithWheelsAndShafts(wheel => wheel.CannotAlterRunning().Length("bore"), shaft => shaft.CannotAlterRunning().Length("width"))
                .Wheel("WHEEL-1", Has("bore", Mm(10))).Shaft("SHAFT-1", Has("width", Mm(10)))
                .Fitted("lark", "wheel", "WHEEL-1").Fitted("swift", "wheel", "WHEEL-1").Fitted("lark", "shaft", "SHAFT-1").Fitted("swift", "shaft", "SHAFT-1")
                .Chosen("wheel", "wheel.bore", 9, 11, "WHEEL-1").Chosen("wheel", "shaft.width", 9, 11, "WHEEL-1", Retracted()))
            .Seller("mill").Sold("SHAFT-1", 1000).Donor("shaft", PartState.Damaged);

        Assert.Equal(TestBuild.Euros(1000), told.Plan().Cost?.Total);
    }

    [Fact]
    public void A_work_priced_in_a_currency_without_a_rate_is_told_to_be_missing_in_the_sum()
    {
        var told = Turned(days: 1, new Money("30.00", "CHF"));

        Assert.Contains("turn: priced in CHF, for which the build has no rate; not in the sum.", told.Plan().Flags);
        Assert.Equal(TestBuild.Euros(2700), told.With(build => build with { Rates = [new Rate("CHF", "0.9", null)] }).Plan().Cost?.Total);
    }

    [Fact]
    public void A_work_of_which_nobody_says_how_long_it_takes_is_told_to_be_missing_in_the_days() =>
        Assert.Contains("turn: how many days it takes is not recorded; none is counted.", Turned(days: null, TestBuild.Euros(3000)).Plan().Flags);

    [Fact]
    public void What_the_donor_came_without_brings_nothing() => Assert.Equal(
        TestBuild.Euros(1000),
        new TestBuild(
            WithWheels(wheel => wheel.CannotAlterRunning().Length("bore")).Wheel("WHEEL-1", Has("bore", Mm(10)))
                .Fitted("lark", "wheel", "WHEEL-1").Fitted("swift", "wheel", "WHEEL-1"))
            .Seller("mill").Sold("WHEEL-1", 1000).Donor("wheel", PartState.Missing, sellsFor: 400).Plan().Cost?.Total);

    [Fact]
    public void A_day_in_thousands_of_years_leaves_room_for_every_delay() => Assert.DoesNotContain(
        Graded.Sold("WHEEL-3", 3000, days: 5).With(build => build with { NeededBy = "9999-12-31" }).Frontier().Swings, swing => swing.What == "delay");

    private static HeldPart Held(string number) => new(Id(number), 1, null);

    private static TestBuild Turned(decimal? days, Money price) => new TestBuild(
        WithWheels(wheel => wheel.CannotAlterRunning().Length("bore")).Wheel("WHEEL-1", Has("bore", Mm(10)))
            .Fitted("lark", "wheel", "WHEEL-1").Fitted("swift", "wheel", "WHEEL-1").WorkOn("turn", days, price))
        .With(build => build with { Works = [new AskedWork("turn", null, null)] });
}
