using PartMatch.Core.Catalogue;
using PartMatch.Core.Measures;
using PartMatch.Core.Parts;
using PartMatch.Core.Sums;
using PartMatch.Core.Variants;

namespace PartMatch.Core.Tightening;

/// <summary>What the base records about tightening one fastener, source by source.</summary>
internal static class RecordedTightenings
{
    /// <param name="judge">Null where the bolt is not known; <paramref name="unknown"/> then says why.</param>
    public static IReadOnlyList<RecordedTightening> Of(FastenerPlace place, TighteningQuestion question, TorqueJudgement? judge, NotJudged? unknown) =>
    [
        .. TorqueSource.At(place.Facts, place.Variant, place.Position.Code)
            .OrderBy(source => source.Evidence.IsRetracted).ThenByDescending(source => source.Evidence.Grade == EvidenceGrade.MakersDocument)
            .ThenBy(source => source.Evidence.Code, StringComparer.Ordinal)
            .Select(source => Of(source, question, judge, unknown)),
    ];

    /// <summary>Sources that count, speak of the same engines and end differently; null where they agree.</summary>
    public static SumWarning? FindDisagreement(FastenerPlace place) =>
        TorqueSource.FindDisagreeing(place.Facts, place.Variant, place.Position.Code) is { Count: > 0 } sources
            ? TighteningWarnings.SourcesDisagree(string.Join("; ", sources.Select(source => $"{source.EndText} ({source.Evidence.Code})")))
            : null;

    private static RecordedTightening Of(TorqueSource source, TighteningQuestion question, TorqueJudgement? judge, NotJudged? unknown)
    {
        var passes = source.Passes;
        var lubrication = passes.Select(pass => pass.Lubrication).FirstOrDefault(told => told is not null);
        var single = passes.Select(pass => pass.SingleUse).FirstOrDefault(told => told is not null);
        var reason = passes[0].Evidence.IsRetracted ? new NotJudged("retracted", "The source was retracted: the record is shown and counts for nothing.")
            : AngleTightened.Of(passes) ?? unknown;

        // The passes before the last are steps on the way to it.
        var judged = reason is null ? judge?.OfRecord(TorqueSource.RangeOf(passes[^1].Turn), lubrication, question) : null;
        if (judged is not null && single is null)
        {
            judged = judged with { Warnings = [.. judged.Warnings, TighteningWarnings.SingleUseUnknown] };
        }

        return new RecordedTightening(SourceShown.Of(passes[0].Evidence), lubrication, single, [.. passes.Select(Shown)], judged, reason)
        {
            Built = BuiltSpan.Of(source.Span),
            Serial = SerialSpan.Of(source.Span),
        };
    }

    private static PassShown Shown(TorquePass pass)
    {
        var range = TorqueSource.RangeOf(pass.Turn);
        var isAngle = pass.Turn.Unit.Dimension == Dimension.Angle;
        return new PassShown(pass.Pass, TorqueSource.TextOf(pass.Turn), isAngle ? null : range, isAngle ? range : null, pass.Sequence, pass.Note);
    }
}
