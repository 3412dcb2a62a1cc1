using PartMatch.Core.Catalogue;
using PartMatch.Core.Consistency;
using PartMatch.Core.Tests.Catalogue;
using Xunit;
using static PartMatch.Core.Tests.Catalogue.TestFamily;

namespace PartMatch.Core.Tests.Consistency;

/// <summary>Recorded statements that cannot all be true. Each fault is planted, and gone when it is mended.</summary>
public sealed class ContradictionTests
{
    [Fact]
    public void One_way_numbers_in_a_circle_are_one_fault()
    {
        var family = Wheels().Wheel("W-1").Wheel("W-2").Wheel("W-3").Fitted("lark", "wheel", "W-2").Replaced("W-1", "W-2").Replaced("W-2", "W-3").Replaced("W-3", "W-1");

        var fault = family.Only(FaultSort.SupersessionLoop);

        Assert.Contains("alder:W-1 → alder:W-2 → alder:W-3 → alder:W-1", fault.Text, StringComparison.Ordinal);
        Assert.Equal(
            ["supersessions alder:W-1,alder:W-2", "supersessions alder:W-2,alder:W-3", "supersessions alder:W-3,alder:W-1"], fault.Keys());
        Assert.Equal(("wheel", Severity.Wrong, "/api/fit?family=finch-9&variant=lark&position=wheel&part=alder:W-2"), (fault.Position, fault.Severity, fault.Fit));
        Assert.Equal(["lark", "swift"], fault.Variants);
    }

    [Fact]
    public void A_chain_is_no_circle_and_neither_are_two_numbers_that_stand_in_for_each_other()
    {
        Assert.Empty(Wheels().Wheel("W-1").Wheel("W-2").Wheel("W-3").Replaced("W-1", "W-2").Replaced("W-2", "W-3").Faults(FaultSort.SupersessionLoop));
        Assert.Empty(Wheels().Wheel("W-1").Wheel("W-2").Replaced("W-1", "W-2", SupersessionWay.Both).Faults(FaultSort.SupersessionLoop));
    }

    [Fact]
    public void Numbers_that_go_round_only_over_different_engines_are_no_circle()
    {
        Assert.Empty(Wheels().Wheel("W-1").Wheel("W-2").Replaced("W-1", "W-2", variants: ["lark"]).Replaced("W-2", "W-1", variants: ["swift"]).Faults(FaultSort.SupersessionLoop));
        Assert.Empty(Wheels().Wheel("W-1").Wheel("W-2").Replaced("W-1", "W-2", span: Serials(null, 999)).Replaced("W-2", "W-1", span: Serials(1000, null)).Faults(FaultSort.SupersessionLoop));
        Assert.Single(Wheels().Wheel("W-1").Wheel("W-2").Replaced("W-1", "W-2", span: Serials(null, 1000)).Replaced("W-2", "W-1", span: Serials(1000, null)).Faults(FaultSort.SupersessionLoop));
    }

    [Fact]
    public void A_retracted_link_closes_no_circle() =>
        Assert.Empty(Wheels().Wheel("W-1").Wheel("W-2").Replaced("W-1", "W-2").Replaced("W-2", "W-1", evidence: Retracted()).Faults(FaultSort.SupersessionLoop));

    // Bore less diameter: 10.00 − 10.05 = −0.05, allowed 0 … 0.1.
    [Fact]
    public void A_joint_that_the_fitted_parts_break_names_both_values_and_their_sources()
    {
        var fault = Joined(bore: 10.00m, diameter: 10.05m).Only(FaultSort.JointContradicts);

        Assert.Contains("10.00 mm", fault.Text, StringComparison.Ordinal);
        Assert.Contains("10.05 mm", fault.Text, StringComparison.Ordinal);
        Assert.Equal(
            [
                "joints clearance", "values alder:S-1,diameter,ev-makers-document", "values alder:W-1,bore,ev-makers-document",
                "fitments lark,shaft,alder:S-1,,,,", "fitments lark,wheel,alder:W-1,,,,",
            ],
            fault.Keys());
        Assert.Equal((Consequence.Injury, "/api/fit?family=finch-9&variant=lark&position=shaft&part=alder:S-1"), (fault.Consequence, fault.Fit));
        Assert.Equal(["lark"], fault.Variants);
    }

