namespace PartMatch.Core.Planning;

/// <summary>What each day sooner costs.</summary>
/// <param name="Points">Every pair of cost and days of which no plan betters one without worsening the other: the cheapest first, each next one sooner and
/// dearer.</param>
/// <param name="IsComplete">False where the limit or the stop came first: further points may be missing, and a point that is not proven may be
/// bettered.</param>
public sealed record PlanFrontier(IReadOnlyList<PlanSolution> Points, bool IsComplete)
{
    /// <param name="effort">For each point.</param>
    /// <param name="told">Each point when it is found.</param>
    /// <remarks>
    /// The cheapest plan, then the cheapest that is at least a day sooner than it, until there is none.
    /// Source: Y. Y. Haimes, L. S. Lasdon, D. A. Wismer, "On a bicriterion formulation of the problems of integrated system identification and system
    /// optimization",
    /// IEEE Transactions on Systems, Man, and Cybernetics 1:296-297, 1971 (the epsilon constraint; from memory).
    /// </remarks>
    public static PlanFrontier ByDays(PlanProblem problem, PlanEffort effort, Action<PlanSolution>? told = null, CancellationToken stop = default)
    {
        var points = new List<PlanSolution>();
        var isProven = true;
        while (true)
        {
            var limited = points.Count == 0 ? problem : problem with { LastDay = new PlanBound(points[^1].Totals.Days - 1, null) };
            var point = PlanSolver.Solve(limited, PlanObjective.Cheapest, effort, stop: stop);
            var isStopped = stop.IsCancellationRequested && point.Status != PlanStatus.ProvenOptimal;
            if (point.Status is PlanStatus.Infeasible or PlanStatus.OutOfTime || isStopped)
            {
                return new PlanFrontier(points, isProven && point.Status == PlanStatus.Infeasible);
            }

            isProven &= point.Status == PlanStatus.ProvenOptimal;
            points.Add(point);
            told?.Invoke(point);
            if (point.Totals.Days == 0)
            {
                return new PlanFrontier(points, isProven);
            }
        }
    }
}
