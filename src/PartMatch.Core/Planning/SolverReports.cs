using System.Runtime.ExceptionServices;
using Google.OrTools.Sat;

namespace PartMatch.Core.Planning;

/// <summary>What is told comes from the solver's own thread; a failure of the listener must not fall through native code.</summary>
internal sealed class SolverReports(Action<long?, long>? told, SolveWrapper solve, Func<LinearSum> least) : SolutionCallback
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

        Tell(value, ConstraintModel.UpTo(BestObjectiveBound()));
    }

    public void Tell(long? best, long bound)
    {
        lock (_lock)
        {
            _best = best ?? _best;
            _bound = long.Max(_bound, bound);
            try
            {
                if (Failure is null)
                {
                    told?.Invoke(_best, _bound);
                }
            }
            catch (Exception failure)
            {
                Failure = ExceptionDispatchInfo.Capture(failure);
                solve.StopSearch();
            }
        }
    }
}

/// <summary>Passes on what the solver found no plan to be below.</summary>
internal sealed class SolverBounds(SolverReports reports) : BestBoundCallback
{
    public override void NewBestBound(double bound) => reports.Tell(null, ConstraintModel.UpTo(bound));
}
