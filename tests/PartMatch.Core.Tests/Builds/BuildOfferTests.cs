using PartMatch.Core.Builds;
using PartMatch.Core.Buying;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Fit;
using PartMatch.Core.Listings;
using PartMatch.Core.Measures;
using PartMatch.Core.Orders;
using PartMatch.Core.Planning;
using Xunit;
using static PartMatch.Core.Tests.Catalogue.TestFamily;

namespace PartMatch.Core.Tests.Builds;

/// <summary>Which offers count, when they come and what they cost, each by hand: a swift wants WHEEL-2, the lark's own stops there; the shaft is the same.</summary>
public sealed class BuildOfferTests
{
    private static TestBuild Told => new TestBuild(
        WithWheelsAndShafts(
            wheel => wheel.CannotAlterRunning().Choice("colour", "red", "blue").Rule("colour", Effect.Stops), shaft => shaft.CannotAlterRunning().Length("width"))
            .Wheel("WHEEL-1", Has("colour", Word("red"))).Wheel("WHEEL-2", Has("colour", Word("blue"))).Wheel("WHEEL-5")
            .Shaft("SHAFT-1", Has("width", Mm(10))).Shaft("SHAFT-2", Has("width", Mm(12)))
            .Fitted("lark", "wheel", "WHEEL-1").Fitted("swift", "wheel", "WHEEL-2").Fitted("lark", "shaft", "SHAFT-1").Fitted("swift", "shaft", "SHAFT-1"))
        .Seller("mill").Seller("forge");

    [Theory]
    [InlineData(-1, 5000)] // the older row is history
    [InlineData(0, 3000)] // two of one day are two offers
    public void Of_one_seller_the_row_seen_last_counts(int older, long cost)
    {
        var told = Told.Sold("WHEEL-2", 3000).Sold("WHEEL-2", 5000);

        Assert.Equal(TestBuild.Euros(cost), Seen(told, 0, older).Plan().Cost?.Total);
    }

    [Fact]
    public void Of_two_sellers_both_rows_count() =>
        Assert.Equal(TestBuild.Euros(3000), Seen(Told.Sold("WHEEL-2", 3000).Sold("WHEEL-2", 5000, "forge"), 0, -1).Plan().Cost?.Total);

    [Theory]
    [InlineData(0, PlanStatus.ProvenOptimal)]
    [InlineData(1, PlanStatus.Infeasible)]
    public void What_is_seen_after_the_day_of_the_question_does_not_count(int later, PlanStatus status) =>
        Assert.Equal(status, Seen(Told.Sold("WHEEL-2", 3000), 0, later).Plan().Status);

    // Asked on 2 November: what is not ordered yet cannot have been ordered on 30 October, and takes its three days from today.
    [Theory]
    [InlineData("2026-10-30", "2026-11-05")]
    [InlineData("2026-11-02", "2026-11-05")]
    [InlineData("2026-11-04", "2026-11-07")]
    public void Nothing_is_counted_as_ordered_before_the_day_of_the_question(string startOn, string ready) => Assert.Equal(
        ready, $"{Told.Sold("WHEEL-2", 3000, days: 3).With(build => build with { StartOn = startOn }).Plan().ReadyOn:yyyy-MM-dd}");

    // 50.00 and a deposit of 10.00, a wheel for 30.00: the lark has a shaft of the same number to send back, or came without one.
    [Theory]
    [InlineData(PartState.Damaged, 8000)]
    [InlineData(PartState.Missing, 9000)]
    public void A_deposit_is_a_price_where_there_is_no_old_part(PartState state, long cost) =>
        Assert.Equal(TestBuild.Euros(cost), WithDeposit(Told.Sold("SHAFT-1", 5000).Sold("WHEEL-2", 3000).Donor("shaft", state)).Plan().Cost?.Total);

    // The lark's own wheel is another number: whether the seller takes it, no number says.
    [Fact]
    public void A_deposit_is_a_price_where_the_old_part_is_another() =>
        Assert.Equal(TestBuild.Euros(6000), WithDeposit(Told.Sold("WHEEL-2", 5000).Donor("wheel", PartState.Damaged)).Plan().Cost?.Total);

