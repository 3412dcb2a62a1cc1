namespace PartMatch.Core.Planning;

public enum PlanConflictStatus
{
    /// <summary>These cannot hold together, and without any one of them the others can.</summary>
    Minimal,

    /// <summary>These cannot hold together; the limit or the stop came before each of them was shown to be needed for that.</summary>
    NotReduced,

    /// <summary>Whether all can hold together was not found out.</summary>
    OutOfTime,
}

/// <summary>Why there is no plan.</summary>
/// <param name="Grounds">In the order in which they were given. Empty where there is no plan even without any of them.</param>
public sealed record PlanConflict(PlanConflictStatus Status, IReadOnlyList<int> Grounds)
{
    /// <param name="grounds">What may be given up. Of several conflicts, the one among those that stand first is found; every other ground holds.</param>
    /// <param name="effort">For each question whether some of them can hold together.</param>
    /// <returns>Null where all hold together.</returns>
    /// <remarks>Source: U. Junker, "QuickXplain: preferred explanations and relaxations for over-constrained problems", AAAI 2004, 167-172.</remarks>
    public static PlanConflict? Find(PlanProblem problem, IReadOnlyList<int> grounds, PlanEffort effort, CancellationToken stop = default)
    {
        PlanProblemCheck.Check(problem);
        return Find(grounds, dropped => PlanSearch.ForAny(problem, dropped, tellsWhy: false).Find(effort.Work, stop).Status switch
        {
            ConstraintStatus.Infeasible => false,
            ConstraintStatus.NothingFound => null,
            _ => true,
        });
    }

    /// <param name="canHold">Can all hold together where these are dropped? Null where that was not found out.</param>
    /// <inheritdoc cref="Find(PlanProblem, IReadOnlyList{int}, PlanEffort, CancellationToken)"/>
    internal static PlanConflict? Find(IReadOnlyList<int> grounds, Func<IReadOnlySet<int>, bool?> canHold)
    {
        var asked = new Questions(grounds, canHold);
        return asked.CanHold(grounds) switch
        {
            true => null,
            null => new PlanConflict(PlanConflictStatus.OutOfTime, []),
            false => Needed(asked, asked.CanHold([]) == false ? [] : Reduce(asked, [], [], [.. grounds.Distinct()])),
        };
    }

    /// <summary>Members of a conflict among the candidates, where the background holds: at each step half of them at once.</summary>
    private static List<int> Reduce(Questions asked, List<int> background, List<int> added, List<int> candidates)
    {
        // What is not known counts as holding together: the set then stays a conflict, perhaps not the least one.
        if (added.Count > 0 && asked.CanHold(background) == false)
        {
            return [];
        }

        if (candidates.Count == 1)
        {
            return candidates;
        }

        var first = candidates[..(candidates.Count / 2)];
        var second = candidates[first.Count..];
        var fromSecond = Reduce(asked, [.. background, .. first], first, second);
        var fromFirst = Reduce(asked, [.. background, .. fromSecond], fromSecond, first);
        return [.. fromFirst, .. fromSecond];
    }

    /// <summary>Each member once more: without it, the others must hold together.</summary>
    private static PlanConflict Needed(Questions asked, List<int> conflict)
    {
        var isNeeded = true;
        foreach (var member in conflict.ToList())
        {
            var others = conflict.Where(other => other != member).ToList();
            switch (asked.CanHold(others))
            {
                case false:
                    conflict = others;
                    break;
                case null:
                    isNeeded = false;
                    break;
            }
        }

        return new PlanConflict(isNeeded ? PlanConflictStatus.Minimal : PlanConflictStatus.NotReduced, [.. asked.InOrder(conflict)]);
    }

    /// <summary>What was asked once is not asked again.</summary>
    private sealed class Questions(IReadOnlyList<int> grounds, Func<IReadOnlySet<int>, bool?> canHold)
    {
        private readonly Dictionary<string, bool?> _answers = [];

        public IEnumerable<int> InOrder(IReadOnlyCollection<int> held) => grounds.Distinct().Where(held.Contains);

        /// <returns>Null where the limit or the stop came first.</returns>
        public bool? CanHold(IReadOnlyCollection<int> held)
        {
            var key = string.Join(' ', InOrder(held));
            if (!_answers.TryGetValue(key, out var answer))
            {
                _answers[key] = answer = canHold(grounds.Except(held).ToHashSet());
            }

            return answer;
        }
    }
}
