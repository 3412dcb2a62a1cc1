using System.Globalization;
using PartMatch.Core.Fit;
using PartMatch.Core.Measures;

namespace PartMatch.Core.Builds;

/// <summary>How two plans of one build differ.</summary>
internal static class LineChanges
{
    /// <summary>Lines that differ in what is there, where it is bought or what is done to it; in the order of the family's positions.</summary>
    public static IReadOnlyList<LineChange> Between(PlanRun run, SolvedPlan was, SolvedPlan becomes)
    {
        if (was.Solution.Choices.Count == 0 || becomes.Solution.Choices.Count == 0)
        {
            return [];
        }

        var (before, after) = (Say(run, was), Say(run, becomes));
        return
        [
            .. run.Terms.Facts.Family.Positions.Where(position => before.GetValueOrDefault(position.Code) != after.GetValueOrDefault(position.Code))
                .Select(position => new LineChange(
                    position.Code, position.Name, before.GetValueOrDefault(position.Code, "open"), after.GetValueOrDefault(position.Code, "open"))),
        ];
    }

    /// <summary>"alder:P-2, bought from Mill (book/offer)", "the donor's own alder:P-1", "nothing".</summary>
    public static string Say(Candidate candidate) => candidate switch
    {
        { IsNothing: true } => "nothing",
        { IsDonors: true } => $"the donor's own {PartsOf(candidate)}",
        _ => PartsOf(candidate),
    };

    /// <summary>"12.00 EUR more and 3 days later".</summary>
    public static string Difference(BuildTerms terms, SolvedPlan was, SolvedPlan becomes)
    {
        var (cost, days) = (becomes.Solution.Totals.Cost - was.Solution.Totals.Cost, becomes.Solution.Totals.Days - was.Solution.Totals.Days);
        var money = cost == 0 ? "costs the same" : $"costs {terms.Say(Math.Abs(cost))} {(cost > 0 ? "more" : "less")}";
        var time = days == 0 ? "" : string.Create(
            CultureInfo.InvariantCulture, $" and is ready {Math.Abs(days)} {(Math.Abs(days) == 1 ? "day" : "days")} {(days > 0 ? "later" : "sooner")}");
        return money + time;
    }

    public static Money CostMore(BuildTerms terms, SolvedPlan was, SolvedPlan becomes) =>
        terms.MoneyOf(becomes.Solution.Totals.Cost - was.Solution.Totals.Cost);

    private static string PartsOf(Candidate candidate) => candidate.Parts.Count == 1
        ? candidate.Parts[0].Id
        : $"one of {FitWording.List([.. candidate.Parts.Select(part => part.Id)])}";

    private static Dictionary<string, string> Say(PlanRun run, SolvedPlan solved)
    {
        var purchases = PlanPurchases.Of(run, solved);
        return solved.Lines.ToDictionary(line => line.Candidate.Position, line =>
        {
            string[] sellers = [.. purchases.OffersFor(line.Candidate.Position).Select(offer => $"{offer.Seller.Name} ({offer.Address})").Order(StringComparer.Ordinal)];
            string[] works = [.. line.Answer.Works.Where(work => line.Works.Contains(work.Work)).Select(work => work.Name)];
            return Say(line.Candidate) + (sellers.Length == 0 ? "" : $", bought from {string.Join(" and ", sellers)}")
                + (works.Length == 0 ? "" : $", with {string.Join(", ", works)}");
        }, StringComparer.Ordinal);
    }
}
