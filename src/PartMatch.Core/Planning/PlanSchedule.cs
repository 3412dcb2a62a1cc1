namespace PartMatch.Core.Planning;

/// <summary>The days of a model: when what is taken at a place has arrived, when work starts, when all is done.</summary>
internal sealed class PlanSchedule
{
    private readonly PlanProblem _problem;
    private readonly PlanModel _model;
    private readonly long _horizon;
    private readonly PlanArrivals _arrivals;

    public PlanSchedule(PlanProblem problem, PlanModel model)
    {
        (_problem, _model) = (problem, model);
        _horizon = Horizon(problem, model);
        Days = model.Constraints.Variable(0, _horizon);
        Sum = new LinearSum().Add(Days, 1);
        var waitedFor = problem.Jobs.SelectMany(job => job.NeedsPlaces.Concat(job.Orders is { } ordered ? [ordered] : Array.Empty<int>())).ToHashSet();
        _arrivals = new PlanArrivals(problem, model, waitedFor);
        _arrivals.EndOn(Days);
        Starts = [.. problem.Jobs.Select(job => model.Constraints.Variable(0, _horizon - job.Days))];
        AddWork();
    }

    public int Days { get; }

    public LinearSum Sum { get; }

    /// <summary>For each job; 0 where it is not done.</summary>
    public int[] Starts { get; }

    /// <summary>Whether there is any day but the first.</summary>
    public static bool Varies(PlanProblem problem, PlanModel model) => Horizon(problem, model) > 0;

    /// <summary>What arrives later is of no use: that is said of each day by itself, so that the linear relaxation knows it too.</summary>
    public void EndBy(long day)
    {
        _model.Constraints.AtMost(Sum, day);
        _arrivals.EndBy(day);
    }

    private static long Horizon(PlanProblem problem, PlanModel model) =>
        problem.Offers.Where((_, offer) => model.Needs.Packs[offer] > 0).Select(offer => (long)offer.ArrivesOn).DefaultIfEmpty(0).Max()
        * (1 + problem.Jobs.Count(job => job.Orders is not null))
        + problem.Jobs.Sum(job => (long)job.Days);

    /// <summary>When a job is done and what it orders is there.</summary>
    private LinearSum End(int job)
    {
        var work = _problem.Jobs[job];
        var end = (work.Orders is { } place ? _arrivals.FindReady(place) : null) ?? new LinearSum();
        return end.Add(Starts[job], 1).Add(work.Days);
    }

    private void AddWork()
    {
        var held = new SortedDictionary<int, List<int>>();
        for (var job = 0; job < Starts.Length; job++)
        {
            var (work, start, done) = (_problem.Jobs[job], Starts[job], _model.Jobs[job]);
            _model.Constraints.AtMost(new LinearSum().Add(start, 1), 0, ConstraintModel.Not(done));
            _model.Constraints.AtMost(End(job).Add(Days, -1), 0, done);
            foreach (var ready in work.NeedsPlaces.Distinct().Select(_arrivals.FindReady).OfType<LinearSum>())
            {
                _model.Constraints.AtMost(ready.Add(start, -1), 0, done);
            }

            foreach (var before in work.AfterJobs.Distinct())
            {
                _model.Constraints.AtMost(End(before).Add(start, -1), 0, done, _model.Jobs[before]);
            }

            if (work.Days > 0)
            {
                var stretch = work.HoldsPlaces.Count > 0 ? _model.Constraints.Stretch(start, work.Days, done) : 0;
                foreach (var place in work.HoldsPlaces.Distinct())
                {
                    held.TryAdd(place, []);
                    held[place].Add(stretch);
                }
            }
        }

        foreach (var stretches in held.Values.Where(stretches => stretches.Count > 1))
        {
            _model.Constraints.NoOverlap(stretches);
        }
    }
}
