using PartMatch.Core.Compression;
using PartMatch.Core.Measures;
using static PartMatch.Core.Sums.GeometryText;

namespace PartMatch.Core.ValveTiming;

/// <summary>
/// The questions turned round: which setting comes closest to these events, which closing traps this ratio? With the expected figures, drives at rest.
/// </summary>
internal static class WantedTiming
{
    // Further off than this nobody sets a camshaft by the tooth.
    private const int MostTeeth = 4;

    public static IEnumerable<WantedEvents> OfEvents(TimingSetting setting)
    {
        foreach (var (lobe, wanted) in new[] { (setting.Intake, setting.Question.Intake), (setting.Exhaust, setting.Question.Exhaust) })
        {
            if (wanted.WantedOpens is not null || wanted.WantedCloses is not null)
            {
                yield return OfEvents(lobe, wanted.WantedOpens?.Expected, wanted.WantedCloses?.Expected);
            }
        }
    }

    /// <summary>
    /// An opening asks for one advance, a closing for another; where the duration differs from what is wanted, the mean of both misses either by the same.
    /// </summary>
    private static WantedEvents OfEvents(LobeSetting lobe, double? opens, double? closes)
    {
        var (now, code) = (lobe.AtRest, TimingText.Code(lobe.Valve));
        double[] asks = [.. opens is { } open ? [open - now.Opens.Expected] : Array.Empty<double>(), .. closes is { } close ? [now.Closes.Expected - close]
            : Array.Empty<double>()];
        var advance = asks.Average();
        var choices = lobe.PerTooth is { } perTooth ? Choices(lobe, asks, perTooth) : [];
        var left = asks.Max(ask => Math.Abs(ask - advance));
        var missing = left < 0.05 ? "" : $"; each event then misses by {InDegrees(left, "0.#")}, because this camshaft's duration is another";
        var teeth = choices.Count == 0 ? $"give {code}-wheel-teeth= to learn how many teeth that is"
            : $"closest by whole teeth: {Teeth(choices[0].Teeth)}, {choices[0].Off.Text} off";
        return new WantedEvents(code, TimingText.Advance(Spread.Exactly(advance)), choices,
            $"{code}: {TimingText.Advance(Spread.Exactly(advance)).Text} from how it is set{missing}; {teeth}.");
    }

    private static IReadOnlyList<TeethChoice> Choices(LobeSetting lobe, double[] asks, double perTooth) =>
    [
        .. Enumerable.Range(-MostTeeth, (2 * MostTeeth) + 1)
            .Select(teeth =>
            {
                var by = Spread.Exactly(teeth * perTooth);
                var moved = lobe.AtRest.Advanced(by);
                return new TeethChoice(
                    teeth, TimingText.Advance(by), TimingText.Opens(lobe.Valve, Spread.Exactly(moved.Opens.Expected)),
                        TimingText.Closes(lobe.Valve, Spread.Exactly(moved.Closes.Expected)),
                    RangeInDegrees(Spread.Exactly(asks.Max(ask => Math.Abs(ask - by.Expected)))));
            })
            .OrderBy(choice => choice.Off.Expected).ThenBy(choice => Math.Abs(choice.Teeth)).Take(3),
    ];

    /// <summary>Geometry is known: the question was checked for it.</summary>
    public static WantedClosing? OfClosing(TimingSetting setting, Quantity wanted)
    {
        if (setting is not { Geometry: { } known, Crank: { } crank })
        {
            return null;
        }

        if (TrappedCompression.FindClosing(known.Ratio.Expected, crank, (double)wanted.Value) is not { } away)
        {
            return new WantedClosing(wanted, null, null, null, null,
                $"No closing traps {wanted.Text}: the most is the whole compression ratio, {InRatio(known.Ratio.Expected)}, when the valve closes at bottom "
                + "dead centre.");
        }

        var (now, before, after) = (setting.Intake.AtRest.Closes.Expected, Spread.Exactly(-away), Spread.Exactly(away));
        var (toBefore, toAfter) = (Spread.Exactly(now + away), Spread.Exactly(now - away));
        var (nearest, at) = Math.Abs(toAfter.Expected) <= Math.Abs(toBefore.Expected) ? (toAfter, after) : (toBefore, before);
        var teeth = setting.Intake.PerTooth is { } perTooth ? Nearest((int)Math.Round(nearest.Expected / perTooth, MidpointRounding.AwayFromZero)) : "";
        return new WantedClosing(
            wanted, TimingText.IntakeCloses(before), TimingText.IntakeCloses(after), TimingText.Advance(toBefore), TimingText.Advance(toAfter),
            $"{wanted.Text} is trapped when the intake valve closes {InDegrees(away, "0.#")} from bottom dead centre, before or after it. Nearest from how it "
            + $"is set: {TimingText.IntakeCloses(at).Text}, "
            + $"{TimingText.Advance(nearest).Text}{teeth}.");
    }

    private static string Nearest(int teeth) => teeth == 0 ? ", and no whole tooth comes closer" : $", {Teeth(teeth)} to the nearest whole tooth";

    private static string Teeth(int teeth) => teeth switch
    {
        0 => "no tooth",
        1 or -1 => $"1 tooth {(teeth > 0 ? "advanced" : "retarded")}",
        _ => $"{Math.Abs(teeth)} teeth {(teeth > 0 ? "advanced" : "retarded")}",
    };
}
