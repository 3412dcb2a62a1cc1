using PartMatch.Core.Builds;
using PartMatch.Core.Planning;
using Xunit;
using static PartMatch.Core.Tests.Catalogue.TestFamily;

namespace PartMatch.Core.Tests.Builds;

/// <summary>
/// One engine told by hand: a swift has a blue wheel, the lark's is red and stops there; WHEEL-2 is the swift's own, WHEEL-3 a blue one of nobody's, of
/// WHEEL-5 nobody recorded the colour, WHEEL-4 nobody sells. Both have the same shaft.
/// </summary>
public sealed class BuildAnswerTests
{
    private static TestBuild Told => new TestBuild(
        WithWheelsAndShafts(
            wheel => wheel.CannotAlterRunning().Choice("colour", "red", "blue").Rule("colour", PartMatch.Core.Catalogue.Effect.Stops),
            shaft => shaft.Length("width"))
            .Wheel("WHEEL-1", Has("colour", Word("red"))).Wheel("WHEEL-2", Has("colour", Word("blue"))).Wheel("WHEEL-3", Has("colour", Word("blue")))
            .Wheel("WHEEL-4", Has("colour", Word("blue"))).Wheel("WHEEL-5").Shaft("SHAFT-1", Has("width", Mm(10)))
            .Fitted("lark", "wheel", "WHEEL-1").Fitted("swift", "wheel", "WHEEL-2").Fitted("lark", "shaft", "SHAFT-1").Fitted("swift", "shaft", "SHAFT-1"))
        .Seller("mill").Seller("forge");

    // 30.00 in five days, or 50.00 in one.
    private static TestBuild Sold => Told.Sold("WHEEL-2", 5000, days: 1).Sold("WHEEL-3", 3000, "forge", days: 5);

    [Fact]
    public void The_colour_of_the_wished_engine_is_why_the_donors_own_goes()
    {
        var why = Sold.Why("wheel");

        Assert.Equal((LineAction.Replace, Id("WHEEL-3")), (why!.Line.Action, why.Line.Part));
        var step = Assert.Single(why.Steps);
        Assert.Equal(("wheel", WhyGround.Target), (step.Position, step.Ground));
        Assert.StartsWith("The donor's own does not serve here: Colour", step.Text, StringComparison.Ordinal);
        Assert.Equal(["ev-makers-document"], step.Evidence);
    }

    [Fact]
    public void Every_other_part_of_the_kind_is_told_with_what_keeps_it_away()
    {
        var others = Sold.Why("wheel")!.Alternatives.ToDictionary(other => other.Part, other => other.WhyNot);

        Assert.Equal("The plan with it costs 20.00 EUR more and is ready 4 days sooner.", others[Id("WHEEL-2")]);
        Assert.EndsWith("No plan holds with it.", others[Id("WHEEL-1")], StringComparison.Ordinal);
        Assert.Equal("Nobody sells alder:WHEEL-4, and it is not in hand.", others[Id("WHEEL-4")]);
    }

    [Fact]
    public void A_kept_part_stands_on_the_donor() =>
        Assert.Equal((WhyGround.Donor, LineAction.Keep), (Assert.Single(Sold.Why("shaft")!.Steps).Ground, Sold.Why("shaft")!.Line.Action));

    [Theory]
    [InlineData("SHAFT-1", "alder:SHAFT-1 is a shaft; Wheel takes a wheel.")]
    [InlineData("WHEEL-9", "No book in the scope of finch-9 knows alder:WHEEL-9.")]
    [InlineData("WHEEL-4", "Nobody sells alder:WHEEL-4, and it is not in hand.")]
    [InlineData("WHEEL-3", "It is in the plan.")]
    [InlineData("WHEEL-2", "The plan with it costs 20.00 EUR more and is ready 4 days sooner; 1 line changes.")]
    public void Why_not_has_a_plain_answer(string number, string answer) => Assert.Equal(answer, Sold.WhyNot("wheel", Id(number)).HeadlineText);

