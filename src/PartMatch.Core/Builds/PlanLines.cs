using PartMatch.Core.Openings;

namespace PartMatch.Core.Builds;

/// <summary>A line for each position.</summary>
internal static class PlanLines
{
    public static IReadOnlyList<BuildLine> Of(PlanRun run, SolvedPlan solved, OpenedPlan opened, PlanPurchases purchases, IReadOnlyList<PlannedWork> works)
    {
        var groups = run.Terms.Facts.Family.Positions.Select(position => position.Group).Distinct().ToList();
        return
        [
            .. solved.Lines.Select(line => Line(run, solved, opened, purchases, works, line))
                .OrderBy(line => groups.IndexOf(line.Group)).ThenBy(line => line.Position, StringComparer.Ordinal),
        ];
    }

    private static BuildLine Line(
        PlanRun run, SolvedPlan solved, OpenedPlan opened, PlanPurchases purchases, IReadOnlyList<PlannedWork> works, JudgedLine line)
    {
        var (terms, candidate) = (run.Terms, line.Candidate);
        var at = terms.At(candidate.Position);
        var donors = run.Candidates.SelectMany(choices => choices).FirstOrDefault(one => one.Position == candidate.Position && one.IsDonors);
        PlannedWork[] own = [.. works.Where(work => HoldsHere(terms, work.Work, candidate.Position))];
        var action = ActionOf(terms, at, candidate, own.Length > 0);
        var buy = purchases.For(candidate.Position);
        var part = candidate.IsNothing || candidate.Parts.Count > 1 ? null : candidate.Parts[0];
        var isService = at.Position.Group == BuildTerms.Services;
        var has = PartsOfDonor(terms, at);
        var said = isService ? PlanWords.AsDeclared : candidate.IsNothing && has.Count == 0 ? (terms.FittedToDonor(candidate.Position).Any() ? PlanWords.StaysEmpty : PlanWords.StaysAsItIs) : PlanWords.Of(action);
        return new BuildLine(
            candidate.Position, at.Position.Name, at.Position.Group, action, said, part?.Id, part?.Name,
            candidate.Parts.Count > 1 ? [.. candidate.Parts.Select(one => one.Id)] : [], candidate.Pieces,
            LineReasons.Because(run, solved, opened, line, donors), line.Headline, line.Sureness, line.Outcome == LineOutcome.NotKnown)
        {
            Cost = purchases.CostOf(candidate.Position),
            PriceRange = GradeOrders.IsBought(candidate) && !purchases.HasBought(candidate)
                ? PlanWords.Range(run, candidate, purchases.PiecesFor(candidate.Position)) : null,
            DonorHas = has.Count == 0 ? null : string.Join(" or ", has),
            DonorState = isService || has.Count == 0 ? null : at.StateOfDonor,
            Works = [.. own.Select(work => work.Name)],
            Buy = buy,
            Bought = [.. purchases.BoughtFor(candidate.Position).Select(one => new LineBought(one.Bought.Order, one.Bought.Line, one.Pieces, one.Bought.State, one.Bought.ThereOn))],
            Reference = line.IsAsChosen ? "as you chose it" : line.IsAsBuilt ? "the donor as it was built" : line.Answer.Reference,
            Flags = LineFlags.Of(run, line, purchases),
            Fit = LineReasons.LinkOf(run, solved, line),
        };
    }

    /// <summary>A work belongs to the line of what it changes, or, where it changes nothing, of what it is done on first.</summary>
    private static bool HoldsHere(BuildTerms terms, string work, string position) => terms.Facts.Family.FindWork(work) is { } known
        && (known.Changes.Count > 0 ? known.Changes.Any(change => change.Split('.', 2)[0] == position) : known.NeedsFirst is [var first, ..] && first == position);

    private static LineAction ActionOf(BuildTerms terms, PositionTerms at, Candidate candidate, bool isWorked)
    {
        if (candidate.IsDonors)
        {
            return isWorked ? LineAction.KeepWithWork : LineAction.Keep;
        }

        var has = PartsOfDonor(terms, at);
        return candidate.IsNothing ? LineAction.LeaveOff
            : has.Count == 0 ? LineAction.Add
            : candidate.Parts.Any(part => has.Contains(part.Id)) ? LineAction.Renew
            : LineAction.Replace;
    }

    /// <summary>What the donor has there by its books, whatever its state; empty where it has nothing, or nobody recorded what.</summary>
    private static IReadOnlyList<string> PartsOfDonor(BuildTerms terms, PositionTerms at) =>
        [.. terms.FittedToDonor(at.Position.Code).Select(fitment => fitment.Part).OfType<string>().Distinct(StringComparer.Ordinal)];
}
