using PartMatch.Core.Catalogue;
using PartMatch.Core.Openings;
using PartMatch.Core.Planning;

namespace PartMatch.Core.Builds;

/// <summary>Writes a build as a problem of whole numbers.</summary>
internal sealed class PlanWriter
{
    private readonly BuildTerms _terms;
    private readonly IReadOnlyList<IReadOnlyList<Candidate>> _candidates;
    private readonly Dictionary<At, List<ChoiceMade>> _at = [];
    private readonly Dictionary<string, int> _places = new(StringComparer.Ordinal);
    private readonly List<At> _groups;
    private readonly PlanGoods _goods;
    private readonly PlanGrounds _grounds = new();
    private readonly IReadOnlyList<PlanRule> _wishes;
    private readonly IReadOnlyList<Work> _works;
    private readonly Dictionary<string, int> _jobs;
    private readonly PlanDoubt[] _disturbed;
    private readonly PlanRule[] _renewals;

    /// <param name="candidates">What could be at each position of the family, in its order.</param>
    public PlanWriter(BuildTerms terms, IReadOnlyList<IReadOnlyList<Candidate>> candidates, OfferScreen screen)
    {
        (_terms, _candidates) = (terms, candidates);
        foreach (var (place, choices) in candidates.Index())
        {
            _places[terms.Facts.Family.Positions[place].Code] = place;
            foreach (var (choice, candidate) in choices.Index())
            {
                // The donor's own and the same part bought are two choices; for the fit they are one, unless the donor's was measured.
                var at = new At(candidate.Position, candidate.FitKey);
                (_at.TryGetValue(at, out var same) ? same : _at[at] = []).Add(new ChoiceMade(place, choice));
            }
        }

        _groups = [.. _at.Where(choices => choices.Value.Count > 1).Select(choices => choices.Key)];
        _goods = new PlanGoods(terms, candidates, screen, _grounds);
        _works = [.. PlanWorks.Of(terms), .. GradeOrders.Of(terms, candidates), .. CureWorks.Of(terms)];
        _jobs = _works.Index().ToDictionary(work => work.Item.Code, work => work.Index, StringComparer.Ordinal);
        _wishes = PlanWishes.Of(terms, candidates, _places, _works, _grounds);
        var renewals = new RenewalRules(terms, candidates, _places, _works);
        (_disturbed, _renewals) = ([.. renewals.Facts], [.. renewals.Of(candidates.Count + _groups.Count)]);
    }

    /// <param name="lineRules">What the fit of the lines asks.</param>
    /// <param name="risks">What lines weigh beyond what their choices do, where all of these are there.</param>
    public WrittenPlan Write(IReadOnlyCollection<LineRule> lineRules, IReadOnlyCollection<LineRisk> risks)
    {
        List<PlanDoubt> doubts =
        [
            .. _candidates.Select((_, place) => _terms.At(_terms.Facts.Family.Positions[place].Code))
                .Select(at => new PlanDoubt(at.Position.Code, PlanRisks.TakenOnTrust, at.AdmitNotKnown)),
            .. _groups.Select(at => new PlanDoubt(at.Parts, 0, IsAdmitted: true)),
            .. _disturbed,
            .. risks.Select(risk => new PlanDoubt("", risk.Risk, IsAdmitted: true)),
        ];
        var firstRisk = _candidates.Count + _groups.Count + _disturbed.Length;
        List<PlanRule> rules =
        [
            .. _wishes,
            .. _renewals,
            .. _groups.SelectMany((at, index) => _at[at].Select(made => new PlanRule([made], [new DoubtTaken(_candidates.Count + index)]))),
            .. lineRules.Select(RuleOf).OfType<PlanRule>(),
            .. risks.Select((risk, index) => Facts(risk.If) is { } all ? new PlanRule(all, [new DoubtTaken(firstRisk + index)]) : null).OfType<PlanRule>(),
        ];
        var problem = new PlanProblem(
            [.. _candidates.Select((choices, place) => PlaceOf(place, choices))], _goods.Products, [.. _goods.Offers.Select(OrderedAfter)], _goods.Sellers,
            CureWorks.InOrder(_terms.Facts.Family, _works, GradeOrders.InOrder(_works, [.. _works.Select(JobOf)])), doubts, rules)
        {
            MostCost = _terms.Budget is { } budget
                ? new PlanBound(budget, _grounds.Of("budget", $"The whole may cost {_terms.Say(budget)} at most.", "raise the budget"))
                : null,
            FixedCost = _terms.Facts.Bought.Spent + _terms.Facts.Bought.Committed,
            LastDay = _terms.LastDay is { } day
                ? new PlanBound(day, _grounds.Of("needed-by", $"It has to be ready on {_terms.Build.NeededBy}.", "need it later"))
                : null,
        };
        return new WrittenPlan(problem, _candidates, _goods.Screened, _works, _grounds.All, _goods.PartsOfProducts)
        {
            Keys = lineRules.Select(rule => rule.Key).ToHashSet(StringComparer.Ordinal),
            Risks = risks.ToHashSet(),
        };
    }

