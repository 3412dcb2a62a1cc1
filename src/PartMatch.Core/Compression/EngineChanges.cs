using PartMatch.Core.Catalogue;
using PartMatch.Core.Measures;
using PartMatch.Core.Sums;
using PartMatch.Core.ValveTiming;

namespace PartMatch.Core.Compression;

/// <summary>What the sums see of one engine; null = not known.</summary>
internal sealed record EngineState
{
    public LobeEvents? Intake { get; init; }

    public LobeEvents? Exhaust { get; init; }

    public double? IntakeLiftM { get; init; }

    public double? ExhaustLiftM { get; init; }

    public Phaser? Phaser { get; init; }

    /// <summary>Teeth of the wheels on the camshafts.</summary>
    public int? IntakeTeeth { get; init; }

    public int? ExhaustTeeth { get; init; }

    public double? Ratio { get; init; }

    public double? Trapped { get; init; }

    /// <summary>What the question leaves open of the ratio; null where it leaves nothing.</summary>
    public Spread? RatioAsAsked { get; init; }

    public Spread? TrappedAsAsked { get; init; }

    public double? SquishM { get; init; }
}

/// <summary>Says in words what one engine does differently from another, each way: earlier and later, more and less.</summary>
internal static class EngineChanges
{
    // Below what any of these can be measured to on an engine.
    private const double SameDegrees = 0.05;
    private const double SameRatio = 0.005;
    private const double SameLengthM = 0.000005;

    /// <param name="was">As built.</param>
    /// <returns>Short clauses; empty where nothing that is known of both differs.</returns>
    public static IReadOnlyList<string> Between(EngineState was, EngineState now) =>
    [
        .. Events("intake", was.Intake, now.Intake),
        .. Events("exhaust", was.Exhaust, now.Exhaust),
        .. Lengths("intake lift", was.IntakeLiftM, now.IntakeLiftM, "0.0#"),
        .. Lengths("exhaust lift", was.ExhaustLiftM, now.ExhaustLiftM, "0.0#"),
        .. Overlaps(was, now),
        .. Phasers(was.Phaser, now.Phaser),
        .. Teeth("intake", was.IntakeTeeth, now.IntakeTeeth),
        .. Teeth("exhaust", was.ExhaustTeeth, now.ExhaustTeeth),
        .. Ratios("compression ratio", was.Ratio, now.Ratio, now.RatioAsAsked),
        .. Ratios("trapped compression", was.Trapped, now.Trapped, now.TrappedAsAsked),
        .. Lengths("squish", was.SquishM, now.SquishM, "0.00"),
    ];

    /// <summary>The setting of a question against its variant as built; empty where that is not recorded or holds at another lift.</summary>
    public static IReadOnlyList<string> OfTiming(FamilyFacts facts, string variant, TimingSetting setting)
    {
        var (intake, exhaust) = AsBuiltEvents.Find(facts, variant);
        if (!setting.IsAtOneMillimetre)
        {
            return [];
        }

        double? Lift(string role) => AsBuiltEvents.Lift(RoleParts.Fitted(facts, variant, RoleParts.FindPosition(facts, role))).Figure?.Spread.Expected;
        var was = new EngineState
        {
            Intake = intake,
            Exhaust = exhaust,
            IntakeLiftM = Lift(Roles.IntakeCamshaft),
            ExhaustLiftM = setting.IsOneCamshaft ? null : Lift(Roles.ExhaustCamshaft),
            Ratio = setting.Recorded.Ratio.Figure?.Spread.Expected,
            Trapped = intake is { } lobe ? setting.AsBuiltTrapped(lobe)?.Expected : null,
        };
        return Between(was, new EngineState
        {
            Intake = setting.Intake.AtRest,
            Exhaust = setting.Exhaust.AtRest,
            IntakeLiftM = setting.Intake.Lift?.Expected,
            ExhaustLiftM = setting.IsOneCamshaft ? null : setting.Exhaust.Lift?.Expected,
            Ratio = setting.Ratio.Figure?.Spread.Expected,
            Trapped = setting.Trapped(setting.Intake.AtRest)?.Expected,
        });
    }

    private static IEnumerable<string> Events(string valve, LobeEvents? was, LobeEvents? now)
    {
        if (was is not { } before || now is not { } after)
        {
            yield break;
        }

        // Opening is counted before its dead centre and closing after: more is earlier for the one and later for the other.
        var (opens, closes) = (after.Opens.Expected - before.Opens.Expected, before.Closes.Expected - after.Closes.Expected);
        if (Math.Abs(opens) > SameDegrees)
        {
            yield return $"{valve} opens {TimingText.Earlier(opens)}";
        }

        if (Math.Abs(closes) > SameDegrees)
        {
            yield return $"{valve} closes {TimingText.Earlier(closes)}";
        }
    }

    private static IEnumerable<string> Overlaps(EngineState was, EngineState now)
    {
        if (was is not { Intake: { } intake, Exhaust: { } exhaust } || now is not { Intake: { } intakeNow, Exhaust: { } exhaustNow })
        {
            yield break;
        }

        var (before, after) = (LobeEvents.Overlap(intake, exhaust).Expected, LobeEvents.Overlap(intakeNow, exhaustNow).Expected);
        if (Math.Abs(after - before) > SameDegrees)
        {
            yield return $"overlap {GeometryText.InDegrees(after, "0.#")} instead of {GeometryText.InDegrees(before, "0.#")}";
        }
    }

    private static string[] Phasers(Phaser? was, Phaser? now)
    {
        static string Range(Phaser phaser) => GeometryText.InDegrees(phaser.Range.Expected, "0.#");
        static string Words(Phaser phaser) => phaser switch
        {
            { Moves: false } => "is fixed",
            { Rest: PhaserRest.Advanced } => $"can be retarded by up to {Range(phaser)}",
            _ => $"can be advanced by up to {Range(phaser)}",
        };
        return was is null || now is null || (was.Rest == now.Rest && Math.Abs(was.Range.Expected - now.Range.Expected) <= SameDegrees) ? []
            : was.Moves && was.Rest == now.Rest ? [$"intake camshaft {Words(now)} instead of {Range(was)}"]
            : [$"intake camshaft {Words(now)}; as built it {Words(was)}"];
    }

    private static IEnumerable<string> Teeth(string valve, int? was, int? now) => was is { } before && now is { } after && before != after
        ? [$"{valve} camshaft wheel of {after} teeth instead of {before}: its crankshaft wheel needs {SumText.Number(after / 2.0, "0.#")}"]
        : [];

    private static IEnumerable<string> Lengths(string what, double? was, double? now, string format) =>
        was is { } before && now is { } after && Math.Abs(after - before) > SameLengthM
            ? [$"{what} {SumText.Number(after * 1000, format).Replace('-', '−')} instead of {GeometryText.InMm(before, format)}"]
            : [];

    private static IEnumerable<string> Ratios(string what, double? was, double? now, Spread? asked)
    {
        if (was is not { } before || now is not { } after)
        {
            return [];
        }

        var (rises, falls) = ((asked?.High ?? after) - before >= SameRatio, before - (asked?.Low ?? after) >= SameRatio);
        var text = GeometryText.RangeOfRatio(asked ?? Spread.Exactly(after)).Text;
        return !rises && !falls ? [] : [$"{what} {(rises && falls ? "rises or falls" : rises ? "rises" : "falls")}: {text} instead of "
            + $"{GeometryText.InRatio(before)}"];
    }
}
