using PartMatch.Core.Catalogue;
using PartMatch.Core.Fit;
using PartMatch.Core.Tests.Catalogue;
using Xunit;
using static PartMatch.Core.Tests.Catalogue.TestFamily;

namespace PartMatch.Core.Tests.Fit;

/// <summary>The best rank decides; equals that differ are disputed; a lower rank that differs is shown and lowers sureness one step.</summary>
public sealed class CombiningTests
{
    [Theory]
    [InlineData(1, Sureness.Proven, Sureness.Documented)]
    [InlineData(2, Sureness.Proven, Sureness.Documented)]
    [InlineData(3, Sureness.Documented, Sureness.Indicated)]
    [InlineData(4, Sureness.Indicated, Sureness.Unproven)]
    [InlineData(5, Sureness.Indicated, Sureness.Unproven)]
    [InlineData(6, Sureness.Unproven, Sureness.Unproven)]
    public void The_rank_sets_the_sureness_and_a_lower_rank_that_differs_takes_one_step(int rank, Sureness alone, Sureness against)
    {
        var (axis, none) = Combine(Says(Mounts.Yes, rank));
        var (lowered, disagreements) = Combine(Says(Mounts.Yes, rank), Says(Mounts.No, rank + 1));

        Assert.Equal((Mounts.Yes, rank, alone), (axis.Value, axis.Rank ?? 0, axis.Sureness));
        Assert.Empty(none);
        Assert.Equal((Mounts.Yes, against), (lowered.Value, lowered.Sureness));
        Assert.Equal(("no", rank + 1), (Assert.Single(disagreements).Says, disagreements[0].Rank));
    }

    [Fact]
    public void A_lower_rank_that_agrees_changes_nothing()
    {
        var (axis, disagreements) = Combine(Says(Mounts.Yes, 3), Says(Mounts.Yes, 6));

        Assert.Equal((Mounts.Yes, Sureness.Documented), (axis.Value, axis.Sureness));
        Assert.Empty(disagreements);
    }

    [Fact]
    public void Two_lower_ranks_that_differ_still_take_one_step_only() =>
        Assert.Equal(Sureness.Documented, Combine(Says(Mounts.Yes, 1), Says(Mounts.No, 4), Says(Mounts.WithWork, 5)).Axis.Sureness);

    [Fact]
    public void Different_values_inside_the_best_rank_are_disputed_and_both_could_be()
    {
        var (axis, _) = Combine(Says(Mounts.No, 5), Says(Mounts.Yes, 5), Says(Mounts.WithWork, 6));

        Assert.Equal((Mounts.NotKnown, true, Sureness.Unproven), (axis.Value, axis.Disputed, axis.Sureness));
        Assert.Equal([Mounts.Yes, Mounts.No], axis.CouldBe);
    }

    [Fact]
    public void Nothing_stated_leaves_what_the_computed_reasoning_leaves_possible()
    {
        var (axis, _) = AxisDecision.Combine<Mounts>(Axis.Mounts, [], [Mounts.Yes, Mounts.No], Mounts.NotKnown);

        Assert.Equal((Mounts.NotKnown, Sureness.Unproven), (axis.Value, axis.Sureness));
        Assert.Null(axis.Rank);
        Assert.Equal([Mounts.Yes, Mounts.No], axis.CouldBe);
    }

    [Theory]
    [InlineData(EvidenceGrade.MakersDocument, 4, Sureness.Indicated)]
    [InlineData(EvidenceGrade.Measured, 4, Sureness.Indicated)]
    [InlineData(EvidenceGrade.Reported, 6, Sureness.Unproven)]
    [InlineData(EvidenceGrade.Inferred, 6, Sureness.Unproven)]
    [InlineData(EvidenceGrade.TrialFitted, 6, Sureness.Unproven)]
    public void A_computed_no_has_rank_four_when_its_deciding_values_are_measured_or_documented(EvidenceGrade grade, int rank, Sureness sureness)
    {
        var mounts = Wheels(Effect.Stops, By(grade)).Ask("W-2").Mounts;

        Assert.Equal((Mounts.No, rank, sureness), (mounts.Value, mounts.Rank ?? 0, mounts.Sureness));
    }

