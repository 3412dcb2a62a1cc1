using PartMatch.Core.Planning;

namespace PartMatch.Core.Builds;

/// <summary>What is taken on trust, and what that saves.</summary>
/// <param name="Nothing">The best plan that takes nothing on trust; null where that was not asked.</param>
/// <param name="Without">For some positions the best plan that takes nothing on trust there, and may elsewhere.</param>
internal sealed record PlanTrust(SolvedPlan? Nothing, IReadOnlyDictionary<string, SolvedPlan> Without)
{
    /// <summary>Positions that are reckoned one by one; of more, only what all of them save together is told. Ours, no source.</summary>
    private const int MostAlone = 6;

    /// <summary>Null where nothing is taken on trust.</summary>
    public static PlanTrust? Reckon(PlanRun run, SolvedPlan solved, PlanObjective objective, PlanEffort effort, CancellationToken stop)
    {
        string[] open = [.. Open(solved)];
        if (open.Length == 0 || stop.IsCancellationRequested)
        {
            return null;
        }

        SolvedPlan Otherwise(Func<WrittenPlan, PlanProblem> adjust) => BuildPlanner.SolveWithWishes(
            run, objective, effort with { Ties = PlanTies.CostAndDays }, adjust: adjust, stop: stop);
        var nothing = Otherwise(Builds.Otherwise.NothingOnTrust);
        return new PlanTrust(nothing, open switch
        {
            [var only] => new Dictionary<string, SolvedPlan> { [only] = nothing },
            { Length: <= MostAlone } => open.ToDictionary(position => position, position => Otherwise(written => Builds.Otherwise.NotOnTrust(written, position))),
            _ => new Dictionary<string, SolvedPlan>(),
        });
    }

    /// <param name="trust">Null where that was not reckoned.</param>
    public static IReadOnlyList<TakenOnTrust> Of(BuildTerms terms, SolvedPlan solved, IReadOnlyList<BuildLine> lines, PlanTrust? trust) =>
    [
        .. lines.Where(line => line.Unproven).Select(line =>
        {
            var without = trust?.Without.GetValueOrDefault(line.Position);
            var what = line.PartName is { } part ? $"whether {part} fits there is not known" : "whether it runs with nothing there is not known";
            return new TakenOnTrust(
                line.Position, line.PartName ?? "nothing", IsPlan(without) ? LineChanges.CostMore(terms, solved, without!) : null, // it is one
                $"{line.Name}: {what}; taken on trust.{Say(terms, solved, without, "what is proven there")}");
        }),
    ];

    /// <summary>Of all lines together, where there are several.</summary>
    public static string? Sum(BuildTerms terms, SolvedPlan solved, PlanTrust? trust) =>
        Open(solved).Skip(1).Any() ? Say(terms, solved, trust?.Nothing, "nothing taken on trust anywhere").Trim() : null;

    private static string Say(BuildTerms terms, SolvedPlan solved, SolvedPlan? otherwise, string with) => otherwise switch
    {
        null => "",
        _ when IsPlan(otherwise) => $" The plan with {with} {LineChanges.Difference(terms, solved, otherwise)}.",
        { Solution.Status: PlanStatus.Infeasible } => $" There is no plan with {with}.",
        _ => "",
    };

    private static bool IsPlan(SolvedPlan? solved) => solved is { Solution.Choices.Count: > 0 };

    private static IEnumerable<string> Open(SolvedPlan solved) =>
        solved.Lines.Where(line => line.Outcome == LineOutcome.NotKnown).Select(line => line.Candidate.Position);
}
