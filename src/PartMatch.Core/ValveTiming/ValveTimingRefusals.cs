using PartMatch.Core.Measures;
using PartMatch.Core.Sums;

namespace PartMatch.Core.ValveTiming;

/// <summary>Questions about the whole engine that have no honest answer.</summary>
internal static class ValveTimingRefusals
{
    private const decimal MostLiftM = 0.025m;
    private const decimal MostTurns = 20;
    private const double MostRatio = 30;
    private const double MostAngle = 360;

    // Wide of any engine that a builder lifts: ours, no source.
    private const double LongestM = 1;

    private const int FewestTeeth = 8;
    private const int MostTeeth = 400;

    public static SumRefused? OfQuestion(ValveTimingQuestion question, bool isOneCamshaft) =>
        OfOneCamshaft(question, isOneCamshaft)
        ?? OfBounds("at-lift", question.AtLift?.Value, question.AtLift?.Text, 0, MostLiftM, "more than 0 and at most 25 mm")
        ?? OfBounds("crank-turns", question.CrankTurns?.Value, question.CrankTurns?.Text, 0, MostTurns, "more than 0 and at most 20")
        ?? OfRatio("compression-ratio", question.CompressionRatio)
        ?? OfRatio("wanted-trapped", question.WantedTrapped is { } wanted
            ? new QuantityRange((double)wanted.Value, (double)wanted.Value, (double)wanted.Value, wanted.Unit, wanted.Text) : null)
        ?? OfLength("stroke", question.Stroke, "94 mm")
        ?? OfLength("rod-length", question.RodLength, "152 mm")
        ?? OfLobe("intake", question.Intake)
        ?? OfLobe("exhaust", question.Exhaust);

    public static SumRefused? OfRatio(string field, QuantityRange? ratio) => ratio is { Low: <= 1 } or { High: > MostRatio }
        ? new SumRefused("out-of-range", field, "Outside what a compression ratio can be.", ratio.Text, "more than 1 and at most 30", "for example 9.3")
        : null;

    public static SumRefused? OfLength(string field, QuantityRange? length, string example) => length is { Low: <= 0 } or { High: > LongestM }
        ? new SumRefused("out-of-range", field, "Outside what a length of an engine can be.", length.Text, "more than 0 and at most 1 m", $"for example {example}")
        : null;

    private static SumRefused? OfOneCamshaft(ValveTimingQuestion question, bool isOneCamshaft) => isOneCamshaft && question.Exhaust.ShiftsOrFits
        ? new SumRefused(
            "one-camshaft", "exhaust-advance", "One camshaft carries all the lobes of this engine: the exhaust events cannot be shifted alone.",
            "an exhaust camshaft, wheel or shift",
            "the camshaft, its wheel and its shift as intake-…",
            "give them as intake-cam=, intake-wheel=, intake-advance=, intake-teeth=; exhaust-opens= and exhaust-closes= may be given")
        : null;

    private static SumRefused? OfBounds(string field, decimal? value, string? text, decimal over, decimal most, string expected) => value is { } given
        && (given <= over || given > most)
        ? new SumRefused("out-of-range", field, "Outside what it can be.", text ?? "", expected, "leave it out to take the usual one")
        : null;

    private static SumRefused? OfLobe(string valve, LobeQuestion of)
    {
        var wide = new (string Name, QuantityRange? Angle)[] { ("opens", of.Opens), ("closes", of.Closes), ("centre", of.Centre), ("advance", of.Advance),
            ("phaser-range", of.PhaserRange) }
            .FirstOrDefault(one => one.Angle is { } angle && Math.Max(Math.Abs(angle.Low), Math.Abs(angle.High)) > MostAngle);
        return wide.Angle is { } far
                ? new SumRefused("out-of-range", $"{valve}-{wide.Name}", "More than a turn of the crankshaft.", far.Text, "within 360°",
                    "degrees of the crank from its dead centre")
            : of.PhaserRange is { Low: < 0 } range
                ? new SumRefused("out-of-range", $"{valve}-phaser-range", "A range of adjustment is not negative.", range.Text, "0 deg or more",
                    "say with phaser-rest= which way it moves")
            : of is { PhaserRange: { High: > 0 }, PhaserRest: null }
                ? new SumRefused("not-recorded", $"{valve}-phaser-rest", "A phaser moves away from its rest; which end that is was not given.", "nothing",
                    "advanced or retarded", $"give it: {valve}-phaser-rest=retarded")
            : of.WheelTeeth is { } teeth && teeth is < FewestTeeth or > MostTeeth
                ? new SumRefused("out-of-range", $"{valve}-wheel-teeth", "Outside what a wheel of a valve drive can have.", $"{of.WheelTeeth}",
                    $"{FewestTeeth} to {MostTeeth}", "count the teeth of the wheel on the camshaft")
            : null;
    }

    public static SumRefused OfGeometry(TimingSetting setting)
    {
        var (field, found) = setting.Ratio.Figure is null ? ("compression-ratio", setting.Ratio.Found) : setting.Stroke.Figure is null ? ("stroke",
            setting.Stroke.Found) : ("rod-length", setting.Rod.Found);
        return new SumRefused(
            "not-recorded", field, $"The trapped ratio needs compression ratio, stroke and rod length; the {field.Replace('-', ' ')} of this variant is not "
            + "known.", found,
            field == "compression-ratio" ? "a ratio" : "a length", $"give it: {field}={(field == "compression-ratio" ? "9.3" : "94 mm")}");
    }
}
