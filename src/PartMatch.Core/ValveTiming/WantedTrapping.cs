using PartMatch.Core.Compression;
using PartMatch.Core.Measures;
using PartMatch.Core.Sums;
using static PartMatch.Core.Sums.GeometryText;

namespace PartMatch.Core.ValveTiming;

/// <summary>A question turned round: which closing traps this ratio, and what else would? Drives at rest.</summary>
internal static class WantedTrapping
{
    private const string Caution =
        "A camshaft that is set otherwise can let a valve meet a piston: turn the engine by hand, and measure piston-to-valve, before it is started.";

    /// <summary>Geometry is known: the question was checked for it.</summary>
    public static WantedClosing? Of(TimingSetting setting, Quantity wanted)
    {
        if (setting is not { Geometry: { } known, Crank: { } crank })
        {
            return null;
        }

        if (TrappedCompression.FindClosing(known.Ratio.Expected, crank, (double)wanted.Value) is not { } expected)
        {
            return new WantedClosing(wanted, null, null, null, null,
                $"No closing traps {wanted.Text}: the most is the whole compression ratio, {RangeOfRatio(known.Ratio).Text}, when the valve closes at bottom "
                + "dead centre.");
        }

        var away = Away(known, expected, (double)wanted.Value);
        var (now, after) = (setting.Intake.AtRest.Closes, away);
        var before = new Spread(-away.High, -away.Expected, -away.Low);
        var (toBefore, toAfter) = (now - before, now - after);
        var (nearest, at) = Math.Abs(toAfter.Expected) <= Math.Abs(toBefore.Expected) ? (toAfter, after) : (toBefore, before);
        return new WantedClosing(
            wanted, TimingText.IntakeCloses(before), TimingText.IntakeCloses(after), TimingText.Advance(toBefore), TimingText.Advance(toAfter),
            $"{wanted.Text} is trapped when the intake valve closes {RangeInDegrees(away).Text} from bottom dead centre, before or after it. Nearest from how "
            + $"it is set: {TimingText.IntakeCloses(at).Text}, {TimingText.Advance(nearest).Text}. {ByTeeth(setting, nearest.Expected)}"
            + $"{ByDrive(setting, nearest.Expected)}{ByRatio(setting, crank, (double)wanted.Value)} {Caution}");
    }

    // A ratio that may lie below what is wanted reaches it at bottom dead centre or not at all.
    private static Spread Away((Spread Ratio, Spread Stroke, Spread Rod) known, double expected, double wanted)
    {
        var ends = SumRange.Of(
            [new("compression ratio", known.Ratio), new("stroke", known.Stroke), new("rod length", known.Rod)],
            of => TrappedCompression.FindClosing(of[0], new SliderCrank(of[1], of[2]), wanted) ?? 0);
        return new Spread(ends.Low, expected, ends.High);
    }

    /// <summary>Both whole teeth beside what is wanted, and what each traps.</summary>
    private static string ByTeeth(TimingSetting setting, double advance)
    {
        if (setting.Intake.PerTooth is not { } perTooth)
        {
            return "Give intake-wheel-teeth= to learn what whole teeth give.";
        }

        var below = (int)Math.Floor(advance / perTooth);
        return below < -WantedTiming.MostTeeth || below + 1 > WantedTiming.MostTeeth
            ? $"By teeth that is {SumText.Number(Math.Abs(advance) / perTooth, "0.0")}, and only {WantedTiming.MostTeeth} either way are looked at."
            : $"By whole teeth: {Tooth(setting, below, perTooth)}; {Tooth(setting, below + 1, perTooth)}.";
    }

    private static string Tooth(TimingSetting setting, int teeth, double perTooth)
    {
        var moved = setting.Intake.AtRest.Advanced(Spread.Exactly(teeth * perTooth));
        var words = teeth switch
        {
            0 => "as it is now",
            1 or -1 => $"1 tooth more {(teeth > 0 ? "advanced" : "retarded")} than now",
            _ => $"{Math.Abs(teeth)} teeth more {(teeth > 0 ? "advanced" : "retarded")} than now",
        };
        return $"{words} traps {(setting.Trapped(moved) is { } trapped ? RangeOfRatio(trapped).Text : "what is not known")}";
    }

    private static string ByDrive(TimingSetting setting, double advance)
    {
        var phaser = setting.Intake.Phaser;
        var end = phaser.At(1).Expected;
        return phaser.Moves && Math.Sign(end) == Math.Sign(advance) && Math.Abs(advance) <= Math.Abs(end)
            ? $" The travel of its drive, {TimingText.Advance(phaser.At(1)).Text}, reaches it without a tooth." : "";
    }

    private static string ByRatio(TimingSetting setting, SliderCrank crank, double wanted)
    {
        var share = TrappedCompression.ShareEnclosed(crank, setting.Intake.AtRest.Closes.Expected);
        var ratio = InRatio(1 + ((wanted - 1) / share));
        return $" With the closing left as it is, a compression ratio of {ratio} traps as much: gasket, skim or pistons, see compression with wanted-ratio={ratio}.";
    }
}
