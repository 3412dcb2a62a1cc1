using PartMatch.Core.Builds;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Planning;

namespace PartMatch.Core.Openings;

/// <summary>
/// What is disturbed and renewed, as rules of a plan: for each position that anything hangs on a fact "disturbed", which holds just where the position is
/// changed, worked on, or has to come off for another.
/// </summary>
internal sealed class RenewalRules
{
    private readonly BuildTerms _terms;
    private readonly IReadOnlyList<IReadOnlyList<Candidate>> _candidates;
    private readonly IReadOnlyDictionary<string, int> _places;
    private readonly IReadOnlyList<Work> _works;
    private readonly Opening[] _openings;
    private readonly Renewal[] _renewals;
    private readonly string[] _positions;

    /// <param name="candidates">What could be at each position of the family, in its order.</param>
    /// <param name="places">By position.</param>
    /// <param name="works">The jobs of the problem, in their order.</param>
    public RenewalRules(
        BuildTerms terms, IReadOnlyList<IReadOnlyList<Candidate>> candidates, IReadOnlyDictionary<string, int> places, IReadOnlyList<Work> works)
    {
        (_terms, _candidates, _places, _works) = (terms, candidates, places, works);
        var engines = OpenedPlan.Engines(terms);
        _openings = [.. Disturbance.Rows(terms.Facts.Family, engines)];
        _renewals = [.. Disturbance.Renewals(terms.Facts.Family, engines)];
        _positions = [.. _openings.Select(row => row.Position).Union(_renewals.Select(row => row.Opened)).Order(StringComparer.Ordinal)];
    }

    /// <summary>One for each position that may be disturbed: no doubt, but a fact that rules can name.</summary>
    public IEnumerable<PlanDoubt> Facts => _positions.Select(position => new PlanDoubt($"disturbed:{position}", 0, IsAdmitted: true));

    /// <param name="first">Index of the first of <see cref="Facts"/> in the problem.</param>
    public IEnumerable<PlanRule> Of(int first)
    {
        var facts = _positions.Index().ToDictionary(one => one.Item, one => new DoubtTaken(first + one.Index), StringComparer.Ordinal);
        var above = _openings.ToLookup(row => row.OffFirst, row => row.Position, StringComparer.Ordinal);
        foreach (var (position, disturbed) in facts)
        {
            ChoiceMade[] calm = [.. Choices(position, one => !OpenedPlan.IsChanged(_terms, one))];
            PlanFact[] worked =
            [
                .. _works.Index().Where(work => OpenedPlan.WorkedOn(_terms.Facts.Family, work.Item).Contains(position)).Select(work => new JobDone(work.Index)),
            ];
            PlanFact[] inTheWay = OpenedPlan.IsThere(_terms, position) ? [.. above[position].Distinct().Select(other => facts[other])] : [];
            yield return new PlanRule([], [.. calm, disturbed]);
            foreach (var fact in worked.Concat(inTheWay))
            {
                yield return new PlanRule([fact], [disturbed]);
            }

            // Nothing is disturbed without a ground: else work would be planned that nothing asks for. Where something is still to be found, that is one.
            foreach (var choice in calm)
            {
                yield return new PlanRule([disturbed, choice], [.. worked, .. inTheWay]);
            }
        }

        foreach (var row in _renewals)
        {
            foreach (var kept in Choices(row.Renewed, one => one.IsDonors))
            {
                yield return new PlanRule([facts[row.Opened], kept], []);
            }
        }

        foreach (var (job, work) in _works.Index().Where(work => CureWorks.IsOne(work.Item)))
        {
            PlanFact[] opened = [.. _renewals.Where(row => CureWorks.CodeOf(CureWorks.DaysOf(row)) == work.Code).Select(row => facts[row.Opened]).Distinct()];
            yield return new PlanRule([new JobDone(job)], opened);
            foreach (var fact in opened)
            {
                yield return new PlanRule([fact], [new JobDone(job)]);
            }
        }
    }

    private IEnumerable<ChoiceMade> Choices(string position, Func<Candidate, bool> isIt) =>
        _candidates[_places[position]].Index().Where(choice => isIt(choice.Item)).Select(choice => new ChoiceMade(_places[position], choice.Index));
}
