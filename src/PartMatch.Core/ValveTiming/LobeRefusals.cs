using PartMatch.Core.Catalogue;
using PartMatch.Core.Fit;
using PartMatch.Core.Measures;
using PartMatch.Core.Sums;
using static PartMatch.Core.Sums.GeometryText;

namespace PartMatch.Core.ValveTiming;

/// <summary>What of one camshaft has no honest answer.</summary>
internal static class LobeRefusals
{
    private const double HalfTurn = 180;

    /// <summary>An event that is neither given nor recorded.</summary>
    public static SumRefused OfEvent(Valve valve, string what, LookedUp found, IReadOnlyList<Part> camshafts)
    {
        var of = camshafts.Count == 0 ? "no camshaft is recorded there" : string.Join(", ", camshafts.Select(part => part.Id));
        return new SumRefused(
            "not-recorded", $"{TimingText.Code(valve)}-{what}", $"It is not known when the {TimingText.Code(valve)} valve {what} at 1 mm lift: {of}.",
            found.Found,
            TimingText.Expected(valve, what),
            $"measure it with a degree wheel and give it: {TimingText.Code(valve)}-{what}={Example(valve, what)} deg");
    }

    private static int Example(Valve valve, string what) => (valve, what) switch
    {
        (Valve.Intake, "opens") => 8,
        (Valve.Intake, _) => 44,
        (_, "opens") => 40,
        _ => 4,
    };

    /// <summary>Events of the question are stated at its lift; what is recorded holds at 1 mm. The same cam differs by tens of degrees between lifts.</summary>
    public static SumRefused? OfLift(Quantity lift, Valve valve, LobeQuestion of, LookedUp opens, LookedUp closes)
    {
        string[] recorded = [.. of.Opens is null && opens.Figure is not null ? ["opens"] : Array.Empty<string>(), .. of.Closes is null
            && closes.Figure is not null ? ["closes"] : Array.Empty<string>()];
        return recorded.Length == 0 ? null : new SumRefused(
            "different-lifts", "at-lift", "Events at different lifts do not go into one sum: the same camshaft differs by tens of degrees between them.",
            $"{lift.Text} in the question; 1 mm for {TimingText.Code(valve)} {string.Join(" and ", recorded)}, as recorded", "one lift for all events",
            $"measure every event at {lift.Text} and give it ({string.Join(", ", recorded.Select(what => $"{TimingText.Code(valve)}-{what}="))}), or leave "
            + "at-lift out");
    }

    /// <summary>A camshaft that was made for the other valves.</summary>
    public static SumRefused OfForeign(Valve valve, Part camshaft, LobeEvents events) => new(
        "not-recorded", $"{TimingText.Code(valve)}-centre",
        $"{camshaft.Id} was made for the other valves. Its duration goes with it, {RangeInDegrees(events.Duration).Text}; where its lobes would stand here "
        + "against the wheel, nobody has recorded.",
        "nothing", $"where its lobe centre is set, {(valve == Valve.Intake ? "after" : "before")} top dead centre",
        $"set it with a degree wheel and give it: {TimingText.Code(valve)}-centre=110 deg");

    public static SumRefused? OfTeeth(Valve valve, LobeQuestion of, int? teeth) => (of.Teeth, teeth) switch
    {
        (0, _) => null,
        (_, null) => new SumRefused(
            "not-recorded", $"{TimingText.Code(valve)}-wheel-teeth",
            "How many degrees a tooth is worth hangs on the number of teeth of that wheel, which is not recorded.", "nothing",
            "the number of teeth of the wheel on the camshaft", $"count them and give them: {TimingText.Code(valve)}-wheel-teeth=42"),
        (var off, { } all) when Math.Abs(off) * 2 > all => new SumRefused(
            "out-of-range", $"{TimingText.Code(valve)}-teeth", "More teeth off than half of the wheel has.", $"{off} of {all} teeth",
            "at most half of the wheel's teeth", "count from the mark the shorter way round"),
        _ => null,
    };

    /// <summary>A camshaft ground for turning the other way runs through its events backwards: no shift mends that.</summary>
    public static SumRefused? OfTurning(FamilyFacts facts, string variant, Valve valve, IReadOnlyList<Part> camshafts)
    {
        var engine = LookedUp.FindWord(facts, variant, "camshaft-turns");
        var wrong = camshafts.FirstOrDefault(part => ValueSelection.Of(part, "turns") is StatedChoices { Choices: [var turns] } && engine is not null
            && turns != engine);
        return wrong is null ? null : new SumRefused(
            "turns-other-way", $"{TimingText.Code(valve)}-cam",
            "This camshaft is ground for turning the other way: it would run through its events backwards, exhaust and intake changed about, and no shift "
            + "mends that.",
            $"{wrong.Id} turns {(engine == "against-crank" ? "with" : "against")} the crankshaft",
            $"a camshaft that turns {(engine == "against-crank" ? "against" : "with")} the crankshaft, as {variant} drives it",
            "a pair of gears turns the camshaft against the crankshaft; a chain, a belt or one gear more turns it with it");
    }

    /// <summary>No valve is open for nothing or for a whole turn and more.</summary>
    public static SumRefused? OfEvents(LobeSetting setting)
    {
        var (rest, end) = (setting.AtRest, setting.At(1));
        var duration = rest.Duration;
        if (duration.Low <= 0 || duration.High >= 2 * HalfTurn)
        {
            return new SumRefused(
                "out-of-range", $"{TimingText.Code(setting.Valve)}-closes", "A valve is open for more than nothing and less than a turn of the crankshaft.",
                $"open for {RangeInDegrees(duration).Text}", "opening + 180° + closing between 0° and 360°",
                "an event on the other side of its dead centre is negative: closing 52° before bottom dead centre is -52 deg");
        }

        Spread[] angles = [rest.Opens, rest.Closes, end.Opens, end.Closes];
        return Array.TrueForAll(angles, angle => Math.Max(Math.Abs(angle.Low), Math.Abs(angle.High)) < HalfTurn) ? null : new SumRefused(
            "out-of-range", $"{TimingText.Code(setting.Valve)}-{(setting.Teeth != 0 ? "teeth" : "advance")}",
            "Set like this an event lies half a turn and more from its own dead centre: that is another stroke.",
            $"opens {RangeInDegrees(rest.Opens).Text}, closes {RangeInDegrees(rest.Closes).Text}", "less than 180° from its dead centre",
            setting.Teeth != 0 ? $"a tooth is {InDegrees(setting.PerTooth ?? 0, "0.#")} of the crank here: give the teeth off the mark, not those of the wheel"
                : "check the sign: advance is positive, retard is negative");
    }
}
