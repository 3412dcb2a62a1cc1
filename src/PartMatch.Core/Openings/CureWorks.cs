using System.Globalization;
using PartMatch.Core.Builds;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Measures;
using PartMatch.Core.Planning;

namespace PartMatch.Core.Openings;

/// <summary>
/// Sealant that has to cure before the engine is filled: a work of its own, of whole days, that begins when everything beneath the joint is there and worked.
/// Common practice, no source.
/// </summary>
internal static class CureWorks
{
    internal const string Prefix = "cure:";

    public static bool IsOne(Work work) => work.Code.StartsWith(Prefix, StringComparison.Ordinal);

    public static string CodeOf(int days) => string.Create(CultureInfo.InvariantCulture, $"{Prefix}{days}");

    /// <summary>Hours count as whole days, rounded up.</summary>
    public static int DaysOf(Renewal row) => (int)Math.Ceiling((row.CureHours ?? 0) / 24);

    /// <summary>One for each number of days that sealant of the books takes.</summary>
    public static IEnumerable<Work> Of(BuildTerms terms)
    {
        var engines = OpenedPlan.Engines(terms);
        var above = Disturbance.Rows(terms.Facts.Family, engines).ToLookup(row => row.OffFirst, row => row.Position, StringComparer.Ordinal);
        var curing = Disturbance.Renewals(terms.Facts.Family, engines).Where(row => DaysOf(row) > 0);
        return curing.GroupBy(DaysOf).OrderBy(rows => rows.Key).Select(rows => new Work(
            CodeOf(rows.Key), "Let the sealant cure before filling", null, rows.Key, new Money("0", terms.Build.Currency), "you",
            [.. Beneath(above, rows.Select(row => row.Opened)).Union(rows.Select(row => row.Renewed)).Order(StringComparer.Ordinal)],
            [], CanBeUndone: null, []));
    }

    /// <summary>Positions of the plan whose joints cure so long, in ordinal order.</summary>
    public static IEnumerable<string> Joints(Work cure, OpenedPlan opened) => opened.Disturbed.Keys.Order(StringComparer.Ordinal)
        .Where(position => opened.RenewedFor(position).Any(row => CodeOf(DaysOf(row)) == cure.Code));

    /// <summary>The same jobs, where curing waits for what is done on what lies beneath the joints.</summary>
    public static IReadOnlyList<PlanJob> InOrder(FamilyFacts facts, IReadOnlyList<Work> works, IReadOnlyList<PlanJob> jobs) =>
    [
        .. jobs.Select((job, index) => IsOne(works[index])
            ? job with
            {
                AfterJobs =
                [
                    .. job.AfterJobs.Union(works.Index()
                        .Where(other => OpenedPlan.WorkedOn(facts, other.Item).Any(works[index].NeedsFirst.Contains)).Select(other => other.Index)),
                ],
            }
            : job),
    ];

    /// <summary>The positions themselves and all that can be reached only with one of them off.</summary>
    private static HashSet<string> Beneath(ILookup<string, string> above, IEnumerable<string> positions)
    {
        var found = positions.ToHashSet(StringComparer.Ordinal);
        var next = new Queue<string>(found);
        while (next.TryDequeue(out var at))
        {
            foreach (var position in above[at].Where(found.Add))
            {
                next.Enqueue(position);
            }
        }

        return found;
    }
}
