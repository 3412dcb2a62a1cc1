using PartMatch.Core.Planning;

namespace PartMatch.Core.Builds;

/// <summary>What would resolve a conflict, and what the best plan then costs.</summary>
/// <param name="adjust">What is asked besides the build.</param>
/// <param name="force">What <paramref name="adjust"/> has to be there; null where nothing is forced.</param>
internal sealed class ConflictMends(
    PlanRun run, PlanObjective objective, PlanEffort effort, Func<WrittenPlan, PlanProblem> adjust, IReadOnlyList<BuildGround> grounds,
    ForcedChoice? force, CancellationToken stop)
{
    public const string Budget = "budget";
    public const string NeededBy = "needed-by";
    private const string Power = "goal:power";
    private const string Obtainable = "obtainable:";

    private readonly PlanEffort _forAmounts = effort with { Ties = PlanTies.CostAndDays };

    /// <summary>That something is to be had is no wish: nobody can give it up.</summary>
    public static bool IsFact(BuildGround ground) => ground.Name.StartsWith(Obtainable, StringComparison.Ordinal);

    public static string PositionOf(BuildGround fact) => fact.Name[Obtainable.Length..];

    /// <param name="behind">Members of all other conflicts: while they hold, no plan comes of giving up one thing.</param>
    public ConflictMember Of(int ground, IReadOnlyCollection<int> behind) => IsFact(grounds[ground]) ? Missing(ground, behind) : GivenUp(ground, behind);

    private ConflictMember GivenUp(int ground, IReadOnlyCollection<int> behind)
    {
        var (name, text, mend) = grounds[ground];
        text += Said(name);
        if (name is Budget or NeededBy)
        {
            return Least(ground, behind);
        }

        if (name == Power)
        {
            return new ConflictMember(name, text, mend + MostPower.Say(run, (less, given) => CanHold(less, given, behind)), null, null);
        }

        var solved = force?.Ground == grounds[ground] && behind.Count == 0 ? force.Without : Solve(objective, [ground, .. behind], adjust, _forAmounts);
        if (CostOf(solved) is not var (cost, ready))
        {
            return new ConflictMember(name, text, $"{mend}; {Nothing(solved)}", null, null);
        }

        return Told(name, text, mend, cost, ready, behind);
    }

    /// <summary>Money or time: the least that is enough, and what is enough where all stays that is to be kept "if possible".</summary>
    private ConflictMember Least(int ground, IReadOnlyCollection<int> behind)
    {
        var (name, text, mend) = grounds[ground];
        var aim = name == Budget ? PlanObjective.Cheapest : PlanObjective.Soonest;
        var least = run.Solve(aim, _forAmounts, new HashSet<int>([ground, .. behind, .. BuildPlanner.SoftWishes(run.Terms, run.Write())]), adjust, stop: stop);
        if (CostOf(least) is not var (cost, ready))
        {
            return new ConflictMember(name, text, $"{mend}; {Nothing(least)}", null, null);
        }

        string Enough(Measures.Money money, DateOnly day) => name == Budget ? $"{money.Amount} {money.Currency}" : FormattableString.Invariant($"{day:yyyy-MM-dd}");
        var kept = CostOf(Solve(aim, [ground, .. behind], adjust, _forAmounts)) is var (more, later) && Enough(more, later) != Enough(cost, ready)
            ? $" ({Enough(more, later)} with what you wish to keep)"
            : "";
        return Told(name, text, $"{mend}{(name == Budget ? " to " : ": the soonest is ")}{Enough(cost, ready)}{kept}", cost, ready, behind);
    }

    private static ConflictMember Told(
        string name, string text, string mend, Measures.Money cost, DateOnly ready, IReadOnlyCollection<int> behind) => behind.Count == 0
        ? new ConflictMember(name, text, mend, cost, ready)
        : new ConflictMember(name, text, $"{mend}, once all the others are mended too", null, null);

    /// <summary>Of a wish for some parts: what speaks against each of them beside the maker's own.</summary>
    private string Said(string name)
    {
        if (!name.StartsWith("parts:", StringComparison.Ordinal))
        {
            return "";
        }

        var nothing = new Dictionary<string, Candidate>();
        return string.Concat(run.Candidates.SelectMany(choices => choices)
            .Where(one => $"parts:{one.Position}" == name && one.IsUsersChoice)
            .Select(one => (one.Parts[0].Number, Said: LineReasons.Say(run.Judge(one, nothing, new HashSet<string>()))))
            .Where(one => one.Said is not null).DistinctBy(one => one.Number).Select(one => $" Beside the maker’s own parts {one.Number}: {one.Said}"));
    }

    private static string Nothing(SolvedPlan solved) =>
        solved.Solution.Status == PlanStatus.Infeasible ? "something else conflicts then" : "what the plan then costs was not found out";

    /// <summary>What a part costs that is still to be found, nobody knows; what one costs that is taken on trust can be told.</summary>
    private ConflictMember Missing(int ground, IReadOnlyCollection<int> behind)
    {
        var (name, text, _) = grounds[ground];
        var position = PositionOf(grounds[ground]);
        var found = new WantedPart(run, position).Mend(Solve(objective, [ground, .. behind], adjust, effort));
        var trusting = Solve(
            objective, [.. behind.Except([ground])], written => Otherwise.OnTrust(written with { Problem = adjust(written) }, position), effort);
        if (CostOf(trusting) is not var (cost, ready))
        {
            return new ConflictMember(name, text, found, null, null);
        }

        var trusted = $"{found}; or take {LineChanges.Say(trusting.Written.Chosen(trusting.Solution)[position])} there on trust";
        return behind.Count > 0
            ? new ConflictMember(name, text, trusted, null, null)
            : new ConflictMember(name, text, $"{trusted}: the plan then costs {cost.Amount} {cost.Currency}", cost, ready);
    }

    private SolvedPlan Solve(PlanObjective aim, IReadOnlyCollection<int> without, Func<WrittenPlan, PlanProblem> otherwise, PlanEffort thought) =>
        BuildPlanner.SolveWithWishes(run, aim, thought, adjust: otherwise, without: without, stop: stop);

    /// <param name="other">The build with something otherwise: its grounds have the same names, and may stand elsewhere.</param>
    private bool CanHold(PlanRun other, Func<WrittenPlan, PlanProblem> also, IReadOnlyCollection<int> without)
    {
        var written = other.Write();
        var names = without.Select(ground => grounds[ground].Name).ToHashSet(StringComparer.Ordinal);
        HashSet<int> dropped =
        [
            .. written.Grounds.Index().Where(ground => names.Contains(ground.Item.Name)).Select(ground => ground.Index),
            .. BuildPlanner.SoftWishes(other.Terms, written),
            .. force is not null && names.Contains(force.Ground.Name) ? [written.Grounds.Count] : Array.Empty<int>(),
        ];
        return other.CanHold(dropped, _forAmounts, one => also(one with { Problem = adjust(one) }), stop) == true;
    }

    private (Measures.Money Cost, DateOnly Ready)? CostOf(SolvedPlan solved) => solved.Solution.Choices.Count == 0 ? null
        : (run.Terms.MoneyOf(solved.Solution.Totals.Cost), run.Terms.StartOn.AddDays(solved.Solution.Totals.Days));
}
