using PartMatch.Core.Catalogue;
using PartMatch.Core.Parts;

namespace PartMatch.Core.Fit;

/// <summary>
/// What was found of the very part asked about at this position: each finding is shown, and those that count make a statement. A finding about a
/// part that is linked with it by supersession is about another part: the link says how the two stand to each other.
/// </summary>
internal static class FindingStatements
{
    /// <param name="span">The stretch of engines judged; it lies wholly in or wholly out of every finding's span.</param>
    /// <param name="fitted">The alternative judged against; null where nothing is fitted or nothing is recorded.</param>
    /// <param name="others">Axis and position of each neighbour at a joint or in a sum of this position that is another than the maker's.</param>
    /// <returns>Every finding about the part here, of any variant, ordered by code.</returns>
    public static IReadOnlyList<FindingShown> Weigh(
        FamilyFacts facts, FitQuestion question, Part part, EngineSpan span, Part? fitted, Neighbours neighbours,
        IReadOnlyList<(Axis Axis, string Position)> others)
    {
        List<FindingShown> each =
        [
            .. facts.FindingsAt(question.Position).Where(finding => finding.Part == part.Id)
                .Select(finding => Shown(finding, StandingOf(facts, question, finding, span, fitted, neighbours, others))),
        ];
        var copies = each.Where(found => found.Rank is not null)
            .GroupBy(found => (found.Axis, found.Finding.Evidence.Root)).SelectMany(Copies).ToDictionary();
        return
        [
            .. each.Select(found => copies.TryGetValue(found.Code, out var original)
                    ? found with { Rank = null, Standing = FindingStanding.Copy, CopyOf = original }
                    : found)
                .Select(found => found with { Text = FindingWording.Text(facts, question, found, others) }),
        ];
    }

    /// <summary>Without an id: it gets one together with the other reasons.</summary>
    public static Reason Reason(FindingShown found) => new("", ReasonBy.Finding, found.Axis, MetBy(found), found.Text)
    {
        Code = found.Code,
        Grade = found.Grade,
        Cited = [found.Finding.Evidence],
    };

    /// <param name="reasons">With their ids.</param>
    public static IEnumerable<Statement<T>> On<T>(Axis axis, IReadOnlyList<FindingShown> found, IReadOnlyList<Reason> reasons, Func<FindingOutcome, T> valueOf)
        where T : struct, Enum =>
        from one in found
        where one.Axis == axis && one.Rank is not null
        let reason = reasons.First(reason => reason.By == ReasonBy.Finding && reason.Code == one.Code)
        select new Statement<T>(valueOf(one.Outcome), one.Rank ?? 0, [reason.Id], one.Text);

    public static Mounts MountsOf(FindingOutcome outcome) => outcome switch
    {
        FindingOutcome.Yes => Mounts.Yes,
        FindingOutcome.WithWork => Mounts.WithWork,
        _ => Mounts.No,
    };

    public static Runs RunsOf(FindingOutcome outcome) => outcome == FindingOutcome.Same ? Runs.Same : Runs.Differently;

    private static Met MetBy(FindingShown found) => (found.Rank, found.Outcome) switch
    {
        (null, _) => Met.NotKnown,
        (_, FindingOutcome.Yes or FindingOutcome.Same) => Met.Yes,
        _ => Met.No,
    };

    private static FindingShown Shown(Finding finding, FindingStanding standing)
    {
        var rank = (standing, FindingRank.Of(finding)) switch
        {
            (FindingStanding.Counts, var direct) => direct,
            (FindingStanding.Indirect, { } direct) => FindingRank.OneGradeLower(finding.Axis, direct),
            _ => (int?)null,
        };
        return new FindingShown(
            finding.Code, finding.Part, finding.Variant, finding.Axis, finding.Outcome, finding.Evidence.Grade, rank, standing, CopyOf: null, Text: "",
            SourceShown.Of(finding.Evidence))
        {
            Finding = finding,
        };
    }

    private static FindingStanding StandingOf(
        FamilyFacts facts, FitQuestion question, Finding finding, EngineSpan span, Part? fitted, Neighbours neighbours,
        IReadOnlyList<(Axis Axis, string Position)> others)
    {
        var here = finding.Variant == question.Variant;
        return finding.Evidence.IsRetracted ? FindingStanding.Retracted
            : FindingRank.Of(finding) is null ? FindingStanding.SaysNothing
            : !here && !HasTheSamePart(facts, finding, fitted) ? FindingStanding.OtherVariant
            : !AreThere(finding, neighbours, others) ? FindingStanding.OtherNeighbours
            : here && span.IsIn(finding.Span) ? FindingStanding.Counts
            : FindingStanding.Indirect;
    }

    /// <summary>
    /// On every engine of the finding's span for which anything is recorded, did the maker fit that part? Two places that carry nothing need not be alike.
    /// </summary>
    private static bool HasTheSamePart(FamilyFacts facts, Finding finding, Part? fitted)
    {
        Fitment[] there = [.. facts.FitmentsAt(finding.Variant, finding.Position)];
        EngineSpan[] recorded =
        [
            .. EngineSpans.Cut(finding.Span, built: null, serial: null, [.. there.Select(fitment => fitment.Span)]).Stretches
                .Where(stretch => there.Any(fitment => stretch.IsIn(fitment.Span))),
        ];
        return fitted is not null && recorded.Length > 0
            && recorded.All(stretch => there.Any(fitment => fitment.Part == fitted.Id && stretch.IsIn(fitment.Span)));
    }

    /// <summary>Everything it was made with is really there, and it was made with everything that is there instead of the maker's on its axis.</summary>
    private static bool AreThere(Finding finding, Neighbours neighbours, IReadOnlyList<(Axis Axis, string Position)> others) =>
        finding.With.All(with => neighbours.Holds(with.Key, with.Value))
        && others.Where(other => other.Axis == finding.Axis).All(other => finding.With.ContainsKey(other.Position));

    /// <summary>
    /// Of findings on one axis that go back to one source: each that does not count, with the one that counts in its place. The original speaks for its
    /// copies, so that a copying slip disputes nothing; where only copies are at hand that differ, one of each outcome counts, and they are disputed.
    /// </summary>
    private static IEnumerable<KeyValuePair<string, string>> Copies(IEnumerable<FindingShown> sameSource)
    {
        FindingShown[] all = [.. sameSource];
        FindingShown[] originals = [.. all.Where(found => !found.Finding.Evidence.IsCopy)];
        FindingShown[] counting =
        [
            .. (originals.Length > 0 ? originals : all).GroupBy(found => found.Outcome)
                .Select(group => group.OrderBy(found => found.Rank).ThenBy(found => found.Code, StringComparer.Ordinal).First()),
        ];
        return all.Except(counting)
            .Select(copy => KeyValuePair.Create(copy.Code, (counting.FirstOrDefault(found => found.Outcome == copy.Outcome) ?? counting[0]).Code));
    }
}
