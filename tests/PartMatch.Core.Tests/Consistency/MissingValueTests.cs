using PartMatch.Core.Catalogue;
using PartMatch.Core.Consistency;
using PartMatch.Core.Tests.Catalogue;
using Xunit;
using static PartMatch.Core.Tests.Catalogue.TestFamily;

namespace PartMatch.Core.Tests.Consistency;

/// <summary>Which measurement would settle most: the questions that hang on a missing value, counted by hand.</summary>
public sealed class MissingValueTests
{
    // Two questions: W-1 on swift (the demand is missing) and W-2 on lark (the part's value is).
    [Fact]
    public void A_value_that_alone_holds_both_questions_open_settles_two()
    {
        var fault = Bores(null).Missing("W-2", "bore");

        Assert.Equal((2, 0), fault.Counted());
        Assert.Equal(("wheel", Severity.Missing), (fault.Position, fault.Severity));
        Assert.Equal(["swift"], fault.Variants);
        Assert.Equal(["parts alder:W-2"], fault.Keys());
        Assert.Equal("/api/fit?family=finch-9&variant=lark&position=wheel&from=swift", fault.Fit);
    }

    [Fact]
    public void A_value_that_is_recorded_is_not_missing() => Assert.Empty(Bores(Mm(11)).Faults(FaultSort.MissingValue));

    [Fact]
    public void A_value_on_retracted_evidence_is_missing() =>
        Assert.Equal((2, 0), Wheels().Wheel("W-1", Has("bore", Mm(10))).Wheel("W-2", Has("bore", Mm(11), Retracted())).OnBoth().Missing("W-2", "bore").Counted());

