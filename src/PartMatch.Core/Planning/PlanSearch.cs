namespace PartMatch.Core.Planning;

/// <summary>One model on its way through the measures: what was reached stays, and the next search begins where the last one ended.</summary>
internal sealed class PlanSearch
{
    private readonly PlanProblem _problem;
    private readonly int _narrowsFrom;
    private PlanSchedule? _schedule;
    private LinearSum _leading = new();
    private IReadOnlyList<long> _values = [];

    public PlanSearch(PlanProblem problem, IReadOnlySet<int> dropped, int narrowsFrom)
        : this(problem, dropped, new HashSet<int>(), isPaid: true, narrowsFrom)
    {
    }

    private PlanSearch(PlanProblem problem, IReadOnlySet<int> dropped, IReadOnlySet<int> flagged, bool isPaid, int narrowsFrom)
    {
        _narrowsFrom = narrowsFrom;
        _problem = problem with
        {
            Offers =
            [
                .. problem.Offers.Select(offer =>
                    offer.Ground is { } forbids && !dropped.Contains(forbids) && !flagged.Contains(forbids) ? offer with { Packs = 0 } : offer),
            ],
        };
        Model = new PlanModel(_problem, dropped, flagged, isPaid);
        Model.Constraints.Assume(Model.Flagged.Values);
        if (_problem.LastDay is { } last && Model.Holds(last.Ground))
        {
            Schedule.EndBy(last.Limit);
        }
    }

    public PlanModel Model { get; }

    /// <summary>Only for <see cref="Find"/>: where it is all the same what a plan costs, it is left out.</summary>
    /// <param name="tellsWhy">Where there is no plan, which grounds keep it away: see <see cref="WhyNone"/>.</param>
    public static PlanSearch ForAny(PlanProblem problem, IReadOnlySet<int> dropped, bool tellsWhy) =>
        new(problem, dropped, tellsWhy ? problem.Grounds : new HashSet<int>(), isPaid: false, int.MaxValue);

    public bool IsLarge => NarrowedSearch.Varying(Model.Constraints.Ranges) >= _narrowsFrom;

    /// <summary>Days come into the model when they are first asked for: most models are far smaller without them.</summary>
    public PlanSchedule Schedule => _schedule ??= new PlanSchedule(_problem, Model);

    /// <summary>Whether anything holds at all.</summary>
    public ConstraintAnswer Find(double work, CancellationToken stop)
    {
        Model.Constraints.Minimise(null);
        var answer = Model.Constraints.Solve(work, null, stop);
        Take(answer);
        return answer;
    }

    /// <summary>Grounds that suffice for an answer "infeasible" of <see cref="Find"/>.</summary>
    public IReadOnlySet<int> WhyNone(ConstraintAnswer answer)
    {
        var core = answer.Core.ToHashSet();
        return _problem.Grounds
            .Where(ground => Model.Flagged.TryGetValue(ground, out var flag) && (core.Contains(flag) || IsLimit(ground))).ToHashSet();
    }

    private bool IsLimit(int ground) => _problem.MostCost?.Ground == ground || _problem.LastDay?.Ground == ground;

    /// <summary>What a sum comes to in what was found last.</summary>
    public long Value(LinearSum sum) => NarrowedSearch.Value(sum, _values);

    /// <summary>As many measures as go into one sum, in one search: a small model is made ready once instead of once for each.</summary>
    /// <returns>How many of them were minimised: none where it was not proven; then what was found is where the next search begins.</returns>
    public (ConstraintAnswer Answer, int Count) MinimiseTogether(IReadOnlyList<LinearSum> sums, double work, CancellationToken stop)
    {
        var (sum, count) = RankedSum.Of(sums, Model.Constraints.Ranges);
        var answer = NarrowedSearch.Search(Model.Constraints, sum, _values, work, null, stop);
        Take(answer);
        if (answer.Status != ConstraintStatus.Optimal)
        {
            return (answer, 0);
        }

        foreach (var measure in sums.Take(count))
        {
            Keep(measure);
        }

        _leading = sums[0];
        return (answer, count);
    }

