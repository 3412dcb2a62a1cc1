using PartMatch.Core.Measures;

namespace PartMatch.Core.Builds;

/// <summary>What a plan costs, part by part.</summary>
internal static class PlanSum
{
    public static PlanCost Of(PlanRun run, SolvedPlan solved, PlanPurchases purchases)
    {
        var (terms, solution) = (run.Terms, solved.Solution);
        var work = solved.Written.Problem.Jobs.Where((_, job) => solution.Jobs[job] is not null).Sum(job => job.Cost);
        var choices = solution.Choices.Select((choice, place) => choice is { } chosen ? solved.Written.Problem.Places[place].Choices[chosen].Cost : 0).ToList();
        var (allowances, sales) = (choices.Where(cost => cost > 0).Sum(), -choices.Where(cost => cost < 0).Sum());
        var bought = terms.Facts.Bought;
        string[] parts =
        [
            .. new (string Name, long Minor)[]
            {
                ("spent already", bought.Spent), ("ordered and not paid", bought.Committed), ("goods", purchases.Goods), ("sending", solution.Totals.Sending), ("import charges", purchases.Import), ("work", work), ("set aside", allowances),
            }.Where(part => part.Minor != 0).Select(part => $"{terms.MoneyOf(part.Minor).Amount} {part.Name}"),
        ];
        var lost = purchases.LostDeposits > 0 ? $" ({terms.MoneyOf(purchases.LostDeposits).Amount} of the goods are deposits that do not come back)" : "";
        var sold = sales > 0 ? $" − {terms.MoneyOf(sales).Amount} for what is sold" : "";
        var cheapest = solution.Totals.Cost - Spread(run, solved, purchases);
        var grades = cheapest == solution.Totals.Cost ? "" : $"; from {terms.Say(cheapest)} where what is chosen by measurement comes out cheapest";
        return new PlanCost(
            terms.MoneyOf(solution.Totals.Cost), terms.MoneyOf(cheapest), terms.MoneyOf(purchases.Goods), terms.MoneyOf(solution.Totals.Sending),
            terms.MoneyOf(purchases.Import), terms.MoneyOf(work), terms.MoneyOf(allowances), terms.MoneyOf(sales), terms.MoneyOf(purchases.Deposits), terms.DonorsPrice,
            $"{(parts.Length == 0 ? "0" : string.Join(" + ", parts))}{sold} = {terms.Say(solution.Totals.Cost)}{lost}{grades}")
        {
            Spent = terms.MoneyOf(bought.Spent),
            Committed = terms.MoneyOf(bought.Committed),
            ToGo = terms.MoneyOf(solution.Totals.Cost - bought.Spent - bought.Committed),
        };
    }

    /// <summary>How much dearer the dearest grades are than the cheapest, over every line that buys one of several.</summary>
    private static long Spread(PlanRun run, SolvedPlan solved, PlanPurchases purchases) => solved.Lines.Select(line => line.Candidate)
        .Where(candidate => candidate is { IsGraded: true, From: CandidateFrom.Supply }).Sum(candidate =>
        {
            var onlyNew = run.Terms.At(candidate.Position).IsBoughtNew;
            var bought = purchases.PiecesFor(candidate.Position);
            var least = candidate.Parts.Min(part => GradePrices.CheapestPiece(run.Screen, part.Id, onlyNew)) * bought;
            var paid = purchases.CostOf(candidate.Position) is { } cost ? (long)Amount.Of(cost).Minor : 0;
            return least is { } atLeast ? long.Max(0, paid - (long)Math.Round(atLeast, MidpointRounding.ToEven)) : 0;
        });
}
