using PartMatch.Core.Planning;

namespace PartMatch.Core.Builds;

/// <summary>A smallest set of wishes and facts that no plan holds together.</summary>
/// <remarks>
/// Whether some can hold together is answered by a plan all of whose lines hold, so that without any one member there is one to build by.
/// </remarks>
internal sealed class ConflictSearch
{
    /// <summary>Of the conflicts that stand behind the first, so many are looked for. Ours, no source.</summary>
    private const int MostFurther = 20;

    /// <summary>Of conflicts of more members little would be known by asking ahead. Ours, no source.</summary>
    private const int MostAhead = 12;

    // Wishes before facts, and of the wishes those first that are a word to change.
    private static readonly string[] _order = ["force", ConflictMends.Budget, ConflictMends.NeededBy, "seller", "goal", "work", "keep", "renew", "parts", "refuse", "obtainable"];

    private readonly PlanRun _run;
    private readonly PlanAsked _asked;
    private readonly PlanEffort _effort;
    private readonly CancellationToken _stop;
    private readonly ForcedChoice? _force;
    private readonly IReadOnlyList<BuildGround> _grounds;
    private readonly IReadOnlyList<int> _soft;
    private readonly KnownAnswers _known = new();
    private readonly bool? _holds;

    /// <param name="run">In which the offers of refused sellers stand too: then they are a ground.</param>
    /// <param name="force">What has to be there besides; null where nothing is forced.</param>
    /// <param name="isNone">Is it known that there is no plan?</param>
    public ConflictSearch(PlanRun run, PlanAsked asked, PlanEffort effort, ForcedChoice? force, bool isNone, CancellationToken stop)
    {
        (_run, _asked, _effort, _force, _stop) = (run, asked, effort, force, stop);
        var written = run.Write();
        _soft = BuildPlanner.SoftWishes(run.Terms, written);
        _grounds = force is null ? written.Grounds : [.. written.Grounds, force.Ground];
        AddPlanWithoutForce();
        if (isNone)
        {
            _known.AddConflict(Adjust(written).Grounds.Except(_soft).ToHashSet());
        }

        // What keeps every plan away whatever it costs and however long it takes is found sooner.
        _holds = CanHold(run.Limits.ToHashSet(), isNone) == false ? false : CanHold(new HashSet<int>());
    }

    /// <param name="withFurther">Also those that stand behind the first: each is a smallest one where the members of the earlier ones are given up.</param>
    public BuildConflict Find(bool withFurther)
    {
        if (_holds != false)
        {
            return _holds is null ? new BuildConflict(_asked, OutOfTime, PlanWords.NoPlan(OutOfTime), [], LinkOf(_asked)) : Nothing(_asked);
        }

        var (found, further) = Conflicts(withFurther);
        var members = Mended([found?.Grounds ?? [], .. further.Select(one => one.Grounds)]);
        var enough = found is { Status: PlanConflictStatus.Minimal } && further.Count == 0
            ? Told(found.Grounds).Select(ground => CanHold(new HashSet<int> { ground })).ToList() : [];
        return new BuildConflict(
            _asked, found?.Status switch { PlanConflictStatus.Minimal => PlanStatus.Infeasible, PlanConflictStatus.NotReduced => PlanStatus.BestFound, _ => OutOfTime },
            Headline(found, members[0].Count, further.Count, enough), members[0], LinkOf(_asked))
        {
            Further = [.. members.Skip(1).Select(one => new FurtherConflict(one))],
        };
    }

    /// <summary>By the same rules throughout: what is learned on the way makes the search begin anew.</summary>
    private (PlanConflict? First, IReadOnlyList<PlanConflict> Further) Conflicts(bool withFurther)
    {
        while (true)
        {
            var learned = _run.Learned;
            var first = Reduce(new HashSet<int>());
            IReadOnlyList<PlanConflict> further = withFurther && first is { Status: PlanConflictStatus.Minimal } ? [.. Further(first)] : [];
            if (_run.Learned == learned)
            {
                return (first, further);
            }

            _known.ForgetPlans();
            AddPlanWithoutForce();
        }
    }

