using PartMatch.Core.Catalogue;
using PartMatch.Core.Measures;
using PartMatch.Core.Sums;

namespace PartMatch.Core.ValveTiming;

/// <summary>Fills in what the question leaves out of one camshaft: from its part and wheel, else a refusal that asks for it.</summary>
internal sealed class LobeReading(FamilyFacts facts, ValveTimingQuestion question, bool isOneCamshaft)
{
    private const decimal RecordedAtM = 0.001m;

    public (LobeSetting? Setting, SumRefused? Refused) Read(Valve valve)
    {
        var of = valve == Valve.Intake ? question.Intake : question.Exhaust;
        var shared = valve == Valve.Exhaust && isOneCamshaft ? question.Intake : of; // the one camshaft, its wheel and its shift
        var position = RoleParts.FindPosition(facts, valve == Valve.Intake || isOneCamshaft ? Roles.IntakeCamshaft : Roles.ExhaustCamshaft);
        var camshafts = shared.Camshaft is { } chosen ? [chosen] : RoleParts.Fitted(facts, question.Variant, position);
        var wheelPosition = position is null ? null : RoleParts.FindWheel(facts, position);
        var wheels = shared.Wheel is { } wheel ? [wheel] : RoleParts.Fitted(facts, question.Variant, wheelPosition);

        var code = TimingText.Code(valve);
        if ((PartKinds.FindFault(facts, $"{code}-cam", of.Camshaft, Roles.IntakeCamshaft, Roles.ExhaustCamshaft)
            ?? PartKinds.FindFault(facts, $"{code}-wheel", of.Wheel, Roles.CamSprocket)) is { } wrong)
        {
            return (null, wrong);
        }

        if (LobeRefusals.OfTurning(facts, question.Variant, valve, camshafts) is { } turned)
        {
            return (null, turned);
        }

        var (events, sources, refused) = Events(of, valve, camshafts);
        if (refused is not null || events is not { } onMark)
        {
            return (null, refused);
        }

        var teeth = shared.WheelTeeth ?? (int?)LookedUp.Feature(wheels, "teeth").Figure?.Spread.Expected;
        if (LobeRefusals.OfTeeth(valve, shared, teeth) is { } noTeeth)
        {
            return (null, noTeeth);
        }

        var (phaser, mayMove) = PhaserReading.Of(facts, wheels, shared.PhaserRange, shared.PhaserRest);
        var apart = CamOnWheel.FindFault(facts, question.Variant, position, camshafts, wheelPosition, wheels);
        if (apart is not null && shared.PhaserRange is null)
        {
            (phaser, mayMove) = (Phaser.Fixed, false); // what a drive does to a camshaft that does not go on it is no answer
        }

        var setting = new LobeSetting(
            valve, onMark, sources, of.Centre is { } centre ? new Figure(Spread.Of(centre), "given in the question") : null,
            shared.Advance is { } advance ? Spread.Of(advance) : Spread.Exactly(0), shared.Teeth, teeth,
                (double)(question.CrankTurns?.Value ?? (decimal)TimingWheel.CrankTurnsOfCam),
            phaser, mayMove, [.. Shown(position, camshafts), .. Shown(wheelPosition, wheels)])
        {
            Lift = AsBuiltEvents.Lift(camshafts).Figure?.Spread,
            GoesNotOnWheel = apart,
        };
        return LobeRefusals.OfEvents(setting) is { } impossible ? (null, impossible) : (setting, null);
    }

    private (LobeEvents? Events, string Sources, SumRefused? Refused) Events(LobeQuestion of, Valve valve, IReadOnlyList<Part> camshafts)
    {
        var (opens, closes) = (LookedUp.Typed(of.Opens) ?? AsBuiltEvents.Opens(camshafts, valve),
            LookedUp.Typed(of.Closes) ?? AsBuiltEvents.Closes(camshafts, valve));
        if (question.AtLift is { } lift && lift.Value != RecordedAtM && LobeRefusals.OfLift(lift, valve, of, opens, closes) is { } otherLift)
        {
            return (null, "", otherLift);
        }

        var foreign = Foreign(valve, camshafts);
        if (opens.Figure is null && closes.Figure is null && foreign is { } moved)
        {
            return of.Centre is { } place
                ? (LobeEvents.Around(valve, moved.Duration, Spread.Of(place)),
                    $"duration of {camshafts[0].Id}, made for the other valves, around the centre given", null)
                : (null, "", LobeRefusals.OfForeign(valve, camshafts[0], moved));
        }

        if (opens.Figure is not { } opening || closes.Figure is not { } closing)
        {
            return (null, "", LobeRefusals.OfEvent(valve, opens.Figure is null ? "opens" : "closes", opens.Figure is null ? opens : closes, camshafts));
        }

        var events = new LobeEvents(opening.Spread, closing.Spread);
        var sources = opening.Source == closing.Source ? opening.Source : $"{opening.Source}; {closing.Source}";
        return of.Centre is { } centre ? (LobeEvents.Around(valve, events.Duration, Spread.Of(centre)), $"{sources}; set around the centre given", null)
            : (events, sources, null);
    }

    /// <summary>The lobe of a camshaft that was made for the other valves; its events there say how long it opens, not where it would stand here.</summary>
    private static LobeEvents? Foreign(Valve valve, IReadOnlyList<Part> camshafts) =>
        AsBuiltEvents.Of(camshafts, valve == Valve.Intake ? Valve.Exhaust : Valve.Intake);

    private IEnumerable<RolePart> Shown(Position? position, IReadOnlyList<Part> parts) =>
        position is null ? [] : parts.Select(part => RoleParts.Shown(facts, question.Variant, position, part));
}