    // The old shaft would sell for 4.00, or bring its deposit of 10.00 back, not both: 50.00 + 30.00 either way, and not 76.00.
    [Fact]
    public void An_old_part_is_handed_in_or_sold() => Assert.Equal(
        TestBuild.Euros(8000), WithDeposit(Told.Sold("SHAFT-1", 5000).Sold("WHEEL-2", 3000).Donor("shaft", PartState.Damaged, sellsFor: 400)).Plan().Cost?.Total);

    private static TestBuild WithDeposit(TestBuild told) =>
        told with { Offers = [told.Offers[0] with { CoreDeposit = TestBuild.Euros(1000) }, .. told.Offers.Skip(1)] };

    // One franc is 0.50 EUR, and 5 % are added at the border.
    [Theory]
    [InlineData("0.30", 16)] // 0.315 × 0.5 = 0.1575
    [InlineData("0.62", 33)] // 0.651 × 0.5 = 0.3255; rounded in between 0.65 × 0.5 = 0.325, so 0.32
    [InlineData("0.98", 51)] // 1.029 × 0.5 = 0.5145; rounded in between 1.03 × 0.5 = 0.515, so 0.52
    public void Price_and_import_charge_are_converted_and_rounded_once(string price, long cost)
    {
        var told = Told.Seller("border", import: 5).Sold("WHEEL-2", 1, "border").With(build => build with { Rates = [new Rate("CHF", "0.5", null)] });

        Assert.Equal(
            TestBuild.Euros(cost), (told with { Offers = [told.Offers[0] with { Price = new Money(price, "CHF"), Shipping = TestBuild.Euros(0) }] }).Plan().Cost?.Total);
    }

    // Where money is spent: at the line, and in the basket that is ordered and printed.
    [Fact]
    public void A_look_alike_that_does_harm_and_no_way_back_are_said_at_the_line_and_in_the_basket()
    {
        var told = Told.Sold("WHEEL-2", 3000);
        var plain = told.Plan();
        var plan = (told with
        {
            Family = told.Family.Judged("WHEEL-2", "WHEEL-5", PairJudgement.Trap),
            Offers = [told.Offers[0] with { Returns = new OfferReturns(Returnable.No, null, null, FreightBack.NotStated, null) }],
        }).Plan();

        string[] dangers = ["has a look-alike that does harm: tell them apart before paying", "the seller says that it does not go back: be sure before paying"];
        Assert.Equal(dangers, plan.Lines.Single(line => line.Position == "wheel").Flags.Intersect(dangers));
        Assert.Equal(dangers, plan.Baskets.Single().Items.Single().Flags);
        Assert.Empty(plain.Baskets.Single().Items.Single().Flags);
    }

    [Fact]
    public void A_kit_that_holds_a_part_with_such_a_look_alike_says_which()
    {
        var told = Told with { Family = Told.Family.Wheel("KIT-1").Judged("WHEEL-2", "WHEEL-5", PairJudgement.Trap) };

        Assert.Equal(
            ["holds parts that have look-alikes that do harm: tell WHEEL-2 apart before paying"],
            told.Holds("KIT-1", "WHEEL-2").Sold("KIT-1", 3000).Plan().Baskets.Single().Items.Single().Flags);
    }

    [Fact]
    public void What_the_build_does_not_say_is_told_where_nothing_holds_for_want_of_it()
    {
        var told = Told.Sold("WHEEL-2", 3000);
        var conflict = (told with { Offers = [told.Offers[0] with { Price = new Money("30.00", "CHF") }] }).Conflict();

        Assert.Equal([("rates", 1, "1 offer does not count, in CHF, for which there is no rate: say how much 1 CHF is in EUR.")],
            conflict.NotStated.Select(one => (one.Field, one.Offers, one.Text)));
        Assert.Empty((told with { Offers = [] }).Conflict().NotStated);
    }