    /// <summary>The plan that the builder has before him is one, whatever is learned.</summary>
    private void AddPlanWithoutForce()
    {
        if (_force is { Without.Solution.Choices.Count: > 0 })
        {
            _known.AddPlan(new HashSet<int>([.. _soft, _grounds.Count - 1]));
        }
    }

    /// <summary>Each member of each conflict with what would resolve it.</summary>
    /// <remarks>Several at once: what becomes of the plan is a search of its own for each.</remarks>
    private IReadOnlyList<IReadOnlyList<ConflictMember>> Mended(IReadOnlyList<IReadOnlyList<int>> conflicts)
    {
        (int Conflict, int Ground)[] asked = [.. conflicts.SelectMany((found, conflict) => Told(found).Select(ground => (conflict, ground)))];
        var members = new ConflictMember[asked.Length];
        Parallel.For(
            0, asked.Length, new ParallelOptions { MaxDegreeOfParallelism = _effort.AtOnce },
            () => new ConflictMends(_run.ForAnotherThread(), _asked.Objective, _effort, Adjust, _grounds, _known, _force, _stop),
            (place, _, mends) =>
            {
                var (conflict, ground) = asked[place];
                members[place] = mends.Of(ground, [.. conflicts.Where((_, index) => index != conflict).SelectMany(grounds => grounds)]);
                return mends;
            },
            _ => { });
        return [.. conflicts.Select((_, conflict) => (IReadOnlyList<ConflictMember>)[.. members.Where((_, place) => asked[place].Conflict == conflict)])];
    }

    /// <summary>All of it can hold together.</summary>
    public static BuildConflict Nothing(PlanAsked asked) => new(asked, PlanStatus.ProvenOptimal, "Nothing conflicts: there is a plan.", [], LinkOf(asked));

    private static string LinkOf(PlanAsked asked) =>
        Catalogue.Permalink.To("/api/builds", asked.Build, "conflict").With("objective", Catalogue.Codes.Of(asked.Objective)).ToString();

    /// <summary>Where a wish names what is to be there, it goes without saying that something has to be.</summary>
    private IEnumerable<int> Told(IReadOnlyList<int> found) => found.Where(ground => !_grounds[ground].IsFact || !found.Any(other =>
        _grounds[other].Name == $"parts:{_grounds[ground].Position}" || _grounds[other].Name == $"keep:{_grounds[ground].Position}"));

    private IEnumerable<PlanConflict> Further(PlanConflict first)
    {
        HashSet<int> given = [.. first.Grounds];
        for (var more = 0; more < MostFurther && CanHold(given) == false && Reduce(given) is { Status: PlanConflictStatus.Minimal, Grounds.Count: > 0 } next; more++)
        {
            given.UnionWith(next.Grounds);
            yield return next;
        }
    }

    /// <summary>
    /// Among the wishes alone, where some plan holds without them; then also what would have to be found for sale, but not where money or time is short:
    /// whatever has to be bought would then be a member.
    /// </summary>
    /// <param name="given">What does not hold anyway.</param>
    private PlanConflict? Reduce(IReadOnlySet<int> given)
    {
        int[] all =
        [
            .. Enumerable.Range(0, _grounds.Count).Except(_soft).Except(given)
                .OrderBy(ground => Array.IndexOf(_order, _grounds[ground].Name.Split(':')[0])).ThenBy(ground => _grounds[ground].Name, StringComparer.Ordinal),
        ];
        int[] facts = [.. all.Where(ground => _grounds[ground].IsFact)];
        int[] wishes = [.. all.Except(facts)];
        bool? Hold(IEnumerable<int> dropped) => CanHold(dropped.Union(given).ToHashSet());
        AskAhead(all, given);
        if (Hold(wishes) == false)
        {
            return PlanConflict.Find(facts, dropped => Hold(dropped.Union(wishes)));
        }

        var found = PlanConflict.Find(wishes, Hold);
        return found is not { Status: PlanConflictStatus.Minimal } || found.Grounds.Any(IsLimit)
            ? found
            : PlanConflict.Find([.. found.Grounds, .. facts], dropped => Hold(dropped.Union(wishes.Except(found.Grounds))));
    }

