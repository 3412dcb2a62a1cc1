using PartMatch.Core.Catalogue;

namespace PartMatch.Core.Fit;

/// <summary>Turns decided axes and their reasons into the answer a person reads.</summary>
internal static class FitAssembly
{
    private const string NumbersCannotTell =
        "No number shows cracks, wear, warp, earlier machining, mixed or counterfeit parts, heat or water damage, software. To look at by hand: cracks, sealing faces, threads, bores and journals, heat marks, corrosion, markings that do not belong together.";

    /// <summary>Ranks 1 and 2 are findings of people who tried or measured the very thing asked.</summary>
    private const int LastRankByTrying = 2;

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
        var standing = Standing(reasons, mounts, runs);
        var works = Works(facts, standing);
        var cautions = headline == Headline.DoesNotFit && part.Kind != kind.Code ? kind.Cautions : kind.Cautions.Concat(works.SelectMany(work => facts.FindWork(work.Work)?.Cautions ?? []));
        return new FitAnswer(
            question.AsAsked(facts.Family.Code),
            headline,
            HeadlineText(headline, mounts, runs, alsoNeeded.Count),
            $"{question.Variant} as built",
            AxisDecision.SurenessOf(headline, mounts.Sureness, runs.Sureness),
            WorstOf(standing, [.. mounts.DecidedBy, .. runs.DecidedBy]),
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

    /// <summary>Without the relations that somebody who tried or measured it has shown to be no hindrance.</summary>
    private static List<Reason> Standing(IReadOnlyList<Reason> reasons, AxisAnswer<Mounts> mounts, AxisAnswer<Runs> runs)
    {
        var (mountsShown, runsShown) = (mounts is { Value: Mounts.Yes, Rank: <= LastRankByTrying }, runs is { Value: Runs.Same, Rank: <= LastRankByTrying });
        return [.. reasons.Where(reason => !(reason.Axis == Axis.Mounts ? mountsShown : runsShown))];
    }

    /// <summary>A finding names no consequence: where nothing recorded tells what is behind it, that of a demand without a rule.</summary>
    private static Consequence? WorstOf(List<Reason> standing, IReadOnlyList<string> deciding)
    {
        List<Reason> unmet = standing.FindAll(reason => reason.Met == Met.No);
        var unexplained = unmet.Exists(found => found.By == ReasonBy.Finding && deciding.Contains(found.Id)
            && !unmet.Exists(reason => reason.Axis == found.Axis && reason.Consequence is not null));
        var worst = unmet.Max(reason => reason.Consequence);
        return unexplained && (worst ?? Consequence.Nuisance) < Consequence.Loss ? Consequence.Loss : worst;
    }

    /// <summary>The headline in words, with what else has to be done and what is known already when the whole is not.</summary>
    public static string HeadlineText(Headline headline, AxisAnswer<Mounts> mounts, AxisAnswer<Runs> runs, int changes)
    {
        var text = FitWording.Of(headline);
        if (headline == Headline.NotKnownYet && runs.Value == Runs.Differently)
        {
            text += "; if it mounts, it runs differently";
        }

        if (headline == Headline.NotKnownYet && (mounts.Disputed || runs.Disputed))
        {
            string[] on = [.. mounts.Disputed ? ["whether it mounts"] : Array.Empty<string>(), .. runs.Disputed ? ["how the engine runs"] : Array.Empty<string>()];
            text += $"; equally good sources disagree on {string.Join(" and on ", on)}";
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
