using PartMatch.Core.Catalogue;
using PartMatch.Core.Fit;
using PartMatch.Core.Tests.Catalogue;
using Xunit;
using static PartMatch.Core.Tests.Catalogue.TestFamily;

namespace PartMatch.Core.Tests.Fit;

/// <summary>Where a demand comes from: the fitted part by default, an explicit need, or a joint with a neighbour that is known.</summary>
public sealed class DemandTests
{
    [Fact]
    public void A_need_replaces_the_default_demand_of_its_feature_and_effect_only()
    {
        var family = Wheels(wheel => wheel.Rule("bore", Effect.Stops, allowance: 0.1m).Rule("bore", Effect.Alters, allowance: 0.1m))
            .Need("lark", "wheel", "bore", Effect.Stops, Relation.AtLeast, Mm(9));

        var answer = family.Ask("W-2"); // bore 12, fitted 10

        Assert.Equal(["need", "fitted-part"], answer.By(ReasonBy.Feature).Select(reason => reason.Need?.From));
        Assert.Equal((Mounts.Yes, Runs.Differently), (answer.Mounts.Value, answer.Runs.Value));
    }

    [Fact]
    public void A_need_of_another_variant_or_position_demands_nothing_here()
    {
        var family = Wheels(wheel => wheel.Rule("bore", Effect.Stops)).Position("spare", "wheel")
            .Need("swift", "wheel", "bore", Effect.Stops, Relation.AtLeast, Mm(9)).Need("lark", "spare", "bore", Effect.Stops, Relation.AtLeast, Mm(9));

        Assert.Equal("fitted-part", family.Ask("W-2").Of("bore").Need?.From);
    }

    [Fact]
    public void A_need_takes_work_allowance_and_consequence_from_the_kinds_rule_of_that_feature_and_effect()
    {
        var family = Wheels(wheel => wheel.Rule("bore", Effect.Work, allowance: 0.5m, work: "ream", consequence: Consequence.Injury)).Work("ream")
            .Need("lark", "wheel", "bore", Effect.Work, Relation.Same, Mm(11.5m));

        Assert.Equal(Met.Yes, family.Ask("W-2").Of("bore").Met);

        var unmet = family.Wheel("W-3", Has("bore", Mm(10))).Ask("W-3");

        Assert.Equal(Mounts.WithWork, unmet.Mounts.Value);
        Assert.Equal(("ream", Consequence.Injury), (unmet.Of("bore").Work, unmet.Of("bore").Consequence));
    }

    [Theory]
    [InlineData(12.0, Met.Yes)]
    [InlineData(12.001, Met.No)]
    public void A_need_without_a_rule_allows_nothing_beyond_and_costs_loss(double need, Met expected)
    {
        var reason = Wheels(_ => { }).Need("lark", "wheel", "bore", Effect.Stops, Relation.Same, Mm((decimal)need)).Ask("W-2").Of("bore");

        Assert.Equal((expected, Consequence.Loss), (reason.Met, reason.Consequence));
    }

    [Fact]
    public void The_fitted_part_has_to_meet_an_explicit_need_like_any_other() =>
        Assert.Equal(Met.No, Wheels(wheel => wheel.Rule("bore", Effect.Stops)).Need("lark", "wheel", "bore", Effect.Stops, Relation.AtLeast, Mm(11)).Ask("W-1").Of("bore").Met);

    [Fact]
    public void A_joint_with_a_known_neighbour_replaces_the_default_demand_of_the_same_feature_and_effect()
    {
        var answer = WithShaft().Joint("on-shaft", "shaft.diameter", "wheel.bore", min: 0, max: 1).Ask("W-2");

        Assert.Empty(answer.By(ReasonBy.Feature));
        Assert.Equal(Met.Yes, answer.Of("on-shaft").Met);
        Assert.Equal(Mounts.Yes, answer.Mounts.Value);
    }

