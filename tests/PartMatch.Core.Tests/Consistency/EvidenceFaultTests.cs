using PartMatch.Core.Catalogue;
using PartMatch.Core.Consistency;
using PartMatch.Core.Tests.Catalogue;
using Xunit;
using static PartMatch.Core.Tests.Catalogue.TestFamily;

namespace PartMatch.Core.Tests.Consistency;

/// <summary>Statements without a source that counts.</summary>
public sealed class EvidenceFaultTests
{
    [Fact]
    public void What_cites_evidence_is_no_fault() => Assert.Empty(Whole().Faults(FaultSort.NoEvidence));

    [Fact]
    public void Values_without_evidence_are_one_fault_a_part()
    {
        var fault = Wheels().Wheel("W-1", Has("bore", Mm(10), null), Has("hand", Word("left"), null), Has("width", Mm(5))).Only(FaultSort.NoEvidence);

        Assert.Equal(["values alder:W-1,bore,", "values alder:W-1,hand,"], fault.Keys());
        Assert.Contains("2 values without evidence", fault.Title, StringComparison.Ordinal);
    }

    [Fact]
    public void A_value_on_retracted_evidence_is_a_fault_where_no_other_source_speaks()
    {
        Assert.Equal(["values alder:W-1,bore,ev-makers-document-retracted"], Wheels().Wheel("W-1", Has("bore", Mm(10), Retracted())).Only(FaultSort.NoEvidence).Keys());
        Assert.Empty(Wheels().Wheel("W-1", Has("bore", Mm(10), Retracted()), Has("bore", Mm(11))).Faults(FaultSort.NoEvidence));
    }

    [Fact]
    public void Rows_on_retracted_evidence_are_faults_one_by_one() => Assert.Equal(
        [
            "companions size", "joints clearance", "needs lark,wheel,bore,stops", "stacks room", "supersessions alder:W-1,alder:W-2",
        ],
        Whole(Retracted()).Faults(FaultSort.NoEvidence).SelectMany(fault => fault.Keys()).Order(StringComparer.Ordinal));

    [Fact]
    public void A_retracted_fitment_beside_another_is_no_fault() =>
        Assert.Empty(Wheels().Wheel("W-1").Wheel("W-2").Fitted("lark", "wheel", "W-1").Fitted("lark", "wheel", "W-2", evidence: Retracted()).Faults(FaultSort.NoEvidence));

    [Fact]
    public void Fitments_and_parts_without_evidence_are_faults()
    {
        var fitments = Look(Whole(), new Changed<Fitment>(fitment => fitment with { Evidence = null }));
        Assert.Equal(["fitments lark,shaft,alder:S-1,,,,", "fitments lark,wheel,alder:W-1,,,,"], fitments.SelectMany(fault => fault.Keys()).Order(StringComparer.Ordinal));

        var parts = Look(Whole(), new Changed<Part>(part => part with { Evidence = null }));
        Assert.Equal(["parts alder:S-1", "parts alder:W-1", "parts alder:W-2"], parts.SelectMany(fault => fault.Keys()).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void A_judged_pair_without_evidence_is_a_fault()
    {
        var family = Wheels().Wheel("W-1").Wheel("W-2").Fitted("lark", "wheel", "W-1").Judged("W-1", "W-2", PairJudgement.Trap);

        Assert.Empty(family.Faults(FaultSort.NoEvidence));
        var fault = Assert.Single(Look(family, new Changed<JudgedPair>(pair => pair with { Evidence = null })));
        Assert.Equal(["pairs alder:W-1,alder:W-2"], fault.Keys());
        Assert.Equal(["lark"], fault.Variants);
    }

    [Fact]
    public void A_comma_or_percent_sign_in_a_key_cell_is_written_so_that_the_cells_stay_apart() =>
        Assert.Equal(["values alder:W%2C1%25,bore,"], Wheels().Wheel("W,1%", Has("bore", Mm(10), null)).Only(FaultSort.NoEvidence).Keys());

    [Fact]
    public void A_kind_in_use_whose_list_is_not_reviewed_is_a_fault_in_no_named_book()
    {
        var fault = WithWheels(wheel => wheel.NotReviewed().Length("bore").Rule("bore", Effect.Stops)).Only(FaultSort.KindNotReviewed);

        Assert.Equal(["kinds wheel", "positions wheel"], fault.Keys());
        Assert.Null(fault.Rows[0].Book);
        Assert.Equal("finch-9", fault.Rows[1].Book);
        Assert.Empty(WithWheels(wheel => wheel.Length("bore")).Kind("unused", kind => kind.NotReviewed()).Faults(FaultSort.KindNotReviewed));
    }

    private static IReadOnlyList<Fault> Look(TestFamily family, IOrder changed) =>
        ConsistencyCheck.Decide(family.Facts(changed), new ConsistencyQuestion(Sort: FaultSort.NoEvidence)).Faults;

    private static TestFamily Wheels() => WithWheels(wheel => wheel.CannotAlterRunning().Length("bore").Choice("hand").Length("width"));

    private static TestFamily Whole(Evidence? evidence = null) => WithWheelsAndShafts(wheel => wheel.CannotAlterRunning().Length("bore"), shaft => shaft.CannotAlterRunning().Length("diameter"))
        .Wheel("W-1", Has("bore", Mm(10))).Wheel("W-2").Shaft("S-1").Fitted("lark", "wheel", "W-1").Fitted("lark", "shaft", "S-1")
        .Need("lark", "wheel", "bore", Effect.Stops, Relation.Same, Mm(10), evidence)
        .Joint("clearance", "shaft.diameter", "wheel.bore", min: 0, evidence: evidence).Stack("room", "+wheel.bore", min: 0, evidence: evidence)
        .Companion("size", "wheel.bore", Mm(9), "shaft.diameter", Mm(8), evidence: evidence).Replaced("W-1", "W-2", evidence: evidence);
}
