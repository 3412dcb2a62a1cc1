using PartMatch.Core.Catalogue;
using PartMatch.Core.Fit;
using PartMatch.Core.Tests.Catalogue;
using Xunit;
using static PartMatch.Core.Tests.Catalogue.TestFamily;

namespace PartMatch.Core.Tests.Fit;

/// <summary>"When the part at A has …, then B must …": the least fixed point over (position, demand).</summary>
public sealed class CompanionTests
{
    private static readonly Reading _large = Word("large");
    private static readonly Reading _small = Word("small");

    [Fact]
    public void A_rule_whose_condition_holds_asks_for_the_change()
    {
        var answer = Chain("wheel", "shaft").Ask("WHEEL-L");

        var change = Assert.Single(answer.AlsoNeeded);
        Assert.Equal(("shaft", "alder:SHAFT-S", "alder:SHAFT-L"), (change.Position, change.Held, Assert.Single(change.Parts)));
        Assert.Equal(["wheel-shaft"], change.Because);
        Assert.Equal((Headline.Fits, "Fits, with 1 other change"), (answer.Headline, answer.HeadlineText));
        Assert.Empty(answer.PerhapsNeeded);
    }

    [Fact]
    public void A_rule_whose_condition_fails_asks_for_nothing() => Assert.Empty(Chain("wheel", "shaft").Ask("WHEEL-S").AlsoNeeded);

    [Fact]
    public void A_chain_of_three_goes_on_from_demand_to_demand()
    {
        var answer = Chain("wheel", "shaft", "key", "hub").Ask("WHEEL-L");

        Assert.Equal(["hub", "key", "shaft"], answer.AlsoNeeded.Positions().Order(StringComparer.Ordinal));
        Assert.Equal(["wheel-shaft", "shaft-key", "key-hub"], answer.AlsoNeeded.Single(change => change.Position == "hub").Because);
        Assert.Equal("Fits, with 3 other changes", answer.HeadlineText);
    }

    [Fact]
    public void A_loop_of_rules_ends()
    {
        var answer = Chain("wheel", "shaft", "key").Companion("key-wheel", "key.size", _large, "wheel.size", _large).Ask("WHEEL-L");

        Assert.Equal(["key", "shaft"], answer.AlsoNeeded.Positions().Order(StringComparer.Ordinal));
        Assert.Equal(Headline.Fits, answer.Headline);
    }

    [Theory]
    [InlineData(Relation.OneOf, true)]
    [InlineData(Relation.Same, true)]
    public void A_demand_implies_the_next_condition_of_the_same_value_or_a_set_that_holds_it(Relation relation, bool goesOn)
    {
        var family = Chain("wheel", "shaft").Place("key", key => key.Choice("size")).Part("KEY-S", "key", Has("size", _small)).Fitted("lark", "key", "KEY-S")
            .Companion("next", "shaft.size", relation == Relation.OneOf ? Words("large", "huge") : _large, "key.size", _large, whenRelation: relation);

        Assert.Equal(goesOn, family.Ask("WHEEL-L").AlsoNeeded.Positions().Contains("key"));
    }

    [Theory]
    [InlineData(12.0, 11.0, true)]
    [InlineData(12.0, 12.0, true)]
    [InlineData(12.0, 12.1, false)]
    public void At_least_implies_at_least_a_smaller_number(double demanded, double condition, bool goesOn)
    {
        var family = Chain("wheel").Place("pump", pump => pump.Length("width")).Place("key", key => key.Choice("size"))
            .Part("P-1", "pump", Has("width", Mm(9))).Part("K-1", "key", Has("size", _small)).Fitted("lark", "pump", "P-1").Fitted("lark", "key", "K-1")
            .Companion("pump", "wheel.size", _large, "pump.width", Mm((decimal)demanded), thenRelation: Relation.AtLeast)
            .Companion("key", "pump.width", Mm((decimal)condition), "key.size", _large, whenRelation: Relation.AtLeast);

        Assert.Equal(goesOn, family.Ask("WHEEL-L").AlsoNeeded.Positions().Contains("key"));
    }

