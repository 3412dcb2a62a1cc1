using PartMatch.Core.Catalogue;
using PartMatch.Core.Measures;
using PartMatch.Core.Openings;
using PartMatch.Core.Planning;

namespace PartMatch.Core.Builds;

/// <summary>
/// What is chosen by measurement is ordered when the parts it is measured on are there, and what is done to them is done: measuring and ordering is a work of
/// its own, and the sending begins with it. Common practice, no source.
/// </summary>
internal static class GradeOrders
{
    private const string Prefix = "order:";

    public static string CodeOf(string position) => Prefix + position;

    public static bool IsOne(Work work) => work.Code.StartsWith(Prefix, StringComparison.Ordinal);

    /// <summary>Is it a wait, for a measurement or for sealant, and nothing that is done to a part?</summary>
    public static bool IsWaiting(string work) => work.StartsWith(Prefix, StringComparison.Ordinal) || work.StartsWith(CureWorks.Prefix, StringComparison.Ordinal);

    public static string PositionOf(Work work) => work.Code[Prefix.Length..];

    /// <summary>One for each position for which a grade may be bought.</summary>
    /// <param name="candidates">What could be at each position of the family, in its order.</param>
    public static IEnumerable<Work> Of(BuildTerms terms, IReadOnlyList<IReadOnlyList<Candidate>> candidates)
    {
        foreach (var graded in candidates.Select(choices => choices.Where(IsBought).ToList()).Where(graded => graded.Count > 0))
        {
            var position = terms.At(graded[0].Position).Position;
            var measured = MeasuredFor(terms.Facts.Family, position.Code);
            if (measured.Count > 0)
            {
                yield return new Work(
                    CodeOf(position.Code), $"Measure, then order: {position.Name}", null, 0, new Money("0", terms.Build.Currency), "you",
                    [.. measured.Union(WithIt(terms, position.Code, measured).Where(one => one != position.Code), StringComparer.Ordinal)], [], CanBeUndone: true, []);
            }
        }
    }

    /// <summary>The positions on which it is measured what is needed here; none where nothing is chosen by measurement elsewhere.</summary>
    public static IReadOnlyList<string> MeasuredFor(FamilyFacts family, string position) =>
    [
        .. family.Selects.Where(row => row.Position == position && row.Evidence?.IsRetracted != true)
            .Select(row => row.Measured.Position).Where(one => one != position).Distinct(StringComparer.Ordinal),
    ];

    /// <summary>
    /// What is joined to what is measured on the bench belongs to the gap, and what stands over it: nobody measures to the tip of a valve before the valve is
    /// there, nor up to a camshaft that is still to come.
    /// </summary>
    private static IEnumerable<string> WithIt(BuildTerms terms, string position, IReadOnlyList<string> measured) => terms.Facts.Family.BenchOrders
        .Where(row => row.Evidence?.IsRetracted != true && OpenedPlan.Engines(terms).Any(row.HoldsFor))
        .Select(row => row.How switch
        {
            BenchJoin.OnBench when measured.Contains(row.Then) => row.First,
            BenchJoin.ChosenUnder when row.First == position => row.Then,
            _ => null,
        }).OfType<string>();

    public static bool IsBought(Candidate candidate) => candidate is { IsGraded: true, From: CandidateFrom.Supply };

    /// <summary>
    /// The same jobs, with what waits: what is measured for what is done to it, and what is done with the graded part for its coming. Where those wait for
    /// each other, the later ones do not wait.
    /// </summary>
    public static IReadOnlyList<PlanJob> InOrder(IReadOnlyList<Work> works, IReadOnlyList<PlanJob> jobs)
    {
        PlanJob[] all = [.. jobs];
        foreach (var (order, work) in works.Index().Where(work => IsOne(work.Item)))
        {
            var position = PositionOf(work);
            foreach (var (other, done) in works.Index().Where(other => !IsOne(other.Item)))
            {
                if (done.NeedsFirst.Contains(position))
                {
                    Wait(other, order);
                }
                else if (PlanWorks.PositionsOf(done).Any(work.NeedsFirst.Contains))
                {
                    Wait(order, other);
                }
            }
        }

        return all;

        void Wait(int job, int before)
        {
            var was = all[job];
            all[job] = was with { AfterJobs = [.. was.AfterJobs, before] };
            if (PlanCalendar.Order(all) is null)
            {
                all[job] = was;
            }
        }
    }
}