    // Each question lacks the bore and the hand.
    [Fact]
    public void Two_values_that_hold_the_same_questions_open_settle_nothing_alone()
    {
        var family = WithWheels(wheel => wheel.CannotAlterRunning().Length("bore").Rule("bore", Effect.Stops).Choice("hand").Rule("hand", Effect.Stops))
            .Wheel("W-1", Has("bore", Mm(10)), Has("hand", Word("left"))).Wheel("W-2").OnBoth();

        Assert.Equal((0, 2), family.Missing("W-2", "bore").Counted());
        Assert.Equal((0, 2), family.Missing("W-2", "hand").Counted());
        Assert.Contains("one of several things", family.Missing("W-2", "hand").Text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_value_missing_on_both_sides_settles_nothing_alone()
    {
        var family = Wheels().Wheel("W-1").Wheel("W-2").OnBoth();

        Assert.Equal((0, 2), family.Missing("W-1", "bore").Counted());
        Assert.Equal((0, 2), family.Missing("W-2", "bore").Counted());
    }

    // The bore holds mounting open, the colour running: each alone on its axis.
    [Fact]
    public void Each_axis_is_counted_by_itself()
    {
        var family = WithWheels(wheel => wheel.Length("bore").Rule("bore", Effect.Stops).Choice("colour").Rule("colour", Effect.Alters))
            .Wheel("W-1", Has("bore", Mm(10)), Has("colour", Word("red"))).Wheel("W-2").OnBoth();

        Assert.Equal((2, 0), family.Missing("W-2", "bore").Counted());
        Assert.Equal((2, 0), family.Missing("W-2", "colour").Counted());
    }

    [Fact]
    public void A_value_settles_nothing_where_the_part_does_not_go_on_anyway()
    {
        var family = WithWheels(wheel => wheel.Choice("hand").Rule("hand", Effect.Stops).Choice("colour").Rule("colour", Effect.Alters))
            .Wheel("W-1", Has("hand", Word("left")), Has("colour", Word("red"))).Wheel("W-2", Has("hand", Word("right"))).OnBoth();

        Assert.Equal((0, 0), family.Missing("W-2", "colour").Counted());
        Assert.Empty(family.Look().MeasureNext);
    }

    // The wheels go over the shaft that both variants have: both questions lack its diameter. Shaft against shaft is one part, so nothing is asked.
    [Fact]
    public void A_value_of_a_neighbour_is_counted_where_it_is_missing()
    {
        var fault = Shafts().Missing("S-1", "diameter");

        Assert.Equal((2, 0), fault.Counted());
        Assert.Equal(["lark", "swift"], fault.Variants);
        Assert.Equal(["parts alder:S-1", "joints clearance"], fault.Keys());
    }

    [Fact]
    public void A_joint_with_a_position_that_carries_nothing_misses_no_value()
    {
        var family = WithWheelsAndShafts(wheel => wheel.CannotAlterRunning().Length("bore"), shaft => shaft.CannotAlterRunning().Length("diameter"))
            .Wheel("W-1").Fitted("lark", "wheel", "W-1").Fitted("swift", "wheel", "none").Fitted("swift", "shaft", "none").Joint("clearance", "shaft.diameter", "wheel.bore", min: 0);

        Assert.Single(family.Faults(FaultSort.MissingValue));
        Assert.Empty(family.Fitted("lark", "shaft", "none").Faults(FaultSort.MissingValue));
    }

    [Fact]
    public void A_companion_rule_misses_what_it_asks_for_only_where_it_may_hold()
    {
        TestFamily Ruled(string size) => WithWheelsAndShafts(wheel => wheel.Choice("size"), shaft => shaft.Choice("size"))
            .Wheel("W-1", Has("size", Word(size))).Shaft("S-1").Fitted("lark", "wheel", "W-1").Fitted("lark", "shaft", "S-1")
            .Companion("size", "wheel.size", Word("large"), "shaft.size", Word("large"));

        Assert.Contains("companions size", Ruled("large").Missing("S-1", "size").Keys());
        Assert.Empty(Ruled("small").Faults(FaultSort.MissingValue));
    }

    // Before number 1000 lark has W-1, from there W-3: W-2 on lark lacks its own bore on either stretch; whatever it is, 10 and 12 cannot both be met.
    [Fact]
    public void Stretches_that_lack_the_same_value_hang_on_it_alone_and_stretches_that_differ_do_not()
    {
        var family = Wheels().Wheel("W-1", Has("bore", Mm(10))).Wheel("W-3", Has("bore", Mm(12))).Wheel("W-2")
            .Fitted("lark", "wheel", "W-1", Serials(null, 999)).Fitted("lark", "wheel", "W-3", Serials(1000, null)).Fitted("swift", "wheel", "W-2");
        Assert.Equal((2, 0), family.Missing("W-2", "bore").Counted());

        // With W-2 as old as the first stretch, that one is known by identity; the other hangs on the value, and nothing else is open.
        Assert.Equal((2, 0), family.Replaced("W-1", "W-2", variants: ["lark"]).Missing("W-2", "bore").Counted());
    }

    // W-1 and W-3 both fit on lark over time; on swift W-1 mounts (10) and W-3 does not (12): the donor, not the value, has to be looked at.
    [Fact]
    public void Known_answers_that_differ_make_a_value_one_of_several()
    {
        var family = Wheels().Wheel("W-1", Has("bore", Mm(10))).Wheel("W-3", Has("bore", Mm(12))).Wheel("W-4").Wheel("W-2", Has("bore", Mm(10)))
            .Fitted("lark", "wheel", "W-1", Serials(null, 999)).Fitted("lark", "wheel", "W-3", Serials(1000, 1999)).Fitted("lark", "wheel", "W-4", Serials(2000, null)).Fitted("swift", "wheel", "W-2");

        // lark → swift: W-1 yes, W-3 no, W-4 lacks its bore. swift → lark: yes, no, lacks what W-4 has.
        Assert.Equal((0, 2), family.Missing("W-4", "bore").Counted());
    }

    [Fact]
    public void A_disputed_value_has_its_questions_counted_as_well()
    {
        var fault = Wheels().Wheel("W-1", Has("bore", Mm(10))).Wheel("W-2", Has("bore", Mm(10), By(EvidenceGrade.MakersDocument, "a")), Has("bore", Mm(12), By(EvidenceGrade.MakersDocument, "b")))
            .OnBoth().Only(FaultSort.ValuesDisputed);

        Assert.Equal((2, 0), fault.Counted());
        Assert.Equal(["values alder:W-2,bore,ev-makers-document-a", "values alder:W-2,bore,ev-makers-document-b"], fault.Keys());
        Assert.Equal((Severity.Doubtful, "wheel"), (fault.Severity, fault.Position));
    }

    [Fact]
    public void Sources_that_overlap_or_of_which_one_is_better_dispute_nothing()
    {
        Assert.Empty(Wheels().Wheel("W-1", Has("bore", Mm(10, 1), By(EvidenceGrade.MakersDocument, "a")), Has("bore", Mm(12, 1), By(EvidenceGrade.MakersDocument, "b"))).Faults(FaultSort.ValuesDisputed));
        Assert.Empty(Wheels().Wheel("W-1", Has("bore", Mm(10)), Has("bore", Mm(12), By(EvidenceGrade.Reported))).Faults(FaultSort.ValuesDisputed));
        Assert.Empty(Wheels().Wheel("W-1", Has("bore", Mm(10)), Has("bore", Mm(12), Retracted())).Faults(FaultSort.ValuesDisputed));
    }

    // W-1 on swift meets nothing recorded there; what swift has on lark is not recorded: both hang on the one fitment.
    [Fact]
    public void A_position_of_which_nothing_is_recorded_has_its_questions_counted()
    {
        var family = Wheels().Wheel("W-1", Has("bore", Mm(10))).Fitted("lark", "wheel", "W-1");

        var fault = family.Only(FaultSort.NotRecorded);

        Assert.Equal((2, 0), fault.Counted());
        Assert.Equal(["positions wheel"], fault.Keys());
        Assert.Equal(["swift"], fault.Variants);
        Assert.Empty(family.Fitted("swift", "wheel", "none").Faults(FaultSort.NotRecorded));
    }

    [Fact]
    public void A_position_recorded_from_retracted_evidence_only_is_not_recorded() =>
        Assert.Equal(
            ["positions wheel", "fitments lark,wheel,alder:W-1,,,,"],
            new TestFamily().Variant("lark").Place("wheel", wheel => wheel.CannotAlterRunning()).Wheel("W-1").Fitted("lark", "wheel", "W-1", evidence: Retracted()).Only(FaultSort.NotRecorded).Keys());

    // Demand 10 ± 0.1 known to ± 0.02: 0.16 wide. ± 0.08 can decide, ± 0.081 cannot.
    [Theory]
    [InlineData(0.08, Method.SteelRule, 1)]
    [InlineData(0.081, Method.Caliper, 4)]
    public void The_cheapest_check_that_can_decide_is_proposed(double uncertaintyOfTheRule, Method expected, int minutes)
    {
        var family = WithWheels(wheel => wheel.CannotAlterRunning().Length("bore").Rule("bore", Effect.Stops)
                .Check("bore", Method.SteelRule, 1, (decimal)uncertaintyOfTheRule).Check("bore", Method.Caliper, 4, 0.02m, "inside jaws"))
            .Wheel("W-1", Has("bore", Mm(10, 0.1m, knownTo: 0.02m))).Wheel("W-2").OnBoth();

        var next = Assert.Single(family.Look("swift").MeasureNext);

        Assert.Equal((expected, (decimal)minutes), (next.Measure?.Check, next.Measure?.Minutes));
    }

    [Fact]
    public void Without_a_check_it_has_to_be_looked_up()
    {
        var fault = Bores(null).Missing("W-2", "bore");

        Assert.Null(fault.Measure?.Check);
        Assert.Contains("look it up", fault.Mend, StringComparison.Ordinal);
    }

    [Fact]
    public void What_settles_most_alone_is_measured_first_then_what_settles_most_together_then_the_cheapest()
    {
        // swift alone lacks values. Alone on their axis: colour. Together on the other: bore (4 min) and hand (1 min), of one position; nothing hangs on the shaft.
        var family = WithWheelsAndShafts(
                wheel => wheel.Length("bore").Rule("bore", Effect.Stops).Check("bore", Method.Caliper, 4).Choice("hand").Rule("hand", Effect.Stops).Check("hand", Method.Eye, 1)
                    .Choice("colour").Rule("colour", Effect.Alters).Check("colour", Method.Eye, 9),
                shaft => shaft.Length("diameter").Rule("diameter", Effect.Stops))
            .Wheel("W-1", Has("bore", Mm(10)), Has("hand", Word("left")), Has("colour", Word("red"))).Wheel("W-2").Shaft("S-1")
            .OnBoth().Fitted("lark", "shaft", "S-1").Fitted("swift", "shaft", "S-1");

        Assert.Equal(["colour", "hand", "bore", "diameter"], family.Faults(FaultSort.MissingValue).Select(fault => fault.Measure?.Feature));
        Assert.Equal(["colour", "hand", "bore"], family.Look("swift").MeasureNext.Select(fault => fault.Measure?.Feature));
        Assert.Empty(family.Look("lark").MeasureNext);
    }

    private static TestFamily Wheels() => WithWheels(wheel => wheel.CannotAlterRunning().Length("bore").Rule("bore", Effect.Stops));

    private static TestFamily Bores(Reading? second) => Wheels().Wheel("W-1", Has("bore", Mm(10))).Wheel("W-2", second is null ? [] : [Has("bore", second)]).OnBoth();

    private static TestFamily Shafts() => WithWheelsAndShafts(wheel => wheel.CannotAlterRunning().Length("bore"), shaft => shaft.CannotAlterRunning().Length("diameter"))
        .Wheel("W-1", Has("bore", Mm(10))).Wheel("W-2", Has("bore", Mm(11))).Shaft("S-1").OnBoth().Fitted("lark", "shaft", "S-1").Fitted("swift", "shaft", "S-1")
        .Joint("clearance", "shaft.diameter", "wheel.bore", min: 0, max: 1);
}

file static class Fittings
{
    public static TestFamily OnBoth(this TestFamily family) => family.Fitted("lark", "wheel", "W-1").Fitted("swift", "wheel", "W-2");
}