    private PlanPlace PlaceOf(int place, IReadOnlyList<Candidate> choices)
    {
        var position = _terms.Facts.Family.Positions[place];
        var at = _terms.At(position.Code);

        // What the donor came without, nobody can sell.
        var sale = at.State is { SellsFor: { } typed, State: not PartState.Missing } ? _terms.Minor(typed, "sellsFor") : 0;
        return new PlanPlace(position.Code, [.. choices.Select(choice => ChoiceOf(at, choice, sale))], ObtainableAt(at));
    }

    private PlanChoice ChoiceOf(PositionTerms at, Candidate candidate, long sale)
    {
        var isUnseen = candidate.IsDonors && at.StateOfDonor == PartState.NotInspected;
        var allowance = isUnseen && at.State?.Allowance is { } typed ? _terms.Minor(typed, "allowance") : 0;
        return new PlanChoice(
            candidate.Key, candidate.IsDonors ? allowance : -sale, _goods.UsesOf(candidate), isUnseen ? PlanRisks.NotInspected : 0,
            candidate.IsDonors ? 1 : 0);
    }

    /// <summary>What is chosen by measurement alone is ordered when it is measured, each time all of it.</summary>
    private PlanOffer OrderedAfter(PlanOffer offer, int index)
    {
        var jobs = _goods.GradedFor[index].Select(GradeOrders.CodeOf).ToList();
        return jobs.TrueForAll(_jobs.ContainsKey) ? offer with { OrderedAfter = [.. jobs.Select(job => _jobs[job])] } : offer;
    }

    private PlanJob JobOf(Work work)
    {
        int[] PlacesOf(IEnumerable<string> positions) =>
            [.. positions.Where(_places.ContainsKey).Select(position => _places[position]).Distinct().Order()];
        return new PlanJob(
            work.Code, work.Price is { } price ? _terms.Convert(price) ?? 0 : 0, DaysOf(work), PlacesOf(work.NeedsFirst),
            PlacesOf(work.Changes.Select(change => change.Split('.', 2)[0])), [.. work.NeedsFirst.Where(_jobs.ContainsKey).Select(other => _jobs[other])])
        {
            Orders = GradeOrders.IsOne(work) ? _places[GradeOrders.PositionOf(work)] : null,
        };
    }

    /// <summary>Whole days; a work of minutes is done within the day it begins.</summary>
    public static int DaysOf(Work work) => (int)Math.Ceiling(work.Days ?? 0);

    private PlanRule? RuleOf(LineRule rule)
    {
        PlanFact[] then =
        [
            .. rule.Or.Where(_at.ContainsKey).SelectMany(at => _at[at]),
            .. rule.Works.Where(_jobs.ContainsKey).Select(work => new JobDone(_jobs[work])),
            .. rule.OnTrustAt is { } position ? [new DoubtTaken(_places[position])] : Array.Empty<PlanFact>(),
        ];
        int? ground = rule.Asks is { } asked ? ObtainableAt(_terms.At(asked)) : null;
        PlanFact[] done = [.. rule.IfDone.Where(_jobs.ContainsKey).Select(work => new JobDone(_jobs[work]))];
        return Facts(rule.If) is { } all ? new PlanRule([.. all, .. done], then, ground) : null;
    }

    /// <summary>
    /// That all of these are there; of parts that may be there in two ways, kept or bought, one fact stands for both. Null where one of them is no
    /// candidate any more: then the rule says nothing.
    /// </summary>
    private List<PlanFact>? Facts(IReadOnlyList<At> all) => all.All(_at.ContainsKey)
        ? [.. all.Select(at => _at[at] is [var made] ? made : (PlanFact)new DoubtTaken(_candidates.Count + _groups.IndexOf(at)))]
        : null;

    private int ObtainableAt(PositionTerms at) => _grounds.Of(
        $"obtainable:{at.Position.Code}", $"{at.Position.Name}: something that fits has to be there, of the donor, in hand or for sale.",
        $"find an offer of a part that fits as {at.Position.Name}");
}
