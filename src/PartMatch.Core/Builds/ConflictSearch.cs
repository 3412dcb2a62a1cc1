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
    public ConflictSearch(PlanRun run, PlanAsked asked, PlanEffort effort, ForcedChoice? force, CancellationToken stop)
    {
        (_run, _asked, _effort, _force, _stop) = (run, asked, effort, force, stop);
        var written = run.Write();
        _soft = BuildPlanner.SoftWishes(run.Terms, written);
        _grounds = force is null ? written.Grounds : [.. written.Grounds, force.Ground];
        _holds = CanHold(new HashSet<int>());
    }

    /// <param name="withFurther">Also those that stand behind the first: each is a smallest one where the members of the earlier ones are given up.</param>
    public BuildConflict Find(bool withFurther)
    {
        if (_holds != false)
        {
            return _holds is null ? new BuildConflict(_asked, OutOfTime, PlanWords.NoPlan(OutOfTime), [], LinkOf(_asked)) : Nothing(_asked);
        }

        var found = Reduce(new HashSet<int>());
        List<PlanConflict> further = [.. withFurther && found is { Status: PlanConflictStatus.Minimal } ? Further(found) : []];
        var mends = new ConflictMends(_run, _asked.Objective, _effort, Adjust, _grounds, _force, _stop);
        List<IReadOnlyList<int>> all = [found?.Grounds ?? [], .. further.Select(one => one.Grounds)];
        ConflictMember[] Members(int conflict) =>
            [.. Told(all[conflict]).Select(ground => mends.Of(ground, [.. all.Where((_, index) => index != conflict).SelectMany(grounds => grounds)]))];
        var members = Members(0);
        return new BuildConflict(
            _asked, found?.Status switch { PlanConflictStatus.Minimal => PlanStatus.Infeasible, PlanConflictStatus.NotReduced => PlanStatus.BestFound, _ => OutOfTime },
            Headline(found, members, further.Count), members, LinkOf(_asked))
        {
            Further = [.. further.Select((_, index) => new FurtherConflict(Members(index + 1)))],
        };
    }

    /// <summary>All of it can hold together.</summary>
    public static BuildConflict Nothing(PlanAsked asked) => new(asked, PlanStatus.ProvenOptimal, "Nothing conflicts: there is a plan.", [], LinkOf(asked));

    private static string LinkOf(PlanAsked asked) =>
        Catalogue.Permalink.To("/api/builds", asked.Build, "conflict").With("objective", Catalogue.Codes.Of(asked.Objective)).ToString();

    /// <summary>Where a wish names what is to be there, it goes without saying that something has to be.</summary>
    private IEnumerable<int> Told(IReadOnlyList<int> found) => found.Where(ground => !ConflictMends.IsFact(_grounds[ground]) || !found.Any(other =>
        _grounds[other].Name == $"parts:{ConflictMends.PositionOf(_grounds[ground])}" || _grounds[other].Name == $"keep:{ConflictMends.PositionOf(_grounds[ground])}"));

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
        int[] facts = [.. all.Where(ground => ConflictMends.IsFact(_grounds[ground]))];
        int[] wishes = [.. all.Except(facts)];
        bool? Hold(IEnumerable<int> dropped) => CanHold(dropped.Union(given).ToHashSet());
        if (Hold(wishes) == false)
        {
            return PlanConflict.Find(facts, dropped => Hold(dropped.Union(wishes)));
        }

        var found = PlanConflict.Find(wishes, Hold);
        return found is not { Status: PlanConflictStatus.Minimal } || found.Grounds.Any(ground => _grounds[ground].Name is ConflictMends.Budget or ConflictMends.NeededBy)
            ? found
            : PlanConflict.Find([.. found.Grounds, .. facts], dropped => Hold(dropped.Union(wishes.Except(found.Grounds))));
    }

    private PlanStatus OutOfTime => _stop.IsCancellationRequested ? PlanStatus.StoppedByYou : PlanStatus.OutOfTime;

    private bool? CanHold(IReadOnlySet<int> dropped) =>
        _known.CanHold(dropped.Union(_soft).ToHashSet(), given => _run.FindHeld(given, _effort, Adjust, _stop));

    private PlanProblem Adjust(WrittenPlan written) =>
        _force is null ? written.Problem : Otherwise.Force(written, _force.Position, _force.IsIt, written.Grounds.Count);

    private static string Others(int further) => further switch
    {
        1 => "there is another conflict behind it",
        MostFurther => FormattableString.Invariant($"there are at least {further} other conflicts behind it"),
        _ => FormattableString.Invariant($"there are {further} other conflicts behind it"),
    };

    private static string Headline(PlanConflict? found, IReadOnlyList<ConflictMember> members, int further) => (found?.Status, members.Count) switch
    {
        (PlanConflictStatus.OutOfTime or null, _) => PlanWords.NoPlan(PlanStatus.OutOfTime),
        (_, 0) => "There is no plan even without any of your wishes.",
        (PlanConflictStatus.NotReduced, var count) =>
            FormattableString.Invariant($"{count} things cannot hold together; perhaps fewer of them already cannot: out of time."),
        (_, 1) => further == 0 ? "One thing keeps every plan away; without it there is one."
            : $"One thing keeps every plan away, and {Others(further)}.",
        var (_, count) => FormattableString.Invariant($"{count} things cannot hold together")
            + (further == 0 ? "; without any one of them there is a plan." : $", and {Others(further)}."),
    };
}

/// <summary>What has to be at a position because it was asked about.</summary>
/// <param name="Without">The plan where it is not asked.</param>
internal sealed record ForcedChoice(string Position, Func<Candidate, bool> IsIt, BuildGround Ground, SolvedPlan Without);
