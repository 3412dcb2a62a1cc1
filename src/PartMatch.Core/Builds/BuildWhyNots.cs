using System.Globalization;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Planning;

namespace PartMatch.Core.Builds;

/// <summary>Why is another part not in the plan? It is put there, and what becomes of the plan is the answer.</summary>
public static class BuildWhyNots
{
    /// <param name="part">Its id; <c>none</c> for nothing.</param>
    /// <exception cref="ArgumentException">The family has no such position, or something in the build cannot be read.</exception>
    /// <inheritdoc cref="BuildPlanner.Plan"/>
    public static BuildWhyNot Ask(
        BuildFacts facts, Build build, int version, PlanObjective objective, DateOnly today, PlanEffort effort, FitMemory memory, string position, string part,
        CancellationToken stop = default)
    {
        var question = new BuildQuestion(facts, build, version, objective, today, effort, memory, stop);
        var at = facts.Family.FindPosition(position);
        var force = new ForcedPart(position, part, at?.Name ?? position);
        return question.CandidatesAt(position).Any(force.IsIt)
            ? Forced(question, force)
            : Plain(question, force, PlanStatus.Infeasible, NoCandidate(question.Run, position, part));
    }

    private static BuildWhyNot Forced(BuildQuestion question, ForcedPart force)
    {
        var forced = question.SolveWithWishes(written => Otherwise.Force(written, force.Position, force.IsIt));
        var status = forced.Solution.Status;
        if (status == PlanStatus.Infeasible)
        {
            var run = new PlanRun(question.Facts, question.Build, question.Today, question.Memory, refusedSellers: []);
            var conflict = new ConflictSearch(run, question.Asked, question.Effort, force, question.Stop).Find();
            return Plain(question, force, status, $"No plan holds with it: {Broken(conflict)}") with { Conflict = conflict };
        }

        if (forced.Solution.Choices.Count == 0 || !question.HasPlan)
        {
            return Plain(question, force, status, PlanWords.NoPlan(status));
        }

        var changes = LineChanges.Between(question.Run, question.Solved, forced);
        var isThere = question.Solved.Written.Chosen(question.Solved.Solution).TryGetValue(force.Position, out var chosen) && force.IsIt(chosen);
        return Plain(question, force, status, isThere ? "It is in the plan." : Headline(question, forced, changes.Count)) with
        {
            CostMore = LineChanges.CostMore(question.Terms, question.Solved, forced),
            DaysMore = forced.Solution.Totals.Days - question.Solved.Solution.Totals.Days,
            Changes = changes,
            Plan = question.Read(forced),
        };
    }

    private static string Headline(BuildQuestion question, SolvedPlan forced, int changes) => string.Create(
        CultureInfo.InvariantCulture,
        $"The plan with it {LineChanges.Difference(question.Terms, question.Solved, forced)}; {changes} {(changes == 1 ? "line changes" : "lines change")}.");

    private static string Broken(BuildConflict conflict) =>
        string.Join(" ", conflict.Members.Where(member => !member.Wish.StartsWith("force:", StringComparison.Ordinal)).Select(member => member.Text)
            .DefaultIfEmpty("what is known of the parts rules it out."));

    private static BuildWhyNot Plain(BuildQuestion question, ForcedPart force, PlanStatus status, string headline) =>
        new(question.Asked, force.Position, force.Part, status, headline, null, null, [], null, force.Link(question.Asked).ToString());

    /// <summary>Told apart: not in a book, of another kind, no grade of the maker's, not to be had.</summary>
    internal static string NoCandidate(PlanRun run, string position, string part)
    {
        var family = run.Terms.Facts.Family;
        var at = run.Terms.At(position);
        if (part == Part.None)
        {
            return $"{at.Position.Name}: something has to be declared there.";
        }

        if (family.FindPart(part) is not { } known)
        {
            return $"No book in the scope of {run.Terms.Build.Family} knows {part}.";
        }

        if (known.Kind != at.Position.Kind)
        {
            return $"{part} is a {Name(family, known.Kind)}; {at.Position.Name} takes a {Name(family, at.Position.Kind)}.";
        }

        if (at.Refuse.Contains(part))
        {
            return $"{at.Position.Name}: {known.Number} is refused.";
        }

        if (run.Screen.Obtainable.Contains(part))
        {
            return $"{at.Position.Name} is chosen by measurement, and {part} is none of the maker's grades there.";
        }

        var leftOut = run.Terms.Facts.Buying.Offers.Count(offer => offer.Part == part);
        var donors = family.FitmentsAt(run.Terms.Build.Donor.Variant, position).Any(fitment => fitment.Part == part) && (at.StateOfDonor is PartState.Damaged or PartState.Missing)
            ? $"The donor's own is {(at.StateOfDonor == PartState.Damaged ? "damaged" : "missing")}, and n"
            : "N";
        return leftOut == 0
            ? $"{donors}obody sells {part}, and it is not in hand."
            : string.Create(CultureInfo.InvariantCulture, $"{donors}one of the {leftOut} offers of {part} can be reckoned with: see what was not weighed.");
    }

    private static string Name(FamilyFacts family, string kind) => family.FindKind(kind)?.Name.ToLowerInvariant() ?? kind;
}
