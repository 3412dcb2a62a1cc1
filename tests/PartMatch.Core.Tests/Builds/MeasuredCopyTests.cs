using PartMatch.Core.Builds;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Orders;
using PartMatch.Core.Planning;
using Xunit;
using static PartMatch.Core.Tests.Catalogue.TestFamily;
using static PartMatch.Core.Tests.Items.ItemCheckTests;

namespace PartMatch.Core.Tests.Builds;

/// <summary>
/// What was read of a bought piece speaks in its fit answer inside the build, each by hand: a swift takes a shaft of 10 mm ± 0.1, which the number SHAFT-2 is
/// recorded to be; the lark's own of 9 mm stops there. A new SHAFT-2 costs 30.00.
/// </summary>
public sealed class MeasuredCopyTests
{
    private static TestBuild Told(int pieces = 1) => Of(
        Shafts().Fitted("lark", "shaft", "SHAFT-1", pieces: pieces).Fitted("swift", "shaft", "SHAFT-2", pieces: pieces));

    [Fact]
    public void Piece_that_was_read_as_it_should_be_is_counted_and_says_by_what()
    {
        var plan = Measured(Told(), 10).Plan();

        var line = At(plan);
        Assert.Equal((Id("SHAFT-2"), 0, LineState.Checked), (line.Part, line.Buy.Count, Assert.Single(line.Bought).State));
        Assert.Contains("judged by what was read on finch-9/i-0001 when it came in: not inspected in full", line.Flags); // no limit is recorded
        Assert.Contains("item=i-0001", line.Fit, StringComparison.Ordinal);
        Assert.DoesNotContain(plan.Flags, flag => flag.Contains("not counted", StringComparison.Ordinal));
    }

    // 12 ± 0.02 shares no point with 9.9 … 10.1, whatever the document of the number says.
    [Fact]
    public void Piece_whose_reading_does_not_fit_is_left_over_and_another_is_bought()
    {
        var plan = Measured(Told(), 12).Plan();

        Assert.Equal((PlanStatus.ProvenOptimal, Id("SHAFT-2"), TestBuild.Euros(3000)), (plan.Status, At(plan).Part, plan.Cost?.ToGo));
        Assert.Empty(At(plan).Bought);
        Assert.Equal((Id("SHAFT-2"), "order 1, line 1"), Assert.Single(plan.LeftOver) is var left ? (left.Part, left.From) : default);
        var flag = Assert.Single(plan.Flags, flag => flag.Contains("not counted as good", StringComparison.Ordinal));
        Assert.StartsWith("Shaft of order 1, line 1 is not counted as good for Shaft, as it was measured: Does not fit", flag, StringComparison.Ordinal);
        Assert.DoesNotContain("item=", At(plan).Fit, StringComparison.Ordinal);
    }

    // 10.1 is the end of what the engine takes: read ± 0.02, 10.12 is the last that may lie inside, where it stays what the
    // maker fits there; 10.121 lies wholly outside.
    [Theory]
    [InlineData(10.08, true)]
    [InlineData(10.12, true)]
    [InlineData(10.121, false)]
    public void Reading_and_its_uncertainty_decide(double read, bool isCounted) =>
        Assert.Equal(isCounted, At(Measured(Told(), (decimal)read).Plan()).Bought.Count == 1);

    // The limit lets 9.95 and more pass; 9.92 fits, and is worn beyond it.
    [Theory]
    [InlineData(9.98, "within its recorded limits")]
    [InlineData(9.92, null)]
    public void Piece_beyond_its_limit_serves_nowhere(double read, string? said)
    {
        var told = Of(Shafts().Fitted("lark", "shaft", "SHAFT-1").Fitted("swift", "shaft", "SHAFT-2").Limit("shaft", "journal", 9.95m, null));

        var plan = Measured(told, (decimal)read).Plan();

        Assert.Equal(said is not null, At(plan).Bought.Count == 1);
        Assert.Equal(said is not null, At(plan).Flags.Any(flag => said is not null && flag.EndsWith(said, StringComparison.Ordinal)));
        Assert.Equal(said is null, plan.Flags.Any(flag => flag.StartsWith("Shaft of order 1, line 1 is not counted as good:", StringComparison.Ordinal)
            && flag.Contains("beyond the limit", StringComparison.Ordinal)));
        Assert.Equal(said is null ? TestBuild.Euros(3000) : TestBuild.Euros(0), plan.Cost?.ToGo);
    }

