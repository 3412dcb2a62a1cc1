using PartMatch.Core.Catalogue;
using PartMatch.Core.Openings;

namespace PartMatch.Core.Builds;

/// <summary>The plan's works in time.</summary>
internal static class PlanWorkdays
{
    public static IReadOnlyList<PlannedWork> Of(PlanRun run, SolvedPlan solved, OpenedPlan opened, PlanPurchases purchases) =>
    [
        .. solved.Written.Jobs.Index().Where(job => solved.Solution.Jobs[job.Index] is not null)
            .Select(job => Planned(run, solved, opened, purchases, job.Item, solved.Solution.Jobs[job.Index] ?? 0))
            .OrderBy(work => work.StartsOn).ThenBy(work => work.Work, StringComparer.Ordinal),
    ];

    private static PlannedWork Planned(PlanRun run, SolvedPlan solved, OpenedPlan opened, PlanPurchases purchases, Work work, int start)
    {
        var terms = run.Terms;
        var days = GradeOrders.IsOne(work)
            ? purchases.OffersFor(GradeOrders.PositionOf(work)).Select(offer => offer.Days).DefaultIfEmpty(0).Max()
            : PlanWriter.DaysOf(work);
        string[] lines = [.. solved.Lines.Where(line => line.Works.Contains(work.Code)).Select(line => NameOf(terms, line.Candidate.Position))];
        string[] asked = [.. terms.Build.Works.Where(one => one.Work == work.Code).Select(one => one.Note ?? "you asked for it")];
        string[] sealedJoints = CureWorks.IsOne(work) ? [.. CureWorks.Joints(work, opened).Select(position => NameOf(terms, position))] : [];
        bool IsInPlan(string first) => terms.Facts.Family.FindWork(first) is null || solved.Written.WorksOf(solved.Solution).Contains(first);
        return new PlannedWork(
            work.Code, work.Name, work.Who, work.Price, work.Days is null ? null : days, terms.StartOn.AddDays(start), terms.StartOn.AddDays(start + days), work.CanBeUndone,
            [.. lines, .. asked, .. sealedJoints],
            // A work that is not done is waited for by nobody.
            CureWorks.IsOne(work) ? [] : [.. work.NeedsFirst.Where(IsInPlan).Select(position => NameOf(terms, position))]);
    }

    /// <summary>A position, or the name of a work.</summary>
    private static string NameOf(BuildTerms terms, string first) =>
        terms.Facts.Family.FindPosition(first)?.Name ?? terms.Facts.Family.FindWork(first)?.Name ?? first;
}
