using PartMatch.Core.Catalogue;
using PartMatch.Core.Fit;
using PartMatch.Core.Tests.Catalogue;
using Xunit;
using static PartMatch.Core.Tests.Catalogue.TestFamily;

namespace PartMatch.Core.Tests.Fit;

/// <summary>Two positions that mate: d = right − left as intervals, in a band; or choices that go together.</summary>
public sealed class JointTests
{
    // Shaft 20 ± 0.01; the clearance allowed is 0.02 … 0.08. A bore of b ± 0.01 gives d = b − 20 ± 0.02.
    [Theory]
    [InlineData(20.040, Met.Yes)]
    [InlineData(20.060, Met.Yes)]
    [InlineData(20.039, Met.NotKnown)]
    [InlineData(20.061, Met.NotKnown)]
    [InlineData(20.000, Met.NotKnown)]
    [InlineData(20.100, Met.NotKnown)]
    [InlineData(19.999, Met.No)]
    [InlineData(20.101, Met.No)]
    public void The_difference_of_two_intervals_lies_in_the_band_or_not(double bore, Met expected)
    {
        var family = Pair(Mm(20, 0.01m), Mm((decimal)bore, 0.01m)).Joint("clearance", "shaft.diameter", "wheel.bore", min: 0.02m, max: 0.08m);

        Assert.Equal(expected, family.Ask("W-2").Of("clearance").Met);
    }

    [Fact]
    public void The_joint_reads_right_minus_left_from_whichever_side_is_asked()
    {
        var family = Pair(Mm(20), Mm(20.5m)).Joint("clearance", "shaft.diameter", "wheel.bore", min: 0, max: 1).Fitted("swift", "shaft", "S-1").Fitted("swift", "wheel", "W-2");

        var wheel = family.Ask("W-2", on: "swift").Of("clearance");
        var shaft = family.Ask("S-1", at: "shaft", on: "swift").Of("clearance");

        Assert.Equal((Met.Yes, "0.5 mm", "0 … 1 mm"), (wheel.Met, wheel.Difference?.Text, wheel.Band?.Text));
        Assert.Equal((Met.Yes, "0.5 mm", "0 … 1 mm"), (shaft.Met, shaft.Difference?.Text, shaft.Band?.Text));
    }

    [Theory]
    [InlineData(0.0, null, 999, Met.Yes)]
    [InlineData(0.0, null, 19.9, Met.No)]
    [InlineData(null, 0.0, -999, Met.Yes)]
    [InlineData(null, 0.0, 20.1, Met.No)]
    [InlineData(null, null, 999, Met.Yes)]
    public void An_empty_end_of_the_band_is_open(double? min, double? max, double bore, Met expected)
    {
        var family = Pair(Mm(20), Mm((decimal)bore)).Joint("clearance", "shaft.diameter", "wheel.bore", min: (decimal?)min, max: (decimal?)max);

        Assert.Equal(expected, family.Ask("W-2").Of("clearance").Met);
    }

    [Theory]
    [InlineData(0.0, 0.0, 8, Met.Yes)]
    [InlineData(0.0, 0.0, 9, Met.No)]
    [InlineData(0.0, 1.0, 9, Met.Yes)]
    public void A_band_over_counts_is_a_difference_of_counts(double min, double max, int holes, Met expected)
    {
        // The band is written in mm here, so 1 mm in the base unit is 0.001: one hole more is 1000 of them.
        var family = WithWheelsAndShafts(wheel => wheel.CannotAlterRunning().Counted("holes"), shaft => shaft.Counted("holes"))
            .Shaft("S-1", Has("holes", Count(8))).Fitted("lark", "shaft", "S-1").Wheel("W-2", Has("holes", Count(holes)))
            .Joint("holes", "shaft.holes", "wheel.holes", min: 1000 * (decimal)min, max: 1000 * (decimal)max);

        Assert.Equal(expected, family.Ask("W-2").Of("holes").Met);
    }

