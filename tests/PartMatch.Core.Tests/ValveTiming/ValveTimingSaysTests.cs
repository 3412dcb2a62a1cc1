using PartMatch.Core.Catalogue;
using PartMatch.Core.Measures;
using PartMatch.Core.ValveTiming;
using Xunit;
using static PartMatch.Core.Tests.ValveTiming.TimingExamples;

namespace PartMatch.Core.Tests.ValveTiming;

/// <summary>What no angle shows is said beside it.</summary>
public sealed class ValveTimingSaysTests
{
    private static readonly ValveTimingQuestion _late = new("late");
    private static readonly ValveTimingQuestion _earlyCamInLate = _late with { Intake = new LobeQuestion { Camshaft = EarlyIntake } };

    // 8 ÷ 8.2 = 0.97561 and 8 ÷ 8.4 = 0.95238 of the stroke: 21.51° and 30.02° from the bottom.
    [Fact]
    public void Closing_for_a_wanted_trapped_ratio_carries_the_range_of_the_compression_ratio()
    {
        var after = Reckon(_late with { WantedTrapped = Read("9.0", Dimension.Ratio), CompressionRatio = Range("9.2..9.3..9.4", Dimension.Ratio) })
            .WantedClosing?.After;

        Assert.Equal((21.5, 30.0), (Math.Round(after?.Low ?? 0, 1), Math.Round(after?.High ?? 0, 1)));
    }

    // 1 ÷ 8.3 = 0.1205 of the stroke is enclosed 144.3° from the bottom, 5.9 teeth further back.
    [Fact]
    public void Trapping_that_lies_beyond_four_teeth_is_said_not_to_be_looked_at() => Assert.Contains(
        "only 4 either way are looked at", Reckon(_late with { WantedTrapped = Read("2.0", Dimension.Ratio) }).WantedClosing?.Text, StringComparison.Ordinal);

    // From 44 to −60 is 104° = 6.07 teeth of 17.142857°.
    [Fact]
    public void Wanted_event_beyond_four_teeth_is_said_not_to_be_looked_at() => Assert.Contains(
        "that is 6.1 teeth, and only the 4 next to the mark are looked at",
        Assert.Single(Reckon(_late with { Intake = new LobeQuestion { WantedCloses = Angle("-60 deg") } }).WantedEvents).Text, StringComparison.Ordinal);

    [Fact]
    public void Camshaft_that_does_not_go_on_its_drive_is_not_moved_by_it()
    {
        static Part Nose(Part part, string nose) =>
            part with { Values = [.. part.Values, new RecordedValue("nose", new ChoiceReading(nose), part.Values[0].Evidence)] };
        var (cam, drive, plain) = (Nose(EarlyIntake, "fixed"), Nose(TimingExamples.Phaser, "bolted"), Nose(FixedWheel, "fixed"));
        var facts = Family([cam, drive, plain]);

        var apart = Reckon(_late with { Intake = new LobeQuestion { Camshaft = cam } }, facts);

        Assert.Empty(apart.Swept);
        Assert.StartsWith(
            "alder:I-1 does not go on alder:D-2.", apart.Warnings.Single(warning => warning.Code == "cannot-be-assembled").Text, StringComparison.Ordinal);
        Assert.DoesNotContain(
            Reckon(_late with { Intake = new LobeQuestion { Camshaft = cam, Wheel = plain } }, facts).Warnings,
            warning => warning.Code == "cannot-be-assembled");
    }

    [Fact]
    public void Camshaft_of_another_engine_is_flagged_for_its_mark_and_its_lift()
    {
        var warnings = Reckon(_earlyCamInLate).Warnings;

        Assert.Contains(warnings, warning => warning.Code == "mark-taken-as-here");
        Assert.Contains("lift 5.8 mm instead of 9.6 mm", warnings.Single(warning => warning.Code == "lift-differs").Text, StringComparison.Ordinal);
        Assert.DoesNotContain(Reckon(_late).Warnings, warning => warning.Code is "mark-taken-as-here" or "lift-differs");
    }

    [Fact]
    public void Part_of_another_kind_is_refused_with_both_kinds()
    {
        var refused = Refuse(_late with { Intake = new LobeQuestion { Camshaft = Piston } });

        Assert.Equal(("wrong-kind", "intake-cam", "alder:P-1: piston"), (refused.Code, refused.Field, refused.Found));
    }

    // Before the bottom a later seat is nearer to where most is trapped; after it further away.
    [Theory]
    [InlineData("44 deg", "less is trapped in truth")]
    [InlineData("-52 deg", "more is trapped in truth")]
    public void Closing_is_said_to_be_at_its_lift_with_what_the_later_seat_does(string closes, string expected) => Assert.Contains(
        expected,
        Reckon(_late with { Intake = new LobeQuestion { Closes = Angle(closes) } }).Assumed.Single(one => one.Name == "intake-closes").Source,
        StringComparison.Ordinal);

    // Chamber 44 instead of 43: 65.2533 cm3, 9.1743; 1 + 8.1743 × 0.897413 = 8.3358.
    [Fact]
    public void Ratio_that_its_volumes_do_not_make_is_said_beside_the_recorded_one()
    {
        var facts = Family([Of("H-1", "head", ("chamber-volume", Cm3(44)))]);

        Assert.Contains(
            "the compression sheet builds 9.17 up from its volumes, which traps 8.34 at this closing",
            Reckon(_late, facts).Assumed.Single(one => one.Name == "compression-ratio").Source, StringComparison.Ordinal);
    }
}
