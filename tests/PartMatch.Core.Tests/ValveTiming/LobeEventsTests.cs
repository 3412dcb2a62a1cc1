using CsCheck;
using PartMatch.Core.Measures;
using PartMatch.Core.ValveTiming;
using Xunit;

namespace PartMatch.Core.Tests.ValveTiming;

/// <summary>Duration = opens + 180 + closes; centre = duration ÷ 2 − opens (intake) or − closes (exhaust). Definitions: Blair 1999 (from memory).</summary>
public sealed class LobeEventsTests
{
    // Opens 10 before top, closes 50 after bottom, and the mirror of it: 10 + 180 + 50 = 240; 120 − 10 = 110; (110 + 110) ÷ 2 = 110; 10 + 10 = 20.
    // Opens 5, closes 65, exhaust 55 and 15: 250 and 250; 125 − 5 = 120; 125 − 15 = 110; 115; 5 + 15 = 20 = (250 + 250) ÷ 2 − 2 × 115.
    [Theory]
    [InlineData(10, 50, 50, 10, 240, 240, 110, 110, 110, 20)]
    [InlineData(5, 65, 55, 15, 250, 250, 120, 110, 115, 20)]
    public void Durations_centres_separation_and_overlap_are_those_of_the_events(
        double opens, double closes, double exhaustOpens, double exhaustCloses, double duration, double exhaustDuration, double centre, double exhaustCentre,
        double separation, double overlap)
    {
        var (intake, exhaust) = (Lobe(opens, closes), Lobe(exhaustOpens, exhaustCloses));

        Assert.Equal(duration, intake.Duration.Expected, 1e-12);
        Assert.Equal(exhaustDuration, exhaust.Duration.Expected, 1e-12);
        Assert.Equal(centre, intake.Centre(Valve.Intake).Expected, 1e-12);
        Assert.Equal(exhaustCentre, exhaust.Centre(Valve.Exhaust).Expected, 1e-12);
        Assert.Equal(separation, LobeEvents.Separation(intake, exhaust).Expected, 1e-12);
        Assert.Equal(overlap, LobeEvents.Overlap(intake, exhaust).Expected, 1e-12);
    }

    // Opens 8 after top dead centre, exhaust closes 2 after: −8 + 2 = −6.
    [Fact]
    public void Opening_after_top_dead_centre_keeps_its_sign_and_makes_the_overlap_negative() =>
        Assert.Equal(-6, LobeEvents.Overlap(Lobe(-8, 50), Lobe(50, 2)).Expected, 1e-12);

    // The range-extender cam: 8 + 180 − 52 = 136; 68 − 8 = 60 after top dead centre.
    [Fact]
    public void Closing_before_bottom_dead_centre_is_a_short_duration_and_an_early_centre()
    {
        Assert.Equal(136, Lobe(8, -52).Duration.Expected, 1e-12);
        Assert.Equal(60, Lobe(8, -52).Centre(Valve.Intake).Expected, 1e-12);
    }

    [Fact]
    public void Advance_opens_and_closes_earlier_and_leaves_the_duration()
    {
        var advanced = Lobe(-2, 44).Advanced(Spread.Exactly(50));

        Assert.Equal(48, advanced.Opens.Expected, 1e-12);
        Assert.Equal(-6, advanced.Closes.Expected, 1e-12);
        Assert.Equal(222, advanced.Duration.Expected, 1e-12);
    }

    [Fact]
    public void Overlap_is_the_mean_duration_less_twice_the_separation() =>
        Gen.Select(Gen.Double[-40, 60], Gen.Double[-80, 110], Gen.Double[-20, 90], Gen.Double[-40, 60]).Sample((opens, closes, exhaustOpens, exhaustCloses) =>
        {
            var (intake, exhaust) = (Lobe(opens, closes), Lobe(exhaustOpens, exhaustCloses));
            var identity = ((intake.Duration.Expected + exhaust.Duration.Expected) / 2) - (2 * LobeEvents.Separation(intake, exhaust).Expected);
            return Math.Abs(identity - LobeEvents.Overlap(intake, exhaust).Expected) < 1e-9;
        });

    // 720 ÷ teeth.
    [Theory]
    [InlineData(36, 20.0)]
    [InlineData(40, 18.0)]
    [InlineData(42, 17.1429)]
    [InlineData(44, 16.3636)]
    [InlineData(48, 15.0)]
    [InlineData(50, 14.4)]
    [InlineData(60, 12.0)]
    public void Tooth_of_a_cam_wheel_is_720_by_its_teeth_and_the_same_at_the_crank(int teeth, double degrees)
    {
        Assert.Equal(degrees, TimingWheel.DegreesPerTooth(teeth, TimingWheel.CrankTurnsOfCam), 1e-4);
        Assert.Equal(TimingWheel.DegreesPerTooth(teeth, 2), TimingWheel.DegreesPerTooth(teeth / 2, 1), 1e-12);
    }

    [Fact]
    public void Ten_degrees_at_the_camshaft_are_twenty_at_the_crank() => Assert.Equal(20, TimingWheel.CrankDegrees(10), 1e-12);

    // Range 50 ± 0.5, resting retarded: it can only advance, by 0 to 50. Resting advanced: it can only retard.
    [Theory]
    [InlineData(PhaserRest.Retarded, 50, 49.5, 50.5)]
    [InlineData(PhaserRest.Advanced, -50, -50.5, -49.5)]
    public void Phaser_moves_away_from_its_rest(PhaserRest rest, double end, double low, double high)
    {
        var phaser = new Phaser(new Spread(49.5, 50, 50.5), rest);

        Assert.Equal(new Spread(low, end, high), phaser.At(1));
        Assert.Equal(0, phaser.At(0).Expected, 1e-12);
        Assert.True(phaser.Moves);
    }

    [Fact]
    public void Fixed_wheel_does_not_move() => Assert.False(Phaser.Fixed.Moves);

    private static LobeEvents Lobe(double opens, double closes) => new(Spread.Exactly(opens), Spread.Exactly(closes));
}
