namespace PartMatch.Core.Builds;

/// <summary>Which sets of wishes and facts were found to hold together: giving up more never breaks what held, holding more never mends what did not.</summary>
internal sealed class KnownAnswers
{
    private readonly List<IReadOnlySet<int>> _enough = [];
    private readonly List<IReadOnlySet<int>> _conflicts = [];
    private readonly Lock _lock = new();

    /// <summary>Sets of which each cannot hold together, though some may be larger than they need be.</summary>
    public IReadOnlyList<IReadOnlySet<int>> Conflicts
    {
        get
        {
            lock (_lock)
            {
                return [.. _conflicts];
            }
        }
    }

    /// <param name="enough">There is a plan that does without these and holds all others.</param>
    public void AddPlan(IReadOnlySet<int> enough)
    {
        lock (_lock)
        {
            _enough.Add(enough);
        }
    }

    public void AddConflict(IReadOnlySet<int> grounds)
    {
        lock (_lock)
        {
            _conflicts.Add(grounds);
        }
    }

    /// <summary>What was found to hold may no longer, by what was learned since; what cannot never can.</summary>
    public void ForgetPlans()
    {
        lock (_lock)
        {
            _enough.Clear();
        }
    }

    /// <summary>Null where nothing that is known answers it.</summary>
    public bool? Find(IReadOnlySet<int> dropped)
    {
        lock (_lock)
        {
            return _enough.Exists(enough => enough.IsSubsetOf(dropped)) ? true
                : _conflicts.Exists(conflict => !conflict.Overlaps(dropped)) ? false
                : null;
        }
    }

    /// <param name="dropped">Grounds that are given up.</param>
    /// <param name="ask">
    /// Asked where nothing that is known answers, null: not found out. With the grounds that the plan which was found does without, or with some that suffice
    /// for there being none: that answers for other sets too.
    /// </param>
    public bool? CanHold(IReadOnlySet<int> dropped, Func<IReadOnlySet<int>, (bool? CanHold, IReadOnlySet<int> Grounds)> ask)
    {
        if (Find(dropped) is { } known)
        {
            return known;
        }

        var (answer, grounds) = ask(dropped);
        if (answer == true)
        {
            AddPlan(grounds);
        }
        else if (answer == false)
        {
            AddConflict(grounds);
        }

        return answer;
    }
}