    /// <summary>One measure; it leads the search for the next ones.</summary>
    public ConstraintAnswer Minimise(LinearSum sum, double work, Action<long?, long>? told, CancellationToken stop)
    {
        var answer = NarrowedSearch.Minimise(Model.Constraints, sum, _values, _narrowsFrom, work, told, stop);
        if (answer.Status == ConstraintStatus.NothingFound && _values.Count > 0)
        {
            // Nothing better in the time: what an earlier search found holds.
            answer = answer with { Status = ConstraintStatus.Found, Values = _values, Bound = long.Max(answer.Bound, Least(sum)) };
        }

        Take(answer);
        Keep(sum);
        _leading = sum;
        return answer;
    }

    /// <summary>As many of the next measures as go into one sum, below the one before them: it is known already, but it leads the search.</summary>
    public (ConstraintAnswer Answer, int Count) MinimiseTies(IReadOnlyList<LinearSum> ties, double work, CancellationToken stop)
    {
        var (sum, count) = RankedSum.Of([_leading, .. ties], Model.Constraints.Ranges);
        if (count == 1)
        {
            (sum, count) = RankedSum.Of(ties, Model.Constraints.Ranges);
            count++;
        }

        // The leading measure has narrowed the model as far as its relaxation can.
        var answer = NarrowedSearch.Search(Model.Constraints, sum, _values, work, null, stop);
        Take(answer);
        foreach (var tie in ties.Take(count - 1))
        {
            Keep(tie);
        }

        return (answer, count - 1);
    }

    public PlanSolution Read(PlanStatus status, long bound)
    {
        var choices = Model.Choices.Select(flags => Array.FindIndex(flags, flag => _values[flag] == 1)).Select(made => made < 0 ? (int?)null : made).ToArray();
        var packs = Model.Packs
            .Select((variable, offer) => (int)(_values[variable] + Model.Parcels.Spare[offer].Sum(spare => _values[spare]))).ToArray();
        var doubts = Model.Doubts.Select(flag => _values[flag] == 1).ToArray();
        var (starts, days) = PlanCalendar.Settle(_problem, choices, packs, Starts(), HasDays ? (int)_values[Schedule.Days] : int.MaxValue);
        var totals = PlanReckoning.Add(_problem, choices, packs, starts, doubts, days);
        if (Model.IsPaid)
        {
            Compare("cost", totals.Cost, Model.Cost);
            Compare("risk", totals.Risk, Model.Risk);
        }

        if (HasDays)
        {
            Compare("days", totals.Days, Schedule.Sum);
        }

        return new PlanSolution(status, choices, packs, starts, doubts, totals, bound);
    }

    private bool HasDays => _schedule is not null && _schedule.Days < _values.Count;

    /// <summary>The model bounds everything from below; what it did not foresee is a fault of the model, and no plan.</summary>
    private void Compare(string what, long reckoned, LinearSum modelled)
    {
        var value = Value(modelled);
        if (reckoned > value)
        {
            throw new InvalidOperationException($"found {what} {reckoned} by adding up the plan, expected at most {value} as its model has it");
        }
    }

    /// <summary>No value of the sum is below it, whatever holds.</summary>
    private long Least(LinearSum sum) => sum.Constant + sum.Factors.Sum(factor =>
        factor.Value * (factor.Value > 0 ? Model.Constraints.Ranges[factor.Key].Least : Model.Constraints.Ranges[factor.Key].Most));

    private void Take(ConstraintAnswer answer) => _values = answer.Values.Count > 0 ? answer.Values : _values;

    private void Keep(LinearSum sum)
    {
        if (_values.Count > 0)
        {
            var value = Value(sum);
            Model.Constraints.AtMost(sum, value);
            if (_schedule is not null && sum == _schedule.Sum)
            {
                _schedule.EndBy(value);
            }
        }
    }

    /// <summary>Where no days were looked at, one job after the other: <see cref="PlanCalendar"/> moves each to where it can begin.</summary>
    private int?[] Starts()
    {
        var starts = new int?[_problem.Jobs.Count];
        var day = 0;
        foreach (var job in PlanCalendar.Order(_problem.Jobs) ?? [])
        {
            if (_values[Model.Jobs[job]] == 1)
            {
                starts[job] = HasDays ? (int)_values[Schedule.Starts[job]] : day;
                day += _problem.Jobs[job].Days;
            }
        }

        return starts;
    }
}