    [Fact]
    public void An_offer_whose_sending_has_no_rate_is_left_out()
    {
        var told = Told.Sold("WHEEL-2", 3000);
        var plan = (told with { Offers = [told.Offers[0] with { Shipping = new Money("4.00", "CHF") }] }).Plan();

        Assert.Equal(PlanStatus.Infeasible, plan.Status);
        Assert.Equal(["1 offer left out: sending priced in CHF, for which the build has no rate (alder/o0-wheel-2)."], plan.NotWeighed);
    }

    // The shaft comes on day 4; which wheel it takes is measured then, and comes 3 days later.
    [Fact]
    public void What_is_chosen_by_measurement_is_ordered_when_it_was_measured()
    {
        var told = new TestBuild(Told.Family.Chosen("wheel", "shaft.width", 9, 11, "WHEEL-2")).Seller("mill")
            .Sold("WHEEL-2", 3000, days: 3).Sold("SHAFT-1", 2000, days: 4).Donor("shaft", PartState.Damaged);
        var plan = told.Plan();

        Assert.Equal((7, TestBuild.Today.AddDays(7)), (plan.Days, plan.Lines.Single(line => line.Position == "wheel").Buy.Single().ArrivesOn));
        var order = Assert.Single(plan.Works);
        Assert.Equal(("order:wheel", TestBuild.Today.AddDays(4), TestBuild.Today.AddDays(7)), (order.Work, order.StartsOn, order.EndsOn));
        Assert.Contains(
            plan.Baskets.SelectMany(basket => basket.Items).Single(item => item.Part == Id("WHEEL-2")).Flags,
            flag => flag.StartsWith("measure first, do not order yet", StringComparison.Ordinal));
    }

    // A parcel of the mill costs 5.00. Which wheel it takes is measured on the shaft: on the one that comes on day 4 the wheel travels alone, 20 + 30 + 2 x 5;
    // on the donor's own the wheel alone is ordered, on the first day, 30 + 5.
    [Fact]
    public void What_is_measured_for_on_a_part_to_come_travels_in_a_parcel_of_its_own()
    {
        var told = new TestBuild(Told.Family.Chosen("wheel", "shaft.width", 9, 11, "WHEEL-2")).Seller("mill", parcel: 500)
            .Sold("WHEEL-2", 3000, days: 3).Sold("SHAFT-1", 2000, days: 4);
        var plan = told.Donor("shaft", PartState.Damaged).Plan();

        Assert.Equal(TestBuild.Euros(2000 + 3000 + 500 + 500), plan.Cost?.Total);
        Assert.Equal(
            "5.00 EUR for the parcel (5.00 EUR and 0.00 EUR for each of 1 pieces), ordered at once; "
                + "5.00 EUR for the parcel (5.00 EUR and 0.00 EUR for each of 1 pieces), ordered when it has been measured for",
            Assert.Single(plan.Baskets).SendingText);
        Assert.Equal(TestBuild.Euros(3000 + 500), told.Plan().Cost?.Total);
    }

    // The dearer seller has another one; of the cheaper one's two packs so many are left as the build has not ordered since they were seen.
    [Theory]
    [InlineData(0, 1, 3000)]
    [InlineData(0, 2, 5000)]
    [InlineData(-1, 2, 3000)] // what was ordered before they were seen is no longer among them
    public void What_the_build_has_ordered_is_no_longer_for_sale(int ordered, int pieces, long cost)
    {
        var told = Told.Sold("WHEEL-2", 3000, stock: 2).Sold("WHEEL-2", 5000, "forge");
        var taken = new OrderedOf("alder/o0-wheel-2", pieces, TestBuild.Today.AddDays(ordered));

        Assert.Equal(TestBuild.Euros(cost), (told with { Bought = new BuildBought("EUR", [], 0, 0, 0) { Ordered = [taken] } }).Plan().Cost?.Total);
    }