    [Theory]
    [InlineData(Relation.Same, new[] { "a" }, new[] { "a" }, Met.Yes)]
    [InlineData(Relation.Same, new[] { "a" }, new[] { "b" }, Met.No)]
    [InlineData(Relation.OneOf, new[] { "a" }, new[] { "a", "b" }, Met.Yes)]
    [InlineData(Relation.OneOf, new[] { "c" }, new[] { "a", "b" }, Met.No)]
    [InlineData(Relation.Covers, new[] { "a", "b", "c" }, new[] { "a", "b" }, Met.Yes)]
    [InlineData(Relation.Covers, new[] { "a" }, new[] { "a", "b" }, Met.No)]
    public void Left_is_the_same_as_one_of_or_covers_right_from_whichever_side_is_asked(Relation relation, string[] left, string[] right, Met expected)
    {
        var family = WithWheelsAndShafts(wheel => wheel.CannotAlterRunning().Choices("takes"), shaft => shaft.CannotAlterRunning().Choices("takes"))
            .Wheel("W-2", Has("takes", Words(left))).Shaft("S-1", Has("takes", Words(right)))
            .Fitted("lark", "shaft", "S-1").Fitted("swift", "wheel", "W-2")
            .Joint("takes", "wheel.takes", "shaft.takes", relation);

        Assert.Equal(expected, family.Ask("W-2").Of("takes").Met);
        Assert.Equal(expected, family.Ask("S-1", at: "shaft", on: "swift").Of("takes").Met);
    }

    [Theory]
    [InlineData(Effect.Stops, Mounts.No, Runs.Same)]
    [InlineData(Effect.Work, Mounts.WithWork, Runs.Same)]
    [InlineData(Effect.Alters, Mounts.Yes, Runs.Differently)]
    public void A_failed_joint_means_what_its_effect_says(Effect effect, Mounts mounts, Runs runs)
    {
        var family = WithWheelsAndShafts(wheel => wheel.Length("bore").Rule("bore", Effect.Stops, allowance: 9).Choice("hand").Rule("hand", Effect.Alters), shaft => shaft.Length("diameter"))
            .Wheel("W-1", Has("bore", Mm(20)), Has("hand", Word("left"))).Wheel("W-2", Has("bore", Mm(25)), Has("hand", Word("left"))).Shaft("S-1", Has("diameter", Mm(20)))
            .Fitted("lark", "wheel", "W-1").Fitted("lark", "shaft", "S-1")
            .Joint("clearance", "shaft.diameter", "wheel.bore", min: 0, max: 1, effect: effect, work: effect == Effect.Work ? "bush" : null).Work("bush");

        var answer = family.Ask("W-2");

        Assert.Equal((mounts, runs), (answer.Mounts.Value, answer.Runs.Value));
        Assert.Equal(effect == Effect.Work ? ["bush"] : [], answer.Works.Select(work => work.Work));
    }

    [Fact]
    public void A_failed_joint_lists_the_neighbours_that_would_mend_it()
    {
        var family = Pair(Mm(20), Mm(25)).Joint("clearance", "shaft.diameter", "wheel.bore", min: 0, max: 1)
            .Shaft("S-2", Has("diameter", Mm(24.5m))).Shaft("S-3", Has("diameter", Mm(30))).Shaft("S-4");

        var reason = family.Ask("W-2").Of("clearance");

        Assert.Equal(Met.No, reason.Met);
        Assert.Contains("alder:S-2", reason.Mend, StringComparison.Ordinal);
        Assert.DoesNotContain("alder:S-3", reason.Mend, StringComparison.Ordinal);
        Assert.DoesNotContain("alder:S-4", reason.Mend, StringComparison.Ordinal);
    }

    [Fact]
    public void A_neighbour_that_fails_at_another_joint_with_the_part_is_no_mend()
    {
        var family = WithWheelsAndShafts(
                wheel => wheel.CannotAlterRunning().Length("bore").Choices("keyway"), shaft => shaft.CannotAlterRunning().Length("diameter").Choices("keyway"))
            .Wheel("W-2", Has("bore", Mm(25)), Has("keyway", Words("square")))
            .Shaft("S-1", Has("diameter", Mm(20)), Has("keyway", Words("square"))).Fitted("lark", "shaft", "S-1")
            .Shaft("S-2", Has("diameter", Mm(24.5m)), Has("keyway", Words("square")))
            .Shaft("S-3", Has("diameter", Mm(24.5m)), Has("keyway", Words("round")))
            .Shaft("S-4", Has("diameter", Mm(24.5m)))
            .Joint("clearance", "shaft.diameter", "wheel.bore", min: 0, max: 1).Joint("keyway", "wheel.keyway", "shaft.keyway", Relation.Same);

        var mend = family.Ask("W-2").Of("clearance").Mend;

        Assert.Contains("alder:S-2", mend, StringComparison.Ordinal);
        Assert.DoesNotContain("alder:S-3", mend, StringComparison.Ordinal);
        Assert.Contains("alder:S-4", mend, StringComparison.Ordinal); // its keyway is not recorded: nothing speaks against it
    }