    [Theory]
    [InlineData(10.00, 10.00)] // 0: on the bound
    [InlineData(10.00, 9.90)] // 0.1: on the other
    [InlineData(10.00, 9.95)]
    public void A_joint_that_they_meet_is_no_fault(double bore, double diameter) =>
        Assert.Empty(Joined((decimal)bore, (decimal)diameter).Faults(FaultSort.JointContradicts));

    [Theory]
    [InlineData(10.00, 10.001)]
    [InlineData(10.00, 9.899)]
    public void A_joint_just_outside_its_band_is_a_fault(double bore, double diameter) =>
        Assert.Single(Joined((decimal)bore, (decimal)diameter).Faults(FaultSort.JointContradicts));

    [Fact]
    public void A_joint_is_no_fault_where_it_does_not_hold_or_the_two_are_never_together()
    {
        Assert.Empty(Mates().Shaft("S-1", Has("diameter", Mm(11))).Wheel("W-1", Has("bore", Mm(10))).Fitted("lark", "shaft", "S-1").Fitted("lark", "wheel", "W-1")
            .Joint("clearance", "shaft.diameter", "wheel.bore", min: 0, max: 0.1m, variants: ["swift"]).Faults(FaultSort.JointContradicts));
        Assert.Empty(Joined(10, 11, wheelSpan: Serials(null, 999), shaftSpan: Serials(1000, null)).Faults(FaultSort.JointContradicts));
    }

    [Fact]
    public void A_joint_broken_on_some_engines_only_is_asked_for_one_of_them()
    {
        var fault = Joined(10, 11, wheelSpan: Serials(500, 2000), shaftSpan: Serials(1000, null)).Only(FaultSort.JointContradicts);

        Assert.Equal("/api/fit?family=finch-9&variant=lark&position=shaft&part=alder:S-1&serial=1000", fault.Fit);
    }

    [Fact]
    public void Of_alternatives_valid_together_one_that_mates_is_enough()
    {
        var family = Joined(10, 11).Shaft("S-2", Has("diameter", Mm(10))).Fitted("lark", "shaft", "S-2");

        // S-1 mates with no wheel that is fitted; W-1 mates with S-2.
        var fault = family.Only(FaultSort.JointContradicts);
        Assert.Contains("values alder:S-1,diameter,ev-makers-document", fault.Keys());
        Assert.DoesNotContain("values alder:S-2,diameter,ev-makers-document", fault.Keys());
        Assert.Empty(family.Wheel("W-2", Has("bore", Mm(11))).Fitted("lark", "wheel", "W-2").Faults(FaultSort.JointContradicts));
    }

    [Fact]
    public void Variants_with_the_same_two_parts_share_one_fault() =>
        Assert.Equal(["lark", "swift"], Joined(10, 11).Fitted("swift", "wheel", "W-1").Fitted("swift", "shaft", "S-1").Only(FaultSort.JointContradicts).Variants);

    // 34 − 10 − 22 = 2, wanted at least 3.
    [Fact]
    public void A_stack_that_does_not_add_up_as_built_is_a_fault_until_it_does()
    {
        var fault = Mates().Shaft("S-1", Has("diameter", Mm(22))).Wheel("W-1", Has("bore", Mm(10))).Fitted("lark", "shaft", "S-1").Fitted("lark", "wheel", "W-1")
            .Stack("room", "+34.0|-wheel.bore|-shaft.diameter", min: 3).Only(FaultSort.JointContradicts);

        Assert.Contains("= 2 mm", fault.Text, StringComparison.Ordinal);
        Assert.Equal(["stacks room", "values alder:W-1,bore,ev-makers-document", "values alder:S-1,diameter,ev-makers-document"], fault.Keys());
        Assert.Empty(Mates().Shaft("S-1", Has("diameter", Mm(21))).Wheel("W-1", Has("bore", Mm(10))).Fitted("lark", "shaft", "S-1").Fitted("lark", "wheel", "W-1")
            .Stack("room", "+34.0|-wheel.bore|-shaft.diameter", min: 3).Faults(FaultSort.JointContradicts));
    }

