using PartMatch.Core.Planning;

namespace PartMatch.Core.Builds;

/// <summary>A smallest set of wishes and facts that no plan holds together.</summary>
/// <remarks>
/// Whether some can hold together is answered by a plan all of whose lines hold, so that without any one member there is one to build by.
/// </remarks>
internal sealed class ConflictSearch
{
    private const string Budget = "budget";
    private const string NeededBy = "needed-by";
    private const string Obtainable = "obtainable:";

    // Wishes before facts, and of the wishes those first that are a word to change.
    private static readonly string[] _order = ["force", Budget, NeededBy, "seller", "goal", "work", "keep", "renew", "parts", "refuse", "obtainable"];

    private readonly PlanRun _run;
    private readonly PlanAsked _asked;
    private readonly PlanEffort _effort;
    private readonly CancellationToken _stop;
    private readonly ForcedChoice? _force;
    private readonly IReadOnlyList<BuildGround> _grounds;
    private readonly IReadOnlyList<int> _soft;
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

    public BuildConflict Find()
    {
        var link = Catalogue.Permalink.To("/api/builds", _asked.Build, "conflict").With("objective", Catalogue.Codes.Of(_asked.Objective)).ToString();
        if (_holds != false)
        {
            return new BuildConflict(
                _asked, _holds is null ? OutOfTime : PlanStatus.ProvenOptimal,
                _holds is null ? PlanWords.NoPlan(OutOfTime) : "Nothing conflicts: there is a plan.", [], link);
        }

        var found = Reduce();
        ConflictMember[] members = [.. (found?.Grounds ?? []).Select(Member)];
        return new BuildConflict(
            _asked, found?.Status switch { PlanConflictStatus.Minimal => PlanStatus.Infeasible, PlanConflictStatus.NotReduced => PlanStatus.BestFound, _ => OutOfTime },
            Headline(found, members), members, link);
    }

    /// <summary>
    /// Among the wishes alone, where some plan holds without them; then also what would have to be found for sale, but not where money or time is short:
    /// whatever has to be bought would then be a member.
    /// </summary>
    private PlanConflict? Reduce()
    {
        int[] all =
        [
            .. Enumerable.Range(0, _grounds.Count).Except(_soft)
                .OrderBy(ground => Array.IndexOf(_order, _grounds[ground].Name.Split(':')[0])).ThenBy(ground => _grounds[ground].Name, StringComparer.Ordinal),
        ];
        int[] facts = [.. all.Where(IsFact)];
        int[] wishes = [.. all.Except(facts)];
        if (CanHold(wishes.ToHashSet()) == false)
        {
            return PlanConflict.Find(facts, dropped => CanHold(dropped.Union(wishes).ToHashSet()));
        }

        var found = PlanConflict.Find(wishes, CanHold);
        return found is not { Status: PlanConflictStatus.Minimal } || found.Grounds.Any(ground => _grounds[ground].Name is Budget or NeededBy)
            ? found
            : PlanConflict.Find([.. found.Grounds, .. facts], dropped => CanHold(dropped.Union(wishes.Except(found.Grounds)).ToHashSet()));
    }

    private bool IsFact(int ground) => _grounds[ground].Name.StartsWith(Obtainable, StringComparison.Ordinal);

    private PlanStatus OutOfTime => _stop.IsCancellationRequested ? PlanStatus.StoppedByYou : PlanStatus.OutOfTime;

    private bool? CanHold(IReadOnlySet<int> dropped) => _run.CanHold(dropped.Union(_soft).ToHashSet(), _effort, Adjust, _stop);

    private PlanProblem Adjust(WrittenPlan written) =>
        _force is null ? written.Problem : Otherwise.Force(written, _force.Position, _force.IsIt, written.Grounds.Count);

    private ConflictMember Member(int ground)
    {
        var (name, text, mend) = _grounds[ground];

        // What a part costs that is still to be found, nobody knows.
        var solved = IsFact(ground) ? null : Without(ground, name);
        var isThere = solved?.Solution.Choices.Count > 0;
        DateOnly? ready = isThere ? _run.Terms.StartOn.AddDays(solved!.Solution.Totals.Days) : null; // it is there
        var cost = isThere ? _run.Terms.MoneyOf(solved!.Solution.Totals.Cost) : null; // it is there
        var more = solved is null ? ""
            : !isThere ? "; something else conflicts then"
            : name == Budget ? $" to {cost!.Amount} {cost.Currency}" // it is there
            : name == NeededBy ? FormattableString.Invariant($": the soonest is {ready:yyyy-MM-dd}")
            : "";
        return new ConflictMember(name, text, mend + more, cost, ready);
    }

    /// <summary>The best plan without it: the cheapest where it is the budget, the soonest where it is the day.</summary>
    private SolvedPlan Without(int ground, string name) => BuildPlanner.SolveWithWishes(
        _run, name == Budget ? PlanObjective.Cheapest : name == NeededBy ? PlanObjective.Soonest : _asked.Objective, _effort, adjust: Adjust,
        without: [ground], stop: _stop);

    private static string Headline(PlanConflict? found, IReadOnlyList<ConflictMember> members) => (found?.Status, members.Count) switch
    {
        (PlanConflictStatus.OutOfTime or null, _) => PlanWords.NoPlan(PlanStatus.OutOfTime),
        (_, 0) => "There is no plan even without any of your wishes.",
        (_, 1) => "One thing keeps every plan away; without it there is one.",
        (PlanConflictStatus.Minimal, var count) => FormattableString.Invariant($"{count} things cannot hold together; without any one of them there is a plan."),
        (_, var count) => FormattableString.Invariant($"{count} things cannot hold together; perhaps fewer of them already cannot: out of time."),
    };
}

/// <summary>What has to be at a position because it was asked about.</summary>
internal sealed record ForcedChoice(string Position, Func<Candidate, bool> IsIt, BuildGround Ground);