    [Fact]
    public void A_failed_joint_that_no_known_neighbour_mends_says_so() =>
        Assert.Contains("no known part", Pair(Mm(20), Mm(25)).Joint("clearance", "shaft.diameter", "wheel.bore", min: 0, max: 1).Ask("W-2").Of("clearance").Mend, StringComparison.Ordinal);

    [Fact]
    public void A_neighbour_named_in_the_question_is_judged_instead_of_the_fitted_one()
    {
        var family = Pair(Mm(20), Mm(25)).Joint("clearance", "shaft.diameter", "wheel.bore", min: 0, max: 1).Shaft("S-2", Has("diameter", Mm(24.5m)));

        Assert.Equal(Met.No, family.Ask("W-2").Of("clearance").Met);
        Assert.Equal(Met.Yes, family.Ask("W-2", with: "shaft=S-2").Of("clearance").Met);
        Assert.Equal("alder:S-2", family.Ask("W-2", with: "shaft=S-2").Of("clearance").Need?.Part);
        Assert.Empty(family.Ask("W-2", with: "shaft=none").By(ReasonBy.Joint));
    }

    [Fact]
    public void A_neighbour_that_is_not_recorded_leaves_the_joint_not_known()
    {
        var family = WithWheelsAndShafts(wheel => wheel.CannotAlterRunning().Length("bore"), shaft => shaft.Length("diameter"))
            .Wheel("W-2", Has("bore", Mm(25))).Joint("clearance", "shaft.diameter", "wheel.bore", min: 0, max: 1);

        var reason = family.Ask("W-2").Of("clearance");

        Assert.Equal(Met.NotKnown, reason.Met);
        Assert.Contains("what sits there is not recorded", reason.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_neighbour_without_the_value_leaves_the_joint_not_known() =>
        Assert.Equal(Met.NotKnown, Pair(null, Mm(25)).Joint("clearance", "shaft.diameter", "wheel.bore", min: 0, max: 1).Ask("W-2").Of("clearance").Met);

    [Fact]
    public void A_joint_of_other_variants_does_not_apply()
    {
        var family = Pair(Mm(20), Mm(25)).Joint("clearance", "shaft.diameter", "wheel.bore", min: 0, max: 1, variants: ["swift"]);

        Assert.Empty(family.Ask("W-2").By(ReasonBy.Joint));
    }

    [Fact]
    public void Values_without_the_makers_spread_make_a_joint_inferred_and_it_says_so()
    {
        var reason = Pair(Bare(20), Mm(20.5m)).Joint("clearance", "shaft.diameter", "wheel.bore", min: 0, max: 1).Ask("W-2").Of("clearance");

        Assert.Equal((Met.Yes, EvidenceGrade.Inferred), (reason.Met, reason.Grade));
        Assert.Contains("spread is not recorded", reason.Text, StringComparison.Ordinal);
    }

    // Which of two shafts an engine has is not known: with S-1 the wheel mates, with S-2 it does not.
    [Fact]
    public void Several_neighbours_valid_together_that_differ_leave_the_joint_not_known_and_are_named()
    {
        var family = Pair(Mm(20), Mm(20.5m)).Shaft("S-2", Has("diameter", Mm(22))).Fitted("lark", "shaft", "S-2").Joint("clearance", "shaft.diameter", "wheel.bore", min: 0, max: 1);

        var reason = family.Ask("W-2").Of("clearance");

        Assert.Equal(Met.NotKnown, reason.Met);
        Assert.Contains("S-1", reason.Text, StringComparison.Ordinal);
        Assert.Contains("S-2", reason.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void Of_neighbours_that_are_chosen_by_measurement_one_that_mates_is_enough()
    {
        var family = Pair(Mm(20), Mm(20.5m)).Shaft("S-2", Has("diameter", Mm(22))).Fitted("lark", "shaft", "S-2")
            .Chosen("shaft", "wheel.bore", 20, 21, "S-1").Chosen("shaft", "wheel.bore", 22, 23, "S-2")
            .Joint("clearance", "shaft.diameter", "wheel.bore", min: 0, max: 1);

        Assert.Equal(Met.Yes, family.Ask("W-2").Of("clearance").Met);
    }

    /// <summary>A shaft fitted on lark beside a wheel to judge.</summary>
    private static TestFamily Pair(QuantityReading? diameter, QuantityReading bore) =>
        WithWheelsAndShafts(wheel => wheel.CannotAlterRunning().Length("bore"), shaft => shaft.CannotAlterRunning().Length("diameter"))
            .Shaft("S-1", diameter is null ? [] : [Has("diameter", diameter)]).Wheel("W-2", Has("bore", bore)).Fitted("lark", "shaft", "S-1");
}
