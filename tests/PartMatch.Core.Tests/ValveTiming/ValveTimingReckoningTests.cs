using PartMatch.Core.Measures;
using PartMatch.Core.ValveTiming;
using Xunit;
using static PartMatch.Core.Tests.ValveTiming.TimingExamples;

namespace PartMatch.Core.Tests.ValveTiming;

public sealed class ValveTimingReckoningTests
{
    private static readonly ValveTimingQuestion _late = new("late");
    private static readonly ValveTimingQuestion _earlyCamInLate = _late with { Intake = new LobeQuestion { Camshaft = EarlyIntake } };

    // By hand, stroke 94, rod 152, ratio 9.30: θ = 180 − 52 = 128°; 47 + 152 + 47 × 0.615661 − √(152² − (47 × 0.788011)²) = 227.9361 − 147.4188 = 80.5173 mm;
    // 80.5173 ÷ 94 = 0.856567; 1 + 8.30 × 0.856567 = 8.1095. As built: θ = 224°, 84.3568 mm, 0.897413; 1 + 8.30 × 0.897413 = 8.4485.
    [Fact]
    public void Camshaft_of_another_variant_brings_its_events_and_lift_along()
    {
        var answer = Reckon(_earlyCamInLate);

        Assert.Equal(8, answer.AtRest.IntakeOpens.Expected, 1e-9);
        Assert.Equal(-52, answer.AtRest.IntakeCloses.Expected, 1e-9);
        Assert.Equal("52° before bottom dead centre", answer.AtRest.IntakeCloses.Text);
        Assert.Equal(136, answer.AtRest.IntakeDuration.Expected, 1e-9);
        Assert.Equal(60, answer.AtRest.IntakeCentre.Expected, 1e-9);
        Assert.Equal(109, answer.AtRest.ExhaustCentre.Expected, 1e-9);
        Assert.Equal(84.5, answer.AtRest.Separation.Expected, 1e-9);
        Assert.Equal(10, answer.AtRest.Overlap.Expected, 1e-9);
        Assert.Equal(8.1095, answer.AtRest.Trapped?.Expected ?? 0, 1e-4);
        Assert.Equal(8.4485, answer.AsBuilt?.Trapped?.Expected ?? 0, 1e-4);
        Assert.Equal(
            [
                "intake opens 10° earlier", "intake closes 96° earlier", "intake lift 5.8 instead of 9.6 mm", "overlap 10° instead of 0°",
                "trapped compression falls: 8.11 instead of 8.45",
            ],
            answer.Changes);
    }

    [Fact]
    public void Change_the_other_way_is_said_as_a_rise()
    {
        var answer = Reckon(new ValveTimingQuestion("early") { Intake = new LobeQuestion { Camshaft = LateIntake } });

        Assert.Contains("intake closes 96° later", answer.Changes);
        Assert.Contains("trapped compression rises: 11.78 instead of 11.29", answer.Changes); // 1 + 12.01 × 0.897413 = 11.778; 1 + 12.01 × 0.856567 = 11.287
    }

    [Fact]
    public void Variant_as_built_changes_nothing() => Assert.Empty(Reckon(_late).Changes);

    // Retarded rest, 50° of range: opens −2 + 50 = 48 before, closes 44 − 50 = −6; half way 23 and 19. Overlap 48 + 2 = 50.
    [Fact]
    public void Phaser_is_swept_from_its_rest_to_its_other_end()
    {
        var swept = Reckon(_late).Swept;

        Assert.Equal(["intake half moved", "intake fully moved"], swept.Select(state => state.What));
        Assert.Equal((23, 19), (swept[0].IntakeOpens.Expected, swept[0].IntakeCloses.Expected));
        Assert.Equal((48, -6, 50), (swept[1].IntakeOpens.Expected, swept[1].IntakeCloses.Expected, swept[1].Overlap.Expected));
    }

    [Fact]
    public void Phaser_that_rests_advanced_retards()
    {
        var swept = Reckon(_late with { Intake = new LobeQuestion { PhaserRange = Angle("20 deg"), PhaserRest = PhaserRest.Advanced } }).Swept;

        Assert.Equal(-22, swept[^1].IntakeOpens.Expected, 1e-9);
        Assert.Equal(64, swept[^1].IntakeCloses.Expected, 1e-9);
    }