    [Fact]
    public void A_demand_that_the_part_there_meets_already_is_no_change()
    {
        var family = Chain("wheel", "shaft");

        Assert.Empty(family.Ask("WHEEL-L", with: "shaft=SHAFT-L").AlsoNeeded);
        Assert.Equal("Fits", family.Ask("WHEEL-L", with: "shaft=SHAFT-L").HeadlineText);
    }

    [Fact]
    public void A_condition_that_is_not_known_makes_the_change_a_perhaps_and_so_does_all_that_follows()
    {
        var answer = Chain("wheel", "shaft", "key").Wheel("WHEEL-X", Has("bore", Mm(10))).Ask("WHEEL-X");

        Assert.Empty(answer.AlsoNeeded);
        Assert.Equal(["key", "shaft"], answer.PerhapsNeeded.Positions().Order(StringComparer.Ordinal));
        Assert.DoesNotContain("change", answer.HeadlineText, StringComparison.Ordinal);
    }

    [Fact]
    public void A_perhaps_change_lists_the_parts_that_would_meet_it() =>
        Assert.Equal(["alder:SHAFT-L"], Assert.Single(Chain("wheel", "shaft").Wheel("WHEEL-X", Has("bore", Mm(10))).Ask("WHEEL-X").PerhapsNeeded).Parts);

    [Fact]
    public void A_position_where_nothing_is_recorded_has_to_be_seen_to_as_well()
    {
        var family = Chain("wheel").Place("pump", pump => pump.Choice("size")).Part("P-L", "pump", Has("size", _large))
            .Companion("pump", "wheel.size", _large, "pump.size", _large);

        var change = Assert.Single(family.Ask("WHEEL-L").AlsoNeeded);

        Assert.Equal(("pump", "not recorded"), (change.Position, change.Held));
    }

    // The engine as built has what it has: a position the book does not tell of needs no change for the maker's own part.
    [Fact]
    public void For_the_fitted_part_a_position_where_nothing_is_recorded_is_a_perhaps()
    {
        var family = Chain("wheel").Fitted("swift", "wheel", "WHEEL-L").Place("pump", pump => pump.Choice("size"))
            .Companion("pump", "wheel.size", _large, "pump.size", _large);

        var answer = family.Ask("WHEEL-L", on: "swift");

        Assert.Equal("Fits", answer.HeadlineText);
        Assert.Equal(["pump"], answer.PerhapsNeeded.Positions());
    }

    [Fact]
    public void A_position_known_to_carry_nothing_has_to_get_a_part()
    {
        var family = Chain("wheel").Place("pump", pump => pump.Choice("size")).Part("P-L", "pump", Has("size", _large)).Fitted("lark", "pump", "none")
            .Companion("pump", "wheel.size", _large, "pump.present", Word("yes"));

        var change = Assert.Single(family.Ask("WHEEL-L").AlsoNeeded);

        Assert.Equal(("nothing", "alder:P-L"), (change.Held, Assert.Single(change.Parts)));
    }

    [Fact]
    public void A_part_may_have_to_be_left_off()
    {
        var family = Chain("wheel", "shaft").Companion("off", "wheel.size", _large, "pump.present", Word("no"))
            .Place("pump", pump => pump.Choice("size")).Part("P-L", "pump").Fitted("lark", "pump", "P-L");

        var change = Assert.Single(family.Ask("WHEEL-L").AlsoNeeded, change => change.Position == "pump");

        Assert.Equal("Pump must have nothing fitted; now there: alder:P-L. Leave it off.", change.Text);
        Assert.Empty(change.Parts);
    }

