using System.Text.Json;
using PartMatch.Core.Orders;
using PartMatch.Core.Planning;

namespace PartMatch.Core.Builds;

/// <summary>
/// Plans that were thought to the end: <i>why</i>, <i>why not</i> and the trade-off begin with the plan that the builder has before him. It can be forgotten at any time.
/// </summary>
internal sealed class PlanMemory
{
    /// <summary>Each holds its problem, half a megabyte for an engine of eighty positions.</summary>
    private const int MostPlans = 32;

    private readonly Dictionary<Question, SolvedPlan> _plans = [];
    private readonly Lock _lock = new();

    private sealed record Question(BuildFacts Facts, string Bought, string Build, PlanObjective Objective, DateOnly Today, PlanEffort Effort);

    /// <param name="solve">Asked where it is not remembered.</param>
    public SolvedPlan Solve(BuildFacts facts, Build build, PlanObjective objective, DateOnly today, PlanEffort effort, Func<SolvedPlan> solve)
    {
        // Lists in records have no equality of their own; as text a build has.
        var question = new Question(facts with { Bought = BuildBought.None }, facts.Bought.Key, JsonSerializer.Serialize(build), objective, today, effort);
        lock (_lock)
        {
            if (_plans.TryGetValue(question, out var known))
            {
                return known;
            }
        }

        var solved = solve();
        if (solved is { IsFoundOut: true, Solution.Status: PlanStatus.ProvenOptimal or PlanStatus.Infeasible })
        {
            lock (_lock)
            {
                if (_plans.Count >= MostPlans)
                {
                    _plans.Clear();
                }

                _plans[question] = solved;
            }
        }

        return solved;
    }
}
