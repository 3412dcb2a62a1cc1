using PartMatch.Core.Builds;
using PartMatch.Core.Tests.Catalogue;
using Xunit;
using static PartMatch.Core.Tests.Catalogue.TestFamily;

namespace PartMatch.Core.Tests.Builds;

/// <summary>A wheel with six holes and six bolts on the lark, with eight and eight on the swift; the same bolt. Told by hand.</summary>
public sealed class PieceCountTests
{
    private static TestFamily Engine(int holesOfSwift = 8)
    {
        return new TestFamily().Variant("lark").Variant("swift")
            .Place("wheel", kind => kind.CannotAlterRunning().Length("bore").Counted("holes")).Place("bolt", kind => kind.CannotAlterRunning().Length("width"))
            .Part("WHEEL-6", "wheel", Has("bore", Mm(10)), Has("holes", Count(6))).Part("WHEEL-8", "wheel", Has("bore", Mm(10)), Has("holes", Count(holesOfSwift)))
            .Part("WHEEL-9", "wheel", Has("bore", Mm(10))).Part("BOLT-1", "bolt", Has("width", Mm(10)))
            .Fitted("lark", "wheel", "WHEEL-6").Fitted("swift", "wheel", "WHEEL-8")
            .Fitted("lark", "bolt", "BOLT-1", pieces: 6).Fitted("swift", "bolt", "BOLT-1", pieces: 8)
            .Joint("bolt-in-wheel", "bolt.width", "wheel.bore", min: -1, max: 1);
    }

    private static TestBuild Told(TestFamily family, string wheel) => new TestBuild(family).Seller("mill")
        .Sold("BOLT-1", 100).Sold("WHEEL-8", 5000).Sold("WHEEL-9", 5000)
        .Donor("bolt", PartState.Damaged).Wish(new Wish("wheel", null) { Parts = [Id(wheel)] });

    // Bolts at 1.00: six for the lark's wheel that stays, though the swift has eight; 50.00 and eight for the swift's.
    [Theory]
    [InlineData("WHEEL-6", 600, 6)]
    [InlineData("WHEEL-8", 5800, 8)]
    public void As_many_bolts_are_bought_as_the_wheel_has_holes(string wheel, long cost, int bolts)
    {
        var plan = Told(Engine(), wheel).Plan();

        Assert.Equal(TestBuild.Euros(cost), plan.Cost?.Total);
        Assert.Equal(bolts, plan.Lines.Single(line => line.Position == "bolt").Pieces);
    }

    // Nobody counted the holes of the third: as many as the wished engine has.
    [Fact]
    public void Wheel_whose_holes_nobody_counted_takes_as_many_as_usual() => Assert.Equal(TestBuild.Euros(5800), Told(Engine(), "WHEEL-9").Plan().Cost?.Total);

    // The maker puts eight bolts into a wheel of seven holes: then the holes do not tell how many, and the swift's eight count.
    [Fact]
    public void Holes_that_do_not_go_with_the_makers_bolts_tell_nothing() => Assert.Equal(TestBuild.Euros(800), Told(Engine(holesOfSwift: 7), "WHEEL-6").Plan().Cost?.Total);
}
