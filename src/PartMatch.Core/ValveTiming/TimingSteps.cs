using PartMatch.Core.Compression;
using PartMatch.Core.Sums;
using static PartMatch.Core.Sums.GeometryText;

namespace PartMatch.Core.ValveTiming;

/// <summary>The sums for the pencil, with the expected figures and the drives at rest.</summary>
internal static class TimingSteps
{
    private const string Definition = "definition";
    private const string Blair = "definition: Blair 1999 (from memory)";

    public static IEnumerable<WorkingStep> Of(TimingSetting setting)
    {
        var (intake, exhaust) = (setting.Intake.AtRest, setting.Exhaust.AtRest);
        foreach (var step in OfLobe(setting.Intake, setting.IsOneCamshaft ? "the camshaft"
            : "the intake camshaft").Concat(OfLobe(setting.Exhaust, setting.IsOneCamshaft ? null : "the exhaust camshaft")))
        {
            yield return step;
        }

        var (intakeCentre, exhaustCentre) = (intake.Centre(Valve.Intake).Expected, exhaust.Centre(Valve.Exhaust).Expected);
        yield return new WorkingStep(
            "lobe separation", "(intake centre + exhaust centre) ÷ 2", $"({InDegrees(intakeCentre)} + {InDegrees(exhaustCentre)}) of the crank ÷ 2",
            $"{InDegrees(LobeEvents.Separation(intake, exhaust).Expected)} of the camshaft", Blair);
        yield return new WorkingStep(
            "overlap", "intake opening before top + exhaust closing after top", $"{InDegrees(intake.Opens.Expected)} + ({InDegrees(exhaust.Closes.Expected)})",
            InDegrees(LobeEvents.Overlap(intake, exhaust).Expected), Definition);
        if (setting is { Geometry: { } known, Crank: { } crank })
        {
            foreach (var step in TrappedSteps.Of(known.Ratio.Expected, crank, intake.Closes.Expected))
            {
                yield return step;
            }
        }

        foreach (var step in Swept(setting))
        {
            yield return step;
        }
    }

    /// <summary>The same sums once more at the end of the intake phaser's travel, in short.</summary>
    private static IEnumerable<WorkingStep> Swept(TimingSetting setting)
    {
        var phaser = setting.Intake.Phaser;
        if (!phaser.Moves)
        {
            yield break;
        }

        var (rest, end, moved) = (setting.Intake.AtRest, setting.Intake.At(1), InDegrees(phaser.At(1).Expected));
        yield return new WorkingStep(
            "intake opens, phaser fully moved", "at rest + range (− range where it rests advanced)", $"{InDegrees(rest.Opens.Expected)} + ({moved})",
            $"{InDegrees(end.Opens.Expected)}, that is {Exactly(TimingText.Opens, Valve.Intake, end.Opens.Expected)}", "a phaser moves away from its rest");
        yield return new WorkingStep(
            "intake closes, phaser fully moved", "at rest − range (+ range where it rests advanced)", $"{InDegrees(rest.Closes.Expected)} − ({moved})",
            $"{InDegrees(end.Closes.Expected)}, that is {Exactly(TimingText.Closes, Valve.Intake, end.Closes.Expected)}", "a phaser moves away from its rest");
        if (setting is { Geometry: { } known, Crank: { } crank })
        {
            var share = TrappedCompression.ShareEnclosed(crank, end.Closes.Expected);
            yield return new WorkingStep(
                "trapped compression, phaser fully moved", "1 + (compression ratio − 1) × share of the stroke at θ",
                $"1 + ({InRatio(known.Ratio.Expected)} − 1) × {SumText.Number(share, "0.0000")}, θ = {InDegrees(180 + end.Closes.Expected)}",
                InRatio(TrappedCompression.Of(known.Ratio.Expected, crank, end.Closes.Expected)), "as above");
        }
    }

    /// <param name="camshaft">In words; null where the camshaft has been told already.</param>
    private static IEnumerable<WorkingStep> OfLobe(LobeSetting lobe, string? camshaft)
    {
        var (code, mark, now) = (TimingText.Code(lobe.Valve), lobe.OnMark, lobe.AtRest);
        if (camshaft is not null && lobe.PerTooth is { } perTooth)
        {
            yield return new WorkingStep(
                $"one tooth of the wheel on {camshaft}", "360° ÷ teeth × crank turns for one turn of the wheel",
                $"360° ÷ {lobe.WheelTeeth} × {SumText.Number(lobe.CrankTurns, "0.###")}",
                $"{InDegrees(perTooth)} of the crank", "a camshaft turns at half the speed of the crankshaft");
        }

        var shift = lobe.Shift.Expected;
        if (camshaft is not null && shift != 0)
        {
            yield return new WorkingStep(
                $"shift of {camshaft}", "teeth × degrees per tooth + advance",
                $"{Signed(lobe.Teeth)} × {InDegrees(lobe.PerTooth ?? 0)} + ({InDegrees(lobe.Advance.Expected)})", TimingText.Advance(lobe.Shift).Text,
                "advance is positive, retard negative");
        }

        yield return new WorkingStep(
            $"{code} opens", "on its mark + shift", $"{InDegrees(mark.Opens.Expected)} + ({InDegrees(shift)})",
            $"{InDegrees(now.Opens.Expected)}, that is {Exactly(TimingText.Opens, lobe.Valve, now.Opens.Expected)}", lobe.Sources);
        yield return new WorkingStep(
            $"{code} closes", "on its mark − shift", $"{InDegrees(mark.Closes.Expected)} − ({InDegrees(shift)})",
            $"{InDegrees(now.Closes.Expected)}, that is {Exactly(TimingText.Closes, lobe.Valve, now.Closes.Expected)}", lobe.Sources);
        yield return new WorkingStep(
            $"{code} duration", "opens + 180° + closes", $"{InDegrees(now.Opens.Expected)} + 180° + ({InDegrees(now.Closes.Expected)})",
            $"{InDegrees(now.Duration.Expected)} of the crank", Definition);
        var near = lobe.Valve == Valve.Intake ? now.Opens.Expected : now.Closes.Expected;
        yield return new WorkingStep(
            $"{code} lobe centre", $"duration ÷ 2 − {(lobe.Valve == Valve.Intake ? "opens" : "closes")}",
            $"{InDegrees(now.Duration.Expected)} ÷ 2 − ({InDegrees(near)})",
            Exactly(TimingText.Centre, lobe.Valve, now.Centre(lobe.Valve).Expected), Blair);
    }

    private static string Exactly(Func<Valve, Measures.Spread, Measures.QuantityRange> say, Valve valve, double degrees) =>
        say(valve, Measures.Spread.Exactly(degrees)).Text;

    private static string Signed(int teeth) => teeth < 0 ? $"−{-teeth}" : $"{teeth}";
}
