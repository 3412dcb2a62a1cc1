using PartMatch.Core.Catalogue;
using PartMatch.Core.Sums;

namespace PartMatch.Core.ValveTiming;

/// <summary>The events of a variant with the camshafts its maker fitted, at 1 mm lift, drives at rest; null where not recorded.</summary>
internal static class AsBuiltEvents
{
    public static (LobeEvents? Intake, LobeEvents? Exhaust) Find(FamilyFacts facts, string variant)
    {
        var intake = RoleParts.Fitted(facts, variant, RoleParts.FindPosition(facts, Roles.IntakeCamshaft));
        var exhaust = RoleParts.FindPosition(facts, Roles.ExhaustCamshaft) is { } position ? RoleParts.Fitted(facts, variant, position) : intake;
        return (Of(intake, Valve.Intake), Of(exhaust, Valve.Exhaust));
    }

    public static LobeEvents? Of(IReadOnlyList<Part> camshafts, Valve valve) =>
        Opens(camshafts, valve).Figure is { } opens && Closes(camshafts, valve).Figure is { } closes ? new LobeEvents(opens.Spread, closes.Spread) : null;

    public static LookedUp Opens(IReadOnlyList<Part> camshafts, Valve valve) => LookedUp.Feature(camshafts, $"{TimingText.Code(valve)}-opens-1mm");

    public static LookedUp Closes(IReadOnlyList<Part> camshafts, Valve valve) => LookedUp.Feature(camshafts, $"{TimingText.Code(valve)}-closes-1mm");

    /// <summary>Greatest lift at the valve, m.</summary>
    public static LookedUp Lift(IReadOnlyList<Part> camshafts) => LookedUp.Feature(camshafts, "lift");
}
