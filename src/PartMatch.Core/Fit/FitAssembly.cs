using PartMatch.Core.Catalogue;

namespace PartMatch.Core.Fit;

/// <summary>What was decided of one part against one alternative of what the maker fitted, on one stretch of engines.</summary>
/// <param name="Kind">Of the position.</param>
/// <param name="Reasons">With their ids.</param>
internal sealed record Judgement(
    Part Part,
    Kind Kind,
    AxisAnswer<Mounts> Mounts,
    AxisAnswer<Runs> Runs,
    IdentityAnswer Identity,
    IReadOnlyList<Reason> Reasons,
    IReadOnlyList<Disagreement> Disagreements,
    IReadOnlyList<CompanionChange> AlsoNeeded,
    IReadOnlyList<CompanionChange> PerhapsNeeded,
    IReadOnlyList<FindingShown> Findings);

/// <summary>Turns decided axes and their reasons into the answer a person reads.</summary>
internal static class FitAssembly
{
    private const string NumbersCannotTell =
        "No number shows cracks, wear, warp, earlier machining, mixed or counterfeit parts, heat or water damage, software. "
        + "To look at by hand: cracks, sealing faces, threads, bores and journals, heat marks, corrosion, markings that do not belong together.";

    /// <summary>Ranks 1 and 2 are findings of people who tried or measured the very thing asked.</summary>
    private const int LastRankByTrying = 2;

    public static FitAnswer Assemble(FamilyFacts facts, FitQuestion question, Judgement judged)
    {
        var (kind, mounts, runs) = (judged.Kind, judged.Mounts, judged.Runs);
        var headline = AxisDecision.HeadlineOf(mounts.Value, runs.Value);
        var standing = Standing(judged.Reasons, mounts, runs);
        var works = Works(facts, standing);
        return new FitAnswer
        {
            Asked = question.AsAsked(facts.Family.Code),
            Headline = headline,
            HeadlineText = HeadlineText(headline, mounts, runs, judged.AlsoNeeded.Count),
            Reference = Reference(question),
            Sureness = AxisDecision.SurenessOf(headline, mounts.Sureness, runs.Sureness),
            Consequence = WorstOf(standing, [.. mounts.DecidedBy, .. runs.DecidedBy]),
            Mounts = mounts,
            Runs = runs,
            Identity = judged.Identity,
            Reasons = judged.Reasons,
            Disagreements = judged.Disagreements,
            AlsoNeeded = judged.AlsoNeeded,
            PerhapsNeeded = judged.PerhapsNeeded,
            Works = works,
            MeasureNext = MeasureNextAdvice.For(facts, kind, judged.Reasons, mounts.Value == Mounts.NotKnown, runs.Value == Runs.NotKnown),
            NotCompared = NotCompared(kind, judged.Reasons),
            Cautions = Cautions.Of(kind.Cautions.Concat(CautionsOf(facts, works, isRefused: headline == Headline.DoesNotFit && judged.Part.Kind != kind.Code))),
            Findings = judged.Findings,
        };
    }

    /// <summary>What <i>runs</i> is judged against.</summary>
    public static string Reference(FitQuestion question) => $"{question.Variant} as built";

    /// <param name="isRefused">A part of another kind: no work will be done to make it go on.</param>
    private static IEnumerable<string> CautionsOf(FamilyFacts facts, IReadOnlyList<WorkNeeded> works, bool isRefused) =>
        isRefused ? [] : works.SelectMany(work => facts.FindWork(work.Work)?.Cautions ?? []);

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
            string?[] on = [mounts.Disputed ? "whether it mounts" : null, runs.Disputed ? "how the engine runs" : null];
            text += $"; equally good sources disagree on {string.Join(" and on ", on.OfType<string>())}";
        }

        if (headline == Headline.MountsButRunsDifferently && mounts.Value == Mounts.WithWork)
        {
            text += ", and needs work";
        }

        // What a part would drag in counts once it is known that it goes on at all.
        return headline is Headline.DoesNotFit or Headline.NotKnownYet || changes == 0
            ? text
            : $"{text}, with {changes} other {(changes == 1 ? "change" : "changes")}";
    }

    public static string NotCompared(Kind kind, IReadOnlyList<Reason> reasons)
    {
        var compared = reasons.Where(reason => reason.Part is not null && reason.Met != Met.NotKnown)
            .Select(reason => reason.Feature).OfType<string>().Distinct().Count();
        var unreviewed = kind.Reviewed ? "" : " The feature list of this kind has not been reviewed: nothing recorded speaks against the part, no more.";
        return $"Compared: {compared} {(compared == 1 ? "feature" : "features")}; nothing else.{unreviewed} {NumbersCannotTell}";
    }

    private static IReadOnlyList<WorkNeeded> Works(FamilyFacts facts, IReadOnlyList<Reason> reasons) =>
    [
        .. reasons.Where(reason => reason.Met == Met.No && reason.Work is not null)
            .GroupBy(reason => reason.Work!, StringComparer.Ordinal) // filtered just above
            .OrderBy(group => group.Key, StringComparer.Ordinal)
            .Select(group => WorkOf(facts, group.Key, [.. group.Select(reason => reason.Id)])),
    ];

    private static WorkNeeded WorkOf(FamilyFacts facts, string code, IReadOnlyList<string> reasons)
    {
        var work = facts.FindWork(code);
        return new WorkNeeded(code, work?.Name ?? FitWording.InWords(code), work?.Who, work?.Days, work?.Price, work?.CanBeUndone, reasons);
    }
}
