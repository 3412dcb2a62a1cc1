using PartMatch.Core.Catalogue;
using PartMatch.Core.Fit;
using PartMatch.Core.Tests.Catalogue;
using Xunit;
using static PartMatch.Core.Tests.Catalogue.TestFamily;

namespace PartMatch.Core.Tests.Fit;

/// <summary>Which of several recorded values counts.</summary>
public sealed class ValueSelectionTests
{
    private static readonly RecordedValue _measuredOnce = Has("bore", Mm(11), By(EvidenceGrade.Measured, "a"));

    public static TheoryData<string, RecordedValue[], string> BestGrades { get; } = new()
    {
        { "the maker's document before two measured examples", [Has("bore", Mm(10)), _measuredOnce, Has("bore", Mm(11), By(EvidenceGrade.Measured, "b"))], "10 mm" },
        { "the maker's document before a report", [Has("bore", Mm(10)), Has("bore", Mm(11), By(EvidenceGrade.Reported))], "10 mm" },
        { "one measured example before a report", [Has("bore", Mm(10), By(EvidenceGrade.Reported)), _measuredOnce], "11 mm" },
        { "a report before what is inferred", [Has("bore", Mm(10), By(EvidenceGrade.Inferred)), Has("bore", Mm(11), By(EvidenceGrade.Reported))], "11 mm" },
        { "what is inferred before nothing", [Has("bore", Mm(10), By(EvidenceGrade.Inferred))], "10 mm" },
    };

    [Theory]
    [MemberData(nameof(BestGrades))]
    public void The_best_grade_speaks(string why, RecordedValue[] rows, string expected) =>
        Assert.True(Stated(rows).Text == expected, $"{why}: found {Stated(rows).Text}, expected {expected}");

    [Fact]
    public void Equal_grades_that_overlap_give_their_hull()
    {
        var value = Stated(Has("bore", Mm(10, 0.1m), By(EvidenceGrade.Measured, "a")), Has("bore", Mm(10.15m, 0.1m, knownTo: 0.02m), By(EvidenceGrade.Measured, "b")));

        // 9.90 … 10.10 and 10.05 − 0.02 … 10.25 + 0.02.
        Assert.Equal((0.0099m, 0.01027m), (value.Possible.Low!.Value, value.Possible.High!.Value)); // a quantity has both ends
    }

    [Fact]
    public void What_a_weaker_source_says_against_it_stays_with_the_value()
    {
        var value = Stated(Has("bore", Mm(10, 0.1m)), Has("bore", Mm(10.2m, knownTo: 0.1m), By(EvidenceGrade.Reported)), Has("bore", Mm(10.21m, knownTo: 0.1m), By(EvidenceGrade.Measured)));

        // 10.20 − 0.1 touches 10 + 0.1; 10.21 − 0.1 does not.
        Assert.Equal(["10.21 mm"], value.Against.Select(weaker => weaker.Reading.Text));
    }

    [Fact]
    public void Equal_grades_that_touch_overlap() =>
        Assert.IsType<StatedQuantity>(Of(Has("bore", Mm(10, 0.1m), By(EvidenceGrade.Measured, "a")), Has("bore", Mm(10.2m, 0.1m), By(EvidenceGrade.Measured, "b"))));

    [Fact]
    public void Equal_grades_that_exclude_each_other_are_disputed_and_the_relation_is_not_known()
    {
        var family = WithWheels(wheel => wheel.CannotAlterRunning().Length("bore").Rule("bore", Effect.Stops, allowance: 1))
            .Wheel("W-1", Has("bore", Mm(10)))
            .Wheel("W-2", Has("bore", Mm(10, 0.1m), By(EvidenceGrade.Measured, "a")), Has("bore", Mm(10.21m, 0.1m), By(EvidenceGrade.Measured, "b")))
            .Fitted("lark", "wheel", "W-1");

        var reason = family.Ask("W-2").Of("bore");

        Assert.Equal(Met.NotKnown, reason.Met);
        Assert.StartsWith("disputed", reason.Part?.Text, StringComparison.Ordinal);
        Assert.Equal(["ev-makers-document", "ev-measured-a", "ev-measured-b"], reason.Evidence);
    }

    [Fact]
    public void Three_values_of_which_two_exclude_each_other_are_disputed() =>
        Assert.IsType<DisputedValue>(Of(
            Has("bore", Mm(10, 0.1m), By(EvidenceGrade.Measured, "a")),
            Has("bore", Mm(10.2m, 0.1m), By(EvidenceGrade.Measured, "b")),
            Has("bore", Mm(10.4m, 0.1m), By(EvidenceGrade.Measured, "c"))));

