using PartMatch.Core.Catalogue;
using PartMatch.Core.Fit;

namespace PartMatch.Core.Builds;

/// <summary>
/// What joints, sums and companion rules say of any two or more candidates, before anything is solved: most plans that cannot be are never tried.
/// Only what surely holds is said; the rest is learned from the lines of a plan.
/// </summary>
internal static class RelationRules
{
    /// <summary>More combinations of one sum than this are not tried out beforehand.</summary>
    private const int MostCombinations = 4000;

    public static IEnumerable<LineRule> Of(BuildTerms terms, IReadOnlyDictionary<string, IReadOnlyList<Candidate>> candidates, AsBuilt asBuilt) =>
    [
        .. terms.Facts.Family.Joints.Where(joint => joint.Evidence?.IsRetracted != true).SelectMany(joint => OfJoint(terms, joint, candidates)),
        .. terms.Facts.Family.Stacks.Where(stack => stack.Evidence?.IsRetracted != true).SelectMany(stack => OfStack(terms, stack, candidates)),
        .. terms.Facts.Family.Companions.Where(rule => rule.Evidence?.IsRetracted != true).SelectMany(rule => OfCompanion(terms, rule, candidates, asBuilt)),
    ];

    private static IEnumerable<LineRule> OfJoint(BuildTerms terms, Joint joint, IReadOnlyDictionary<string, IReadOnlyList<Candidate>> candidates)
    {
        if (joint.Left.Position == joint.Right.Position
            || !candidates.TryGetValue(joint.Left.Position, out var lefts) || !candidates.TryGetValue(joint.Right.Position, out var rights))
        {
            yield break;
        }

        foreach (var left in lefts.Where(IsOne))
        {
            foreach (var right in rights.Where(IsOne).Where(right => JointReasons.Mates(joint, left.Parts[0], right.Parts[0]) == Met.No))
            {
                if (Speaks(terms, joint.HoldsFor, left, [right]) || Speaks(terms, joint.HoldsFor, right, [left]))
                {
                    yield return new LineRule(
                        [AtOf(left), AtOf(right)], [],
                        Ways(terms, joint is { Effect: Effect.Work, Work: { } work } ? work : null, joint.Left, joint.Right), null);
                }
            }
        }
    }

    private static IEnumerable<LineRule> OfStack(BuildTerms terms, Stack stack, IReadOnlyDictionary<string, IReadOnlyList<Candidate>> candidates)
    {
        string[] positions = [.. stack.Terms.OfType<FeatureTerm>().Select(term => term.At.Position).Distinct(StringComparer.Ordinal)];
        if (positions.Length == 0 || positions.Any(position => !candidates.ContainsKey(position))
            || positions.Aggregate(1L, (count, position) => count * candidates[position].Count) > MostCombinations)
        {
            yield break;
        }

        IEnumerable<Candidate[]> combinations = [[]];
        foreach (var position in positions)
        {
            combinations = [.. combinations.SelectMany(_ => candidates[position].Where(IsOne), (chosen, one) => (Candidate[])[.. chosen, one])];
        }

        foreach (var chosen in combinations)
        {
            if (StackReasons.AddsUp(stack, chosen.ToDictionary(one => one.Position, one => one.Parts[0], StringComparer.Ordinal)) == Met.No
                && chosen.Any(one => Speaks(terms, stack.HoldsFor, one, [.. chosen.Where(other => other != one)])))
            {
                yield return new LineRule(
                    [.. chosen.Select(AtOf)], [],
                    Ways(
                        terms, stack is { Effect: Effect.Work, Work: { } work } ? work : null,
                        [.. stack.Terms.OfType<FeatureTerm>().Select(term => term.At)]),
                    null);
            }
        }
    }

    private static IEnumerable<LineRule> OfCompanion(
        BuildTerms terms, Companion rule, IReadOnlyDictionary<string, IReadOnlyList<Candidate>> candidates, AsBuilt asBuilt)
    {
        if (!candidates.TryGetValue(rule.When.At.Position, out var asking) || !candidates.TryGetValue(rule.Then.At.Position, out var asked)
            || rule.When.At.Position == rule.Then.At.Position)
        {
            yield break;
        }

        var changed = $"{rule.Then.At.Position}.{rule.Then.At.Feature}";
        string[] works = [.. PlanWorks.Known(terms.Facts.Family).Where(work => work.Changes.Contains(changed)).Select(work => work.Code)];
        At[] ways = [.. asked.Where(one => !one.Parts.All(part => rule.Then.HoldsOf(part) == Met.No)).Select(AtOf)];

        // Where the donor's own does not meet it either, the donor as it was built shows that it need not.
        var isMetAsBuilt = asked.Where(asBuilt.HasIt).All(one => ways.Contains(AtOf(one)));
        foreach (var one in asking.Where(one => isMetAsBuilt || !asBuilt.IsOwn(one)).Where(one => rule.HoldsFor(one.Reference) && one.Parts.All(part => rule.When.HoldsOf(part) == Met.Yes)))
        {
            yield return new LineRule([AtOf(one)], ways, works, null) { Asks = rule.Then.At.Position };
        }
    }

    /// <summary>
    /// Does what is computed decide the line of this candidate beside those others? Not where anything was found of it, nor where it is at home among
    /// the reference's own: then identity or a finding may outrank it.
    /// </summary>
    private static bool Speaks(BuildTerms terms, Func<string, bool> holdsFor, Candidate one, IReadOnlyList<Candidate> others)
    {
        var facts = terms.Facts.Family;
        return holdsFor(one.Reference)
            && !one.IsUsersChoice
            && !facts.FindingsAt(one.Position).Any(finding => finding.Part == one.Parts[0].Id)
            && (!IsLinked(facts, one) || others.Any(other =>
                !facts.FitmentsAt(one.Reference, other.Position).Any(fitment => other.Parts.Any(part => part.Id == (fitment.Part ?? Part.None)))));
    }

    /// <summary>Is it what the reference has there, or can it stand for that by number?</summary>
    private static bool IsLinked(FamilyFacts facts, Candidate one) =>
        facts.FitmentsAt(one.Reference, one.Position).Any(fitment => fitment.Part == one.Parts[0].Id)
        || facts.Supersessions.Any(link => link.OldPart == one.Parts[0].Id || link.NewPart == one.Parts[0].Id);

    /// <summary>The work that mends it, and every work that changes what is read.</summary>
    private static IReadOnlyList<string> Ways(BuildTerms terms, string? work, params FeatureAt[] read) =>
    [
        .. new[] { work }.OfType<string>()
            .Union(PlanWorks.Of(terms)
                .Where(one => one.Changes.Any(change => read.Any(at => change == $"{at.Position}.{at.Feature}"))).Select(one => one.Code)),
    ];

    private static bool IsOne(Candidate candidate) => candidate.Parts is [{ IsNothing: false }];

    private static At AtOf(Candidate candidate) => new(candidate.Position, candidate.FitKey);
}