    [Fact]
    public void A_part_that_is_refused_breaks_the_refusal()
    {
        var answer = Sold.Wish(new Wish("wheel", null) { Refuse = [Id("WHEEL-2")] }).WhyNot("wheel", Id("WHEEL-2"));

        Assert.Equal(PlanStatus.Infeasible, answer.Status);
        Assert.Equal(["force:wheel", "refuse:wheel:alder:WHEEL-2"], answer.Conflict!.Members.Select(member => member.Wish).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void A_budget_that_is_too_low_is_the_conflict_and_what_would_do_is_told()
    {
        var member = Assert.Single(Sold.With(build => build with { Budget = "20.00" }).Conflict().Members);

        Assert.Equal(("budget", "raise the budget to 30.00 EUR", TestBuild.Euros(3000)), (member.Wish, member.Mend, member.CostThen));
    }

    [Fact]
    public void Too_little_money_and_too_little_time_conflict_and_either_mends_it()
    {
        var members = Sold.With(build => build with { Budget = "40.00", NeededBy = "2026-11-04" }).Conflict().Members;

        Assert.Equal(["budget", "needed-by"], members.Select(member => member.Wish));
        Assert.Equal(TestBuild.Euros(5000), members[0].CostThen);
        Assert.Equal("need it later: the soonest is 2026-11-07", members[1].Mend);
    }

    [Fact]
    public void What_nobody_sells_is_the_conflict_though_a_rule_asks_for_it()
    {
        var told = Told.With(build => build with { Donor = build.Donor with { States = [new DonorState("shaft", PartState.Good, null, null, null, null)] } });

        Assert.Equal("obtainable:wheel", Assert.Single(told.Conflict().Members).Wish);
    }

    [Fact]
    public void A_refused_seller_is_a_member_where_only_he_has_it()
    {
        var members = Told.Sold("WHEEL-2", 5000).With(build => build with { RefusedSellers = ["mill"] }).Conflict().Members;

        Assert.Equal(["seller:mill", "obtainable:wheel"], members.Select(member => member.Wish));
        Assert.Equal(("buy of mill", TestBuild.Euros(5000)), (members[0].Mend, members[0].CostThen));
    }

    [Fact]
    public void The_frontier_tells_what_each_day_sooner_costs()
    {
        var frontier = Sold.Frontier();

        // (50.00 − 30.00) / (5 − 1) = 5.00
        Assert.Equal([(1, "50.00", "5.00"), (5, "30.00", null)], frontier.Points.Select(point => (point.Days, point.Cost.Amount, point.DayCosts?.Amount)));
        Assert.Equal("wheel", Assert.Single(frontier.Points[0].Differs).Position);
        Assert.Equal(TestBuild.Euros(2000), Assert.Single(frontier.Swings, swing => swing.What == "price").Room);
    }

    [Fact]
    public void An_offer_may_come_later_until_the_day_it_is_needed()
    {
        var swing = Assert.Single(Sold.With(build => build with { NeededBy = "2026-11-09" }).Frontier().Swings, swing => swing.What == "delay");

        Assert.Contains("may come 2 days later", swing.Text, StringComparison.Ordinal);
        Assert.Contains("WHEEL-2", swing.Becomes, StringComparison.Ordinal);
    }

    // What becomes of it without any wheel is not known either: so that is refused.
    [Fact]
    public void What_is_taken_on_trust_tells_what_it_saves()
    {
        var trusting = Sold.Sold("WHEEL-5", 1000).With(build => build with { AdmitNotKnown = true }).Wish(new Wish("wheel", null) { Refuse = ["none"] });

        var trusted = Assert.Single(trusting.Plan().OnTrust);
        Assert.Equal(("wheel", TestBuild.Euros(2000)), (trusted.Position, trusted.Saves));
        Assert.Equal(TestBuild.Euros(2000), Assert.Single(trusting.Frontier().Swings, swing => swing.What == "fit").Room);
    }

    // WHEEL-2 and WHEEL-3 are grades of the swift's wheel: which one it takes is measured.
    [Fact]
    public void Grades_are_counted_at_the_dearest_and_the_cheapest_is_told()
    {
        var graded = Sold with { Family = Told.Family.Fitted("swift", "wheel", "WHEEL-3").Chosen("wheel", "shaft.width", 9, 10, "WHEEL-2").Chosen("wheel", "shaft.width", 10, 11, "WHEEL-3") };

        var cost = graded.Plan().Cost;

        Assert.Equal((TestBuild.Euros(5000), TestBuild.Euros(3000)), (cost?.Total, cost?.Cheapest));
    }

    // The shaft is damaged: that wish cannot be; the one that stands behind it in the family still can.
    [Fact]
    public void A_wish_to_keep_gives_way_only_where_no_plan_holds_it()
    {
        var told = Sold.Sold("SHAFT-1", 1000).Donor("shaft", PartState.Damaged)
            .Wish(new Wish("shaft", null) { Keep = KeepWish.KeepIfPossible }).Wish(new Wish("wheel", null) { Keep = KeepWish.KeepIfPossible });

        var plan = told.Plan();

        Assert.Equal(LineAction.Keep, plan.Lines.Single(line => line.Position == "wheel").Action);
        Assert.Equal("Shaft: the donor's own stays.", Assert.Single(plan.Flags, flag => flag.StartsWith("Not in this plan", StringComparison.Ordinal)).Split(": ", 2)[1]);
    }

    [Fact]
    public void The_drawing_steps_from_plan_to_plan()
    {
        var plot = Assert.IsType<PartMatch.Core.Plots.CurvePlot>(BuildPlots.Frontier(Sold.Frontier()));

        Assert.Equal([(1.0, 50.0), (5.0, 50.0), (5.0, 30.0)], plot.Lines[0].Points.Select(point => (point.X, point.Y)));
        Assert.Equal(["1", "2026-11-03", "50.00", "5.00", "documented"], plot.Table.Rows[0]);
    }
}
