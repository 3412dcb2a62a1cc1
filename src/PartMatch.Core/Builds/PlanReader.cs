using PartMatch.Core.Catalogue;
using PartMatch.Core.Openings;

namespace PartMatch.Core.Builds;

/// <summary>Reads a solved problem back as a plan in words.</summary>
internal static class PlanReader
{
    /// <param name="kept">What wishes to keep "if possible" cost; null where nothing, or that was not asked.</param>
    /// <param name="trust">What comes of it where less is taken on trust; null where that was not asked.</param>
    public static BuildPlan Read(PlanRun run, SolvedPlan solved, PlanAsked asked, PlanTrust? trust, KeptWishes? kept)
    {
        var (terms, solution) = (run.Terms, solved.Solution);
        if (solution.Choices.Count == 0)
        {
            return new BuildPlan
            {
                Asked = asked,
                Status = solution.Status,
                HeadlineText = PlanWords.NoPlan(solution.Status),
                NotWeighed = run.Screen.NotWeighed,
            };
        }

        var purchases = PlanPurchases.Of(run, solved);
        var opened = OpenedPlan.Of(terms, solved.Written.Chosen(solution), solved.Written.WorksOf(solution));
        var works = PlanWorkdays.Of(run, solved, opened, purchases);
        var lines = PlanLines.Of(run, solved, opened, purchases, works);
        var cost = PlanSum.Of(run, solved, purchases);
        var readyOn = terms.StartOn.AddDays(solution.Totals.Days);
        return new BuildPlan
        {
            Asked = asked,
            Status = solution.Status,
            HeadlineText = PlanWords.Headline(asked.Objective, solution.Status, cost.Total, readyOn, lines, kept is not null),
            Cost = cost,
            Days = solution.Totals.Days,
            ReadyOn = readyOn,
            Gap = PlanWords.Gap(terms, asked.Objective, solution),
            Sureness = lines.Count == 0 ? null : lines.Min(line => line.Sureness),
            Lines = lines,
            Baskets = purchases.Baskets,
            Works = works,
            Bought = purchases.FromOrders,
            LeftOver = purchases.LeftOver,
            OnTrust = PlanTrust.Of(terms, solved, lines, trust),
            NotWeighed = run.Screen.NotWeighed,
            Flags = new PlanFlags(run, solved, opened, lines, purchases).All(run.Today, trust, kept),
            Cautions = Cautions.Of(EngineUse.Cautions(terms.Facts.Family, OpenedPlan.Engines(terms), Codes(run, solved))),
        };
    }

    private static IEnumerable<string> Codes(PlanRun run, SolvedPlan solved) =>
        solved.Lines.Where(line => !line.Candidate.IsDonors && !line.Candidate.IsNothing).SelectMany(line => line.Answer.Cautions).Select(caution => caution.Code)
            .Concat(solved.Written.Jobs.Where((_, job) => solved.Solution.Jobs[job] is not null).SelectMany(work => work.Cautions));
}
