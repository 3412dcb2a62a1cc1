using PartMatch.Core.Catalogue;
using PartMatch.Core.Fit;
using PartMatch.Core.Tests.Catalogue;
using Xunit;
using static PartMatch.Core.Tests.Catalogue.TestFamily;

namespace PartMatch.Core.Tests.Fit;

/// <summary>What counts of what was found, and with which rank: the table of data-seed/README.md. W-1 is fitted, W-2 is asked about, and nothing else is recorded of it.</summary>
public sealed class FindingTests
{
    // Mounts: trial-fitted 1, measured 2, maker's document 3, reported 5, inferred 6. To run under load it had to be mounted: 1.
    // Runs: ran under load 1, maker's document 3, measured 4, reported 5, inferred 6. Indirect is one grade lower in each list; below the lowest there is none.
    public static TheoryData<FindingOutcome, EvidenceGrade, int, int> Ranks()
    {
        var data = new TheoryData<FindingOutcome, EvidenceGrade, int, int>();
        foreach (var outcome in new[] { FindingOutcome.Yes, FindingOutcome.WithWork, FindingOutcome.No })
        {
            data.Add(outcome, EvidenceGrade.RanUnderLoad, 1, 2);
            data.Add(outcome, EvidenceGrade.TrialFitted, 1, 2);
            data.Add(outcome, EvidenceGrade.Measured, 2, 3);
            data.Add(outcome, EvidenceGrade.MakersDocument, 3, 5);
            data.Add(outcome, EvidenceGrade.Reported, 5, 6);
            data.Add(outcome, EvidenceGrade.Inferred, 6, 6);
        }

        foreach (var outcome in new[] { FindingOutcome.Same, FindingOutcome.Differently })
        {
            data.Add(outcome, EvidenceGrade.RanUnderLoad, 1, 3);
            data.Add(outcome, EvidenceGrade.MakersDocument, 3, 4);
            data.Add(outcome, EvidenceGrade.Measured, 4, 5);
            data.Add(outcome, EvidenceGrade.Reported, 5, 6);
            data.Add(outcome, EvidenceGrade.Inferred, 6, 6);
        }

        return data;
    }

    [Theory]
    [MemberData(nameof(Ranks))]
    public void A_finding_counts_with_the_rank_of_its_grade_and_one_grade_lower_from_another_variant_with_the_same_fitted_part(
        FindingOutcome outcome, EvidenceGrade grade, int direct, int indirect)
    {
        Check(Wheels().Found("f-1", "W-2", outcome, By(grade)).Ask("W-2"), outcome, direct, FindingStanding.Counts);
        Check(Wheels().Fitted("swift", "wheel", "W-1").Found("f-1", "W-2", outcome, By(grade), on: "swift")
            .Ask("W-2"), outcome, indirect, FindingStanding.Indirect);
    }

    // On each bound of the span and just outside it.
    [Theory]
    [MemberData(nameof(Ranks))]
    public void On_an_engine_outside_its_span_it_counts_one_grade_lower(FindingOutcome outcome, EvidenceGrade grade, int direct, int indirect)
    {
        var family = Wheels().Found("f-1", "W-2", outcome, By(grade), span: Serials(1000, 2000));

        Check(family.Ask("W-2", serial: 999), outcome, indirect, FindingStanding.Indirect);
        Check(family.Ask("W-2", serial: 1000), outcome, direct, FindingStanding.Counts);
        Check(family.Ask("W-2", serial: 2000), outcome, direct, FindingStanding.Counts);
        Check(family.Ask("W-2", serial: 2001), outcome, indirect, FindingStanding.Indirect);
    }

    // No more is sure of an engine whose number is not known than of the one for which the finding says least.
    [Theory]
    [InlineData(EvidenceGrade.TrialFitted, 2)]
    [InlineData(EvidenceGrade.Measured, 3)]
    [InlineData(EvidenceGrade.Reported, 6)]
    public void Without_the_serial_number_it_counts_as_where_it_counts_least(EvidenceGrade grade, int rank)
    {
        Check(Wheels().Found("f-1", "W-2", FindingOutcome.Yes, By(grade), span: Serials(1000, null))
            .Ask("W-2"), FindingOutcome.Yes, rank, FindingStanding.Indirect);
        Check(Wheels().Found("f-1", "W-2", FindingOutcome.Yes, By(grade), span: Serials(null, 1000))
            .Ask("W-2"), FindingOutcome.Yes, rank, FindingStanding.Indirect);
    }

