namespace PartMatch.Core.Planning;

/// <summary>One model on its way through the measures: what was reached stays, and the next search begins where the last one ended.</summary>
internal sealed class PlanSearch
{
    private readonly PlanProblem _problem;
    private PlanSchedule? _schedule;
    private IReadOnlyList<long> _values = [];

    public PlanSearch(PlanProblem problem, IReadOnlySet<int> dropped)
    {
        _problem = problem with
        {
            Offers = [.. problem.Offers.Select(offer => offer.Ground is { } forbids && !dropped.Contains(forbids) ? offer with { Packs = 0 } : offer)],
        };
        Model = new PlanModel(_problem, dropped);
        if (problem.LastDay is { } last && !(last.Ground is { } ground && dropped.Contains(ground)))
        {
            Model.Constraints.AtMost(new LinearSum().Add(Schedule.Days, 1), last.Limit);
        }
    }

    public PlanModel Model { get; }

    /// <summary>Days come into the model when they are first asked for: most models are far smaller without them.</summary>
    public PlanSchedule Schedule => _schedule ??= new PlanSchedule(_problem, Model);

    /// <summary>Of what was minimised last.</summary>
    public long Value { get; private set; }

    public ConstraintAnswer Minimise(LinearSum? sum, double work, Action<long?, long>? told, CancellationToken stop)
    {
        Model.Constraints.Minimise(sum);
        Model.Constraints.Begin(_values.Select((value, variable) => KeyValuePair.Create(variable, value)));
        var answer = Model.Constraints.Solve(work, told, stop);
        if (answer.Values.Count > 0)
        {
            _values = answer.Values;
        }

        if (_values.Count > 0 && sum is not null)
        {
            Value = sum.Constant + sum.Factors.Sum(factor => factor.Value * ValueOf(factor.Key));
            Model.Constraints.AtMost(sum, Value);
        }

        return answer;
    }

    public PlanSolution Read(PlanStatus status, long bound)
    {
        var choices = Model.Choices.Select(flags => Array.FindIndex(flags, flag => _values[flag] == 1)).Select(made => made < 0 ? (int?)null : made).ToArray();
        var packs = Model.Packs.Select(variable => (int)_values[variable]).ToArray();
        var doubts = Model.Doubts.Select(flag => _values[flag] == 1).ToArray();
        var (starts, days) = PlanCalendar.Settle(_problem, choices, packs, Starts());
        return new PlanSolution(status, choices, packs, starts, doubts, PlanReckoning.Add(_problem, choices, packs, starts, doubts, days), bound);
    }

    private long ValueOf(int variable) => variable < _values.Count ? _values[variable] : 0;

    /// <summary>Where no days were looked at, one job after the other: <see cref="PlanCalendar"/> moves each to where it can begin.</summary>
    private int?[] Starts()
    {
        var starts = new int?[_problem.Jobs.Count];
        var day = 0;
        foreach (var job in PlanCalendar.Order(_problem.Jobs) ?? [])
        {
            if (_values[Model.Jobs[job]] == 1)
            {
                starts[job] = _schedule is not null && _schedule.Days < _values.Count ? (int)_values[_schedule.Starts[job]] : day;
                day += _problem.Jobs[job].Days;
            }
        }

        return starts;
    }
}