    [Fact]
    public void Counts_and_choices_of_equal_grade_that_differ_are_disputed()
    {
        Assert.IsType<DisputedValue>(Of(Has("bore", Count(8), By(EvidenceGrade.Reported, "a")), Has("bore", Count(9), By(EvidenceGrade.Reported, "b"))));
        Assert.IsType<DisputedValue>(Of(Has("bore", Word("left"), By(EvidenceGrade.Reported, "a")), Has("bore", Word("right"), By(EvidenceGrade.Reported, "b"))));
        Assert.IsType<StatedCount>(Of(Has("bore", Count(8), By(EvidenceGrade.Reported, "a")), Has("bore", Count(8), By(EvidenceGrade.Reported, "b"))));
    }

    [Fact]
    public void A_retracted_value_does_not_count() =>
        Assert.Equal("11 mm", Stated(Has("bore", Mm(10), Retracted()), Has("bore", Mm(11), By(EvidenceGrade.Inferred))).Text);

    [Fact]
    public void A_value_that_rests_only_on_retracted_evidence_is_not_recorded() =>
        Assert.IsType<NotRecorded>(Of(Has("bore", Mm(10), Retracted()), Has("bore", Mm(11), Retracted(EvidenceGrade.Measured))));

    // Two documents of 10 and 11 mm would dispute each other; with the second retracted the first stands alone.
    [Fact]
    public void A_retracted_value_disputes_nothing() => Assert.Equal("10 mm", Stated(Has("bore", Mm(10)), Has("bore", Mm(11), Retracted())).Text);

    [Fact]
    public void A_copy_adds_nothing_to_its_original_and_a_copying_slip_does_not_dispute_it()
    {
        var original = By(EvidenceGrade.Measured, "a");
        var copy = By(EvidenceGrade.Measured, "copy", copyOf: original.Code);

        Assert.Equal("10 mm", Stated(Has("bore", Mm(10), original), Has("bore", Mm(11), copy)).Text);
    }

    [Fact]
    public void A_fitted_part_of_retracted_evidence_counts_as_not_recorded()
    {
        var family = Wheels().Fitted("lark", "wheel", "W-1", evidence: Retracted());

        var answer = family.Ask("W-1");

        Assert.Equal(IdentityRelation.AnotherPart, answer.Identity.Relation);
        Assert.Equal(Headline.NotKnownYet, answer.Headline);
        Assert.Empty(answer.Identity.Fitted);
    }

    [Fact]
    public void A_number_in_no_book_shows_no_fitted_part_of_retracted_evidence() =>
        Assert.Empty(Wheels().Fitted("lark", "wheel", "W-1", evidence: Retracted()).Ask("X-9").Identity.Fitted);

    [Fact]
    public void A_need_of_retracted_evidence_leaves_the_default_demand()
    {
        var family = Wheels().Fitted("lark", "wheel", "W-1")
            .Need("lark", "wheel", "bore", Effect.Stops, Relation.Same, Mm(12), Retracted());

        Assert.Equal("fitted-part", family.Ask("W-2").Of("bore").Need?.From);
    }

    [Fact]
    public void A_joint_a_stack_a_companion_and_a_supersession_of_retracted_evidence_say_nothing()
    {
        var family = WithWheelsAndShafts(
                wheel => wheel.CannotAlterRunning().Length("bore").Rule("bore", Effect.Stops), shaft => shaft.CannotAlterRunning().Length("diameter"))
            .Wheel("W-1", Has("bore", Mm(10))).Wheel("W-2", Has("bore", Mm(10))).Shaft("S-1", Has("diameter", Mm(30)))
            .Fitted("lark", "wheel", "W-1").Fitted("lark", "shaft", "S-1")
            .Joint("on-shaft", "wheel.bore", "shaft.diameter", min: 0, max: 1, evidence: Retracted())
            .Stack("room", "+wheel.bore|-shaft.diameter", min: 0, evidence: Retracted())
            .Companion("needs", "wheel.bore", Mm(10), "shaft.diameter", Mm(10), evidence: Retracted())
            .Replaced("W-1", "W-2", evidence: Retracted());

        var answer = family.Ask("W-2");

        Assert.Equal(Headline.Fits, answer.Headline);
        Assert.Equal(IdentityRelation.AnotherPart, answer.Identity.Relation);
        Assert.Empty(answer.AlsoNeeded);
        Assert.Equal(["bore"], answer.Reasons.Where(reason => reason.By is not ReasonBy.Kind).Select(reason => reason.Code ?? reason.Feature));
    }

    private static TestFamily Wheels() => WithWheels(wheel => wheel.CannotAlterRunning().Length("bore").Rule("bore", Effect.Stops))
        .Wheel("W-1", Has("bore", Mm(10))).Wheel("W-2", Has("bore", Mm(10)));

    private static KnownValue Of(params RecordedValue[] rows) => ValueSelection.Of(
        WithWheels(wheel => wheel.Length("bore")).Wheel("W-1", rows).Facts().GetPart(Id("W-1")), "bore");

    private static StatedQuantity Stated(params RecordedValue[] rows) => Assert.IsType<StatedQuantity>(Of(rows));
}
