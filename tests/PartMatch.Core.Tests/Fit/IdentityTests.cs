using PartMatch.Core.Catalogue;
using PartMatch.Core.Fit;
using PartMatch.Core.Tests.Catalogue;
using Xunit;
using static PartMatch.Core.Tests.Catalogue.TestFamily;

namespace PartMatch.Core.Tests.Fit;

/// <summary>What the numbers alone say: fitted here, or linked by supersession in the permitted direction and within its limits.</summary>
public sealed class IdentityTests
{
    [Fact]
    public void The_fitted_part_mounts_and_runs_the_same_by_what_the_maker_did()
    {
        var answer = Wheels("W-1").Ask("W-1");

        Assert.Equal(IdentityRelation.FittedHere, answer.Identity.Relation);
        AssertIdentity(answer);
        Assert.Empty(answer.Identity.Chain);
        Assert.Equal(["alder:W-1"], answer.Identity.Fitted);
    }

    [Fact]
    public void A_part_that_was_only_seen_there_is_not_said_to_be_the_makers()
    {
        var answer = Wheels("W-2").Wheel("W-1").Fitted("swift", "wheel", "W-1", evidence: By(EvidenceGrade.Measured, "a")).Ask("W-1", on: "swift");

        Assert.Equal(IdentityRelation.FittedHere, answer.Identity.Relation);
        var reason = answer.Reasons.First(reason => reason.By == ReasonBy.Identity);
        Assert.Equal("W-1 is what was found fitted on swift; no maker's document says so, and somebody may have put it there.", reason.Text);
        Assert.Equal((EvidenceGrade.Measured, "ev-measured-a"), (reason.Grade, reason.Cited.Single().Code));
    }

    [Fact]
    public void A_newer_number_counts_by_its_chain()
    {
        var answer = Wheels("W-1", "W-2", "W-3").Replaced("W-1", "W-2").Replaced("W-2", "W-3", SupersessionWay.Both).Ask("W-3");

        Assert.Equal(IdentityRelation.NewerNumber, answer.Identity.Relation);
        AssertIdentity(answer);
        Assert.Equal(["W-1>W-2 one", "W-2>W-3 both"], Steps(answer));
    }

    [Fact]
    public void An_older_number_is_no_identity_and_says_so()
    {
        var answer = Wheels("W-2", "W-1").Replaced("W-1", "W-2").Ask("W-1");

        Assert.Equal(IdentityRelation.OlderNumber, answer.Identity.Relation);
        Assert.Equal(Headline.NotKnownYet, answer.Headline);
        Assert.Contains("older number; the maker does not put it in place of the newer", answer.AllText(), StringComparison.Ordinal);
    }

    [Fact]
    public void A_link_both_ways_counts_in_both_directions()
    {
        var family = Wheels("W-1", "W-2").Fitted("swift", "wheel", "W-2").Replaced("W-1", "W-2", SupersessionWay.Both);

        Assert.Equal(IdentityRelation.SameBothWays, family.Ask("W-2").Identity.Relation);
        Assert.Equal(IdentityRelation.SameBothWays, family.Ask("W-1", on: "swift").Identity.Relation);
        AssertIdentity(family.Ask("W-1", on: "swift"));
        Assert.Equal(["W-2>W-1 both"], Steps(family.Ask("W-1", on: "swift")));
    }

    // W-1 → W-2 one way; W-3 ↔ W-1. From W-2 the older W-1 and its equal W-3 are reached only against the arrow.
    [Fact]
    public void A_part_equal_to_an_older_number_is_an_older_number()
    {
        var family = Wheels("W-2", "W-1", "W-3", "W-4").Replaced("W-1", "W-2").Replaced("W-1", "W-3", SupersessionWay.Both).Replaced("W-4", "W-1", SupersessionWay.Both);

        Assert.Equal(IdentityRelation.OlderNumber, family.Ask("W-3").Identity.Relation);
        Assert.Equal(IdentityRelation.OlderNumber, family.Ask("W-4").Identity.Relation);
    }