    [Theory]
    [InlineData("large", "large", 0)]
    [InlineData("large", "small", 1)]
    [InlineData("small", "small", 0)] // the rule asks nothing
    public void A_companion_rule_that_the_variant_breaks_as_built_is_a_fault(string wheel, string shaft, int faults) =>
        Assert.Equal(faults, Ruled(wheel, shaft).Faults(FaultSort.CompanionContradicts).Count);

    [Fact]
    public void A_broken_companion_rule_names_what_was_fitted()
    {
        var fault = Ruled("large", "small").Only(FaultSort.CompanionContradicts);

        Assert.Contains("W-1 (large) with S-1 (small)", fault.Text, StringComparison.Ordinal);
        Assert.Superset(new HashSet<string> { "companions size", "values alder:W-1,size,ev-makers-document", "values alder:S-1,size,ev-makers-document" }, fault.Keys().ToHashSet());
    }

    [Fact]
    public void A_rule_that_asks_for_a_part_is_broken_by_nothing_there_and_not_by_what_is_not_recorded()
    {
        var family = Sized().Wheel("W-1", Has("size", Word("large"))).Fitted("lark", "wheel", "W-1").Companion("needs-shaft", "wheel.size", Word("large"), "shaft.present", Word("yes"));

        Assert.Empty(family.Faults(FaultSort.CompanionContradicts));
        Assert.Contains("with nothing at Shaft", family.Fitted("lark", "shaft", "none").Only(FaultSort.CompanionContradicts).Text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_need_that_the_fitted_part_does_not_meet_is_a_fault_until_it_does()
    {
        TestFamily Needing(decimal least) => Wheels().Wheel("W-1", Has("bore", Mm(10))).Fitted("lark", "wheel", "W-1").Need("lark", "wheel", "bore", Effect.Stops, Relation.AtLeast, Mm(least));

        var fault = Needing(10.5m).Only(FaultSort.FittedPartContradicts);

        Assert.Equal(["needs lark,wheel,bore,stops", "values alder:W-1,bore,ev-makers-document", "fitments lark,wheel,alder:W-1,,,,"], fault.Keys());
        Assert.Equal("/api/fit?family=finch-9&variant=lark&position=wheel&part=alder:W-1", fault.Fit);
        Assert.Empty(Needing(10).Faults(FaultSort.FittedPartContradicts));
    }

    [Fact]
    public void A_need_for_a_part_where_nothing_is_fitted_is_a_fault()
    {
        var family = Wheels().Fitted("lark", "wheel", "none").Need("lark", "wheel", "present", Effect.Stops, Relation.Same, Word("yes"));

        Assert.Equal("/api/fit?family=finch-9&variant=lark&position=wheel&part=none", family.Only(FaultSort.FittedPartContradicts).Fit);
    }

    private static TestFamily Wheels() => WithWheels(wheel => wheel.CannotAlterRunning().Length("bore").Rule("bore", Effect.Stops));

    private static TestFamily Mates() => WithWheelsAndShafts(wheel => wheel.CannotAlterRunning().Length("bore"), shaft => shaft.CannotAlterRunning().Length("diameter"));

    private static TestFamily Joined(decimal bore, decimal diameter, Span? wheelSpan = null, Span? shaftSpan = null) => Mates()
        .Shaft("S-1", Has("diameter", Mm(diameter))).Wheel("W-1", Has("bore", Mm(bore)))
        .Fitted("lark", "shaft", "S-1", shaftSpan).Fitted("lark", "wheel", "W-1", wheelSpan)
        .Joint("clearance", "shaft.diameter", "wheel.bore", min: 0, max: 0.1m, consequence: Consequence.Injury);

    private static TestFamily Sized() => WithWheelsAndShafts(wheel => wheel.Choice("size"), shaft => shaft.Choice("size"));

    private static TestFamily Ruled(string wheel, string shaft) => Sized().Wheel("W-1", Has("size", Word(wheel))).Shaft("S-1", Has("size", Word(shaft)))
        .Fitted("lark", "wheel", "W-1").Fitted("lark", "shaft", "S-1").Companion("size", "wheel.size", Word("large"), "shaft.size", Word("large"));
}
