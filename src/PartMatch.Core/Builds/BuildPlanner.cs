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
    /// <param name="known">What is known of the same problem; null: nothing.</param>
    internal static SolvedPlan SolveWithWishes(
        PlanRun run, PlanObjective objective, PlanEffort effort, Action<PlanProgress>? told = null, Func<WrittenPlan, PlanProblem>? adjust = null,
        IReadOnlyCollection<int>? without = null, KnownAnswers? known = null, CancellationToken stop = default)
    {
        IReadOnlySet<int> dropped = new HashSet<int>(without ?? []);
        var isFoundOut = true;
        known ??= new KnownAnswers();
        var solved = known.Find(dropped) == false ? SolvedPlan.None(run.Write()) : run.Solve(objective, effort, dropped, adjust, told, stop);
        if (solved.Solution.Status == PlanStatus.Infeasible && SoftWishes(run.Terms, solved.Written).Count > 0)
        {
            known.AddConflict((adjust is null ? solved.Written.Problem : adjust(solved.Written)).Grounds.Except(dropped).ToHashSet());
            SolveGivingWay();
            if (solved.Solution.Status == PlanStatus.Infeasible && known.Find(dropped) != false)
            {
                // By a rule that was learned since, what was found to hold does not.
                known.ForgetPlans();
                SolveGivingWay();
            }
        }

        // A plan that gives up what perhaps could have been kept is not proven to be the one that was asked for.
        var isProven = isFoundOut || solved.Solution.Status != PlanStatus.ProvenOptimal;
        var solution = isProven ? solved.Solution : solved.Solution with { Status = PlanStatus.BestFound };
        int[] givenUp = solved.Solution.Choices.Count == 0 ? [] : [.. dropped.Except(without ?? []).Order()];
        return solved with { Solution = solution, IsFoundOut = isFoundOut, GivenUp = [.. givenUp.Select(ground => solved.Written.Grounds[ground])] };

        void SolveGivingWay()
        {
            (dropped, isFoundOut) = GiveWay(run, effort, adjust, new HashSet<int>(without ?? []), known, stop);
            solved = known.Find(dropped) == false ? solved : run.Solve(objective, effort, dropped, adjust, told, stop);
        }
    }

    /// <summary>The grounds that do not hold once what is to be kept "if possible" has given way, no more of it than has to.</summary>
    /// <param name="without">Grounds that do not hold, besides.</param>
    /// <param name="known">What is known of the same problem.</param>
    /// <returns>And whether it was found out of every such wish.</returns>
    internal static (IReadOnlySet<int> Dropped, bool IsFoundOut) GiveWay(
        PlanRun run, PlanEffort effort, Func<WrittenPlan, PlanProblem>? adjust, IReadOnlySet<int> without, KnownAnswers known, CancellationToken stop)
    {
        bool? CanHold(IEnumerable<int> dropped) => known.CanHold(dropped.ToHashSet(), given => run.FindHeld(given, effort, adjust, expectsNone: false, stop));

        var soft = SoftWishes(run.Terms, run.Write());
        if (soft.Count > 1)
        {
            // What keeps every plan away whatever it costs and however long it takes answers for most of the wishes at once.
            CanHold(without.Union(run.Limits));
        }

        if (CanHold(without) == true)
        {
            return (without, true);
        }

        var dropped = without.Union(soft).ToHashSet();
        var isFoundOut = true;
        foreach (var wish in known.Find(dropped) == false ? [] : soft)
        {
            dropped.Remove(wish);
            var canHold = CanHold(dropped);
            isFoundOut &= canHold is not null;
            if (canHold != true)
            {
                dropped.Add(wish);
            }
        }

        return (dropped, isFoundOut);
    }

    /// <summary>Wishes that give way, in the order of the family's positions.</summary>
    internal static IReadOnlyList<int> SoftWishes(BuildTerms terms, WrittenPlan written) =>
    [
        .. terms.Facts.Family.Positions.Where(position => terms.At(position.Code).Keep == KeepWish.KeepIfPossible)
            .Select(position => written.Grounds.Index().First(ground => ground.Item.Name == $"keep:{position.Code}").Index),
    ];
}
