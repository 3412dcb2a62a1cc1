using System.Globalization;
using PartMatch.Core.Measures;
using PartMatch.Core.Planning;

namespace PartMatch.Core.Builds;

/// <summary>What does each day sooner cost, and what would change the cheapest plan?</summary>
public static class BuildFrontiers
{
    /// <remarks>
    /// The cheapest plan, then the cheapest that is at least a day sooner, until there is none: every line of every one of them holds. Wishes "if possible"
    /// are for all of them as in the cheapest. Source of the method: see <see cref="PlanFrontier"/>.
    /// </remarks>
    /// <inheritdoc cref="BuildPlanner.Plan"/>
    public static BuildFrontier ByDays(
        BuildFacts facts, Build build, int version, DateOnly today, PlanEffort effort, FitMemory memory, CancellationToken stop = default)
    {
        var question = new BuildQuestion(facts, build, version, PlanObjective.Cheapest, today, effort, memory, stop);
        var link = Catalogue.Permalink.To("/api/builds", build.Code, "frontier").With("by", "days").ToString();
        var plot = Catalogue.Permalink.To("/api/builds", build.Code, "frontier.svg").With("by", "days").ToString();
        if (!question.HasPlan)
        {
            return new BuildFrontier(question.Asked, question.Solved.Solution.Status, PlanWords.NoPlan(question.Solved.Solution.Status), [], [], plot, link);
        }

        var (plans, isComplete) = Plans(question);
        FrontierPoint[] points = [.. plans.Index().Select(plan => Point(question, plan.Item, plans.ElementAtOrDefault(plan.Index - 1))).Reverse()];
        var kept = KeptWishes.Reckon(question.Run, question.Solved, question.Asked.Objective, effort, stop);
        return new BuildFrontier(
            question.Asked, isComplete ? PlanStatus.ProvenOptimal : stop.IsCancellationRequested ? PlanStatus.StoppedByYou : PlanStatus.BestFound,
            Headline(points, isComplete) + (kept is null ? "" : $" {kept.Say(question.Terms, question.Solved)}"), points, PlanSwings.Of(question), plot, link);
    }

    /// <summary>The cheapest first.</summary>
    private static (IReadOnlyList<SolvedPlan> Plans, bool IsComplete) Plans(BuildQuestion question)
    {
        var plans = new List<SolvedPlan> { question.Solved };
        while (plans[^1].Solution is { Totals.Days: > 0 and var days } && !question.Stop.IsCancellationRequested)
        {
            var sooner = question.Solve(written => Otherwise.By(written, days - 1));
            if (sooner.Solution.Choices.Count == 0)
            {
                return (plans, sooner.Solution.Status == PlanStatus.Infeasible && plans.TrueForAll(IsProven));
            }

            plans.Add(sooner);
        }

        return (plans, plans[^1].Solution.Totals.Days == 0 && plans.TrueForAll(IsProven));
    }

    private static bool IsProven(SolvedPlan plan) => plan.Solution.Status == PlanStatus.ProvenOptimal;

    private static FrontierPoint Point(BuildQuestion question, SolvedPlan plan, SolvedPlan? cheaper)
    {
        var (terms, totals) = (question.Terms, plan.Solution.Totals);
        return new FrontierPoint(
            totals.Days, terms.StartOn.AddDays(totals.Days), terms.MoneyOf(totals.Cost), cheaper is null ? null : DayCosts(terms, plan, cheaper),
            plan.Lines.Select(line => line.Sureness).DefaultIfEmpty(Fit.Sureness.Proven).Min(),
            cheaper is null ? [] : LineChanges.Between(question.Run, cheaper, plan));
    }

    /// <summary>Rounded half to even; the sum of two points is exact.</summary>
    private static Money DayCosts(BuildTerms terms, SolvedPlan plan, SolvedPlan cheaper) => terms.MoneyOf((long)Math.Round(
        (decimal)(plan.Solution.Totals.Cost - cheaper.Solution.Totals.Cost) / (cheaper.Solution.Totals.Days - plan.Solution.Totals.Days), MidpointRounding.ToEven));

    private static string Headline(IReadOnlyList<FrontierPoint> points, bool isComplete)
    {
        var (first, last) = (points[0], points[^1]);
        var more = isComplete ? "" : " More points may be missing, or better: it was not thought to the end.";
        return points.Count == 1
            ? string.Create(CultureInfo.InvariantCulture, $"The cheapest plan is the soonest too: {first.Cost.Amount} {first.Cost.Currency}, ready on {first.ReadyOn:yyyy-MM-dd}.{more}")
            : string.Create(
                CultureInfo.InvariantCulture,
                $"{points.Count} plans that no other beats in both: from {last.Cost.Amount} {last.Cost.Currency}, ready on {last.ReadyOn:yyyy-MM-dd}, to {first.Cost.Amount} {first.Cost.Currency}, ready on {first.ReadyOn:yyyy-MM-dd}.{more}");
    }
}
