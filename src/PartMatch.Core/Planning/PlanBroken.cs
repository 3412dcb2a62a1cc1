namespace PartMatch.Core.Planning;

/// <summary>Which grounds a plan does without: it holds wherever these are given up, whatever else had been when it was found.</summary>
internal static class PlanBroken
{
    public static IReadOnlySet<int> Of(PlanProblem problem, PlanSolution solution)
    {
        bool Is(PlanFact fact) => fact switch
        {
            ChoiceMade made => solution.Choices[made.Place] == made.Choice,
            JobDone done => solution.Jobs[done.Job] is not null,
            DoubtTaken taken => solution.Doubts[taken.Doubt],
            _ => throw new ArgumentException($"found a fact of the kind {fact.GetType().Name}, expected a choice, a job or a doubt"),
        };
        IEnumerable<int?> broken =
        [
            .. problem.Places.Where((_, place) => solution.Choices[place] is null).Select(place => place.Ground),
            .. problem.Offers.Where((_, offer) => solution.Packs[offer] > 0).Select(offer => offer.Ground),
            .. problem.Rules.Where(rule => rule.Ground is not null && rule.If.All(Is) && !rule.Then.Any(Is)).Select(rule => rule.Ground),
            problem.MostCost is { } most && solution.Totals.Cost > most.Limit ? most.Ground : null,
            problem.LastDay is { } last && solution.Totals.Days > last.Limit ? last.Ground : null,
        ];
        return broken.OfType<int>().ToHashSet();
    }
}
