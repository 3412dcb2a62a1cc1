using PartMatch.Core.Measures;
using PartMatch.Core.Sums;
using static PartMatch.Core.Sums.GeometryText;

namespace PartMatch.Core.ValveTiming;

/// <summary>
/// A question turned round: which setting comes closest to these events? With the expected figures, drives at rest.
/// </summary>
internal static class WantedTiming
{
    // Further off than this nobody sets a camshaft by the tooth.
    internal const int MostTeeth = 4;

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
            : Math.Abs(advance) > MostTeeth * lobe.PerTooth
                ? $"that is {SumText.Number(Math.Abs(advance) / (lobe.PerTooth ?? 1), "0.0")} teeth, and only the {MostTeeth} next to the mark are looked at: "
                    + $"of these {Teeth(choices[0].Teeth)} comes closest, {choices[0].Off.Text} off"
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

    private static string Teeth(int teeth) => teeth switch
    {
        0 => "no tooth",
        1 or -1 => $"1 tooth {(teeth > 0 ? "advanced" : "retarded")}",
        _ => $"{Math.Abs(teeth)} teeth {(teeth > 0 ? "advanced" : "retarded")}",
    };
}
