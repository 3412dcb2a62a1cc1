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
internal sealed record ConstraintAnswer(ConstraintStatus Status, IReadOnlyList<long> Values, long Bound, double Work)
{
    /// <summary>Where nothing holds: of the flags that were assumed, some that suffice for that.</summary>
    public IReadOnlyList<int> Core { get; init; } = [];
}

/// <summary>
/// With <see cref="SolverReports"/> the only place that names the solver: whole-number variables, flags (0 or 1), linear bounds, clauses, work that does not
/// overlap.
/// </summary>
/// <remarks>One worker and a fixed seed: the same model gives the same answer.</remarks>
internal sealed class ConstraintModel
{
    // The second level of linear relaxation is what closes fixed charges (parcels): without it a model of 40 x 12 took a hundred times as long.
    // Probing takes a tenth of the time of one engine's plan and finds nothing in it. Nor do symmetries, and all but the first round of making it smaller.
    private const string Parameters =
        "num_workers:1 random_seed:42 linearization_level:2 cp_model_probing_level:0 symmetry_level:0 max_presolve_iterations:1 ";

    private readonly CpModelProto _model = new();
    private readonly List<LinearRow> _rows = [];
    private readonly List<(long Least, long Most)> _ranges = [];
    private LinearSum _least = new();

    /// <summary>What holds without conditions, as linear bounds.</summary>
    public IReadOnlyList<LinearRow> Rows => _rows;

    public IReadOnlyList<(long Least, long Most)> Ranges => _ranges;

    public static int Not(int flag) => -flag - 1;

    public int Variable(long least, long most)
    {
        _model.Variables.Add(new IntegerVariableProto { Domain = { least, most } });
        _ranges.Add((least, most));
        return _ranges.Count - 1;
    }

    /// <summary>From here on, each variable only there.</summary>
    public void Narrow(IReadOnlyList<(long Least, long Most)> ranges)
    {
        for (var variable = 0; variable < ranges.Count; variable++)
        {
            Narrow(variable, ranges[variable].Least, ranges[variable].Most);
        }
    }

    public void Narrow(int variable, long least, long most)
    {
        if (_ranges[variable] != (least, most))
        {
            _ranges[variable] = (least, most);
            _model.Variables[variable] = new IntegerVariableProto { Domain = { least, most } };
        }
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
        if (when.Length == 0)
        {
            _rows.Add(new LinearRow([.. linear.Vars], [.. linear.Coeffs], linear.Domain[0], linear.Domain[1]));
        }
    }

    public void AtMost(LinearSum sum, long most, params ReadOnlySpan<int> when) => Between(sum, long.MinValue, most, when);

    public void AtLeast(LinearSum sum, long least, params ReadOnlySpan<int> when) => Between(sum, least, long.MaxValue, when);

    public void AnyOf(IReadOnlyList<int> flags)
    {
        Add(new ConstraintProto { BoolOr = new BoolArgumentProto { Literals = { flags } } });
        AddRow(flags, 1, long.MaxValue);
    }

    public void ExactlyOne(IReadOnlyList<int> flags)
    {
        Add(new ConstraintProto { ExactlyOne = new BoolArgumentProto { Literals = { flags } } });
        AddRow(flags, 1, 1);
    }

    public void AtMostOne(IReadOnlyList<int> flags)
    {
        Add(new ConstraintProto { AtMostOne = new BoolArgumentProto { Literals = { flags } } });
        AddRow(flags, long.MinValue, 1);
    }

    /// <summary>A stretch that is there where its flag is set; to be given to <see cref="NoOverlap"/>.</summary>
    public int Stretch(int start, long length, int flag)
    {
        var size = new LinearExpressionProto { Offset = length };
        var interval = new IntervalConstraintProto { Start = Linear(start, 0), Size = size, End = Linear(start, length) };
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

    /// <param name="values">Where to begin: an answer of this model, or of its first variables.</param>
    public void Begin(IReadOnlyList<long> values)
    {
        _model.SolutionHint = new PartialVariableAssignment { Vars = { Enumerable.Range(0, values.Count) }, Values = { values } };
    }

    /// <summary>These flags are set, and of an answer "infeasible" it is told which of them that took. Not together with something to minimise.</summary>
    public void Assume(IEnumerable<int> flags) => _model.Assumptions.AddRange(flags);

    public ConstraintAnswer Solve(double work, Action<long?, long>? told, CancellationToken stop)
    {
        using var solve = new SolveWrapper();
        using var reports = new SolverReports(told, solve, () => _least);
        using var bounds = new SolverBounds(reports);
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
        return new ConstraintAnswer(status, response.Solution, UpTo(response.BestObjectiveBound), response.DeterministicTime)
        {
            Core = response.SufficientAssumptionsForInfeasibility,
        };
    }

    private static LinearExpressionProto Linear(int variable, long offset) => new() { Vars = { variable }, Coeffs = { 1 }, Offset = offset };

    /// <summary>The bound is a whole number seen through a double.</summary>
    internal static long UpTo(double bound) => double.Abs(bound) < 1e18 ? (long)double.Ceiling(bound - 1e-6) : bound < 0 ? long.MinValue : long.MaxValue;

    private void AddRow(IReadOnlyList<int> flags, long least, long most)
    {
        var sum = new LinearSum();
        foreach (var flag in flags)
        {
            sum.Add(flag, 1);
        }

        _rows.Add(new LinearRow(
            [.. sum.Factors.Keys],
            [.. sum.Factors.Values],
            least == long.MinValue ? least : least - sum.Constant,
            most == long.MaxValue ? most : most - sum.Constant));
    }

    private void Add(ConstraintProto constraint, params ReadOnlySpan<int> when)
    {
        foreach (var flag in when)
        {
            constraint.EnforcementLiteral.Add(flag);
        }

        _model.Constraints.Add(constraint);
    }
}