    // The wheel is chosen under the cap: the shaft it is measured on is there, the cap comes on day 6, and the wheel 3 days after that.
    [Fact]
    public void What_is_measured_under_a_part_to_come_is_ordered_when_that_is_there()
    {
        var family = Told.Family.Place("cap", cap => cap.CannotAlterRunning().Choice("colour", "red", "blue").Rule("colour", Effect.Stops))
            .Part("CAP-1", "cap", Has("colour", Word("red"))).Fitted("lark", "cap", "CAP-1").Fitted("swift", "cap", "CAP-1").Chosen("wheel", "shaft.width", 9, 11, "WHEEL-2");
        var told = new TestBuild(family.GoesInFirst("wheel", "cap", BenchJoin.ChosenUnder)).Seller("mill")
            .Sold("WHEEL-2", 3000, days: 3).Sold("CAP-1", 500, days: 6).Donor("cap", PartState.Damaged);

        Assert.Equal((9, TestBuild.Today.AddDays(6)), (told.Plan().Days, Assert.Single(told.Plan().Works).StartsOn));
    }

    // One wheel was bought and measured for; the second one is measured for on the shaft that comes on day 4, and comes 3 days later in a parcel of its own.
    [Fact]
    public void A_grade_bought_for_one_position_is_no_word_on_another()
    {
        var told = new TestBuild(Told.Family.Position("wheel-2", "wheel").Fitted("lark", "wheel-2", "WHEEL-1").Fitted("swift", "wheel-2", "WHEEL-2")
            .Chosen("wheel", "shaft.width", 9, 11, "WHEEL-2").Chosen("wheel-2", "shaft.width", 9, 11, "WHEEL-2")).Seller("mill")
            .Sold("WHEEL-2", 3000, days: 3).Sold("SHAFT-1", 2000, days: 4).Donor("shaft", PartState.Damaged);
        var bought = new BoughtPieces(1, 1, Id("WHEEL-2"), 1, LineState.Checked, null, IsNew: true, "alder/mill", null) { For = "wheel" };

        var plan = (told with { Bought = new BuildBought("EUR", [bought], 3000, 0, 0) }).Plan();

        var second = plan.Lines.Single(line => line.Position == "wheel-2");
        Assert.Equal(TestBuild.Today.AddDays(7), Assert.Single(second.Buy).ArrivesOn);
        Assert.Contains("measure, then order", second.Flags);
        Assert.DoesNotContain("measure, then order", plan.Lines.Single(line => line.Position == "wheel").Flags);
    }

    // What is sent free from 45.00 is sent free if it travels together, and neither half of it is.
    [Fact]
    public void A_parcel_of_its_own_is_free_by_itself_or_not_at_all()
    {
        var told = new TestBuild(Told.Family.Chosen("wheel", "shaft.width", 9, 11, "WHEEL-2")).Seller("mill", parcel: 500, freeFrom: 4500)
            .Sold("WHEEL-2", 3000, days: 3).Sold("SHAFT-1", 2000, days: 4).Donor("shaft", PartState.Damaged);

        Assert.Equal(TestBuild.Euros(2000 + 3000 + 500 + 500), told.Plan().Cost?.Total);
        Assert.Equal(TestBuild.Euros(2000 + 3000), (told with { Offers = [told.Offers[0], told.Offers[1] with { DaysMin = 0, DaysMax = 0 }] }).Plan().Cost?.Total);
    }

    // The lark's own shaft is wished kept where it can be; the other, which nothing but that wish keeps away, brings 6.00 for the old one.
    [Fact]
    public void What_a_wish_to_keep_costs_is_told()
    {
        var told = Told.Sold("WHEEL-2", 3000).Sold("SHAFT-1", 100).Donor("shaft", PartState.Good, sellsFor: 600);
        var plan = told.Wish(new Wish("shaft", null) { Keep = KeepWish.KeepIfPossible }).Plan();

        Assert.Equal(TestBuild.Euros(3000 + 100 - 600), told.Plan().Cost?.Total);
        Assert.Equal(TestBuild.Euros(3000), plan.Cost?.Total);
        Assert.StartsWith("No plan that keeps what you wish to keep is cheaper: 30.00 EUR", plan.HeadlineText, StringComparison.Ordinal);
        Assert.Contains(plan.Flags, flag => flag.EndsWith("The plan without that wish costs 5.00 EUR less.", StringComparison.Ordinal));
    }