    [Theory]
    [InlineData(EvidenceGrade.MakersDocument, 4)]
    [InlineData(EvidenceGrade.Reported, 6)]
    public void So_has_a_computed_with_work_and_a_computed_differently(EvidenceGrade grade, int rank)
    {
        var withWork = Wheels(Effect.Work, By(grade)).Ask("W-2").Mounts;
        var differently = Wheels(Effect.Alters, By(grade)).Ask("W-2").Runs;

        Assert.Equal((Mounts.WithWork, rank), (withWork.Value, withWork.Rank ?? 0));
        Assert.Equal((Runs.Differently, rank), (differently.Value, differently.Rank ?? 0));
    }

    [Fact]
    public void A_bare_value_makes_a_computed_no_unproven()
    {
        var family = WithWheels(wheel => wheel.Length("bore").Rule("bore", Effect.Stops)).Wheel("W-1", Has("bore", Mm(10))).Wheel("W-2", Has("bore", Bare(12))).Fitted("lark", "wheel", "W-1");

        Assert.Equal((Mounts.No, 6), (family.Ask("W-2").Mounts.Value, family.Ask("W-2").Mounts.Rank ?? 0));
    }

    [Fact]
    public void A_computed_yes_and_a_computed_same_are_unproven_however_well_the_values_are_known()
    {
        var family = WithWheels(wheel => wheel.Length("bore").Rule("bore", Effect.Stops).Rule("bore", Effect.Alters))
            .Wheel("W-1", Has("bore", Mm(10))).Wheel("W-2", Has("bore", Mm(10))).Fitted("lark", "wheel", "W-1");

        var answer = family.Ask("W-2");

        Assert.Equal((Headline.Fits, Sureness.Unproven), (answer.Headline, answer.Sureness));
        Assert.Equal((6, 6), (answer.Mounts.Rank ?? 0, answer.Runs.Rank ?? 0));
    }

    // A limit that was only reported decides nothing better than the values it is held against.
    [Theory]
    [InlineData(EvidenceGrade.MakersDocument, 4)]
    [InlineData(EvidenceGrade.Reported, 6)]
    public void The_band_of_a_joint_or_stack_is_one_of_the_deciding_values(EvidenceGrade grade, int rank)
    {
        var joint = WithShaft().Joint("clearance", "shaft.diameter", "wheel.bore", min: 0, max: 1, evidence: By(grade)).Ask("W-2").Mounts;
        var stack = WithShaft().Stack("room", "+wheel.bore|-shaft.diameter", min: 0, max: 1, evidence: By(grade)).Ask("W-2").Mounts;

        Assert.Equal((Mounts.No, rank), (joint.Value, joint.Rank ?? 0));
        Assert.Equal((Mounts.No, rank), (stack.Value, stack.Rank ?? 0));
    }

    [Fact]
    public void Identity_outranks_a_computed_no_which_is_shown_and_lowers_sureness()
    {
        var family = Wheels(Effect.Stops, Document).Replaced("W-1", "W-2");

        var answer = family.Ask("W-2");

        Assert.Equal((Mounts.Yes, 3, Sureness.Indicated), (answer.Mounts.Value, answer.Mounts.Rank ?? 0, answer.Mounts.Sureness));
        var disagreement = Assert.Single(answer.Disagreements);
        Assert.Equal((Axis.Mounts, "no", 4), (disagreement.Axis, disagreement.Says, disagreement.Rank));
        Assert.Equal([answer.Of("bore").Id], disagreement.Reasons);
    }

    [Fact]
    public void Where_the_base_contradicts_the_fitted_part_the_computed_no_drops_to_rank_six()
    {
        var family = Wheels(Effect.Stops, Document).Need("lark", "wheel", "bore", Effect.Stops, Relation.AtLeast, Mm(11));

        var answer = family.Ask("W-1");

        Assert.Equal((Mounts.Yes, 3), (answer.Mounts.Value, answer.Mounts.Rank ?? 0));
        Assert.Equal(6, Assert.Single(answer.Disagreements).Rank);
    }

    [Fact]
    public void A_newer_number_does_not_drop_to_rank_six()
    {
        var family = Wheels(Effect.Stops, Document).Replaced("W-1", "W-2");

        Assert.Equal(4, Assert.Single(family.Ask("W-2").Disagreements).Rank);
    }