    [Fact]
    public void Duration_keeps_what_is_known_of_it_when_the_shift_is_a_range()
    {
        var answer = Reckon(_late with { Intake = new LobeQuestion { Closes = Angle("43..44..45 deg"), Advance = Angle("-4..0..4 deg") } });

        Assert.Equal((221, 222, 223), (answer.AtRest.IntakeDuration.Low, answer.AtRest.IntakeDuration.Expected, answer.AtRest.IntakeDuration.High));
        Assert.Equal((39, 44, 49), (answer.AtRest.IntakeCloses.Low, answer.AtRest.IntakeCloses.Expected, answer.AtRest.IntakeCloses.High));
    }

    // 360 ÷ 42 × 2 = 17.142857° a tooth. One retarded: opens −2 − 17.143 = −19.143, closes 44 + 17.143 = 61.143.
    [Fact]
    public void Tooth_off_the_mark_shifts_by_what_it_is_worth()
    {
        var answer = Reckon(_late with { Intake = new LobeQuestion { Teeth = -1 } });

        Assert.Equal(-19.142857, answer.AtRest.IntakeOpens.Expected, 1e-6);
        Assert.Equal(61.142857, answer.AtRest.IntakeCloses.Expected, 1e-6);
        Assert.Equal("17.1° retarded", answer.AtRest.IntakeAdvance.Text);
        Assert.Contains(answer.Warnings, warning => warning.Code == "trigger-shifts");
        Assert.Contains(answer.Working, step => step.Result == "17.143° of the crank");
    }

    // A lobe of 222° set at 110 after top: opens 111 − 110 = 1 before, closes 111 + 110 − 180 = 41 after.
    [Fact]
    public void Centre_set_with_a_degree_wheel_places_the_lobe()
    {
        var answer = Reckon(_late with { Intake = new LobeQuestion { Centre = Angle("110 deg") } });

        Assert.Equal((1, 41), (answer.AtRest.IntakeOpens.Expected, answer.AtRest.IntakeCloses.Expected));
        Assert.Equal(110, answer.AtRest.IntakeCentre.Expected, 1e-9);
    }

    // The exhaust camshaft's lobe lasts 40 + 180 + 2 = 222°, wherever it sits.
    [Fact]
    public void Camshaft_of_the_other_valves_takes_its_duration_along_and_asks_where_its_lobe_stands()
    {
        var refused = Refuse(_late with { Intake = new LobeQuestion { Camshaft = LateExhaust } });
        var answer = Reckon(_late with { Intake = new LobeQuestion { Camshaft = LateExhaust, Centre = Angle("110 deg") } });

        Assert.Equal(("not-recorded", "intake-centre"), (refused.Code, refused.Field));
        Assert.Contains("222°", refused.Reason, StringComparison.Ordinal);
        Assert.Equal((1, 41), (answer.AtRest.IntakeOpens.Expected, answer.AtRest.IntakeCloses.Expected));
    }

    [Fact]
    public void Range_over_bottom_dead_centre_is_flagged_and_reaches_the_whole_ratio()
    {
        var answer = Reckon(_late with { Intake = new LobeQuestion { Closes = Angle("-20..10..40 deg") } });

        Assert.Equal(9.30, answer.AtRest.Trapped?.High ?? 0, 1e-9);
        Assert.Contains(answer.Warnings, warning => warning.Code == "closing-over-bottom");
    }

