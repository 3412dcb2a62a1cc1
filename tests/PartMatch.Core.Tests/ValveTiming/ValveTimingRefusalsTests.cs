using PartMatch.Core.Catalogue;
using PartMatch.Core.Measures;
using PartMatch.Core.ValveTiming;
using Xunit;
using static PartMatch.Core.Tests.ValveTiming.TimingExamples;

namespace PartMatch.Core.Tests.ValveTiming;

public sealed class ValveTimingRefusalsTests
{
    private static readonly ValveTimingQuestion _late = new("late");

    [Fact]
    public void Events_of_another_lift_do_not_go_together_with_recorded_ones()
    {
        var refused = Refuse(_late with
        {
            AtLift = Read("1.27 mm", Dimension.Length),
            Intake = new LobeQuestion { Opens = Angle("-8 deg"), Closes = Angle("38 deg") }
        });

        Assert.Equal(("different-lifts", "at-lift"), (refused.Code, refused.Field));
        Assert.Contains("1.27 mm in the question; 1 mm for exhaust opens and closes", refused.Found, StringComparison.Ordinal);
    }

    [Fact]
    public void All_events_given_at_another_lift_are_answered_without_the_familys_yardstick()
    {
        var answer = Reckon(_late with
        {
            AtLift = Read("1.27 mm", Dimension.Length),
            Intake = new LobeQuestion { Opens = Angle("-8 deg"), Closes = Angle("38 deg") },
            Exhaust = new LobeQuestion { Opens = Angle("34 deg"), Closes = Angle("-4 deg") },
        });

        Assert.Equal(-12, answer.AtRest.Overlap.Expected, 1e-9);
        Assert.Empty(answer.Variants);
        Assert.Empty(answer.Changes);
        Assert.Null(answer.AsBuilt);
    }

    [Fact]
    public void Event_that_nobody_recorded_is_asked_for_by_its_name()
    {
        var bare = Of("I-9", "intake-cam", ("intake-opens-1mm", Mm(0) with { Unit = UnitTable.Get("deg") }));
        var refused = Refuse(_late with { Intake = new LobeQuestion { Camshaft = bare } });

        Assert.Equal(("not-recorded", "intake-closes", "nothing"), (refused.Code, refused.Field, refused.Found));
        Assert.Contains("alder:I-9", refused.Reason, StringComparison.Ordinal);
        Assert.Equal("degrees of the crank after bottom dead centre, negative = before", refused.Expected);
    }

    [Fact]
    public void Teeth_of_a_wheel_that_nobody_counted_are_asked_for_only_when_a_tooth_is_moved()
    {
        var plain = Of("S-9", "sprocket");

        Assert.DoesNotContain(Reckon(_late with { Exhaust = new LobeQuestion { Wheel = plain } }).Wheels, wheel => wheel.Valve == "exhaust");
        Assert.Equal("exhaust-wheel-teeth", Refuse(_late with { Exhaust = new LobeQuestion { Wheel = plain, Teeth = 1 } }).Field);
        Assert.Equal(20, Reckon(_late with { Exhaust = new LobeQuestion { Wheel = plain, Teeth = 1, WheelTeeth = 36 } }).AtRest.ExhaustAdvance.Expected, 1e-9);
    }

    [Fact]
    public void Drive_that_may_move_and_says_nothing_is_not_taken_as_fixed()
    {
        var silent = Of("D-9", "drive");

        Assert.Contains(Reckon(_late with { Intake = new LobeQuestion { Wheel = silent } }).Warnings, warning => warning.Code == "phaser-not-recorded");
        Assert.DoesNotContain(Reckon(_late).Warnings, warning => warning.Code == "phaser-not-recorded");
    }

    [Fact]
    public void Without_a_compression_ratio_the_events_are_answered_and_the_trapped_ratio_is_not_known()
    {
        var facts = Family(null, "compression-ratio");
        var answer = Reckon(_late, facts);

        Assert.Null(answer.AtRest.Trapped);
        Assert.Contains("compression-ratio=", answer.Warnings.Single(warning => warning.Code == "trapped-not-known").Text, StringComparison.Ordinal);
        Assert.Equal(("not-recorded", "compression-ratio"), Named(_late with { WantedTrapped = Read("9", Dimension.Ratio) }, facts));
    }

    public static TheoryData<string, ValveTimingQuestion> Impossible => new()
    {
        { "at-lift", _late with { AtLift = Read("0 mm", Dimension.Length) } },
        { "at-lift", _late with { AtLift = Read("25.1 mm", Dimension.Length) } },
        { "crank-turns", _late with { CrankTurns = Read("0", Dimension.Ratio) } },
        { "compression-ratio", _late with { CompressionRatio = Range("1", Dimension.Ratio) } },
        { "compression-ratio", _late with { CompressionRatio = Range("9..31", Dimension.Ratio) } },
        { "stroke", _late with { Stroke = Range("0 mm", Dimension.Length) } },
        { "rod-length", _late with { RodLength = Range("47 mm", Dimension.Length) } },
        { "intake-closes", _late with { Intake = new LobeQuestion { Closes = Angle("-178 deg") } } }, // open for −2 + 180 − 178 = 0°
        { "intake-closes", _late with { Intake = new LobeQuestion { Opens = Angle("100 deg"), Closes = Angle("80 deg") } } }, // open for a whole turn
        { "intake-advance", _late with { Intake = new LobeQuestion { Advance = Angle("-140 deg") } } },
        { "intake-advance", _late with { Intake = new LobeQuestion { Advance = Angle("361 deg") } } },
        { "intake-teeth", _late with { Intake = new LobeQuestion { Teeth = 22 } } },
        { "intake-wheel-teeth", _late with { Intake = new LobeQuestion { WheelTeeth = 7 } } },
        { "exhaust-phaser-range", _late with { Exhaust = new LobeQuestion { PhaserRange = Angle("-5 deg"), PhaserRest = PhaserRest.Advanced } } },
        { "wanted-trapped", _late with { WantedTrapped = Read("1", Dimension.Ratio) } },
    };

    [Theory]
    [MemberData(nameof(Impossible))]
    public void What_cannot_be_is_refused_at_its_field(string field, ValveTimingQuestion question) => Assert.Equal(("out-of-range", field), Named(question));

    [Theory]
    [InlineData("25 mm")]
    [InlineData("0.1 mm")]
    public void Lift_just_inside_its_bounds_is_only_asked_for_its_events(string lift) =>
        Assert.Equal("different-lifts", Refuse(_late with { AtLift = Read(lift, Dimension.Length) }).Code);

    [Fact]
    public void Phaser_without_its_rest_is_asked_where_it_rests() =>
        Assert.Equal(("not-recorded", "exhaust-phaser-rest"), Named(_late with { Exhaust = new LobeQuestion { PhaserRange = Angle("30 deg") } }));

    private static (string Code, string Field) Named(ValveTimingQuestion question, FamilyFacts? facts = null)
    {
        var refused = Refuse(question, facts);
        return (refused.Code, refused.Field);
    }
}
