using CsCheck;
using PartMatch.Core.Builds;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Donors;
using PartMatch.Core.Measures;
using PartMatch.Core.Planning;
using PartMatch.Core.Tests.Builds;
using Xunit;
using static PartMatch.Core.Tests.Catalogue.TestFamily;

namespace PartMatch.Core.Tests.Donors;

/// <summary>Donors of an invented family: the swift has a blue wheel, the lark a red one, both the same shaft. A blue wheel is sold for 10.00, a shaft for 5.00.</summary>
public sealed class DonorRankingTests
{
    private static TestBuild Told => new TestBuild(
        WithWheelsAndShafts(
            wheel => wheel.CannotAlterRunning().Choice("colour", "red", "blue").Rule("colour", Effect.Stops),
            shaft => shaft.CannotAlterRunning().Choice("end", "plain", "keyed").Rule("end", Effect.Stops))
            .Wheel("WHEEL-1", Has("colour", Word("red"))).Wheel("WHEEL-2", Has("colour", Word("blue"))).Shaft("SHAFT-1", Has("end", Word("plain")))
            .Fitted("lark", "wheel", "WHEEL-1").Fitted("swift", "wheel", "WHEEL-2").Fitted("lark", "shaft", "SHAFT-1").Fitted("swift", "shaft", "SHAFT-1"))
        .Seller("mill").Sold("WHEEL-2", 1000).Sold("SHAFT-1", 500).With(build => build with { Donor = Good("lark", "3.00", "1.00") });

    /// <summary>One of which every part was inspected.</summary>
    private static Donor Good(string variant, string? price, string? freight) => new(
        variant, null, null, price, [State("wheel", PartState.Good), State("shaft", PartState.Good)])
    {
        Freight = freight,
    };

    private static DonorState State(string position, PartState state) => new(position, state, null, null, null, null);

    private static TestBuild With(params DonorOffer[] offers) => Told.With(build => build with { Donors = offers });

    private static DonorOffer Offer(string code, Donor donor) => new(code, $"The {code}", donor);

    private static DonorRanks Rank(TestBuild told, PlanObjective objective = PlanObjective.Cheapest) =>
        DonorRanking.Rank(told.Facts(), told.Build, 1, objective, TestBuild.Today, PlanEffort.Ordinary, told.Memory);

    private static RankedDonor Only(DonorRanks ranks, string code) => Assert.Single(ranks.Donors, donor => donor.Donor == code);

    // The lark that is there: 10.00 for a wheel + 3.00 + 1.00 = 14.00. The swift: nothing to buy, 11.00 + 2.00 = 13.00.
    [Fact]
    public void Donor_that_costs_more_to_buy_and_less_with_everything_stands_first()
    {
        var ranks = Rank(With(Offer("barn", Good("swift", "11.00", "2.00"))));

        Assert.Equal([("barn", 1, "0.00", "13.00"), ("donor", 2, "10.00", "14.00")],
            ranks.Donors.Select(donor => (donor.Donor, donor.Rank ?? 0, donor.ToFinish?.Amount ?? "", donor.Whole?.Amount ?? "")));
        Assert.Equal((false, true), (ranks.Donors[0].IsPresent, ranks.Donors[1].IsPresent));
        Assert.Contains("costs less", ranks.Donors[0].RankText, StringComparison.Ordinal);
    }

    // Up to 14.00 − 0.00 for the swift, up to 13.00 − 10.00 for the lark.
    [Fact]
    public void What_a_donor_is_worth_is_what_the_best_other_one_costs_less_what_is_to_finish()
    {
        var ranks = Rank(With(Offer("barn", Good("swift", "11.00", "2.00"))));

        Assert.Equal(("14.00", "3.00"), (Only(ranks, "barn").WorthUpTo?.Amount, Only(ranks, "donor").WorthUpTo?.Amount));
    }

    [Theory]
    [InlineData(null, "2.00")]
    [InlineData("11.00", null)]
    public void Donor_without_a_price_or_without_freight_has_no_place_and_is_not_counted_as_free(string? price, string? freight)
    {
        var ranks = Rank(With(Offer("barn", Good("swift", price, freight))));

        Assert.Equal(["donor", "barn"], ranks.Donors.Select(donor => donor.Donor));
        var barn = Only(ranks, "barn");
        Assert.Equal((null, null, "14.00"), (barn.Rank, barn.Whole, barn.WorthUpTo?.Amount));
        Assert.Contains("not known", barn.CostText, StringComparison.Ordinal);
    }

    // 10.00 to finish + 3.00 + 1.00 either way; the second stands where the list has it.
    [Fact]
    public void Donors_that_come_to_the_same_share_their_place_and_that_is_said()
    {
        var ranks = Rank(With(Offer("twin", Good("lark", "2.00", "2.00"))));

        Assert.Equal([("donor", 1), ("twin", 1)], ranks.Donors.Select(donor => (donor.Donor, donor.Rank ?? 0)));
        Assert.All(ranks.Donors, donor => Assert.Contains("Comes to the same as", donor.RankText, StringComparison.Ordinal));
    }

    // Both 14.00; of the one nobody has looked at the shaft, which is kept.
    [Fact]
    public void Of_two_that_cost_the_same_the_one_with_fewer_unknowns_stands_first()
    {
        var ranks = Rank(With(Offer("unseen", Good("lark", "4.00", "0.00") with { States = [State("wheel", PartState.Good)] })));

        Assert.Equal([("donor", 1, 0), ("unseen", 2, 1)], ranks.Donors.Select(donor => (donor.Donor, donor.Rank ?? 0, donor.Unknowns ?? -1)));
        Assert.Contains("fewer unknowns", ranks.Donors[0].RankText, StringComparison.Ordinal);
    }

