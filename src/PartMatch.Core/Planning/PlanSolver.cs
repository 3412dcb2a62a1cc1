namespace PartMatch.Core.Planning;

/// <summary>The best plan by one measure, ties by the next ones.</summary>
public static class PlanSolver
{
    /// <summary>What a tie may still spend when the first measure took everything.</summary>
    private const double LeastShare = 0.05;

    private enum Measure
    {
        Cost,
        Days,
        Risk,
        Kept,
        Doings,
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
        var search = new PlanSearch(problem, dropped);
        var measures = Measures(objective);
        var left = effort.Work;
        long? value = null;
        long bound = 0;
        var isProven = true;
        foreach (var measure in measures)
        {
            var isFirst = value is null;
            if (!isFirst && (stop.IsCancellationRequested || !Varies(problem, search, measure)))
            {
                continue;
            }

            var sign = measure == Measure.Kept ? -1 : 1;
            var answer = search.Minimise(
                Sum(search, measure, sign),
                double.Max(left, effort.Work * LeastShare),
                isFirst && told is not null ? (best, atBest) => told(new PlanProgress(sign * best, sign * atBest)) : null,
                stop);
            left -= answer.Work;
            isProven &= answer.Status == ConstraintStatus.Optimal;
            if (isFirst && answer.Values.Count == 0)
            {
                return Nothing(answer.Status, sign * answer.Bound, stop);
            }

            if (isFirst)
            {
                value = search.Value;
                bound = sign * (answer.Status == ConstraintStatus.Optimal ? search.Value : answer.Bound);
            }
        }

        var status = stop.IsCancellationRequested && !isProven ? PlanStatus.StoppedByYou : isProven ? PlanStatus.ProvenOptimal : PlanStatus.BestFound;
        return search.Read(status, bound);
    }

    /// <summary>Any plan that holds, whatever it comes to: proven only where there is none.</summary>
    internal static PlanSolution FindAny(PlanProblem problem, IReadOnlySet<int> dropped, PlanEffort effort, CancellationToken stop)
    {
        PlanProblemCheck.Check(problem);
        var search = new PlanSearch(problem, dropped);
        var answer = search.Minimise(null, effort.Work, null, stop);
        return answer.Values.Count == 0 ? Nothing(answer.Status, answer.Bound, stop) : search.Read(PlanStatus.BestFound, 0);
    }

    private static PlanSolution Nothing(ConstraintStatus status, long bound, CancellationToken stop) => new(
        status == ConstraintStatus.Infeasible ? PlanStatus.Infeasible : stop.IsCancellationRequested ? PlanStatus.StoppedByYou : PlanStatus.OutOfTime,
        [], [], [], [], new PlanTotals(0, 0, 0, 0, 0), status == ConstraintStatus.Infeasible ? 0 : bound);

    private static Measure[] Measures(PlanObjective objective) => objective switch
    {
        PlanObjective.Cheapest => [Measure.Cost, Measure.Days, Measure.Risk, Measure.Kept, Measure.Doings],
        PlanObjective.Soonest => [Measure.Days, Measure.Cost, Measure.Risk, Measure.Kept, Measure.Doings],
        PlanObjective.Surest => [Measure.Risk, Measure.Cost, Measure.Days, Measure.Kept, Measure.Doings],
        PlanObjective.MostKept => [Measure.Kept, Measure.Cost, Measure.Days, Measure.Risk, Measure.Doings],
        _ => throw new ArgumentOutOfRangeException(nameof(objective), objective, "expected one of the four objectives"),
    };

    private static LinearSum Sum(PlanSearch search, Measure measure, int sign) => measure switch
    {
        Measure.Cost => search.Model.Cost,
        Measure.Days => new LinearSum().Add(search.Schedule.Days, 1),
        Measure.Risk => search.Model.Risk,
        Measure.Kept => new LinearSum().Add(search.Model.Kept, sign),
        _ => search.Model.Doings,
    };

    private static bool Varies(PlanProblem problem, PlanSearch search, Measure measure) => measure switch
    {
        Measure.Cost => search.Model.Cost.Factors.Count > 0,
        Measure.Days => PlanSchedule.Varies(problem, search.Model),
        Measure.Risk => search.Model.Risk.Factors.Count > 0,
        Measure.Kept => search.Model.Kept.Factors.Count > 0,
        _ => problem.Offers.Any(offer => offer.Price == 0) || problem.Jobs.Any(job => job.Cost == 0) || problem.Doubts.Any(doubt => doubt is { Risk: 0, IsAdmitted: true }),
    };
}
