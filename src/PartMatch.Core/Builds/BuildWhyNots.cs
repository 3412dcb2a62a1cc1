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
        var name = at?.Name ?? position;
        var force = new ForcedChoice(
            position, candidate => candidate.Parts.Any(one => one.Id == part),
            new BuildGround($"force:{position}", $"{name}: {(part == Part.None ? "nothing" : part)} is to be there.", $"leave {name} as in the plan"), question.Solved);
        var plain = Plain(question, position, part);
        return question.CandidatesAt(position).Any(force.IsIt)
            ? Forced(question, force, plain)
            : plain with { HeadlineText = NoCandidate(question.Run, position, part) };
    }

    private static BuildWhyNot Forced(BuildQuestion question, ForcedChoice force, BuildWhyNot plain)
    {
        var forced = question.SolveWithWishes(written => Otherwise.Force(written, force.Position, force.IsIt));
        var status = forced.Solution.Status;
        if (status == PlanStatus.Infeasible)
        {
            var conflict = question.ConflictWith(force);
            var open = Enough(question, force);
            var said = open.Length > 0 && !conflict.Members.Any(IsOther) ? open : $"{open}{Alone(question, force)}{Broken(question, force, conflict)}";
            return plain with { Status = status, HeadlineText = $"No plan holds with it. {said}", Conflict = conflict };
        }

        if (forced.Solution.Choices.Count == 0 || !question.HasPlan)
        {
            return plain with { Status = status, HeadlineText = PlanWords.NoPlan(status) };
        }

        var changes = LineChanges.Between(question.Run, question.Solved, forced);
        var isThere = question.Solved.Written.Chosen(question.Solved.Solution).TryGetValue(force.Position, out var chosen) && force.IsIt(chosen);
        return plain with
        {
            Status = status,
            HeadlineText = isThere ? "It is in the plan." : Headline(question, forced, changes.Count),
            CostMore = LineChanges.CostMore(question.Terms, question.Solved, forced),
            DaysMore = forced.Solution.Totals.Days - question.Solved.Solution.Totals.Days,
            Changes = changes,
            Plan = question.Read(forced),
        };
    }

    private static string Headline(BuildQuestion question, SolvedPlan forced, int changes) => string.Create(
        CultureInfo.InvariantCulture,
        $"The plan with it {LineChanges.Difference(question.Terms, question.Solved, forced)}; {changes} {(changes == 1 ? "line changes" : "lines change")}.");

    /// <summary>What its own fit answer says among the parts of the plan: that comes before everything it would drag in.</summary>
    private static string Alone(BuildQuestion question, ForcedChoice force) =>
        question.HasPlan && LineReasons.Say(Judged(question, force)) is { } said
            ? $"In this plan: {said} "
            : "";

    /// <summary>Of injectors that the sums leave open: that comes before what their flow differs from.</summary>
    private static string Enough(BuildQuestion question, ForcedChoice force)
    {
        var part = question.CandidatesAt(force.Position).First(force.IsIt).Parts[0].Id; // a candidate has a part
        return InjectorGoals.Sets(question.Terms, force.Position) && !question.Terms.At(force.Position).AdmitNotKnown
            && InjectorGoals.Size(question.Terms).GetValueOrDefault(part) is { Enough: Injectors.Enough.NotKnown } sized
            ? $"Whether it is enough for {question.Build.Goal?.Power} is not known. {sized.Because} It is taken only where what is not known there is admitted. "
            : "";
    }

    /// <summary>Would it be taken where what is not known of it is admitted?</summary>
    private static bool IsNotKnown(BuildQuestion question, ForcedChoice force) => !question.Terms.At(force.Position).AdmitNotKnown
        && question.HasPlan && Judged(question, force).Outcome == LineOutcome.NotKnown
        && question.Run.CanHold(
            BuildPlanner.SoftWishes(question.Terms, question.Run.Write()).ToHashSet(), question.Effort,
            written => Otherwise.Force(written with { Problem = Otherwise.OnTrust(written, force.Position) }, force.Position, force.IsIt), question.Stop) == true;

    /// <summary>Among the parts of the plan.</summary>
    private static JudgedLine Judged(BuildQuestion question, ForcedChoice force) => question.Run.Judge(
        question.CandidatesAt(force.Position).First(force.IsIt), question.Solved.Written.Chosen(question.Solved.Solution),
        question.Solved.Written.WorksOf(question.Solved.Solution));

    private static bool IsOther(ConflictMember member) => !member.Wish.StartsWith("force:", StringComparison.Ordinal);

    private static string Broken(BuildQuestion question, ForcedChoice force, BuildConflict conflict)
    {
        string[] others = [.. conflict.Members.Where(IsOther).Select(member => member.Text)];
        if (others.Length > 0)
        {
            return $"With it these cannot hold: {string.Join(" ", others)}";
        }

        return IsNotKnown(question, force) ? "It is taken only where what is not known there is admitted." : "What is known of the parts rules it out.";
    }

    private static BuildWhyNot Plain(BuildQuestion question, string position, string part) => new(
        question.Asked, position, part, PlanStatus.Infeasible, "", null, null, [], null,
        Permalink.To("/api/builds", question.Build.Code, "why-not").With("position", position).With("part", part)
            .With("objective", Codes.Of(question.Asked.Objective)).ToString());

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
