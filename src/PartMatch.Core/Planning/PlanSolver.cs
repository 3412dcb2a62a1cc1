namespace PartMatch.Core.Planning;

/// <summary>The best plan by one measure, ties by the next ones.</summary>
public static class PlanSolver
{
    /// <summary>What a tie may still spend when the first measure took everything.</summary>
    private const double LeastShare = 0.05;

    /// <summary>What a first try of all measures at once may spend; a problem of ordinary size takes a hundredth of it.</summary>
    private const double TogetherShare = 0.05;

    private enum Measure
    {
        Cost,
        Days,
        Risk,
        Kept,
        Doings,
        Order,
    }

    /// <param name="told">How far the first measure has come; called from another thread, one call at a time.</param>
    /// <param name="stop">What was found until then is the answer.</param>
    /// <returns>
    /// <see cref="PlanStatus.ProvenOptimal"/> only where the first measure and every tie are proven; where only a tie is not, the bound equals the value.
    /// </returns>
    /// <exception cref="ArgumentException">The problem contradicts itself or its numbers are too large: see <see cref="PlanProblemCheck"/>.</exception>
    /// <remarks>
    /// Days are those of what is used: a pack that is bought only to make sending free is not waited for. Nothing that costs nothing is done for nothing.
    /// The same problem gives the same answer.
    /// </remarks>
    public static PlanSolution Solve(
        PlanProblem problem, PlanObjective objective, PlanEffort effort, Action<PlanProgress>? told = null, CancellationToken stop = default) =>
        SolveWithout(problem, new HashSet<int>(), objective, effort, told, stop);

    /// <summary>The same where some grounds do not hold; a place of such a ground may stay open.</summary>
    public static PlanSolution SolveWithout(
        PlanProblem problem,
        IReadOnlySet<int> dropped,
        PlanObjective objective,
        PlanEffort effort,
        Action<PlanProgress>? told = null,
        CancellationToken stop = default)
    {
        PlanProblemCheck.Check(problem);
        var search = new PlanSearch(problem, dropped, effort.NarrowsFrom);
        var measures = Measures(objective);
        var sign = measures[0] == Measure.Kept ? -1 : 1;
        var settled = effort.Ties switch
        {
            PlanTies.None => measures[..1],
            PlanTies.CostAndDays => measures[..(1 + int.Max(Array.IndexOf(measures, Measure.Cost), Array.IndexOf(measures, Measure.Days)))],
            PlanTies.Lines => [.. new[] { measures[0], Measure.Cost, Measure.Doings, Measure.Order }.Distinct()],
            _ => measures,
        };
        var sums = settled.Where((measure, rank) => rank == 0 || Varies(problem, search, measure))
            .Select(measure => Sum(search, measure)).ToList();
        var (first, done) = told is null && sums.Count > 1 && !search.IsLarge
            ? search.MinimiseTogether(sums, effort.Work * TogetherShare, stop)
            : (new ConstraintAnswer(ConstraintStatus.NothingFound, [], 0, 0), 0);
        if (done == 0 && first.Status != ConstraintStatus.Infeasible)
        {
            var work = double.Max(effort.Work - first.Work, effort.Work * LeastShare);
            (first, done) = (search.Minimise(sums[0], work, told is null ? null : Tell(told, sign), stop), 1);
        }

        if (first.Values.Count == 0)
        {
            return Nothing(first.Status, sign * first.Bound, stop);
        }

        var isProven = first.Status == ConstraintStatus.Optimal;
        var bound = sign * (isProven ? search.Value(sums[0]) : first.Bound);
        var ties = sums.Skip(done).ToList();
        var left = effort.Work - first.Work;
        while (ties.Count > 0 && !stop.IsCancellationRequested)
        {
            // In a large model cost is a tie of its own, because its linear relaxation makes the model small; all others go together.
            var isAlone = search.IsLarge && ties[0] == search.Model.Cost;
            var work = double.Max(left, effort.Work * LeastShare);
            var (tie, count) = isAlone ? (search.Minimise(ties[0], work, null, stop), 1) : search.MinimiseTies(ties, work, stop);
            isProven &= tie.Status == ConstraintStatus.Optimal;
            left -= tie.Work;
            ties.RemoveRange(0, count);
        }

        var status = isProven && ties.Count == 0 ? PlanStatus.ProvenOptimal : stop.IsCancellationRequested ? PlanStatus.StoppedByYou : PlanStatus.BestFound;
        return search.Read(status, bound);
    }