    [Fact]
    public void No_known_part_that_meets_the_demand_is_said()
    {
        var family = Chain("wheel").Place("pump", pump => pump.Choice("size")).Part("P-S", "pump", Has("size", _small)).Fitted("lark", "pump", "P-S")
            .Companion("pump", "wheel.size", _large, "pump.size", _large);

        var change = Assert.Single(family.Ask("WHEEL-L").AlsoNeeded);

        Assert.Empty(change.Parts);
        Assert.Contains("no known part", change.Text, StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public void Two_demands_that_exclude_each_other_stop_the_part_and_are_named()
    {
        var family = Chain("wheel", "shaft").Companion("small-shaft", "wheel.size", _large, "shaft.size", _small);

        var answer = family.Ask("WHEEL-L");

        Assert.Equal((Mounts.No, Headline.DoesNotFit), (answer.Mounts.Value, answer.Headline));
        var conflict = Assert.Single(answer.By(ReasonBy.Companion));
        Assert.Contains("wheel-shaft", conflict.Text, StringComparison.Ordinal);
        Assert.Contains("small-shaft", conflict.Text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(12.0, 11.0, true)]
    [InlineData(12.0, 12.0, false)]
    public void At_least_and_at_most_exclude_each_other_when_nothing_lies_between(double atLeast, double atMost, bool excluded)
    {
        var family = Chain("wheel").Place("pump", pump => pump.Length("width")).Part("P-1", "pump", Has("width", Mm(12))).Fitted("lark", "pump", "P-1")
            .Companion("wide", "wheel.size", _large, "pump.width", Mm((decimal)atLeast), thenRelation: Relation.AtLeast)
            .Companion("narrow", "wheel.size", _large, "pump.width", Mm((decimal)atMost), thenRelation: Relation.AtMost);

        Assert.Equal(excluded ? Headline.DoesNotFit : Headline.Fits, family.Ask("WHEEL-L").Headline);
    }

    [Theory]
    [InlineData(Effect.Stops, Headline.DoesNotFit)]
    [InlineData(Effect.Work, Headline.FitsWithWork)]
    [InlineData(Effect.Alters, Headline.MountsButRunsDifferently)]
    public void What_a_neighbour_demands_of_the_part_itself_means_what_the_kinds_rule_of_that_feature_says(Effect effect, Headline expected)
    {
        var family = WithWheelsAndShafts(
                wheel => wheel.CannotAlterRunning().Length("bore").Rule("bore", Effect.Stops).Choice("colour").Rule("colour", effect, work: effect == Effect.Work ? "paint" : null),
                shaft => shaft.Choice("size"))
            .Work("paint").Wheel("W-1", Has("bore", Mm(10)), Has("colour", Word("red")))
            .Wheel("W-2", Has("bore", Mm(10)), Has("colour", Word("red"))).Wheel("W-3", Has("bore", Mm(10)), Has("colour", Word("blue")))
            .Shaft("S-1", Has("size", _small)).Fitted("lark", "wheel", "W-1").Fitted("lark", "shaft", "S-1")
            .Companion("small-shafts-want-blue-wheels", "shaft.size", _small, "wheel.colour", Word("blue"))
            .Need("lark", "wheel", "colour", effect, Relation.OneOf, Words("blue", "red"));

        Assert.Equal(expected, family.Ask("W-2").Headline);
        Assert.Equal(Headline.Fits, family.Ask("W-3").Headline);
    }

    [Fact]
    public void What_a_neighbour_demands_of_a_feature_that_has_no_rule_stops_the_part_and_says_what_would_mend_it()
    {
        var family = Chain("wheel", "shaft").Companion("small-shafts-want-small-wheels", "shaft.size", _small, "wheel.colour", Word("red"))
            .Wheel("WHEEL-B", Has("bore", Mm(10)), Has("size", _small), Has("colour", Word("blue"))).Wheel("WHEEL-R", Has("bore", Mm(10)), Has("size", _small), Has("colour", Word("red")));

        var blue = family.Ask("WHEEL-B");

        Assert.Equal(Headline.DoesNotFit, blue.Headline);
        Assert.Contains("Shaft", blue.Of("small-shafts-want-small-wheels").Mend, StringComparison.Ordinal);
        Assert.Equal(Headline.Fits, family.Ask("WHEEL-R").Headline);
        Assert.Equal([Mounts.Yes, Mounts.No], family.Wheel("WHEEL-U", Has("bore", Mm(10)), Has("size", _small)).Ask("WHEEL-U").Mounts.CouldBe);
    }

    // A small shaft wants a small wheel; but the large wheel brings a large shaft with it, and once that is done the rule has nothing to say.
    [Fact]
    public void A_neighbour_that_will_be_changed_anyway_demands_nothing_of_the_part()
    {
        var answer = Chain("wheel", "shaft").Companion("shaft-wheel", "shaft.size", _small, "wheel.size", _small).Ask("WHEEL-L");

        Assert.Equal((Headline.Fits, "Fits, with 1 other change"), (answer.Headline, answer.HeadlineText));
    }

    [Fact]
    public void The_axes_hold_once_the_other_changes_are_made()
    {
        var family = Chain("wheel", "shaft").Joint("clearance", "shaft.diameter", "wheel.bore", min: 0, max: 1).Wheel("WHEEL-12", Has("bore", Mm(12)), Has("size", _large))
            .Shaft("SHAFT-12", Has("size", _large), Has("diameter", Mm(11.5m)));

        var answer = family.Ask("WHEEL-12");

        Assert.Equal((Mounts.Yes, "Fits, with 1 other change"), (answer.Mounts.Value, answer.HeadlineText));
        Assert.Contains("SHAFT-12", answer.Of("clearance").Text, StringComparison.Ordinal);
    }

    // SHAFT-A has the diameter but not the length, SHAFT-B the length but not the diameter: no shaft has both.
    [Fact]
    public void Features_of_two_parts_that_could_be_brought_are_never_mixed()
    {
        var family = Chain("wheel", "shaft").Joint("clearance", "shaft.diameter", "wheel.bore", min: 0, max: 1).Joint("length", "shaft.length", "wheel.bore", min: 0, max: 1)
            .Wheel("WHEEL-12", Has("bore", Mm(12)), Has("size", _large))
            .Shaft("SHAFT-A", Has("size", _large), Has("diameter", Mm(11.5m)), Has("length", Mm(5))).Shaft("SHAFT-B", Has("size", _large), Has("diameter", Mm(5)), Has("length", Mm(11.5m)));

        Assert.NotEqual(Mounts.Yes, family.Ask("WHEEL-12").Mounts.Value);
    }

    [Fact]
    public void A_rule_of_other_variants_asks_for_nothing() =>
        Assert.Empty(Chain("wheel").Place("pump", pump => pump.Choice("size")).Fitted("lark", "pump", "none")
            .Companion("pump", "wheel.size", _large, "pump.present", Word("yes"), variants: ["swift"]).Ask("WHEEL-L").AlsoNeeded);

    [Fact]
    public void A_companion_rule_alone_does_not_show_that_a_part_goes_on()
    {
        var family = WithWheelsAndShafts(wheel => wheel.CannotAlterRunning().Choice("size"), shaft => shaft.Choice("size"))
            .Wheel("W-2", Has("size", _large)).Shaft("S-1", Has("size", _large)).Fitted("lark", "shaft", "S-1")
            .Companion("large-shafts-want-large-wheels", "shaft.size", _large, "wheel.size", _large);

        Assert.Equal(Mounts.NotKnown, family.Ask("W-2").Mounts.Value);
    }

    /// <summary>
    /// Positions of which the small part is fitted on lark; a large part at one asks for a large part at the next. Parts are named after their
    /// position and size. Wheels and shafts also have a bore, a diameter, a length, which are the same for small and large.
    /// </summary>
    private static TestFamily Chain(params string[] positions)
    {
        var family = new TestFamily().Variant("lark").Variant("swift");
        foreach (var position in positions)
        {
            family
                .Place(position, kind => kind.CannotAlterRunning().Choice("size").Choice("colour").Length("bore").Length("diameter").Length("length").Rule("bore", Effect.Stops))
                .Part($"{position.ToUpperInvariant()}-S", position, Has("size", _small), Has("bore", Mm(10)), Has("diameter", Mm(9.5m)))
                .Part($"{position.ToUpperInvariant()}-L", position, Has("size", _large), Has("bore", Mm(10)), Has("diameter", Mm(9.5m)))
                .Fitted("lark", position, $"{position.ToUpperInvariant()}-S");
        }

        foreach (var (from, to) in positions.Zip(positions.Skip(1)))
        {
            family.Companion($"{from}-{to}", $"{from}.size", _large, $"{to}.size", _large);
        }

        return family;
    }
}
