namespace PartMatch.Core.Planning;

/// <summary>The days of a model: when what is taken at a place has arrived, when work starts, when all is done.</summary>
/// <remarks>
/// A place that work waits for has its own day; all other places have one together. Of a product that only one of them takes it is enough that what comes
/// by a day suffices; where several take it, which of them gets what comes when is decided too.
/// </remarks>
internal sealed class PlanSchedule
{
    private const int Others = -1;

    private readonly PlanProblem _problem;
    private readonly PlanModel _model;
    private readonly long _horizon;
    private readonly Dictionary<int, SortedDictionary<int, int>> _late = [];

    public PlanSchedule(PlanProblem problem, PlanModel model)
    {
        (_problem, _model) = (problem, model);
        _horizon = Horizon(problem, model);
        Days = model.Constraints.Variable(0, _horizon);
        var waitedFor = problem.Jobs.SelectMany(job => job.NeedsPlaces).ToHashSet();
        for (var product = 0; product < problem.Products.Count; product++)
        {
            AddArrivals(product, waitedFor);
        }

        foreach (var late in _late.Values)
        {
            Order(late);
        }

        Starts = [.. problem.Jobs.Select(job => model.Constraints.Variable(0, _horizon - job.Days))];
        AddWork();
    }

    public int Days { get; }

    /// <summary>For each job; 0 where it is not done.</summary>
    public int[] Starts { get; }

    /// <summary>Whether there is any day but the first.</summary>
    public static bool Varies(PlanProblem problem, PlanModel model) => Horizon(problem, model) > 0;

    private static long Horizon(PlanProblem problem, PlanModel model) =>
        problem.Offers.Where((_, offer) => model.Needs.Packs[offer] > 0).Select(offer => (long)offer.ArrivesOn).DefaultIfEmpty(0).Max()
        + problem.Jobs.Sum(job => (long)job.Days);

    private void AddArrivals(int product, HashSet<int> waitedFor)
    {
        var byDay = new SortedDictionary<int, LinearSum> { [0] = new LinearSum().Add(_problem.Products[product].InHand) };
        for (var offer = 0; offer < _problem.Offers.Count; offer++)
        {
            if (_model.Needs.Packs[offer] > 0 && PlanNeeds.Pieces(_problem.Offers[offer].Holds).GetValueOrDefault(product) is > 0 and var pieces)
            {
                var day = _problem.Offers[offer].ArrivesOn;
                byDay.TryAdd(day, new LinearSum());
                byDay[day].Add(_model.Packs[offer], pieces);
            }
        }

        if (byDay.Count == 1)
        {
            return;
        }

        var demands = new SortedDictionary<int, (LinearSum Pieces, long Most)>();
        for (var place = 0; place < _problem.Places.Count; place++)
        {
            var takes = _model.Takes(place, product).ToList();
            if (takes.Count > 0)
            {
                var group = waitedFor.Contains(place) ? place : Others;
                var (sum, most) = demands.GetValueOrDefault(group, (new LinearSum(), 0));
                takes.ForEach(take => sum.Add(take.Flag, take.Pieces));
                demands[group] = (sum, most + takes.Max(take => take.Pieces));
            }
        }

        if (demands.Count == 1)
        {
            AddAlone(demands.Keys.Single(), demands.Values.Single().Pieces, byDay);
        }
        else if (demands.Count > 1)
        {
            AddShared(demands, byDay);
        }
    }

    private void AddAlone(int group, LinearSum demand, SortedDictionary<int, LinearSum> byDay)
    {
        var missing = new LinearSum().Add(demand);
        foreach (var (day, supply) in byDay)
        {
            if (day > 0)
            {
                _model.Constraints.AtMost(missing, 0, ConstraintModel.Not(Late(group, day)));
            }

            missing = new LinearSum().Add(missing).Add(supply, -1);
        }
    }

    private void AddShared(SortedDictionary<int, (LinearSum Pieces, long Most)> demands, SortedDictionary<int, LinearSum> byDay)
    {
        var missing = demands.ToDictionary(demand => demand.Key, demand => new LinearSum().Add(demand.Value.Pieces));
        foreach (var (day, supply) in byDay)
        {
            var given = new LinearSum().Add(supply, -1);
            foreach (var (group, demand) in demands)
            {
                var pieces = _model.Constraints.Variable(0, demand.Most);
                given.Add(pieces, 1);
                missing[group].Add(pieces, -1);
                if (day > 0)
                {
                    _model.Constraints.AtMost(new LinearSum().Add(pieces, 1).Add(Late(group, day), -demand.Most), 0);
                }
            }

            _model.Constraints.AtMost(given, 0);
        }

        foreach (var lacking in missing.Values)
        {
            _model.Constraints.AtMost(lacking, 0);
        }
    }

    /// <summary>Something that is taken there arrives on this day or later.</summary>
    private int Late(int group, int day)
    {
        _late.TryAdd(group, []);
        if (!_late[group].TryGetValue(day, out var flag))
        {
            _late[group][day] = flag = _model.Constraints.Flag();
        }

        return flag;
    }

    private void Order(SortedDictionary<int, int> late)
    {
        var flags = late.Values.ToList();
        for (var index = 1; index < flags.Count; index++)
        {
            _model.Constraints.AnyOf([ConstraintModel.Not(flags[index]), flags[index - 1]]);
        }

        _model.Constraints.AtMost(Ready(late).Add(Days, -1), 0);
    }

    private static LinearSum Ready(SortedDictionary<int, int> late)
    {
        var ready = new LinearSum();
        var before = 0;
        foreach (var (day, flag) in late)
        {
            ready.Add(flag, day - before);
            before = day;
        }

        return ready;
    }

    private void AddWork()
    {
        var held = new SortedDictionary<int, List<int>>();
        for (var job = 0; job < Starts.Length; job++)
        {
            var (work, start, done) = (_problem.Jobs[job], Starts[job], _model.Jobs[job]);
            _model.Constraints.AtMost(new LinearSum().Add(start, 1), 0, ConstraintModel.Not(done));
            _model.Constraints.AtMost(new LinearSum().Add(start, 1).Add(Days, -1), -work.Days, done);
            foreach (var place in work.NeedsPlaces.Distinct().Where(_late.ContainsKey))
            {
                _model.Constraints.AtMost(Ready(_late[place]).Add(start, -1), 0, done);
            }

            foreach (var before in work.AfterJobs.Distinct())
            {
                _model.Constraints.AtMost(new LinearSum().Add(Starts[before], 1).Add(start, -1), -_problem.Jobs[before].Days, done, _model.Jobs[before]);
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