    // One of two was measured: a good one serves with the other, a bad one alone is bought anew.
    [Theory]
    [InlineData(10, 0)]
    [InlineData(12, 3000)]
    public void Pieces_that_were_not_measured_still_serve(double read, long toGo)
    {
        var told = Measured(Told(pieces: 2), (decimal)read);

        var plan = (told with { Bought = told.Bought with { Pieces = [.. told.Bought.Pieces, Piece with { State = LineState.Arrived, Item = "" }] } }).Plan();

        Assert.Equal(TestBuild.Euros(toGo), plan.Cost?.ToGo);
        Assert.Equal(toGo == 0 ? 2 : 1, At(plan).Bought.Sum(one => one.Pieces));
    }

    // The first was read as 12 mm, its replacement as 10: the replacement serves, whatever the first one was.
    [Fact]
    public void Replacement_serves_whatever_was_read_on_the_first_piece()
    {
        var plan = Two(Told(), 12, 10).Plan();

        Assert.Equal((TestBuild.Euros(0), 2), (plan.Cost?.ToGo, Assert.Single(At(plan).Bought).Order));
        Assert.Equal("order 1, line 1", Assert.Single(plan.LeftOver).From);
        Assert.Single(plan.Flags, flag => flag.Contains("of order 1, line 1 is not counted as good", StringComparison.Ordinal));
        Assert.DoesNotContain(plan.Flags, flag => flag.Contains("of order 2, line 1 is not counted", StringComparison.Ordinal));
    }

    // A line of four, one of which was read as 12 mm: three are as their number says, one has to be bought.
    [Fact]
    public void Reading_speaks_for_the_pieces_it_was_told_with()
    {
        var told = Measured(Told(pieces: 4), 12);
        var order = BuildBought.Of("EUR", [Orders.TestOrder.Of(
            Orders.TestOrder.Did(OrderAct.Arrived, 2), Orders.TestOrder.Did(OrderAct.Checked, 2, pieces: 1) with { Item = "finch-9/i-0001" },
            Orders.TestOrder.Did(OrderAct.Checked, 2))]);
        Assert.Equal([("finch-9/i-0001", 1), ("", 7)], order.Pieces.Where(piece => piece.Line == 2).Select(piece => (piece.Item, piece.Pieces)));

        var plan = (told with { Bought = told.Bought with { Pieces = [Piece, Piece with { Pieces = 3, Item = "" }] } }).Plan();

        Assert.Equal((TestBuild.Euros(3000), 3), (plan.Cost?.ToGo, At(plan).Bought.Sum(one => one.Pieces)));
    }

    // The second position asks for a mate that 9.92 does not suit (10.05 - 9.92 = 0.13, up to 0.1 is taken): the piece serves at the first one.
    [Fact]
    public void Piece_that_fits_one_of_two_positions_serves_there()
    {
        var told = Of(Shafts().Position("second", "shaft").Place("wheel", wheel => wheel.CannotAlterRunning().Length("bore")).Wheel("WHEEL-1", Has("bore", Mm(10.05m)))
            .Fitted("lark", "wheel", "WHEEL-1").Fitted("swift", "wheel", "WHEEL-1").Fitted("lark", "shaft", "SHAFT-1").Fitted("swift", "shaft", "SHAFT-2")
            .Fitted("lark", "second", "SHAFT-1").Fitted("swift", "second", "SHAFT-2").Joint("clearance", "second.journal", "wheel.bore", min: 0, max: 0.1m));

        var plan = Measured(told, 9.92m).Plan();

        Assert.Equal(TestBuild.Euros(3000), plan.Cost?.ToGo);
        Assert.Single(At(plan).Bought);
    }

    // Both positions take it: the piece of the order is counted once.
    [Fact]
    public void Piece_that_two_positions_could_take_is_counted_once()
    {
        var told = Of(Shafts().Position("second", "shaft").Fitted("lark", "shaft", "SHAFT-1").Fitted("swift", "shaft", "SHAFT-2")
            .Fitted("lark", "second", "SHAFT-1").Fitted("swift", "second", "SHAFT-2"));

        Assert.Equal(TestBuild.Euros(3000), Measured(told, 10).Plan().Cost?.ToGo);
    }

