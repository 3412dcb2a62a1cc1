using PartMatch.Core.Planning;

namespace PartMatch.Core.Builds;

/// <summary>Which parts, which work and which offers make the engine that is wished for? The one reasoning behind every plan.</summary>
public static class BuildPlanner
{
    /// <param name="version">Of the build, for the answer to name.</param>
    /// <param name="today">The day of the question.</param>
    /// <param name="memory">Kept by the caller as long as the same facts of the family hold.</param>
    /// <param name="told">How far the first measure has come.</param>
    /// <param name="stop">What was found until then is the answer.</param>
    /// <exception cref="ArgumentException">Something in the build cannot be read; it was to be checked before.</exception>
    public static BuildPlan Plan(
        BuildFacts facts, Build build, int version, PlanObjective objective, DateOnly today, PlanEffort effort, FitMemory memory,
        Action<PlanProgress>? told = null, CancellationToken stop = default)
    {
        var run = new PlanRun(facts, build, today, memory);
        var solved = memory.Plans.Solve(facts, build, objective, today, effort, () => SolveWithWishes(run, objective, effort, told, stop: stop));
        var asked = new PlanAsked(build.Code, version, objective, run.Terms.StartOn);
        var trust = PlanTrust.Reckon(run, solved, objective, effort, stop);
        return PlanReader.Read(run, solved, asked, trust, KeptWishes.Reckon(run, solved, objective, effort, stop));
    }

    /// <summary>What is to be kept "if possible" is kept wherever there is any plan that keeps it; where not all can be, those that stand first in the family.</summary>
    /// <param name="without">Grounds that do not hold, besides.</param>
    internal static SolvedPlan SolveWithWishes(
        PlanRun run, PlanObjective objective, PlanEffort effort, Action<PlanProgress>? told = null, Func<WrittenPlan, PlanProblem>? adjust = null,
        IReadOnlyCollection<int>? without = null, CancellationToken stop = default)
    {
        HashSet<int> dropped = [.. without ?? []];
        var isFoundOut = true;
        var solved = run.Solve(objective, effort, dropped, adjust, told, stop);
        if (solved.Solution.Status == PlanStatus.Infeasible && SoftWishes(run.Terms, solved.Written) is [_, ..] soft)
        {
            dropped.UnionWith(soft);
            var known = new KnownAnswers();
            foreach (var wish in soft)
            {
                dropped.Remove(wish);
                var canHold = known.CanHold(dropped.ToHashSet(), given => run.FindHeld(given, effort, adjust, stop));
                isFoundOut &= canHold is not null;
                if (canHold != true)
                {
                    dropped.Add(wish);
                }
            }

            solved = run.Solve(objective, effort, dropped, adjust, told, stop);
        }

        // A plan that gives up what perhaps could have been kept is not proven to be the one that was asked for.
        var isProven = isFoundOut || solved.Solution.Status != PlanStatus.ProvenOptimal;
        var solution = isProven ? solved.Solution : solved.Solution with { Status = PlanStatus.BestFound };
        int[] givenUp = solved.Solution.Choices.Count == 0 ? [] : [.. dropped.Except(without ?? []).Order()];
        return solved with { Solution = solution, IsFoundOut = isFoundOut, GivenUp = [.. givenUp.Select(ground => solved.Written.Grounds[ground])] };
    }

    /// <summary>Wishes that give way, in the order of the family's positions.</summary>
    internal static IReadOnlyList<int> SoftWishes(BuildTerms terms, WrittenPlan written) =>
    [
        .. terms.Facts.Family.Positions.Where(position => terms.At(position.Code).Keep == KeepWish.KeepIfPossible)
            .Select(position => written.Grounds.Index().First(ground => ground.Item.Name == $"keep:{position.Code}").Index),
    ];
}
