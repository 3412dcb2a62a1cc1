using PartMatch.Core.Openings;
using PartMatch.Core.Tests.Catalogue;
using Xunit;

namespace PartMatch.Core.Tests.Openings;

/// <summary>A head over a piston, its bolts and a plug; told in the harmful order, so that only rows can right it.</summary>
public sealed class StepOrderTests
{
    private static TestFamily Engine() => new TestFamily().Variant("lark").Variant("swift")
        .Place("bolt", _ => { }).Place("head", _ => { }).Place("piston", _ => { }).Place("plug", _ => { })
        .OffFirst("head", "bolt").OffFirst("piston", "head");

    private static IReadOnlyList<string> Off(TestFamily family, string variant, params string[] positions) => StepOrder.Of(family.Facts(), variant, positions);

    // Plug into head: taking apart the plug is off before the bolts, though it was named last.
    [Fact]
    public void What_goes_in_later_comes_off_sooner() =>
        Assert.Equal(["plug", "bolt", "head", "piston"], Off(Engine().GoesInFirst("bolt", "plug"), "lark", "piston", "head", "bolt", "plug"));

    [Fact]
    public void Without_such_a_row_the_named_order_stands_where_openings_leave_it_free() =>
        Assert.Equal(["bolt", "head", "piston", "plug"], Off(Engine(), "lark", "piston", "head", "bolt", "plug"));

    // The crankshaft waits for the wheel and its bolts as well as for the rod, which is named between them.
    [Fact]
    public void Bolts_stand_next_to_what_they_hold()
    {
        var engine = new TestFamily().Variant("lark").Place("crankshaft", _ => { }).Place("bolt", _ => { }).Place("rod", _ => { }).Place("wheel", _ => { })
            .OffFirst("crankshaft", "bolt").OffFirst("crankshaft", "rod").OffFirst("crankshaft", "wheel").OffFirst("wheel", "bolt");

        Assert.Equal(["bolt", "wheel", "rod", "crankshaft"], Off(engine, "lark", "crankshaft", "bolt", "rod", "wheel"));
    }

    [Fact]
    public void Of_two_of_which_one_is_not_touched_nothing_is_said() =>
        Assert.Equal(["bolt", "head"], Off(Engine().GoesInFirst("bolt", "plug"), "lark", "head", "bolt"));

    [Fact]
    public void Row_of_another_engine_or_of_retracted_evidence_does_not_count()
    {
        var family = Engine().GoesInFirst("bolt", "plug", null, null, "swift").GoesInFirst("head", "plug", null, TestFamily.Retracted());

        Assert.Equal("plug", Off(family, "lark", "piston", "head", "bolt", "plug")[^1]);
        Assert.Equal("plug", Off(family, "swift", "piston", "head", "bolt", "plug")[0]);
    }

    [Fact]
    public void Bench_order_against_the_openings_is_a_ring() =>
        Assert.Throws<ArgumentException>(() => Off(Engine().GoesInFirst("bolt", "head"), "lark", "piston", "head", "bolt"));

    // The piston is changed; nothing has to come off for it but the head and its bolt. That the plug goes in later disturbs no plug.
    [Fact]
    public void Bench_order_disturbs_nothing() =>
        Assert.Equal(["bolt", "head", "piston"], Disturbance.Of(Engine().GoesInFirst("head", "plug").Facts(), ["lark"], ["piston"], _ => true).Keys.Order());
}
