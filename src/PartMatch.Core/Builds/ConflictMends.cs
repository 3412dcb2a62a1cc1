using PartMatch.Core.Planning;

namespace PartMatch.Core.Builds;

/// <summary>What would resolve a conflict, and what the best plan then costs.</summary>
/// <param name="adjust">What is asked besides the build.</param>
/// <param name="known">What is known of the build with <paramref name="adjust"/>.</param>
/// <param name="force">What <paramref name="adjust"/> has to be there; null where nothing is forced.</param>
internal sealed class ConflictMends(
    PlanRun run, PlanObjective objective, PlanEffort effort, Func<WrittenPlan, PlanProblem> adjust, IReadOnlyList<BuildGround> grounds,
    KnownAnswers known, ForcedChoice? force, CancellationToken stop)
{
    public const string Budget = "budget";
    public const string NeededBy = "needed-by";
    private const string Power = "goal:power";
    private const string OnceOthersAre = ", once all the others are mended too";
    private const string NotFoundOut = "; what the plan then costs was not found out";

    private readonly PlanEffort _forAmounts = effort with { Ties = PlanTies.CostAndDays };
    private readonly PlanEffort _forLines = effort with { Ties = PlanTies.Lines };

    /// <param name="behind">Members of all other conflicts: while they hold, no plan comes of giving up one thing.</param>
    public ConflictMember Of(int ground, IReadOnlyCollection<int> behind) => grounds[ground].IsFact ? Missing(ground, behind) : GivenUp(ground, behind);

    private ConflictMember GivenUp(int ground, IReadOnlyCollection<int> behind)
    {
        var (name, text, mend) = grounds[ground];
        text += Said(name);
        if (name is Budget or NeededBy)
        {
            return Least(ground, behind);
        }

        var canHold = CanHold([ground, .. behind]);
        if (canHold == false)
        {
            return new ConflictMember(name, text, mend + NotEnough(ground, behind), null, null);
        }

        if (name == Power)
        {
            return new ConflictMember(name, text, mend + LessPower(ground, behind), null, null);
        }

        if (behind.Count > 0)
        {
            return new ConflictMember(name, text, mend + (canHold == true ? OnceOthersAre : NotFoundOut), null, null);
        }

        var solved = force?.Ground == grounds[ground] ? force.Without : Solve(objective, [ground], adjust, _forAmounts);
        return CostOf(solved) is var (cost, ready)
            ? new ConflictMember(name, text, mend, cost, ready)
            : new ConflictMember(name, text, mend + (solved.Solution.Status == PlanStatus.Infeasible ? NotEnough(ground, behind) : NotFoundOut), null, null);
    }

    /// <summary>Where it is money or time that is still short: how much there has to be then.</summary>
    private string NotEnough(int ground, IReadOnlyCollection<int> behind)
    {
        var limit = grounds.Index().Where(one => one.Item.Name is Budget or NeededBy && one.Index != ground && !behind.Contains(one.Index)).ToList();
        var once = behind.Count > 0 ? OnceOthersAre : "";
        return limit is [var (index, one)] && CostOf(LeastPlan(one.Name, [ground, index, .. behind], effort with { Ties = PlanTies.None })) is var (cost, ready)
            ? $"; that alone is not enough: {(one.Name == Budget ? $"the plan then still costs {Enough(Budget, cost, ready)}" : $"the soonest is then {Enough(NeededBy, cost, ready)}")}{once}"
            : $"; that alone is not enough: something else conflicts then{(behind.Count > 0 ? ", even once all the others are mended" : "")}";
    }

    /// <summary>The best plan that keeps as much as can be of what is to be kept "if possible".</summary>
    /// <param name="free">The best plan that keeps nothing of it.</param>
    private SolvedPlan Keeping(PlanObjective aim, HashSet<int> without, SolvedPlan free)
    {
        var (dropped, _) = BuildPlanner.GiveWay(run, _forAmounts, adjust, without, known, stop);
        return BuildPlanner.SoftWishes(run.Terms, run.Write()).All(dropped.Contains) ? free : run.Solve(aim, _forAmounts, dropped, adjust, stop: stop);
    }

    private SolvedPlan LeastPlan(string limit, IReadOnlyCollection<int> without, PlanEffort thought) => run.Solve(
        limit == Budget ? PlanObjective.Cheapest : PlanObjective.Soonest, thought,
        WithSoft(without), adjust, stop: stop);

    private static string Enough(string limit, Measures.Money cost, DateOnly ready) =>
        limit == Budget ? $"{cost.Amount} {cost.Currency}" : FormattableString.Invariant($"{ready:yyyy-MM-dd}");

    /// <summary>Money or time: the least that is enough, and what is enough where all stays that is to be kept "if possible".</summary>
    private ConflictMember Least(int ground, IReadOnlyCollection<int> behind)
    {
        var (name, text, mend) = grounds[ground];
        var aim = name == Budget ? PlanObjective.Cheapest : PlanObjective.Soonest;
        var least = LeastPlan(name, [ground, .. behind], _forAmounts);
        if (CostOf(least) is not var (cost, ready))
        {
            return new ConflictMember(name, text, mend + (least.Solution.Status == PlanStatus.Infeasible ? NotEnough(ground, behind) : NotFoundOut), null, null);
        }

        var kept = CostOf(Keeping(aim, [ground, .. behind], least)) is var (more, later) && Enough(name, more, later) != Enough(name, cost, ready)
            ? $" ({Enough(name, more, later)} with what you wish to keep)"
            : "";
        var told = $"{mend}{(name == Budget ? " to " : ": the soonest is ")}{Enough(name, cost, ready)}{kept}";
        return behind.Count == 0
            ? new ConflictMember(name, text, told, cost, ready)
            : new ConflictMember(name, text, told + OnceOthersAre, null, null);
    }

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

    /// <summary>What a part costs that is still to be found, nobody knows; what one costs that is taken on trust can be told.</summary>
    private ConflictMember Missing(int ground, IReadOnlyCollection<int> behind)
    {
        var (name, text, _) = grounds[ground];
        var position = grounds[ground].Position;
        var without = Solve(objective, [ground, .. behind], adjust, _forLines);
        var found = new WantedPart(run, position).Mend(without) + (without.Solution.Status == PlanStatus.Infeasible ? NotEnough(ground, behind) : "");
        var trusting = !CouldBeTrusted(position) ? SolvedPlan.None(run.Write()) : Solve(
            objective, [.. behind.Except([ground])], written => Otherwise.OnTrust(written with { Problem = adjust(written) }, position),
            behind.Count > 0 ? _forLines : effort);
        if (CostOf(trusting) is not var (cost, ready))
        {
            return new ConflictMember(name, text, found, null, null);
        }

        var trusted = $"{found}; or take {LineChanges.Say(trusting.Written.Chosen(trusting.Solution)[position])} there on trust";
        return behind.Count > 0
            ? new ConflictMember(name, text, trusted, null, null)
            : new ConflictMember(name, text, $"{trusted}: the plan then costs {cost.Amount} {cost.Currency}", cost, ready);
    }

    /// <summary>Does anything say of the position that it holds where it is taken on trust? Otherwise trust changes nothing.</summary>
    private bool CouldBeTrusted(string position)
    {
        var written = run.Write();
        return written.Problem.Rules.Any(rule => rule.Then.Any(fact => fact is DoubtTaken { Doubt: var doubt } && doubt < written.Places.Count
            && written.Problem.Places[doubt].Name == position));
    }

    private SolvedPlan Solve(PlanObjective aim, IReadOnlyCollection<int> without, Func<WrittenPlan, PlanProblem> otherwise, PlanEffort thought) =>
        BuildPlanner.SolveWithWishes(run, aim, thought, adjust: otherwise, without: without, known: otherwise == adjust ? known : null, stop: stop);

    private bool? CanHold(IReadOnlyCollection<int> without) => known.CanHold(
        WithSoft(without), given => run.FindHeld(given, effort, adjust, expectsNone: false, stop));

    /// <summary>And what is to be kept "if possible", which gives way.</summary>
    private HashSet<int> WithSoft(IEnumerable<int> without) => [.. without, .. BuildPlanner.SoftWishes(run.Terms, run.Write())];

    /// <summary>The most power that can be had, where a plan can be found with less.</summary>
    private string LessPower(int ground, IReadOnlyCollection<int> behind) => MostPower.Say(
        run,
        also => run.CanHold(
            WithSoft([ground, .. behind]), _forAmounts, one => also(one with { Problem = adjust(one) }), stop) != false,
        (less, also) => CanHold(less, also, behind), stop);

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