    // The bore of the wheel less what was read: 10.05 − 10.02 = 0.03, 10.05 − 9.92 = 0.13; each ± 0.02, and up to 0.1 is taken. Both lie in 9.9 … 10.1.
    [Theory]
    [InlineData(10.02, true)]
    [InlineData(9.92, false)]
    public void Neighbours_are_judged_with_the_piece_as_it_was_measured(double read, bool isCounted)
    {
        var told = Of(Shafts().Place("wheel", wheel => wheel.CannotAlterRunning().Length("bore")).Wheel("WHEEL-1", Has("bore", Mm(10.05m)))
            .Fitted("lark", "wheel", "WHEEL-1").Fitted("swift", "wheel", "WHEEL-1").Fitted("lark", "shaft", "SHAFT-1").Fitted("swift", "shaft", "SHAFT-2")
            .Joint("clearance", "shaft.journal", "wheel.bore", min: 0, max: 0.1m));

        var plan = Measured(told, (decimal)read).Plan();

        Assert.Equal(isCounted, plan.Lines.Single(line => line.Position == "shaft").Bought.Count == 1);
    }

    [Fact]
    public void Reading_that_was_withdrawn_leaves_what_is_recorded_of_the_number()
    {
        var told = Measured(Told(), 12);
        var item = told.Items[0];

        var plan = (told with { Items = [item with { Readings = [item.Readings[0] with { Evidence = Retracted(EvidenceGrade.Measured) }] }] }).Plan();

        Assert.Single(At(plan).Bought);
    }

    /// <summary>A check tells the item it was read on; found wrong later, it speaks no more.</summary>
    [Fact]
    public void Item_of_an_order_speaks_while_its_pieces_are_right()
    {
        static BuildBought BoughtBy(params OrderEvent[] events) => BuildBought.Of("EUR", [Orders.TestOrder.Of(events)]);
        var check = Orders.TestOrder.Did(OrderAct.Checked, 1) with { Item = "finch-9/i-0001" };

        Assert.Equal("finch-9/i-0001", BoughtBy(check).Pieces.Single(piece => piece.Line == 1).Item);
        Assert.DoesNotContain(BoughtBy(check, Orders.TestOrder.Wrong(1, fault: ArrivalFault.Damaged)).Pieces, piece => piece.Item != "");
    }

    private static BoughtPieces Piece => new(1, 1, Id("SHAFT-2"), 1, LineState.Checked, null, IsNew: true, "alder/mill", null)
    { Item = "finch-9/i-0001", For = "shaft" };

    private static TestBuild Measured(TestBuild told, decimal mm) => told with
    {
        Bought = new BuildBought("EUR", [Piece], 3000, 0, 0),
        Items = [Item(Read("journal", mm, 0.02m)) with { Part = Id("SHAFT-2") }],
    };

    private static TestBuild Two(TestBuild told, decimal first, decimal second) => told with
    {
        Bought = new BuildBought("EUR", [Piece, Piece with { Order = 2, Item = "finch-9/i-0002" }], 6000, 0, 0),
        Items =
        [
            Item(Read("journal", first, 0.02m)) with { Part = Id("SHAFT-2") },
            Item(Read("journal", second, 0.02m)) with { Code = "i-0002", Part = Id("SHAFT-2") },
        ],
    };

    private static BuildLine At(BuildPlan plan) => plan.Lines.Single(line => line.Position == "shaft");

    private static TestBuild Of(Catalogue.TestFamily family) => new TestBuild(family).Seller("mill").Sold("SHAFT-2", 3000);

    private static Catalogue.TestFamily Shafts() => new Catalogue.TestFamily().Variant("lark").Variant("swift")
        .Place("shaft", shaft => shaft.CannotAlterRunning().Length("journal").Rule("journal", Effect.Stops))
        .Shaft("SHAFT-1", Has("journal", Mm(9, 0.1m))).Shaft("SHAFT-2", Has("journal", Mm(10, 0.1m)));
}
