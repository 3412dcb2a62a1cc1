using PartMatch.Core.Catalogue;
using PartMatch.Core.Fit;
using PartMatch.Core.Injectors;

namespace PartMatch.Core.Builds;

/// <summary>What would have to be found for a position that nothing to be had fits.</summary>
internal sealed class WantedPart(PlanRun run, string position)
{
    /// <param name="without">The best plan that leaves the position open.</param>
    public string Mend(SolvedPlan without)
    {
        var at = run.Terms.At(position).Position;
        var fitting = Fitting(without).ToList();
        return fitting.Count == 0
            ? $"find an offer of a part that fits as {at.Name}; of no part that the books have is that known"
            : $"find {(fitting.Count == 1 ? "" : "one of ")}{FitWording.Some([.. fitting.Select(part => $"{part.Number}{LeftOut(part)}")])}";
    }

    /// <summary>Parts of any book that hold among the neighbours of that plan or beside the maker's own, those of a wished variant first.</summary>
    private IEnumerable<Part> Fitting(SolvedPlan without)
    {
        var isPlan = without.Solution.Choices.Count > 0;
        var plan = isPlan ? without.Written.Chosen(without.Solution) : new Dictionary<string, Candidate>();
        var works = isPlan ? without.Written.WorksOf(without.Solution) : new HashSet<string>();
        var at = run.Terms.At(position);
        var sized = InjectorGoals.Sets(run.Terms, position) ? InjectorGoals.Size(run.Terms) : new Dictionary<string, SizedInjector>();
        return run.Terms.Facts.Family.PartsOfKind(at.Position.Kind)
            .Where(part => !part.IsNothing && !at.Refuse.Contains(part.Id) && (at.Parts.Count == 0 || at.Parts.Contains(part.Id)))
            .Where(part => sized.GetValueOrDefault(part.Id)?.Enough is not Enough.No)
            .Where(part => Holds(part, plan, works) || Holds(part, new Dictionary<string, Candidate>(), new HashSet<string>()))
            .OrderBy(part => IsFitted(at, part) ? 0 : 1).ThenBy(part => part.Id, StringComparer.Ordinal);
    }

    private bool Holds(Part part, IReadOnlyDictionary<string, Candidate> plan, IReadOnlySet<string> works) =>
        run.Judge(Candidates.Bought(run.Terms, position, part), plan, works).Outcome is LineOutcome.Holds or LineOutcome.WithWork;

    private bool IsFitted(PositionTerms at, Part part) =>
        at.Like.Any(variant => run.Terms.Facts.Family.FitmentsAt(variant, position).Any(fitment => fitment.Part == part.Id));

    /// <summary>It is offered, but not so that it could be reckoned with.</summary>
    private string LeftOut(Part part)
    {
        var at = run.Terms.At(position);
        if (run.Screen.Obtainable.Contains(part.Id) && !at.IsBoughtNew)
        {
            return " (to be had, but what goes with it is not)";
        }

        string[] used = at.IsBoughtNew && run.Screen.Offers.Any(offer => offer.Offer.Part == part.Id)
            ? [at.OnlyNew ? "not new, as you wish it" : "not new, and what is renewed is new"]
            : [];
        string[] reasons = [.. used, .. run.Screen.LeftOut.Where(left => left.Offer.Part == part.Id).Select(left => left.Why).Distinct()];
        return reasons.Length == 0 ? "" : $" (offered, but left out: {FitWording.List(reasons)})";
    }
}
