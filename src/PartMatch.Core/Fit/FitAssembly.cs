using PartMatch.Core.Catalogue;

namespace PartMatch.Core.Fit;

/// <summary>Turns decided axes and their reasons into the answer a person reads.</summary>
internal static class FitAssembly
{
    private const string NumbersCannotTell =
        "No number shows cracks, wear, warp, earlier machining, mixed or counterfeit parts, heat or water damage, software. To look at by hand: cracks, sealing faces, threads, bores and journals, heat marks, corrosion, markings that do not belong together.";

    public static FitAnswer Assemble(
        FamilyFacts facts,
        FitQuestion question,
        Part part,
        Kind kind,
        AxisAnswer<Mounts> mounts,
        AxisAnswer<Runs> runs,
        IdentityAnswer identity,
        IReadOnlyList<Reason> reasons,
        IReadOnlyList<Disagreement> disagreements,
        IReadOnlyList<CompanionChange> alsoNeeded,
        IReadOnlyList<CompanionChange> perhapsNeeded)
    {
        var headline = AxisDecision.HeadlineOf(mounts.Value, runs.Value);
        var works = Works(facts, reasons);
        var cautions = headline == Headline.DoesNotFit && part.Kind != kind.Code ? kind.Cautions : kind.Cautions.Concat(works.SelectMany(work => facts.FindWork(work.Work)?.Cautions ?? []));
        return new FitAnswer(
            question.AsAsked(facts.Family.Code),
            headline,
            HeadlineText(headline, mounts, runs, alsoNeeded.Count),
            $"{question.Variant} as built",
            AxisDecision.SurenessOf(headline, mounts.Sureness, runs.Sureness),
            reasons.Where(reason => reason.Met == Met.No).Max(reason => reason.Consequence),
            mounts,
            runs,
            identity,
            null,
            reasons,
            disagreements,
            alsoNeeded,
            perhapsNeeded,
            works,
            MeasureNextAdvice.For(facts, kind, reasons, mounts.Value == Mounts.NotKnown, runs.Value == Runs.NotKnown),
            [],
            NotCompared(kind, reasons),
            Cautions.Of(cautions));
    }

    /// <summary>The headline in words, with what else has to be done and what is known already when the whole is not.</summary>
    public static string HeadlineText(Headline headline, AxisAnswer<Mounts> mounts, AxisAnswer<Runs> runs, int changes)
    {
        var text = FitWording.Of(headline);
        if (headline == Headline.NotKnownYet && runs.Value == Runs.Differently)
        {
            text += "; if it mounts, it runs differently";
        }

        if (headline == Headline.MountsButRunsDifferently && mounts.Value == Mounts.WithWork)
        {
            text += ", and needs work";
        }

        // What a part would drag in counts once it is known that it goes on at all.
        return headline is Headline.DoesNotFit or Headline.NotKnownYet || changes == 0 ? text : $"{text}, with {changes} other {(changes == 1 ? "change" : "changes")}";
    }

    public static string NotCompared(Kind kind, IReadOnlyList<Reason> reasons)
    {
        var compared = reasons.Where(reason => reason.Part is not null && reason.Met != Met.NotKnown && reason.Feature is not null).Select(reason => reason.Feature).Distinct().Count();
        var unreviewed = kind.Reviewed ? "" : " The feature list of this kind has not been reviewed: nothing recorded speaks against the part, no more.";
        return $"Compared: {compared} {(compared == 1 ? "feature" : "features")}; nothing else.{unreviewed} {NumbersCannotTell}";
    }

    private static IReadOnlyList<WorkNeeded> Works(FamilyFacts facts, IReadOnlyList<Reason> reasons) =>
    [
        .. reasons.Where(reason => reason.Met == Met.No && reason.Work is not null)
            .GroupBy(reason => reason.Work!, StringComparer.Ordinal) // filtered just above
            .OrderBy(group => group.Key, StringComparer.Ordinal)
            .Select(group => (group, work: facts.FindWork(group.Key)))
            .Select(found => new WorkNeeded(
                found.group.Key, found.work?.Name ?? FitWording.InWords(found.group.Key), found.work?.Who, found.work?.Days, found.work?.Price, found.work?.CanBeUndone, [.. found.group.Select(reason => reason.Id)])),
    ];
}
