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
        Sum = new LinearSum().Add(Days, 1);
        var waitedFor = problem.Jobs.SelectMany(job => job.NeedsPlaces.Concat(job.Orders is { } ordered ? [ordered] : Array.Empty<int>())).ToHashSet();
        var supplies = Supplies();
        for (var product = 0; product < problem.Products.Count; product++)
        {
            if (supplies[product].Count > 1)
            {
                AddArrivals(product, supplies[product], waitedFor);
            }
        }

        foreach (var late in _late.Values)
        {
            Order(late);
        }

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
        foreach (var (_, flag) in _late.Values.SelectMany(late => late).Where(late => late.Key > day))
        {
            _model.Constraints.Narrow(flag, 0, 0);
        }
    }

    private static long Horizon(PlanProblem problem, PlanModel model) =>
        problem.Offers.Where((_, offer) => model.Needs.Packs[offer] > 0).Select(offer => (long)offer.ArrivesOn).DefaultIfEmpty(0).Max()
        * (1 + problem.Jobs.Count(job => job.Orders is not null))
        + problem.Jobs.Sum(job => (long)job.Days);

    /// <summary>For each product, what comes on each day.</summary>
    private SortedDictionary<int, LinearSum>[] Supplies()
    {
        var supplies = _problem.Products.Select(product => new SortedDictionary<int, LinearSum> { [0] = new LinearSum().Add(product.InHand) }).ToArray();
        foreach (var (offer, sold) in _problem.Offers.Index().Where(offer => _model.Needs.Packs[offer.Index] > 0))
        {
            foreach (var (product, pieces) in PlanNeeds.Pieces(sold.Holds).Where(held => held.Value > 0))
            {
                supplies[product].TryAdd(sold.ArrivesOn, new LinearSum());
                supplies[product][sold.ArrivesOn].Add(_model.Packs[offer], pieces);
            }
        }

        return supplies;
    }

    private void AddArrivals(int product, SortedDictionary<int, LinearSum> byDay, HashSet<int> waitedFor)
    {
        var demands = new SortedDictionary<int, (LinearSum Pieces, long Most)>();
        foreach (var group in _model.Needs.Takes[product].GroupBy(take => waitedFor.Contains(take.Place) ? take.Place : Others))
        {
            demands[group.Key] = (_model.Demand(group), group.GroupBy(take => take.Place).Sum(here => here.Max(take => take.Pieces)));
        }

        if (demands.Count == 1)
        {
            var (pieces, most) = demands.Values.Single();
            AddAlone(demands.Keys.Single(), pieces, most, byDay);
        }
        else if (demands.Count > 1)
        {
            AddShared(demands, byDay);
        }
    }

    private void AddAlone(int group, LinearSum demand, long most, SortedDictionary<int, LinearSum> byDay)
    {
        var missing = new LinearSum().Add(demand);
        foreach (var (day, supply) in byDay)
        {
            if (day > 0)
            {
                _model.Constraints.AtMost(new LinearSum().Add(missing).Add(Late(group, day), -most), 0);
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

    /// <summary>When a job is done and what it orders is there.</summary>
    private LinearSum End(int job)
    {
        var work = _problem.Jobs[job];
        var end = work.Orders is { } place && _late.TryGetValue(place, out var late) ? Ready(late) : new LinearSum();
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
            foreach (var place in work.NeedsPlaces.Distinct().Where(_late.ContainsKey))
            {
                _model.Constraints.AtMost(Ready(_late[place]).Add(start, -1), 0, done);
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
