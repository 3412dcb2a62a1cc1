using PartMatch.Core.Planning;

namespace PartMatch.Core.Builds;

/// <summary>What would resolve a conflict, and what the best plan then costs.</summary>
/// <param name="adjust">What is asked besides the build.</param>
internal sealed class ConflictMends(
    PlanRun run, PlanObjective objective, PlanEffort effort, Func<WrittenPlan, PlanProblem> adjust, IReadOnlyList<BuildGround> grounds,
    CancellationToken stop)
{
    public const string Budget = "budget";
    public const string NeededBy = "needed-by";
    private const string Obtainable = "obtainable:";

    /// <summary>That something is to be had is no wish: nobody can give it up.</summary>
    public static bool IsFact(BuildGround ground) => ground.Name.StartsWith(Obtainable, StringComparison.Ordinal);

    public static string PositionOf(BuildGround fact) => fact.Name[Obtainable.Length..];

    /// <param name="behind">Members of all other conflicts: while they hold, no plan comes of giving up one thing.</param>
    public ConflictMember Of(int ground, IReadOnlyCollection<int> behind) => IsFact(grounds[ground]) ? Missing(ground, behind) : GivenUp(ground, behind);

    private ConflictMember GivenUp(int ground, IReadOnlyCollection<int> behind)
    {
        var (name, text, mend) = grounds[ground];
        var aim = name switch { Budget => PlanObjective.Cheapest, NeededBy => PlanObjective.Soonest, _ => objective };
        var solved = Solve(aim, [ground, .. behind], adjust);
        if (CostOf(solved) is not var (cost, ready))
        {
            var then = solved.Solution.Status == PlanStatus.Infeasible ? "something else conflicts then" : "what the plan then costs was not found out";
            return new ConflictMember(name, text, $"{mend}; {then}", null, null);
        }

        var more = name switch
        {
            Budget => $" to {cost.Amount} {cost.Currency}",
            NeededBy => FormattableString.Invariant($": the soonest is {ready:yyyy-MM-dd}"),
            _ => "",
        };
        return behind.Count == 0
            ? new ConflictMember(name, text, mend + more, cost, ready)
            : new ConflictMember(name, text, $"{mend}{more}, once all the others are mended too", null, null);
    }

    /// <summary>What a part costs that is still to be found, nobody knows; what one costs that is taken on trust can be told.</summary>
    private ConflictMember Missing(int ground, IReadOnlyCollection<int> behind)
    {
        var (name, text, _) = grounds[ground];
        var position = PositionOf(grounds[ground]);
        var found = new WantedPart(run, position).Mend(Solve(objective, [ground, .. behind], adjust));
        var trusting = Solve(
            objective, [.. behind.Except([ground])], written => Otherwise.OnTrust(written with { Problem = adjust(written) }, position));
        if (CostOf(trusting) is not var (cost, ready))
        {
            return new ConflictMember(name, text, found, null, null);
        }

        var trusted = $"{found}; or take {LineChanges.Say(trusting.Written.Chosen(trusting.Solution)[position])} there on trust";
        return behind.Count > 0
            ? new ConflictMember(name, text, trusted, null, null)
            : new ConflictMember(name, text, $"{trusted}: the plan then costs {cost.Amount} {cost.Currency}", cost, ready);
    }

    private SolvedPlan Solve(PlanObjective aim, IReadOnlyCollection<int> without, Func<WrittenPlan, PlanProblem> otherwise) =>
        BuildPlanner.SolveWithWishes(run, aim, effort, adjust: otherwise, without: without, stop: stop);

    private (Measures.Money Cost, DateOnly Ready)? CostOf(SolvedPlan solved) => solved.Solution.Choices.Count == 0 ? null
        : (run.Terms.MoneyOf(solved.Solution.Totals.Cost), run.Terms.StartOn.AddDays(solved.Solution.Totals.Days));
}
