namespace PartMatch.Core.Builds;

/// <summary>What is taken on trust, and what that saves.</summary>
internal static class PlanTrust
{
    public static bool IsAny(SolvedPlan solved) => solved.Lines.Any(line => line.Outcome == LineOutcome.NotKnown);

    /// <param name="proven">The best plan that takes nothing on trust; null where that was not asked.</param>
    public static IReadOnlyList<TakenOnTrust> Of(BuildTerms terms, SolvedPlan solved, IReadOnlyList<BuildLine> lines, SolvedPlan? proven)
    {
        var unproven = lines.Where(line => line.Unproven).ToList();
        var saves = proven is { Solution.Choices.Count: > 0 } ? LineChanges.CostMore(terms, solved, proven) : null;
        var without = (proven, saves) switch
        {
            (null, _) => "",
            (_, null) => " Without anything taken on trust there is no plan.",
            _ => $" The plan that takes nothing on trust {LineChanges.Difference(terms, solved, proven)}.",
        };
        return
        [
            .. unproven.Select(line => new TakenOnTrust(
                line.Position, line.PartName ?? "nothing", saves,
                $"{line.Name}: whether {line.PartName ?? "nothing"} fits there is not known; taken on trust.{without}")),
        ];
    }
}
