using System.Runtime.ExceptionServices;
using Google.OrTools.Sat;

namespace PartMatch.Core.Planning;

internal enum ConstraintStatus
{
    Optimal,
    Found,
    Infeasible,
    NothingFound,
}

/// <param name="Values">Of each variable; empty where nothing was found.</param>
/// <param name="Bound">Of what is minimised.</param>
/// <param name="Work">Spent, in the unit of <see cref="PlanEffort"/>.</param>
internal sealed record ConstraintAnswer(ConstraintStatus Status, IReadOnlyList<long> Values, long Bound, double Work);

/// <summary>The only file that names the solver: whole-number variables, flags (0 or 1), linear bounds, clauses, work that does not overlap.</summary>
/// <remarks>One worker and a fixed seed: the same model gives the same answer.</remarks>
internal sealed class ConstraintModel
{
    // The second level of linear relaxation is what closes fixed charges (parcels): without it a model of 40 x 12 took a hundred times as long.
    private const string Parameters = "num_workers:1 random_seed:42 linearization_level:2 ";

    private readonly CpModelProto _model = new();
    private LinearSum _least = new();

    public static int Not(int flag) => -flag - 1;

    public int Variable(long least, long most)
    {
        _model.Variables.Add(new IntegerVariableProto { Domain = { least, most } });
        return _model.Variables.Count - 1;
    }

    public int Flag() => Variable(0, 1);

    /// <param name="when">Flags that must all be set for it to be asked.</param>
    public void Between(LinearSum sum, long least, long most, params ReadOnlySpan<int> when)
    {
        var linear = new LinearConstraintProto();
        foreach (var (variable, factor) in sum.Factors)
        {
            linear.Vars.Add(variable);
            linear.Coeffs.Add(factor);
        }

        linear.Domain.Add(least == long.MinValue ? least : least - sum.Constant);
        linear.Domain.Add(most == long.MaxValue ? most : most - sum.Constant);
        Add(new ConstraintProto { Linear = linear }, when);
    }

    public void AtMost(LinearSum sum, long most, params ReadOnlySpan<int> when) => Between(sum, long.MinValue, most, when);

    public void AtLeast(LinearSum sum, long least, params ReadOnlySpan<int> when) => Between(sum, least, long.MaxValue, when);

    public void AnyOf(IEnumerable<int> flags, params ReadOnlySpan<int> when) =>
        Add(new ConstraintProto { BoolOr = new BoolArgumentProto { Literals = { flags } } }, when);

    public void ExactlyOne(IEnumerable<int> flags) => Add(new ConstraintProto { ExactlyOne = new BoolArgumentProto { Literals = { flags } } });

    public void AtMostOne(IEnumerable<int> flags) => Add(new ConstraintProto { AtMostOne = new BoolArgumentProto { Literals = { flags } } });

    /// <summary>A stretch that is there where its flag is set; to be given to <see cref="NoOverlap"/>.</summary>
    public int Stretch(int start, long length, int flag)
    {
        var interval = new IntervalConstraintProto { Start = Linear(start, 0), Size = new LinearExpressionProto { Offset = length }, End = Linear(start, length) };
        Add(new ConstraintProto { Interval = interval }, flag);
        return _model.Constraints.Count - 1;
    }

    public void NoOverlap(IEnumerable<int> stretches) => Add(new ConstraintProto { NoOverlap = new NoOverlapConstraintProto { Intervals = { stretches } } });

    public void Minimise(LinearSum? sum)
    {
        _least = sum ?? new LinearSum();
        _model.Objective = null;
        if (sum is not null)
        {
            _model.Objective = new CpObjectiveProto { Offset = sum.Constant };
            foreach (var (variable, factor) in sum.Factors)
            {
                _model.Objective.Vars.Add(variable);
                _model.Objective.Coeffs.Add(factor);
            }
        }
    }

    /// <summary>Where to begin: an answer of this model as it was, or part of one.</summary>
    public void Begin(IEnumerable<KeyValuePair<int, long>> values)
    {
        _model.SolutionHint = new PartialVariableAssignment();
        foreach (var (variable, value) in values)
        {
            _model.SolutionHint.Vars.Add(variable);
            _model.SolutionHint.Values.Add(value);
        }
    }

    public ConstraintAnswer Solve(double work, Action<long?, long>? told, CancellationToken stop)
    {
        using var solve = new SolveWrapper();
        using var reports = new Reports(told, solve, () => _least);
        using var bounds = new Bounds(reports);
        solve.SetStringParameters(FormattableString.Invariant($"{Parameters} max_deterministic_time:{work:R}"));
        if (told is not null)
        {
            solve.AddSolutionCallback(reports);
            solve.AddBestBoundCallbackFromClass(bounds);
        }

        // Registered on this very search, so that a stop before its first step is not lost.
        using var stopping = stop.Register(solve.StopSearch);
        var response = solve.Solve(_model);
        reports.Failure?.Throw();
        var status = response.Status switch
        {
            CpSolverStatus.Optimal => ConstraintStatus.Optimal,
            CpSolverStatus.Feasible => ConstraintStatus.Found,
            CpSolverStatus.Infeasible => ConstraintStatus.Infeasible,
            CpSolverStatus.Unknown => ConstraintStatus.NothingFound,
            _ => throw new InvalidOperationException($"the solver refuses the model: {response.SolutionInfo}"),
        };
        return new ConstraintAnswer(status, response.Solution, UpTo(response.BestObjectiveBound), response.DeterministicTime);
    }

    private static LinearExpressionProto Linear(int variable, long offset) => new() { Vars = { variable }, Coeffs = { 1 }, Offset = offset };

    /// <summary>The bound is a whole number seen through a double.</summary>
    private static long UpTo(double bound) => double.Abs(bound) < 1e18 ? (long)double.Ceiling(bound - 1e-6) : bound < 0 ? long.MinValue : long.MaxValue;

    private void Add(ConstraintProto constraint, params ReadOnlySpan<int> when)
    {
        foreach (var flag in when)
        {
            constraint.EnforcementLiteral.Add(flag);
        }

        _model.Constraints.Add(constraint);
    }

    /// <summary>What is told comes from the solver's own thread; a failure of the listener must not fall through native code.</summary>
    private sealed class Reports(Action<long?, long>? told, SolveWrapper solve, Func<LinearSum> least) : SolutionCallback
    {
        private readonly Lock _lock = new();
        private long? _best;
        private long _bound = long.MinValue;

        public ExceptionDispatchInfo? Failure { get; private set; }

        public override void OnSolutionCallback()
        {
            var sum = least();
            var value = sum.Constant;
            foreach (var (variable, factor) in sum.Factors)
            {
                value += factor * SolutionIntegerValue(variable);
            }

            Tell(value, UpTo(BestObjectiveBound()));
        }

        public void Tell(long? best, long bound)
        {
            lock (_lock)
            {
                _best = best ?? _best;
                _bound = long.Max(_bound, bound);
                try
                {
                    told?.Invoke(_best, _bound);
                }
                catch (Exception failure) when (Failure is null)
                {
                    Failure = ExceptionDispatchInfo.Capture(failure);
                    solve.StopSearch();
                }
            }
        }
    }

    private sealed class Bounds(Reports reports) : BestBoundCallback
    {
        public override void NewBestBound(double bound) => reports.Tell(null, UpTo(bound));
    }
}
