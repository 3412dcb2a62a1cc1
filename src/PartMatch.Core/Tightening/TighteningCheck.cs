using PartMatch.Core.Catalogue;
using PartMatch.Core.Measures;
using PartMatch.Core.Sums;

namespace PartMatch.Core.Tightening;

/// <summary>What does a torque do to a bolt: how hard does it pull, and how near is that to what the bolt carries?</summary>
/// <remarks>It judges a torque that is recorded or typed. It never proposes one.</remarks>
public static class TighteningCheck
{
    /// <summary>Of the preload at one torque with a hand wrench, either way.</summary>
    public const double UsualScatter = 0.30;

    // Wide of any fastener that these sums hold for: ours, no source.
    private const double GreatestTorqueNm = 10_000;

    private const string ScatterSource =
        "± 25 to 30 % with a hand wrench, the wider taken: common practice, no source. ± 25 % for oiled threads and ± 35 % for others stand, quoted, "
        + "in the Journal of Failure Analysis and Prevention, 2019, doi 10.1007/s11668-019-00693-z";

    private static readonly string[] _saysNothing =
    [
        "The thread that the bolt goes into: nothing is said about a thread tapped in aluminium or anything else, neither that it holds nor that it strips. "
        + "The sum is of the bolt alone.",
        "Which torque would be right: a torque that is recorded or typed is judged, and none is proposed.",
        "Bending, heat and what the joint gives under load: the pull is that of a straight bolt, cold, just after the wrench.",
    ];

    /// <returns><see cref="TighteningJudged"/>, or <see cref="SumRefused"/> where a typed torque has no honest answer.</returns>
    public static SumOutcome Judge(TighteningQuestion question)
    {
        IReadOnlyList<Part> parts = question.Place is { } place ? PartsAt(place) : [];
        var (bolt, unknown) = Bolt.Find(question, parts);
        var scatter = (double?)question.Scatter?.Value ?? UsualScatter;
        var judge = bolt is null ? null : new TorqueJudgement(bolt, scatter);
        var records = question.Place is null ? [] : RecordedTightenings.Of(question.Place, question, judge, unknown?.Said);
        return OutOfRange(question)
            ?? (question.Torque is null && question.Angle is null ? null
                : AngleTightened.Refuse(question, [.. records.Select(record => record.NotJudged).OfType<NotJudged>()]) ?? unknown?.Refused)
            ?? (question.Place is null ? unknown?.Refused : null)
            ?? (SumOutcome)Judged(question, parts, bolt, unknown, records, judge);
    }

    private static TighteningJudged Judged(
        TighteningQuestion question, IReadOnlyList<Part> parts, Bolt? bolt, BoltUnknown? unknown, IReadOnlyList<RecordedTightening> records,
        TorqueJudgement? judge)
    {
        var typed = question.Torque is { } torque ? judge?.OfTyped(torque, question) : null;
        var main = typed ?? records.Select(record => record.Judged).FirstOrDefault(judged => judged is not null);
        return new TighteningJudged(
            AsAsked(question, bolt), question.Place is { } place ? Fastener(place, parts) : null, bolt?.Shown(), unknown?.Said,
            [.. Assumed(question, bolt)], records, typed, main?.Influences ?? [],
            [.. bolt?.Loads.Working ?? [], .. typed?.Working ?? []], WarningsOf(question, typed), _saysNothing,
            Cautions.Of(CautionsOf(question, records)));
    }

    private static TighteningAsked AsAsked(TighteningQuestion question, Bolt? bolt) => new(
        question.Place?.Facts.Family.Code, question.Place?.Variant, question.Place?.Position.Code, question.Place?.Part?.Id,
        bolt?.Thread.Text ?? question.Thread, bolt?.Class?.Code ?? question.Class?.Code, question.Lubrication, question.Torque, question.NutFactor,
        (double?)question.Scatter?.Value ?? UsualScatter);

    private static IReadOnlyList<Part> PartsAt(FastenerPlace place) => place.Part is { } named
        ? [named]
        :
        [
            .. place.Facts.FitmentsAt(place.Variant, place.Position.Code).Select(fitment => fitment.Part).OfType<string>().Distinct()
                .Select(place.Facts.GetPart),
        ];

    private static FastenerShown Fastener(FastenerPlace place, IReadOnlyList<Part> parts)
    {
        var pieces = place.Facts.FitmentsAt(place.Variant, place.Position.Code).Select(fitment => fitment.Quantity).Distinct().ToList();
        return new FastenerShown(
            place.Position.Code, place.Position.Name, [.. parts.Select(part => new FastenerPart(part.Id, part.Name))], pieces is [var same] ? same : null);
    }

    private static IEnumerable<Assumption> Assumed(TighteningQuestion question, Bolt? bolt)
    {
        if (bolt is { Thread.IsPitchTold: false })
        {
            yield return new Assumption(
                "pitch", Spread.Exactly((double)bolt.Thread.PitchMm / 1000).In(UnitTable.Get("mm"), "0.###"),
                $"a diameter alone means the coarse pitch: {MetricThread.CoarseSource}");
        }

        if (bolt is { Class: null })
        {
            yield return new Assumption(
                "proof-load", bolt.Loads.Proof.In(TighteningText.Kilonewtons, "0.0"), "class not known: over 8.8, 10.9 and 12.9; 10.9 stands for the expected one because it is the middle, for no other reason");
        }

        if (question.Scatter is null or { Value: (decimal)UsualScatter })
        {
            yield return new Assumption("scatter", Spread.Exactly(UsualScatter).In(SumText.Percent, "0"), ScatterSource);
        }
    }

    private static IReadOnlyList<SumWarning> WarningsOf(TighteningQuestion question, JudgedTorque? typed)
    {
        var disagree = question.Place is { } place ? RecordedTightenings.FindDisagreement(place) : null;
        return [.. disagree is null ? [] : new[] { disagree }, .. typed?.Warnings ?? []];
    }

    // Where it is not known that a fastener may be used again, it is said that some may not.
    private static IEnumerable<string> CautionsOf(TighteningQuestion question, IReadOnlyList<RecordedTightening> records)
    {
        IEnumerable<string> ofKind = question.Place is { } place ? place.Facts.FindKind(place.Position.Kind)?.Cautions ?? [] : [];
        var isUsedAgain = records.Count > 0 && records.All(record => record.SingleUse == SingleUse.No);
        return ["tightening", "oiled-threads", "wet-blind-holes", .. isUsedAgain ? [] : new[] { "single-use-bolts" }, .. ofKind];
    }

    private static SumRefused? OutOfRange(TighteningQuestion question) =>
        question.Torque is { Low: <= 0 } or { High: > GreatestTorqueNm }
            ? Range("torque", question.Torque.Text, "above 0 and at most 10 000 N·m", "for example 75 N·m")
        : question.NutFactor is { } factor && (factor.Low < 0.05 || factor.High > 1)
            ? Range("nut-factor", factor.Text, "0.05 to 1: published ones lie from about 0.1 to 0.3", "leave it out to take one by the state of the threads")
        : question.Scatter is { Value: < 0 or >= 1 } scatter ? Range("scatter", scatter.Text, "0 % or more, below 100 %", "leave it out for 30 %")
        : null;

    private static SumRefused Range(string field, string found, string expected, string mend) =>
        new("out-of-range", field, $"The {field} is outside what it can be.", found, expected, mend);
}
