using PartMatch.Core.Builds;
using PartMatch.Core.Catalogue;
using Xunit;
using static PartMatch.Core.Tests.Catalogue.TestFamily;

namespace PartMatch.Core.Tests.Builds;

/// <summary>
/// A sum that is set, as a valve lash is: seat of the wheel less thickness of the shaft, 0.13 … 0.30. The swift has 3.0 − 2.8 = 0.2; its wheel for 20.00 over the
/// lark's own shaft leaves 3.0 − 2.5 = 0.5, and the swift's shaft costs 50.00.
/// </summary>
public sealed class SetSumTests
{
    [Theory]
    [InlineData(40, LineAction.KeepWithWork, 6000)] // 20.00 and the work
    [InlineData(60, LineAction.Replace, 7000)] // 20.00 and the other shaft
    public void Donor_part_stays_where_the_sum_is_set_and_that_is_cheaper(int work, LineAction expected, long total)
    {
        var plan = Told(work).Plan();

        var shaft = plan.Lines.Single(line => line.Position == "shaft");
        Assert.Equal((expected, TestBuild.Euros(total)), (shaft.Action, plan.Cost?.Total));
        Assert.Equal(expected == LineAction.KeepWithWork ? ["set-lash"] : [], plan.Works.Select(one => one.Work));
    }

    private static TestBuild Told(int work) => new TestBuild(
        WithWheelsAndShafts(
                wheel => wheel.Choice("colour", "red", "blue").Rule("colour", Effect.Stops).Rule("colour", Effect.Alters).Length("seat"),
                shaft => shaft.Length("thickness").Choice("hand").Rule("hand", Effect.Stops).Rule("hand", Effect.Alters))
            .Wheel("WHEEL-1", Has("colour", Word("red")), Has("seat", Mm(2.7m))).Wheel("WHEEL-2", Has("colour", Word("blue")), Has("seat", Mm(3)))
            .Shaft("SHAFT-1", Has("thickness", Mm(2.5m)), Has("hand", Word("left"))).Shaft("SHAFT-2", Has("thickness", Mm(2.8m)), Has("hand", Word("left")))
            .Fitted("lark", "wheel", "WHEEL-1").Fitted("swift", "wheel", "WHEEL-2").Fitted("lark", "shaft", "SHAFT-1").Fitted("swift", "shaft", "SHAFT-2")
            .Stack("lash", "+wheel.seat|-shaft.thickness", min: 0.13m, max: 0.30m, effect: Effect.Alters)
            .Stack("lash-set", "+wheel.seat|-shaft.thickness", min: 0.13m, max: 0.30m, effect: Effect.Work, work: "set-lash")
            .WorkOn("set-lash", 0, TestBuild.Euros(work * 100), "shaft.thickness"))
        .Seller("mill").Sold("WHEEL-2", 2000).Sold("SHAFT-2", 5000);
}
