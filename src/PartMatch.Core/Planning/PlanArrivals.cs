namespace PartMatch.Core.Planning;

/// <summary>The days on which what is taken at a place has arrived.</summary>
/// <remarks>
/// A place that work waits for has its own day; all other places have one together. Of a product that only one of them takes it is enough that what comes
/// by a day suffices; where several take it, which of them gets what comes when is decided too.
/// </remarks>
internal sealed class PlanArrivals
{
    private const int Others = -1;

    private readonly PlanProblem _problem;
    private readonly PlanModel _model;
    private readonly Dictionary<int, SortedDictionary<int, int>> _late = [];

    /// <param name="waitedFor">Places that work waits for.</param>
    public PlanArrivals(PlanProblem problem, PlanModel model, HashSet<int> waitedFor)
    {
        (_problem, _model) = (problem, model);
        var supplies = Supplies();
        for (var product = 0; product < problem.Products.Count; product++)
        {
            if (supplies[product].Count > 1)
            {
                AddArrivals(product, supplies[product], waitedFor);
            }
        }
    }

    /// <summary>All has arrived by the day of this variable.</summary>
    public void EndOn(int days)
    {
        foreach (var late in _late.Values)
        {
            var flags = late.Values.ToList();
            for (var index = 1; index < flags.Count; index++)
            {
                _model.Constraints.AnyOf([ConstraintModel.Not(flags[index]), flags[index - 1]]);
            }

            _model.Constraints.AtMost(Ready(late).Add(days, -1), 0);
        }
    }

    /// <summary>What arrives later than this day is of no use.</summary>
    public void EndBy(long day)
    {
        foreach (var (_, flag) in _late.Values.SelectMany(late => late).Where(late => late.Key > day))
        {
            _model.Constraints.Narrow(flag, 0, 0);
        }
    }

    /// <summary>The day on which a place that work waits for is ready; null where nothing comes there after the first.</summary>
    public LinearSum? FindReady(int place) => _late.TryGetValue(place, out var late) ? Ready(late) : null;

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
}