    [Fact]
    public void A_joint_of_another_effect_leaves_the_default_demand()
    {
        var answer = WithShaft().Joint("on-shaft", "shaft.diameter", "wheel.bore", min: 0, max: 1, effect: Effect.Alters).Ask("W-2");

        Assert.Equal(Met.No, answer.Of("bore").Met);
        Assert.Equal(Met.Yes, answer.Of("on-shaft").Met);
    }

    [Fact]
    public void A_joint_of_another_feature_leaves_the_default_demand() =>
        Assert.Equal(Met.No, WithShaft().Joint("on-shaft", "shaft.diameter", "wheel.width", min: 0, max: 1).Ask("W-2").Of("bore").Met);

    [Fact]
    public void A_joint_never_replaces_an_explicit_need()
    {
        var family = WithShaft().Joint("on-shaft", "shaft.diameter", "wheel.bore", min: 0, max: 1)
            .Need("lark", "wheel", "bore", Effect.Stops, Relation.AtMost, Mm(11));

        var answer = family.Ask("W-2");

        Assert.Equal(Met.No, answer.Of("bore").Met);
        Assert.Equal(Met.Yes, answer.Of("on-shaft").Met);
        Assert.Equal(Headline.DoesNotFit, answer.Headline);
    }

    [Fact]
    public void A_joint_whose_neighbour_is_not_recorded_leaves_the_default_demand_and_is_not_known()
    {
        var family = Wheels(wheel => wheel.Rule("bore", Effect.Stops, allowance: 5)).Place("shaft", shaft => shaft.Length("diameter"))
            .Joint("on-shaft", "shaft.diameter", "wheel.bore", min: 0, max: 1);

        var answer = family.Ask("W-2");

        Assert.Equal(Met.Yes, answer.Of("bore").Met);
        Assert.Equal(Met.NotKnown, answer.Of("on-shaft").Met);
        Assert.Equal([Mounts.Yes, Mounts.No], answer.Mounts.CouldBe);
    }

    [Fact]
    public void A_joint_whose_neighbour_is_known_to_be_absent_leaves_the_default_demand_and_does_not_apply()
    {
        var family = Wheels(wheel => wheel.Rule("bore", Effect.Stops)).Place("shaft", shaft => shaft.Length("diameter")).Fitted("lark", "shaft", "none")
            .Joint("on-shaft", "shaft.diameter", "wheel.bore", min: 0, max: 1);

        var answer = family.Ask("W-2");

        Assert.Equal(Met.No, answer.Of("bore").Met);
        Assert.Empty(answer.By(ReasonBy.Joint));
    }

    [Fact]
    public void Where_nothing_is_fitted_only_explicit_needs_speak()
    {
        var family = WithWheels(wheel => wheel.CannotAlterRunning().Length("bore").Length("width").Rule("bore", Effect.Stops).Rule("width", Effect.Stops))
            .Wheel("W-2", Has("bore", Mm(12)), Has("width", Mm(5))).Fitted("lark", "wheel", "none");

        Assert.Empty(family.Ask("W-2").By(ReasonBy.Feature));
        Assert.Equal(Mounts.NotKnown, family.Ask("W-2").Mounts.Value);

        family.Need("lark", "wheel", "bore", Effect.Stops, Relation.AtLeast, Mm(11));

        Assert.Equal(["bore"], family.Ask("W-2").By(ReasonBy.Feature).Select(reason => reason.Feature));
        Assert.Equal(Headline.Fits, family.Ask("W-2").Headline);
        Assert.Empty(family.Ask("W-2").Identity.Fitted);
    }

    [Fact]
    public void A_position_that_must_not_stay_empty_says_so_in_words()
    {
        var family = Wheels(wheel => wheel.Rule("bore", Effect.Stops)).Fitted("swift", "wheel", "none").Need("lark", "wheel", "present", Effect.Alters, Relation.Same, Word("yes"));

        var answer = family.AskFrom("swift", on: "lark");

        Assert.Equal(Runs.Differently, answer.Runs.Value);
        Assert.Equal("There is no part here, but lark demands one.", answer.Of("present").Text);
        Assert.Equal("There is a part here, as lark demands.", family.Ask("W-2").Of("present").Text);
    }

