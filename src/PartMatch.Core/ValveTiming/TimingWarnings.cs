using PartMatch.Core.Catalogue;
using PartMatch.Core.Compression;
using PartMatch.Core.Sums;
using static PartMatch.Core.Sums.GeometryText;

namespace PartMatch.Core.ValveTiming;

/// <summary>What to know before relying on the answer: each flag states the number, what is usual and who says so, and ends in measuring.</summary>
internal static class TimingWarnings
{
    private const double SameDegrees = 0.05;
    private const double SameLiftM = 0.00005;

    public static IEnumerable<SumWarning> Of(TimingSetting setting, IReadOnlyList<VariantYardstick> variants)
    {
        var rest = setting.Intake.AtRest;
        LobeSetting[] lobes = [setting.Intake, setting.Exhaust];
        if (setting.Geometry is null)
        {
            var lacking = ValveTimingRefusals.OfGeometry(setting);
            yield return new SumWarning("trapped-not-known", $"Nothing is said of what is trapped. {lacking.Reason} {FirstLarge(lacking.Mend)}");
        }
        else if (setting.Crank is { } crank)
        {
            foreach (var warning in TrappedWarnings.Of(setting.Question.Variant, setting.Trapped(rest), rest.Closes, crank, setting.IsAtOneMillimetre
                ? variants : []))
            {
                yield return warning;
            }
        }

        foreach (var warning in Assembly(setting).Concat(Overlap(setting, variants)).Concat(Drive(setting)))
        {
            yield return warning;
        }

        if (EngineChanges.OfTiming(setting.Facts, setting.Question.Variant, setting).Count > 0 || setting.Intake.Phaser.Moves || setting.Exhaust.Phaser.Moves)
        {
            var (end, other) = (setting.Intake.At(1), setting.Exhaust.At(1));
            yield return new SumWarning("piston-to-valve",
                $"Around top dead centre the intake valve opens {Widest(rest.Opens.Expected, end.Opens.Expected, TimingText.IntakeOpens)} and the exhaust "
                + "valve closes "
                + $"{Widest(setting.Exhaust.AtRest.Closes.Expected, other.Closes.Expected, TimingText.ExhaustCloses)}. Measure piston-to-valve by hand"
                    + (lobes.Any(lobe => lobe.Phaser.Moves || lobe.MayMove) ? ", at both ends of phaser travel" : "")
                    + ", with the final gasket, springs and lash.");
        }
    }

    /// <summary>What the camshaft of another engine brings with it that no angle shows.</summary>
    private static IEnumerable<SumWarning> Assembly(TimingSetting setting)
    {
        LobeSetting[] lobes = setting.IsOneCamshaft ? [setting.Intake] : [setting.Intake, setting.Exhaust];
        foreach (var lobe in lobes)
        {
            var code = TimingText.Code(lobe.Valve);
            if (lobe.GoesNotOnWheel is { } apart)
            {
                yield return new SumWarning("cannot-be-assembled",
                    $"{apart} Set like this it cannot be assembled: the events are those on its own mark, and what that drive would do to it is left out. "
                    + $"Give the wheel that it goes on as {code}-wheel=.");
            }

            if (lobe.Centre is null && lobe.Parts.Any(part => part is { IsFitted: false, Role: Roles.IntakeCamshaft or Roles.ExhaustCamshaft }))
            {
                yield return new SumWarning("mark-taken-as-here",
                    $"The {code} camshaft is of another engine, and its mark is taken to stand here as it does there, 0° apart: nobody has recorded that. Set "
                    + $"it with a degree wheel, and give where its centre lies as {code}-centre=.");
            }

            if (lobe.Lift?.Expected is { } lift && BuiltLift(setting, lobe) is { } built && Math.Abs(lift - built) > SameLiftM)
            {
                yield return new SumWarning("lift-differs",
                    $"The {code} valves lift {GeometryText.InMm(lift, "0.0#")} instead of {GeometryText.InMm(built, "0.0#")}: {(lift < built
                        ? "the engine breathes through a smaller opening, the more so the faster it turns; by how much, no angle shows"
                        : "springs can bind, retainers meet guides, and valves come nearer to the pistons")}. Measure lift, springs and lash.");
            }
        }
    }

    private static double? BuiltLift(TimingSetting setting, LobeSetting lobe) => AsBuiltEvents.Lift(RoleParts.Fitted(
        setting.Facts, setting.Question.Variant, RoleParts.FindPosition(setting.Facts, lobe.Valve == Valve.Intake ? Roles.IntakeCamshaft
            : Roles.ExhaustCamshaft))).Figure?.Spread.Expected;

    private static IEnumerable<SumWarning> Overlap(TimingSetting setting, IReadOnlyList<VariantYardstick> variants)
    {
        var overlap = setting.Overlap(setting.Intake.AtRest, setting.Exhaust.AtRest);
        var own = setting.IsAtOneMillimetre ? variants.Where(one => one.Overlap is not null).Select(one => one.Overlap!.Expected).Order().ToList() : [];
        var usual = own.Count == 0 ? "the family records none to compare it with"
            : $"the family's own variants lie at {InDegrees(own[0], "0.#")} … {InDegrees(own[^1], "0.#")} at 1 mm, at rest";
        if (own.Count > 0 && overlap.Expected > own[^1] + SameDegrees)
        {
            yield return new SumWarning("overlap-large",
                $"Overlap {RangeInDegrees(overlap).Text}; {usual}. More overlap idles worse, and under boost lets charge through to the exhaust. Measure idle "
                + "and exhaust, and piston-to-valve by hand.");
        }
        else if (overlap.Expected < 0 && (own.Count == 0 || overlap.Expected < own[0] - SameDegrees))
        {
            yield return new SumWarning("overlap-negative",
                $"Overlap {RangeInDegrees(overlap).Text}: both valves are below this lift for {InDegrees(-overlap.Expected, "0.#")} around top dead centre, "
                + $"and burnt gas stays in; {usual}. Measure the events with a degree wheel.");
        }
    }

    private static IEnumerable<SumWarning> Drive(TimingSetting setting)
    {
        LobeSetting[] lobes = setting.IsOneCamshaft ? [setting.Intake] : [setting.Intake, setting.Exhaust];
        foreach (var lobe in lobes)
        {
            var code = TimingText.Code(lobe.Valve);
            var camshaft = setting.IsOneCamshaft ? "camshaft" : $"{code} camshaft";
            if (lobe.MayMove)
            {
                yield return new SumWarning("phaser-not-recorded",
                    $"How far the {camshaft}'s drive moves it, or where it rests, is not recorded: everything here holds for its rest. Give "
                    + $"{code}-phaser-range= and {code}-phaser-rest=.");
            }

            if (Math.Abs(lobe.Shift.Expected) > SameDegrees)
            {
                yield return new SumWarning("trigger-shifts",
                    $"A trigger wheel on the {camshaft} shifts by the same {InDegrees(Math.Abs(lobe.Shift.Expected), "0.#")}: the control unit sees it "
                    + "there. Measure where it finds the camshaft.");
            }
        }
    }

    private static string Widest(double rest, double end, Func<Measures.Spread, Measures.QuantityRange> say) => Math.Abs(end - rest) > SameDegrees
        ? $"{say(Measures.Spread.Exactly(rest)).Text} at rest, {say(Measures.Spread.Exactly(end)).Text} fully moved"
        : say(Measures.Spread.Exactly(rest)).Text;

    private static string FirstLarge(string text) => char.ToUpperInvariant(text[0]) + text[1..] + ".";
}