    // 1 + 8.30 × enclosed = 9.00 needs 0.963855 of the stroke: 26.17° from the bottom (see the test of the sum). From 44 that is 17.83° advanced: one tooth of
    // 17.14°.
    [Fact]
    public void Closing_for_a_wanted_trapped_ratio_is_told_on_both_sides_with_the_nearest_tooth()
    {
        var wanted = Reckon(_late with { WantedTrapped = Read("9.0", Dimension.Ratio) }).WantedClosing;

        Assert.NotNull(wanted);
        Assert.Equal(-26.17, wanted.Before?.Expected ?? 0, 0.01);
        Assert.Equal(26.17, wanted.After?.Expected ?? 0, 0.01);
        Assert.Equal(17.83, wanted.AdvanceToAfter?.Expected ?? 0, 0.01);
        // 44 − 17.142857 = 26.857 after: 8.98; 44 − 34.285714 = 9.714 after: 9.26. 1 + 8 ÷ 0.897413 = 9.9145. The drive moves by 50° advanced.
        Assert.Contains(
            "By whole teeth: 1 tooth more advanced than now traps 8.98; 2 teeth more advanced than now traps 9.26.", wanted.Text, StringComparison.Ordinal);
        Assert.Contains("The travel of its drive, 50° advanced, reaches it without a tooth.", wanted.Text, StringComparison.Ordinal);
        Assert.Contains("a compression ratio of 9.91 traps as much", wanted.Text, StringComparison.Ordinal);
        Assert.EndsWith("measure piston-to-valve, before it is started.", wanted.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void Trapped_ratio_above_the_whole_ratio_is_told_to_be_out_of_reach()
    {
        var wanted = Reckon(_late with { WantedTrapped = Read("9.5", Dimension.Ratio) }).WantedClosing;

        Assert.Null(wanted?.After);
        Assert.Contains("the most is the whole compression ratio, 9.30", wanted?.Text, StringComparison.Ordinal);
    }

    // Wanted 15 before and 27 after from −2 and 44: both ask for 17° of advance; one tooth is 17.142857, 0.143 off.
    [Fact]
    public void Teeth_that_come_closest_to_wanted_events_are_ranked()
    {
        var wanted = Assert.Single(Reckon(_late with
        {
            Intake = new LobeQuestion
            {
                WantedOpens = Angle("15 deg"),
                WantedCloses = Angle("27 deg")
            }
        }).WantedEvents);

        Assert.Equal(17, wanted.Advance.Expected, 1e-9);
        Assert.Equal([1, 0, 2], wanted.Choices.Select(choice => choice.Teeth));
        Assert.Equal(0.142857, wanted.Choices[0].Off.Expected, 1e-6);
    }

    [Theory]
    [InlineData("5 deg", false)] // 5 + 2 = 7°, above the 2° of early and the 0° of late
    [InlineData("-2 deg", null)]
    [InlineData("-30 deg", true)] // −30 + 2 = −28°, below both
    public void Overlap_outside_the_familys_own_is_flagged(string opens, bool? isNegative)
    {
        var warnings = Reckon(_late with { Intake = new LobeQuestion { Opens = Angle(opens) } }).Warnings.Select(warning => warning.Code).ToList();

        Assert.Equal(isNegative == false, warnings.Contains("overlap-large"));
        Assert.Equal(isNegative == true, warnings.Contains("overlap-negative"));
    }

    // With this crank 19.73 % of the stroke has passed 61° after the bottom and 20.38 % at 62°: x = 199 − 47·cos 242° − √(152² − (47·sin 242°)²) = 74.8397 mm
    // = 0.79617 strokes.
    [Theory]
    [InlineData("61 deg", false)]
    [InlineData("62 deg", true)]
    [InlineData("-62 deg", false)]
    public void Late_closing_is_flagged_from_a_fifth_of_the_stroke(string closes, bool isFlagged) =>
        Assert.Equal(isFlagged,
            Reckon(_late with { Intake = new LobeQuestion { Closes = Angle(closes) } }).Warnings.Any(warning => warning.Code == "closes-late"));

    [Fact]
    public void Trapped_compression_is_compared_only_with_variants_on_the_same_fuel_and_boost()
    {
        var above = Reckon(_late with { CompressionRatio = Range("10.5", Dimension.Ratio) });

        Assert.Contains("of Late as built, the only variant", above.Warnings.Single(warning => warning.Code == "trapped-above-family").Text, StringComparison.Ordinal);
        Assert.DoesNotContain("safe", string.Join(' ', above.Warnings.Select(warning => warning.Text)), StringComparison.OrdinalIgnoreCase);
    }

    // (8.1095 ÷ 8.4485)^1.30 = 0.95988^1.30 = 0.9482.
    [Fact]
    public void End_of_compression_pressure_is_a_ratio_to_each_variant()
    {
        var variants = Reckon(_earlyCamInLate).Variants;

        Assert.Equal(["early", "late"], variants.Select(one => one.Variant));
        Assert.Equal(0.9482, variants[1].EndOfCompression?.Expected ?? 0, 2e-4);
        Assert.Equal([PartMatch.Core.Compression.SameCharge.No, PartMatch.Core.Compression.SameCharge.Yes], variants.Select(one => one.Charge));
    }
}
