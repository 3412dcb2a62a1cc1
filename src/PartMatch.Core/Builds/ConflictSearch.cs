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

    // Wishes before facts, and of the wishes those first that are a word to change.
    private static readonly string[] _order = ["force", Budget, NeededBy, "seller", "goal", "work", "keep", "renew", "parts", "refuse", "obtainable"];

    private readonly PlanRun _run;
    private readonly PlanAsked _asked;
    private readonly PlanEffort _effort;
    private readonly CancellationToken _stop;
    private readonly ForcedPart? _force;
    private readonly IReadOnlyList<BuildGround> _grounds;
    private readonly IReadOnlyList<int> _soft;
    private readonly bool? _holds;

    /// <param name="run">In which the offers of refused sellers stand too: then they are a ground.</param>
    /// <param name="force">What has to be there besides; null where nothing is forced.</param>
    public ConflictSearch(PlanRun run, PlanAsked asked, PlanEffort effort, ForcedPart? force, CancellationToken stop)
    {
        (_run, _asked, _effort, _force, _stop) = (run, asked, effort, force, stop);
        var written = run.Write();
        _soft = BuildPlanner.SoftWishes(run.Terms, written);
        _grounds = force is null ? written.Grounds : [.. written.Grounds, force.Ground];
        _holds = CanHold(new HashSet<int>());
    }

    public BuildConflict Find()
    {
        var link = Permalink();
        if (_holds != false)
        {
            return new BuildConflict(
                _asked, _holds is null ? OutOfTime : PlanStatus.ProvenOptimal,
                _holds is null ? PlanWords.NoPlan(OutOfTime) : "Nothing conflicts: there is a plan.", [], link);
        }

        int[] grounds =
        [
            .. Enumerable.Range(0, _grounds.Count).Except(_soft)
                .OrderBy(ground => Array.IndexOf(_order, _grounds[ground].Name.Split(':')[0])).ThenBy(ground => _grounds[ground].Name, StringComparer.Ordinal),
        ];
        var found = PlanConflict.Find(grounds, CanHold);
        ConflictMember[] members = [.. (found?.Grounds ?? []).Select(Member)];
        return new BuildConflict(
            _asked, found?.Status switch { PlanConflictStatus.Minimal => PlanStatus.Infeasible, PlanConflictStatus.NotReduced => PlanStatus.BestFound, _ => OutOfTime },
            Headline(found, members), members, link);
    }

    private PlanStatus OutOfTime => _stop.IsCancellationRequested ? PlanStatus.StoppedByYou : PlanStatus.OutOfTime;

    private bool? CanHold(IReadOnlySet<int> dropped) => _run.CanHold(dropped.Union(_soft).ToHashSet(), _effort, Adjust, _stop);

    private PlanProblem Adjust(WrittenPlan written) =>
        _force is null ? written.Problem : Otherwise.Force(written, _force.Position, _force.IsIt, written.Grounds.Count);

    private ConflictMember Member(int ground)
    {
        var (name, text, mend) = _grounds[ground];

        // What a part costs that is still to be found, nobody knows.
        var solved = name.StartsWith("obtainable:", StringComparison.Ordinal) ? null : Without(ground, name);
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
    private SolvedPlan Without(int ground, string name) => _run.Solve(
        name == Budget ? PlanObjective.Cheapest : name == NeededBy ? PlanObjective.Soonest : _asked.Objective,
        _effort, new HashSet<int>(_soft) { ground }, Adjust, stop: _stop);

    private static string Headline(PlanConflict? found, IReadOnlyList<ConflictMember> members) => (found?.Status, members.Count) switch
    {
        (PlanConflictStatus.OutOfTime or null, _) => PlanWords.NoPlan(PlanStatus.OutOfTime),
        (_, 0) => "There is no plan even without any of your wishes.",
        (_, 1) => "One thing keeps every plan away; without it there is one.",
        (PlanConflictStatus.Minimal, var count) => FormattableString.Invariant($"{count} things cannot hold together; without any one of them there is a plan."),
        (_, var count) => FormattableString.Invariant($"{count} things cannot hold together; perhaps fewer of them already cannot: out of time."),
    };

    private string Permalink() => (_force is null
        ? Catalogue.Permalink.To("/api/builds", _asked.Build, "conflict").With("objective", Catalogue.Codes.Of(_asked.Objective))
        : _force.Link(_asked)).ToString();
}

/// <summary>A part that has to be at a position, because it was asked about.</summary>
internal sealed record ForcedPart(string Position, string Part, string Name)
{
    public BuildGround Ground { get; } = new($"force:{Position}:{Part}", $"{Name}: {(Part == Catalogue.Part.None ? "nothing" : Part)} is asked about there.", $"leave {Name} as in the plan");

    public bool IsIt(Candidate candidate) => candidate.Parts.Any(part => part.Id == Part);

    public Catalogue.Permalink Link(PlanAsked asked) => Catalogue.Permalink.To("/api/builds", asked.Build, "why-not")
        .With("position", Position).With("part", Part).With("objective", Catalogue.Codes.Of(asked.Objective));
}