    // A wish to keep says nothing of how the engine may run: the red wheel stops there all the same.
    [Theory]
    [InlineData(KeepWish.Keep, PlanStatus.Infeasible)]
    [InlineData(KeepWish.KeepIfPossible, PlanStatus.ProvenOptimal)]
    public void To_keep_a_part_does_not_make_it_fit(KeepWish keep, PlanStatus status) =>
        Assert.Equal(status, Told.Sold("WHEEL-2", 3000).Wish(new Wish("wheel", null) { Keep = keep }).Plan().Status);

    [Fact]
    public void What_a_wished_engine_has_is_not_left_off_on_trust() => Assert.Equal(
        PlanStatus.Infeasible, Told.With(build => build with { AdmitNotKnown = true }).Plan().Status);

    // Of WHEEL-5 nobody recorded the colour.
    [Fact]
    public void Each_thing_on_trust_tells_what_it_saves()
    {
        var trusted = Assert.Single(Told.Sold("WHEEL-2", 5000).Sold("WHEEL-5", 1000).With(build => build with { AdmitNotKnown = true }).Plan().OnTrust);

        Assert.Equal(("wheel", TestBuild.Euros(4000)), (trusted.Position, trusted.Saves));
    }

    // Ran on a lark beside another shaft, and broke: it counts for nothing here, and is told.
    [Fact]
    public void What_broke_beside_other_neighbours_is_told()
    {
        var told = new TestBuild(Told.Family.Found("broke", "WHEEL-2", FindingOutcome.Differently, By(EvidenceGrade.RanUnderLoad), "swift", "wheel", null, "shaft=SHAFT-2"))
            .Seller("mill").Sold("WHEEL-2", 3000);

        var line = told.Plan().Lines.Single(line => line.Position == "wheel");

        Assert.Equal(Headline.Fits, line.Headline);
        Assert.Contains(line.Flags, flag => flag.StartsWith("found in another setting, and not counted here:", StringComparison.Ordinal));
    }

    [Fact]
    public void Conflicts_behind_the_first_are_told_with_the_part_that_would_do()
    {
        var conflict = Told.Donor("shaft", PartState.Missing).Conflict();

        Assert.Equal("One thing keeps every plan away, and there is another conflict behind it.", conflict.HeadlineText);
        Assert.Equal(("obtainable:shaft", "find SHAFT-1"), Of(Assert.Single(conflict.Members)));
        Assert.Equal(("obtainable:wheel", "find WHEEL-2"), Of(Assert.Single(Assert.Single(conflict.Further).Members)));

        static (string, string) Of(ConflictMember member) => (member.Wish, member.Mend);
    }

    [Fact]
    public void A_wanted_part_tells_why_its_offers_do_not_count()
    {
        var told = Told.Sold("WHEEL-2", 3000);
        var member = Assert.Single((told with { Offers = [told.Offers[0] with { Price = new Money("30.00", "CHF") }] }).Conflict().Members);

        Assert.Equal("find WHEEL-2 (offered, but left out: priced in CHF, for which the build has no rate)", member.Mend);
    }

    // The lark stays a lark; which of the two wheels this one has, its serial number would tell.
    [Fact]
    public void An_engine_that_stays_as_it_is_has_a_plan_though_nobody_knows_which_part_it_has()
    {
        var told = new TestBuild(Told.Family.Fitted("lark", "wheel", "WHEEL-2")).With(build => build with { Target = "lark" });

        Assert.Equal((PlanStatus.ProvenOptimal, TestBuild.Euros(0)), (told.Plan().Status, told.Plan().Cost?.Total));
    }

    private static TestBuild Seen(TestBuild told, int offer, int days) => told with
    {
        Offers = [.. told.Offers.Select((one, index) => index == offer ? one with { SeenOn = TestBuild.Today.AddDays(days) } : one)],
    };
}