    [Fact]
    public void A_demand_other_than_same_is_told_as_such()
    {
        var family = WithWheels(wheel => wheel.Length("bore").Rule("bore", Effect.Stops, Relation.AtLeast))
            .Wheel("W-1", Has("bore", Mm(10))).Wheel("W-2", Has("bore", Mm(9))).Fitted("lark", "wheel", "W-1");

        Assert.Contains("at least", family.Ask("W-2").Of("bore").Text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_set_of_accepted_choices_reads_as_a_choice_between_them()
    {
        var family = WithWheels(wheel => wheel.Choice("plug")).Wheel("W-2", Has("plug", Word("k3"))).Need("lark", "wheel", "plug", Effect.Stops, Relation.OneOf, Words("k2", "k2-long"));

        Assert.Contains("k2 or k2 long", family.Ask("W-2").Of("plug").Text, StringComparison.Ordinal);
    }

    [Fact]
    public void What_alters_running_is_met_once_the_work_is_done_that_sets_that_feature()
    {
        var family = Wheels(wheel => wheel.Rule("bore", Effect.Alters, allowance: 0.1m).Rule("bore", Effect.Work, allowance: 0.1m, work: "bush"))
            .WorkOn("bush", null, null, "wheel.bore");

        var answer = family.Ask("W-2"); // bore 12, fitted 10

        Assert.Equal((Headline.FitsWithWork, Mounts.WithWork, Runs.Same), (answer.Headline, answer.Mounts.Value, answer.Runs.Value));
        Assert.Equal(["bush"], answer.Works.Select(work => work.Work));
        var altering = Assert.Single(answer.By(ReasonBy.Feature), reason => reason.Effect == Effect.Alters);
        Assert.Equal((Met.Yes, "bush"), (altering.Met, altering.OnceDone));
        Assert.EndsWith("Once this is done it runs the same: bush.", altering.Text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("wheel.width", 10)] // another feature than the one that alters
    [InlineData("shaft.bore", 10)] // another position
    [InlineData("wheel.bore", 12.2)] // what is demanded is not what the engine as built has there
    public void A_work_that_does_not_make_it_what_is_demanded_leaves_it_running_differently(string changes, double demanded)
    {
        var family = Wheels(wheel => wheel.Rule("bore", Effect.Alters, allowance: 0.1m).Rule("bore", Effect.Work, allowance: 0.1m, work: "bush"))
            .Need("lark", "wheel", "bore", Effect.Alters, Relation.Same, Mm((decimal)demanded)).WorkOn("bush", null, null, changes);

        var answer = family.Ask("W-2");

        Assert.Equal((Headline.MountsButRunsDifferently, Mounts.WithWork), (answer.Headline, answer.Mounts.Value));
        Assert.All(answer.By(ReasonBy.Feature), reason => Assert.Null(reason.OnceDone));
    }

    [Fact]
    public void What_stops_a_part_is_not_set_by_a_work()
    {
        var family = Wheels(wheel => wheel.Rule("bore", Effect.Stops, allowance: 0.1m).Rule("bore", Effect.Work, allowance: 0.1m, work: "bush"))
            .WorkOn("bush", null, null, "wheel.bore");

        Assert.Equal(Headline.DoesNotFit, family.Ask("W-2").Headline);
    }

    /// <summary>W-1 of bore 10 fitted on lark; W-2 of bore 12.</summary>
    private static TestFamily Wheels(Action<TestKind> rules) => WithWheels(wheel =>
        {
            wheel.Length("bore").Length("width");
            rules(wheel);
        })
        .Wheel("W-1", Has("bore", Mm(10)), Has("width", Mm(12))).Wheel("W-2", Has("bore", Mm(12)), Has("width", Mm(12))).Fitted("lark", "wheel", "W-1");

    private static TestFamily WithShaft() => Wheels(wheel => wheel.Rule("bore", Effect.Stops))
        .Place("shaft", shaft => shaft.Length("diameter")).Shaft("S-1", Has("diameter", Mm(11.5m))).Fitted("lark", "shaft", "S-1");
}