    /// <summary>Any plan that holds, whatever it comes to: proven only where there is none.</summary>
    internal static PlanSolution FindAny(PlanProblem problem, IReadOnlySet<int> dropped, PlanEffort effort, CancellationToken stop)
    {
        PlanProblemCheck.Check(problem);
        var search = PlanSearch.ForAny(problem, dropped, tellsWhy: false);
        var answer = search.Find(effort.Work, stop);
        return answer.Values.Count == 0 ? Nothing(answer.Status, answer.Bound, stop) : search.Read(PlanStatus.BestFound, 0);
    }

    /// <summary>Where there is no plan: grounds that hold and suffice for that.</summary>
    /// <returns>Perhaps not the fewest; limits of money and time are always of them where they hold. Null where it was not found out.</returns>
    internal static IReadOnlySet<int>? WhyNone(PlanProblem problem, IReadOnlySet<int> dropped, PlanEffort effort, CancellationToken stop)
    {
        PlanProblemCheck.Check(problem);
        var search = PlanSearch.ForAny(problem, dropped, tellsWhy: true);
        var answer = search.Find(effort.Work, stop);
        return answer.Status == ConstraintStatus.Infeasible ? search.WhyNone(answer) : null;
    }

    /// <summary>A large problem is searched more than once: what was known stays known.</summary>
    private static Action<long?, long> Tell(Action<PlanProgress> told, int sign)
    {
        var (least, known) = ((long?)null, long.MinValue);
        return (best, bound) =>
        {
            least = best < least || least is null ? best : least;
            known = long.Max(known, bound);
            told(new PlanProgress(sign * least, sign * known));
        };
    }

    private static PlanSolution Nothing(ConstraintStatus status, long bound, CancellationToken stop) => new(
        status == ConstraintStatus.Infeasible ? PlanStatus.Infeasible : stop.IsCancellationRequested ? PlanStatus.StoppedByYou : PlanStatus.OutOfTime,
        [], [], [], [], new PlanTotals(0, 0, 0, 0, 0), status == ConstraintStatus.Infeasible ? 0 : bound);

    private static Measure[] Measures(PlanObjective objective) => objective switch
    {
        PlanObjective.Cheapest => [Measure.Cost, Measure.Days, Measure.Risk, Measure.Kept, Measure.Doings, Measure.Order],
        PlanObjective.Soonest => [Measure.Days, Measure.Cost, Measure.Risk, Measure.Kept, Measure.Doings, Measure.Order],
        PlanObjective.Surest => [Measure.Risk, Measure.Cost, Measure.Days, Measure.Kept, Measure.Doings, Measure.Order],
        PlanObjective.MostKept => [Measure.Kept, Measure.Cost, Measure.Days, Measure.Risk, Measure.Doings, Measure.Order],
        _ => throw new ArgumentOutOfRangeException(nameof(objective), objective, "expected one of the four objectives"),
    };

    private static LinearSum Sum(PlanSearch search, Measure measure) => measure switch
    {
        Measure.Cost => search.Model.Cost,
        Measure.Days => search.Schedule.Sum,
        Measure.Risk => search.Model.Risk,
        Measure.Kept => new LinearSum().Add(search.Model.Kept, -1),
        Measure.Doings => search.Model.Doings,
        _ => search.Model.Order,
    };

    private static bool Varies(PlanProblem problem, PlanSearch search, Measure measure) => measure switch
    {
        Measure.Cost => search.Model.Cost.Factors.Count > 0,
        Measure.Days => PlanSchedule.Varies(problem, search.Model),
        Measure.Risk => search.Model.Risk.Factors.Count > 0,
        Measure.Kept => search.Model.Kept.Factors.Count > 0,
        Measure.Order => problem.Offers.Any(offer => offer.Rank > 0),
        _ => problem.Offers.Any(offer => offer.Price == 0) || problem.Jobs.Any(job => job.Cost == 0)
            || problem.Doubts.Any(doubt => doubt is { Risk: 0, IsAdmitted: true }),
    };
}
