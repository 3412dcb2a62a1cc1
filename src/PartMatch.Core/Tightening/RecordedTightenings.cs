using PartMatch.Core.Catalogue;
using PartMatch.Core.Measures;
using PartMatch.Core.Parts;

namespace PartMatch.Core.Tightening;

/// <summary>What the base records about tightening one fastener, source by source.</summary>
internal static class RecordedTightenings
{
    /// <param name="judge">Null where the bolt is not known; <paramref name="unknown"/> then says why.</param>
    public static IReadOnlyList<RecordedTightening> Of(FastenerPlace place, TorqueJudgement? judge, NotJudged? unknown) =>
    [
        .. place.Facts.TorquesAt(place.Variant, place.Position.Code).GroupBy(pass => pass.Evidence)
            .OrderBy(source => source.Key.IsRetracted).ThenByDescending(source => source.Key.Grade == EvidenceGrade.MakersDocument)
            .ThenBy(source => source.Key.Code, StringComparer.Ordinal)
            .Select(source => Of([.. source], judge, unknown)),
    ];

    private static RecordedTightening Of(IReadOnlyList<TorquePass> passes, TorqueJudgement? judge, NotJudged? unknown)
    {
        var lubrication = passes.Select(pass => pass.Lubrication).FirstOrDefault(told => told is not null);
        var single = passes.Select(pass => pass.SingleUse).FirstOrDefault(told => told is not null);
        var reason = passes[0].Evidence.IsRetracted ? new NotJudged("retracted", "The source was retracted: the record is shown and counts for nothing.")
            : AngleTightened.Of(passes) ?? unknown;

        // The passes before the last are steps on the way to it.
        var judged = reason is null ? judge?.Of(RangeOf(passes[^1].Turn), lubrication) : null;
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
        var (minus, plus) when minus == plus => $"{turn.Text} ± {Sums.SumText.Number((double)((plus ?? 0) / turn.Unit.Factor), "0.##")}",
        _ => RangeOf(turn).Text,
    };
}