    [Theory]
    [InlineData(FindingOutcome.Same)]
    [InlineData(FindingOutcome.Differently)]
    public void A_trial_fit_says_nothing_about_running(FindingOutcome outcome)
    {
        var answer = Wheels().Found("f-1", "W-2", outcome, By(EvidenceGrade.TrialFitted)).Ask("W-2");

        NothingCounts(answer, FindingStanding.SaysNothing);
        Assert.Contains("Not counted: a trial fit says nothing about how the engine runs.", answer.Findings[0].Text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(FindingOutcome.Yes, EvidenceGrade.TrialFitted)]
    [InlineData(FindingOutcome.No, EvidenceGrade.Measured)]
    [InlineData(FindingOutcome.WithWork, EvidenceGrade.MakersDocument)]
    [InlineData(FindingOutcome.Same, EvidenceGrade.RanUnderLoad)]
    [InlineData(FindingOutcome.Differently, EvidenceGrade.Reported)]
    public void A_retracted_finding_is_shown_with_its_reason_and_does_not_count(FindingOutcome outcome, EvidenceGrade grade)
    {
        var answer = Wheels().Found("f-1", "W-2", outcome, Retracted(grade)).Ask("W-2");

        NothingCounts(answer, FindingStanding.Retracted);
        Assert.Contains("Not counted: withdrawn on 2026-05-01, read off the wrong part.", answer.Findings[0].Text, StringComparison.Ordinal);
        Assert.Equal(("2026-05-01", "read off the wrong part"), (answer.Findings[0].Evidence.RetractedOn, answer.Findings[0].Evidence.RetractedWhy));
    }

    [Theory]
    [InlineData("W-3")]
    [InlineData("none")]
    [InlineData(null)]
    public void Found_on_a_variant_that_has_something_else_there_it_does_not_count(string? fitted)
    {
        var family = Wheels().Found("f-1", "W-2", FindingOutcome.Yes, By(EvidenceGrade.TrialFitted), on: "swift");

        NothingCounts((fitted is null ? family : family.Fitted("swift", "wheel", fitted)).Ask("W-2"), FindingStanding.OtherVariant);
    }

    // Two places that carry nothing need not be alike.
    [Fact]
    public void Two_variants_that_carry_nothing_there_do_not_have_the_same_part()
    {
        var family = WithWheels(_ => { }).Wheel("W-2").Fitted("lark", "wheel", "none").Fitted("swift", "wheel", "none")
            .Found("f-1", "W-2", FindingOutcome.Yes, By(EvidenceGrade.TrialFitted), on: "swift");

        NothingCounts(family.Ask("W-2"), FindingStanding.OtherVariant);
    }

    // The other variant had W-1 up to 1000 and W-3 from 1001: only what was found on the early ones is about the same fitted part.
    [Theory]
    [InlineData(null, 1000L, FindingStanding.Indirect)]
    [InlineData(null, 1001L, FindingStanding.OtherVariant)]
    [InlineData(1001L, null, FindingStanding.OtherVariant)]
    [InlineData(null, null, FindingStanding.OtherVariant)]
    public void What_the_other_variant_had_is_looked_up_over_the_span_of_the_finding(long? from, long? to, FindingStanding expected)
    {
        var family = Wheels().Fitted("swift", "wheel", "W-1", Serials(null, 1000)).Fitted("swift", "wheel", "W-3", Serials(1001, null))
            .Found("f-1", "W-2", FindingOutcome.Yes, By(EvidenceGrade.TrialFitted), on: "swift", span: Serials(from, to));

        Assert.Equal(expected, family.Ask("W-2").Findings[0].Standing);
    }

    [Fact]
    public void A_copy_counts_once_and_names_what_counts_in_its_place()
    {
        var answer = Wheels().Found("f-1", "W-2", FindingOutcome.Yes, By(EvidenceGrade.Reported, "letter"))
            .Found("f-2", "W-2", FindingOutcome.Yes, By(EvidenceGrade.Measured, "retold", copyOf: "ev-reported-letter")).Ask("W-2");

        Assert.Equal([(5, FindingStanding.Counts, null), (null, FindingStanding.Copy, "f-1")], answer.Findings.Select(found =>
            (found.Rank, found.Standing, found.CopyOf)));
        Assert.Equal((Mounts.Yes, 5), (answer.Mounts.Value, answer.Mounts.Rank ?? 0)); // graded measured, the copy is no better than its original
        Assert.Contains("Not counted again: goes back to the same source as f-1.", answer.Findings[1].Text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_copying_slip_does_not_dispute_its_original()
    {
        var answer = Wheels().Found("f-1", "W-2", FindingOutcome.Yes, By(EvidenceGrade.Reported, "letter"))
            .Found("f-2", "W-2", FindingOutcome.No, By(EvidenceGrade.Reported, "retold", copyOf: "ev-reported-letter")).Ask("W-2");

        Assert.Equal((Mounts.Yes, false, Sureness.Indicated), (answer.Mounts.Value, answer.Mounts.Disputed, answer.Mounts.Sureness));
        Assert.Equal("f-1", answer.Findings[1].CopyOf);
    }

    [Fact]
    public void Copies_that_differ_while_their_original_is_not_at_hand_are_disputed()
    {
        var answer = Wheels().Found("f-1", "W-2", FindingOutcome.Yes, By(EvidenceGrade.Reported, "one", copyOf: "ev-lost"))
            .Found("f-2", "W-2", FindingOutcome.No, By(EvidenceGrade.Reported, "other", copyOf: "ev-lost")).Ask("W-2");

        Assert.Equal((Mounts.NotKnown, true), (answer.Mounts.Value, answer.Mounts.Disputed));
    }

    [Fact]
    public void One_source_may_speak_of_both_axes() =>
        Assert.All(Wheels().Found("f-1", "W-2", FindingOutcome.Yes, By(EvidenceGrade.RanUnderLoad))
            .Found("f-2", "W-2", FindingOutcome.Same, By(EvidenceGrade.RanUnderLoad)).Ask("W-2").Findings,
            found => Assert.Equal((FindingStanding.Counts, 1), (found.Standing, found.Rank ?? 0)));

    // Findings are about the part. How a linked number stands to it is said by the identity.
    [Fact]
    public void A_finding_about_a_number_that_stands_in_for_it_both_ways_is_about_another_part()
    {
        var answer = Wheels().Replaced("W-2", "W-3", SupersessionWay.Both).Found("f-1", "W-3", FindingOutcome.No, By(EvidenceGrade.TrialFitted)).Ask("W-2");

        Assert.Empty(answer.Findings);
        Assert.Empty(answer.By(ReasonBy.Finding));
    }

    [Fact]
    public void A_finding_at_another_position_is_not_about_this_one() =>
        Assert.Empty(Wheels().Position("spare-wheel", "wheel").Found("f-1", "W-2", FindingOutcome.No, By(EvidenceGrade.TrialFitted), at: "spare-wheel")
            .Ask("W-2").Findings);

    [Fact]
    public void That_a_position_can_stay_empty_is_found_like_anything_else()
    {
        var answer = Wheels().Fitted("swift", "wheel", "none").Found("f-1", "none", FindingOutcome.Yes, By(EvidenceGrade.TrialFitted)).AskFrom("swift",
            on: "lark");

        Assert.Equal((Mounts.Yes, 1, "none"), (answer.Mounts.Value, answer.Mounts.Rank ?? 0, answer.Findings[0].Part));
        Assert.Contains("the position can stay empty", answer.Findings[0].Text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_number_in_no_book_has_no_findings() => Assert.Empty(Wheels().Found("f-1", "W-2", FindingOutcome.Yes, By(EvidenceGrade.TrialFitted))
        .Ask("W-99").Findings);

    private static void Check(FitAnswer answer, FindingOutcome outcome, int rank, FindingStanding standing)
    {
        var found = Assert.Single(answer.Findings);
        Assert.Equal((standing, rank), (found.Standing, found.Rank ?? 0));
        if (found.Axis == Axis.Mounts)
        {
            var value = outcome switch { FindingOutcome.Yes => Mounts.Yes, FindingOutcome.WithWork => Mounts.WithWork, _ => Mounts.No };
            Assert.Equal((value, rank, SurenessOf(rank)), (answer.Mounts.Value, answer.Mounts.Rank ?? 0, answer.Mounts.Sureness));
            Assert.Null(answer.Runs.Rank);
        }
        else
        {
            Assert.Equal((outcome == FindingOutcome.Same ? Runs.Same : Runs.Differently, rank, SurenessOf(rank)), (answer.Runs.Value, answer.Runs.Rank ?? 0,
                answer.Runs.Sureness));
            Assert.Null(answer.Mounts.Rank);
        }
    }

    private static Sureness SurenessOf(int rank) => rank switch
    {
        1 or 2 => Sureness.Proven,
        3 => Sureness.Documented,
        4 or 5 => Sureness.Indicated,
        _ => Sureness.Unproven,
    };

    private static void NothingCounts(FitAnswer answer, FindingStanding standing)
    {
        var found = Assert.Single(answer.Findings);
        Assert.Equal((standing, null), (found.Standing, found.Rank));
        Assert.Equal((null, null), (answer.Mounts.Rank, answer.Runs.Rank));
        Assert.Equal(Met.NotKnown, Assert.Single(answer.By(ReasonBy.Finding)).Met);
    }

    private static TestFamily Wheels() => WithWheels(_ => { }).Wheel("W-1").Wheel("W-2").Wheel("W-3").Fitted("lark", "wheel", "W-1");
}