    // A shaft is sold for 5.00.
    [Fact]
    public void Part_that_nobody_inspected_is_told_with_what_the_build_costs_more_without_it()
    {
        var ranks = Rank(With(Offer("unseen", Good("lark", "4.00", "0.00") with { States = [] })));

        var part = Assert.Single(Only(ranks, "unseen").Look!.Parts); // each has one
        Assert.Equal(("shaft", "5.00"), (part.Position, part.IfBad?.Amount));
        Assert.Empty(Only(ranks, "donor").Look!.Parts);
    }

    // Wheel and shaft also come for the same money days later: neither plan waits for those.
    [Fact]
    public void What_a_bad_part_delays_is_counted_between_the_soonest_of_the_cheapest_plans()
    {
        var told = With(Offer("unseen", Good("lark", "4.00", "0.00") with { States = [] })).Sold("WHEEL-2", 1000, days: 4).Sold("SHAFT-1", 500, days: 9);
        var text = Assert.Single(Only(Rank(told), "unseen").Look!.Parts).Text;

        Assert.Equal("If it turns out to be bad, the build costs 5.00 EUR more.", text);
    }

    [Fact]
    public void Part_that_nobody_sells_stands_before_the_dearest_one()
    {
        var told = With(Offer("unseen", Good("swift", "4.00", "0.00") with { States = [] }));
        var parts = Only(Rank(told with { Offers = [told.Offers[0]] }), "unseen").Look!.Parts;

        Assert.Equal([("shaft", null), ("wheel", "10.00")], parts.Select(part => (part.Position, part.IfBad?.Amount)));
        Assert.Contains("there is no plan", parts[0].Text, StringComparison.Ordinal);
    }

    [Fact]
    public void Donor_without_a_plan_stands_last_with_what_conflicts()
    {
        var told = With(Offer("bare", Good("swift", "0.00", "0.00") with { States = [State("wheel", PartState.Good), State("shaft", PartState.Missing)] }));
        var ranks = Rank(told with { Offers = [told.Offers[0]] });

        var bare = ranks.Donors[^1];
        Assert.Equal(("bare", PlanStatus.Infeasible, null), (bare.Donor, bare.Status, bare.Rank));
        Assert.Equal("obtainable:shaft", Assert.Single(bare.NoPlan).Wish);
    }

    [Fact]
    public void What_comes_with_a_donor_is_in_hand()
    {
        var ranks = Rank(With(Offer("boxed", Good("lark", "5.00", "0.00") with { ComesWith = [new HeldPart(Id("WHEEL-2"), 1, "in a box")] })));

        Assert.Equal(("0.00", "10.00"), (Only(ranks, "boxed").ToFinish?.Amount, Only(ranks, "donor").ToFinish?.Amount));
    }

    // 2.00 + 1.00 in a currency of which one unit costs 2 EUR: 6.00, and 10.00 to finish.
    [Fact]
    public void Price_in_another_currency_is_converted_by_the_rate_of_the_build()
    {
        var abroad = With(Offer("abroad", Good("lark", "2.00", "1.00") with { Currency = "GBP" }));
        var rated = abroad.With(build => build with { Rates = [new Rate("GBP", "2", "invented")] });

        Assert.Equal("16.00", Only(Rank(rated), "abroad").Whole?.Amount);
        Assert.Null(Only(Rank(abroad), "abroad").Whole);
    }

    [Fact]
    public void Donor_that_was_taken_is_the_one_of_the_build_and_stands_once()
    {
        var barn = Offer("barn", Good("swift", "11.00", "2.00"));
        var taken = With(barn).With(build => DonorOffers.With(build, barn));

        Assert.True(Assert.Single(Rank(taken).Donors).IsPresent);
    }

    [Fact]
    public void Every_plan_is_that_of_the_build_with_the_donor() => Gen.OneOf(AnyBuild.Of(wishes: true), AnyBuild.Bought).Sample(
        told =>
        {
            Donor[] donors = [.. told.Family.Facts().Variants.Select(variant => told.Build.Donor with { Variant = variant.Code, Price = "1.00",
                Freight = "0.00" })];
            var ranked = Rank(told.With(build => build with { Donors = [.. donors.Select((donor, index) => new DonorOffer($"d{index}", "One", donor))] }));
            foreach (var row in ranked.Donors.Where(row => row.Donor != DonorOffers.Present))
            {
                var plan = told.Fresh().With(build => build with { Donor = donors[row.Donor[1] - '0'] }).Plan();
                Assert.Equal((plan.Status, plan.HeadlineText, plan.Days, plan.Sureness), (row.Status, row.HeadlineText, row.Days, row.Sureness));
                Assert.Equal(plan.Cost?.Total, row.ToFinish);
                Assert.Equal(Cents(plan.Cost?.Total) + 100, Cents(row.Whole));
            }

            List<long?> wholes = [.. ranked.Donors.Select(row => Cents(row.Whole)).Where(whole => whole is not null)];
            Assert.Equal(wholes.Order(), wholes);
        },
        iter: 25, threads: 1);

    private static long? Cents(Money? money) => money is null ? null : (long)Amount.Of(money).Minor;
}