    /// <summary>
    /// A few questions whose answers answer most of those by which the conflict is made small: of every conflict that is known what stands last is given up
    /// until the others hold; then, of the one that stands first, each other member instead.
    /// </summary>
    /// <param name="order">What may be given up, that which stands first first.</param>
    private void AskAhead(IReadOnlyList<int> order, IReadOnlySet<int> given)
    {
        var ranks = order.Index().ToDictionary(ground => ground.Item, ground => ground.Index);
        bool? HoldWithout(IEnumerable<int> dropped, bool expectsNone = false) => CanHold(dropped.Union(given).ToHashSet(), expectsNone);
        var asked = 0;
        while (Small() is { Count: > 0 } conflicts && conflicts.Count > asked)
        {
            asked = conflicts.Count;
            var lasts = conflicts.Select(conflict => conflict[^1]).ToHashSet();
            if (HoldWithout(lasts, expectsNone: true) == true)
            {
                var first = conflicts.MinBy(conflict => ranks[conflict[^1]])!; // there is one
                foreach (var other in first[..^1])
                {
                    HoldWithout(lasts.Except([first[^1]]).Append(other));
                }
            }
        }

        IReadOnlyList<int[]> Small() =>
        [
            .. _known.Conflicts.Where(conflict => !conflict.Overlaps(given))
                .Select(conflict => conflict.Where(ranks.ContainsKey).OrderBy(ground => ranks[ground]).ToArray())
                .Where(conflict => conflict.Length is > 0 and <= MostAhead),
        ];
    }

    private bool IsLimit(int ground) => _grounds[ground].Name is ConflictMends.Budget or ConflictMends.NeededBy;

    private PlanStatus OutOfTime => _stop.IsCancellationRequested ? PlanStatus.StoppedByYou : PlanStatus.OutOfTime;

    /// <param name="expectsNone">Is it likely that there is no plan? Then it is asked first what keeps it away.</param>
    private bool? CanHold(IReadOnlySet<int> dropped, bool expectsNone = false) =>
        _known.CanHold(dropped.Union(_soft).ToHashSet(), given => _run.FindHeld(given, _effort, Adjust, expectsNone, _stop));

    private PlanProblem Adjust(WrittenPlan written) =>
        _force is null ? written.Problem : Otherwise.Force(written, _force.Position, _force.IsIt, written.Grounds.Count);

    private static string Others(int further) => further switch
    {
        1 => "there is another conflict behind it",
        MostFurther => FormattableString.Invariant($"there are at least {further} other conflicts behind it"),
        _ => FormattableString.Invariant($"there are {further} other conflicts behind it"),
    };

    private static string Headline(PlanConflict? found, int members, int further, IReadOnlyCollection<bool?> enough) => (found?.Status, members) switch
    {
        (PlanConflictStatus.OutOfTime or null, _) => PlanWords.NoPlan(PlanStatus.OutOfTime),
        (_, 0) => "There is no plan even without any of your wishes.",
        (PlanConflictStatus.NotReduced, var count) =>
            FormattableString.Invariant($"{count} things cannot hold together; perhaps fewer of them already cannot: out of time."),
        (_, 1) => "One thing keeps every plan away"
            + (further > 0 ? $", and {Others(further)}." : enough.Contains(false) ? "; without it something else does."
                : enough.Contains(null) ? "." : "; without it there is one."),
        var (_, count) => FormattableString.Invariant($"{count} things cannot hold together")
            + (further > 0 ? $", and {Others(further)}." : enough.Contains(false) ? ". To change one of them is not always enough: see what is said of each."
                : enough.Contains(null) ? "." : "; without any one of them there is a plan."),
    };
}

/// <summary>What has to be at a position because it was asked about.</summary>
/// <param name="Without">The plan where it is not asked.</param>
internal sealed record ForcedChoice(string Position, Func<Candidate, bool> IsIt, BuildGround Ground, SolvedPlan Without);
