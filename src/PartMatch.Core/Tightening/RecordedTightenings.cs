using PartMatch.Core.Catalogue;
using PartMatch.Core.Measures;
using PartMatch.Core.Parts;
using PartMatch.Core.Sums;

namespace PartMatch.Core.Tightening;

/// <summary>What the base records about tightening one fastener, source by source.</summary>
internal static class RecordedTightenings
{
    /// <param name="judge">Null where the bolt is not known; <paramref name="unknown"/> then says why.</param>
    public static IReadOnlyList<RecordedTightening> Of(FastenerPlace place, TighteningQuestion question, TorqueJudgement? judge, NotJudged? unknown) =>
    [
        .. place.Facts.TorquesAt(place.Variant, place.Position.Code).GroupBy(pass => pass.Evidence)
            .OrderBy(source => source.Key.IsRetracted).ThenByDescending(source => source.Key.Grade == EvidenceGrade.MakersDocument)
            .ThenBy(source => source.Key.Code, StringComparer.Ordinal)
            .Select(source => Of([.. source], question, judge, unknown)),
    ];

    /// <summary>Sources that count and end in turns that do not overlap, or one in a torque and one in an angle; null where they agree.</summary>
    public static SumWarning? FindDisagreement(FastenerPlace place)
    {
        var last = place.Facts.TorquesAt(place.Variant, place.Position.Code).Where(pass => !pass.Evidence.IsRetracted)
            .GroupBy(pass => pass.Evidence).Select(source => source.MaxBy(pass => pass.Pass)!).ToList(); // a group has a pass
        var agree = last.TrueForAll(one => last.TrueForAll(other => Meet(one.Turn, other.Turn)));
        return agree
            ? null
            : TighteningWarnings.SourcesDisagree(string.Join(", ", last.Select(pass => $"{TextOf(pass.Turn)} ({pass.Evidence.Code})")));
    }

    private static bool Meet(QuantityReading one, QuantityReading other) =>
        one.Unit.Dimension == other.Unit.Dimension
        && one.Value - (one.Minus ?? 0) <= other.Value + (other.Plus ?? 0) && other.Value - (other.Minus ?? 0) <= one.Value + (one.Plus ?? 0);

    private static RecordedTightening Of(IReadOnlyList<TorquePass> passes, TighteningQuestion question, TorqueJudgement? judge, NotJudged? unknown)
    {
        var lubrication = passes.Select(pass => pass.Lubrication).FirstOrDefault(told => told is not null);
        var single = passes.Select(pass => pass.SingleUse).FirstOrDefault(told => told is not null);
        var reason = passes[0].Evidence.IsRetracted ? new NotJudged("retracted", "The source was retracted: the record is shown and counts for nothing.")
            : AngleTightened.Of(passes) ?? unknown;

        // The passes before the last are steps on the way to it.
        var judged = reason is null ? judge?.OfRecord(RangeOf(passes[^1].Turn), lubrication, question) : null;
        if (judged is not null && single is null)
        {
            judged = judged with { Warnings = [.. judged.Warnings, TighteningWarnings.SingleUseUnknown] };
        }

        return new RecordedTightening(SourceShown.Of(passes[0].Evidence), lubrication, single, [.. passes.Select(Shown)], judged, reason);
    }

    private static PassShown Shown(TorquePass pass)
    {
        var range = RangeOf(pass.Turn);
        var isAngle = pass.Turn.Unit.Dimension == Dimension.Angle;
        return new PassShown(pass.Pass, TextOf(pass.Turn), isAngle ? null : range, isAngle ? range : null, pass.Sequence, pass.Note);
    }

    private static QuantityRange RangeOf(QuantityReading turn) => new Spread(
        (double)(turn.Value - (turn.Minus ?? 0)), (double)turn.Value, (double)(turn.Value + (turn.Plus ?? 0))).In(turn.Unit, "0.##");

    private static string TextOf(QuantityReading turn) => (turn.Minus, turn.Plus) switch
    {
        (null or 0, null or 0) => turn.Text,
        var (minus, plus) when minus == plus => $"{turn.Text} ± {SumText.Number((double)((plus ?? 0) / turn.Unit.Factor), "0.##")}",
        _ => RangeOf(turn).Text,
    };
}