    [Fact]
    public void Siblings_replaced_by_the_same_newer_number_are_not_identical()
    {
        var family = Wheels("W-1", "W-2", "W-3").Replaced("W-1", "W-3").Replaced("W-2", "W-3");

        Assert.Equal(IdentityRelation.AnotherPart, family.Ask("W-2").Identity.Relation);
    }

    [Fact]
    public void The_shortest_chain_is_shown()
    {
        var answer = Wheels("W-1", "W-2", "W-3", "W-4").Replaced("W-1", "W-2").Replaced("W-2", "W-3").Replaced("W-3", "W-4").Replaced("W-2", "W-4").Ask("W-4");

        Assert.Equal(["W-1>W-2 one", "W-2>W-4 one"], Steps(answer));
    }

    [Fact]
    public void A_loop_of_one_way_links_ends_and_is_reported_as_a_fault()
    {
        var answer = Wheels("W-1", "W-2", "W-3").Replaced("W-1", "W-2").Replaced("W-2", "W-3").Replaced("W-3", "W-1").Ask("W-3");

        Assert.Equal(IdentityRelation.NewerNumber, answer.Identity.Relation);
        Assert.Contains("Fault in the base", answer.AllText(), StringComparison.Ordinal);
        Assert.Contains("loop", answer.AllText(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("W-0", "at the fitted part")]
    [InlineData("W-1", "at the part asked about")]
    public void A_loop_that_the_chain_only_touches_is_reported_too(string asked, string where)
    {
        var answer = Wheels("W-0", "W-1", "W-2").Replaced("W-0", "W-1").Replaced("W-1", "W-2").Replaced("W-2", asked == "W-0" ? "W-0" : "W-1").Ask(asked);

        Assert.True(answer.AllText().Contains("Fault in the base", StringComparison.Ordinal), where);
    }

    [Fact]
    public void A_loop_among_parts_that_are_not_asked_about_is_walked_to_its_end_in_silence()
    {
        var answer = Wheels("W-1", "W-2", "W-3", "W-4").Replaced("W-2", "W-3").Replaced("W-3", "W-2").Ask("W-4");

        Assert.Equal(IdentityRelation.AnotherPart, answer.Identity.Relation);
        Assert.DoesNotContain("Fault", answer.AllText(), StringComparison.Ordinal);
    }

    [Fact]
    public void Links_both_ways_are_no_loop() =>
        Assert.DoesNotContain("Fault", Wheels("W-1", "W-2", "W-3").Replaced("W-1", "W-2", SupersessionWay.Both).Replaced("W-2", "W-3", SupersessionWay.Both).Replaced("W-3", "W-1", SupersessionWay.Both)
            .Ask("W-3").AllText(), StringComparison.Ordinal);

    [Fact]
    public void A_supersession_of_other_variants_is_no_identity_and_says_so()
    {
        var answer = Wheels("W-1", "W-2").Replaced("W-1", "W-2", variants: ["swift"]).Ask("W-2");

        Assert.Equal(IdentityRelation.AnotherPart, answer.Identity.Relation);
        Assert.Contains("not for this variant", answer.AllText(), StringComparison.Ordinal);
        Assert.Equal(Headline.NotKnownYet, answer.Headline);
    }

    [Theory]
    [InlineData(41206, IdentityRelation.NewerNumber)]
    [InlineData(41207, IdentityRelation.AnotherPart)]
    public void A_supersession_holds_on_its_last_serial_number_and_not_after(long serial, IdentityRelation expected) =>
        Assert.Equal(expected, Wheels("W-1", "W-2").Replaced("W-1", "W-2", span: Serials(null, 41206)).Ask("W-2", serial: serial).Identity.Relation);

    [Fact]
    public void One_number_replaced_by_several_with_others_says_how_many_and_needs_them()
    {
        var family = Wheels("W-1", "W-2").Place("washer", washer => washer.Length("bore")).Part("R-5", "washer").Replaced("W-1", "W-2", quantity: 2, with: ["R-5"]);

        var answer = family.Ask("W-2");

        var step = Assert.Single(answer.Identity.Chain);
        Assert.Equal(2, step.Quantity);
        Assert.Equal(["alder:R-5"], step.With);
        Assert.Contains("2 of alder:W-2", step.Text, StringComparison.Ordinal);
        var change = Assert.Single(answer.AlsoNeeded);
        Assert.Equal(("washer", "alder:R-5"), (change.Position, Assert.Single(change.Parts)));
        Assert.Equal("Fits, with 1 other change", answer.HeadlineText);
    }

    // The washer belongs to the newer number: the older one that may stand in for it was there without.
    [Fact]
    public void Going_back_over_a_link_both_ways_does_not_need_what_the_newer_number_needs()
    {
        var family = Wheels("W-2", "W-1").Place("washer", washer => washer.Length("bore")).Part("R-5", "washer").Replaced("W-1", "W-2", SupersessionWay.Both, with: ["R-5"]);

        Assert.Equal(IdentityRelation.SameBothWays, family.Ask("W-1").Identity.Relation);
        Assert.Empty(family.Ask("W-1").AlsoNeeded);
    }

    [Fact]
    public void Several_fitments_valid_together_are_judged_one_by_one_and_the_best_is_named()
    {
        var answer = Alternatives().Ask("W-3");

        Assert.Equal(Headline.Fits, answer.Headline);
        Assert.Equal("alder:W-2", answer.JudgedAgainst);
        Assert.Equal(["alder:W-1", "alder:W-2"], answer.Identity.Fitted);
    }

    // W-4 has the bore of W-1 and the width of W-2: it is neither.
    [Fact]
    public void Features_of_two_alternatives_are_never_mixed() => Assert.Equal(Headline.DoesNotFit, Alternatives().Ask("W-4").Headline);

    [Fact]
    public void Each_alternative_itself_fits()
    {
        Assert.Equal((Headline.Fits, "alder:W-1"), (Alternatives().Ask("W-1").Headline, Alternatives().Ask("W-1").JudgedAgainst));
        Assert.Equal((Headline.Fits, "alder:W-2"), (Alternatives().Ask("W-2").Headline, Alternatives().Ask("W-2").JudgedAgainst));
    }

    [Fact]
    public void A_single_fitment_leaves_nothing_to_name() => Assert.Null(Wheels("W-1").Ask("W-1").JudgedAgainst);

    private static TestFamily Alternatives() =>
        WithWheels(wheel => wheel.CannotAlterRunning().Length("bore").Length("width").Rule("bore", Effect.Stops).Rule("width", Effect.Stops))
            .Wheel("W-1", Has("bore", Mm(10)), Has("width", Mm(5))).Wheel("W-2", Has("bore", Mm(12)), Has("width", Mm(6)))
            .Wheel("W-3", Has("bore", Mm(12)), Has("width", Mm(6))).Wheel("W-4", Has("bore", Mm(10)), Has("width", Mm(6)))
            .Fitted("lark", "wheel", "W-1").Fitted("lark", "wheel", "W-2");

    /// <summary>Wheels of which nothing but the number is known; the first is fitted on lark.</summary>
    private static TestFamily Wheels(params string[] numbers) =>
        numbers.Aggregate(WithWheels(wheel => wheel.Length("bore").Rule("bore", Effect.Stops).Rule("bore", Effect.Alters)), (family, number) => family.Wheel(number))
            .Fitted("lark", "wheel", numbers[0]);

    private static void AssertIdentity(FitAnswer answer)
    {
        Assert.Equal((Mounts.Yes, 3, Sureness.Documented), (answer.Mounts.Value, answer.Mounts.Rank ?? 0, answer.Mounts.Sureness));
        Assert.Equal((Runs.Same, 3, Sureness.Documented), (answer.Runs.Value, answer.Runs.Rank ?? 0, answer.Runs.Sureness));
        Assert.Equal(Headline.Fits, answer.Headline);
    }

    private static IEnumerable<string> Steps(FitAnswer answer) =>
        answer.Identity.Chain.Select(link => $"{link.From["alder:".Length..]}>{link.To["alder:".Length..]} {Codes.Of(link.Way)}");
}