    [Fact]
    public void Another_neighbour_at_a_joint_silences_identity_on_the_axis_of_that_joint_only()
    {
        var family = WithShaft().Shaft("S-2", Has("diameter", Mm(20))).Joint("clearance", "shaft.diameter", "wheel.bore", min: 0, max: 1);

        var asBuilt = family.Ask("W-1");
        var changed = family.Ask("W-1", with: "shaft=S-2");

        Assert.Equal((Mounts.Yes, 3), (asBuilt.Mounts.Value, asBuilt.Mounts.Rank ?? 0));
        Assert.Equal((Mounts.No, 4, Headline.DoesNotFit), (changed.Mounts.Value, changed.Mounts.Rank ?? 0, changed.Headline));
        Assert.Equal((Runs.Same, 3), (changed.Runs.Value, changed.Runs.Rank ?? 0));
        Assert.Empty(changed.Disagreements);
    }

    [Fact]
    public void Another_neighbour_that_mates_leaves_a_computed_yes()
    {
        var family = WithShaft().Shaft("S-2", Has("diameter", Mm(9))).Joint("clearance", "shaft.diameter", "wheel.bore", min: 0, max: 1);

        var answer = family.Ask("W-1", with: "shaft=S-2");

        Assert.Equal((Mounts.Yes, 6), (answer.Mounts.Value, answer.Mounts.Rank ?? 0));
    }

    [Fact]
    public void Naming_the_neighbour_that_is_fitted_anyway_silences_nothing()
    {
        var family = WithShaft().Joint("clearance", "shaft.diameter", "wheel.bore", min: 0, max: 1);

        Assert.Equal(3, family.Ask("W-1", with: "shaft=S-1").Mounts.Rank);
    }

    [Fact]
    public void Another_neighbour_where_there_is_no_joint_silences_nothing()
    {
        var family = WithShaft().Shaft("S-2", Has("diameter", Mm(20)));

        Assert.Equal(3, family.Ask("W-1", with: "shaft=S-2").Mounts.Rank);
    }

    // The maker put this bolt into the flange that was there; in a thinner flange it bottoms, whatever its number.
    [Fact]
    public void Another_neighbour_in_a_stack_silences_identity_on_the_axis_of_that_stack_too()
    {
        var family = WithShaft().Shaft("S-2", Has("diameter", Mm(20))).Stack("room", "+wheel.bore|-shaft.diameter", min: 0, max: 1, consequence: Consequence.Injury);

        Assert.Equal(Headline.Fits, family.Ask("W-1").Headline);
        Assert.Equal(Headline.DoesNotFit, family.Ask("W-1", with: "shaft=S-2").Headline);
    }

    [Fact]
    public void A_not_known_result_is_no_statement_against_identity()
    {
        var family = Wheels(Effect.Stops, Document).Wheel("W-3").Replaced("W-1", "W-3");

        var answer = family.Ask("W-3");

        Assert.Equal((Mounts.Yes, Sureness.Documented), (answer.Mounts.Value, answer.Mounts.Sureness));
        Assert.Empty(answer.Disagreements);
    }

    private static (AxisAnswer<Mounts> Axis, IReadOnlyList<Disagreement> Disagreements) Combine(params Statement<Mounts>[] statements) =>
        AxisDecision.Combine(Axis.Mounts, statements, [Mounts.Yes, Mounts.WithWork, Mounts.No], Mounts.NotKnown);

    private static Statement<Mounts> Says(Mounts value, int rank) => new(value, rank, [$"r{rank}"], "");

    /// <summary>W-1 of bore 10 is fitted; W-2 of bore 12 by that evidence.</summary>
    private static TestFamily Wheels(Effect effect, Evidence evidence) =>
        WithWheels(wheel => wheel.Length("bore").Rule("bore", effect, work: effect == Effect.Work ? "ream" : null)).Work("ream")
            .Wheel("W-1", Has("bore", Mm(10))).Wheel("W-2", Has("bore", Mm(12), evidence)).Fitted("lark", "wheel", "W-1");

    /// <summary>W-1 of bore 10 on a shaft of 9.5; W-2 of bore 12.</summary>
    private static TestFamily WithShaft() =>
        WithWheelsAndShafts(wheel => wheel.Length("bore"), shaft => shaft.Length("diameter"))
            .Wheel("W-1", Has("bore", Mm(10))).Wheel("W-2", Has("bore", Mm(12))).Shaft("S-1", Has("diameter", Mm(9.5m)))
            .Fitted("lark", "wheel", "W-1").Fitted("lark", "shaft", "S-1");
}
