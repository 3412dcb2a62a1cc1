using PartMatch.Core.Catalogue;
using PartMatch.Core.Planning;

namespace PartMatch.Core.Builds;

/// <summary>Why is a line as it is, and what else could be there?</summary>
public static class BuildWhys
{
    /// <summary>Other candidates that are put there to see what they would cost; of the others is told what they do in the plan as it is. Ours, no source.</summary>
    private const int MostForced = 8;

    /// <returns>Null where there is no plan, or it has no line there.</returns>
    /// <exception cref="ArgumentException">The family has no such position, or something in the build cannot be read.</exception>
    /// <inheritdoc cref="BuildPlanner.Plan"/>
    public static BuildWhy? Why(
        BuildFacts facts, Build build, int version, PlanObjective objective, DateOnly today, PlanEffort effort, FitMemory memory, string position,
        CancellationToken stop = default)
    {
        var question = new BuildQuestion(facts, build, version, objective, today, effort, memory, stop);
        var candidates = question.CandidatesAt(position);
        if (!question.HasPlan || question.Read(question.Solved).Lines.FirstOrDefault(line => line.Position == position) is not { } line)
        {
            return null;
        }

        return new BuildWhy(
            question.Asked, line, new WhyChain(question).Of(position), Alternatives(question, position, candidates),
            Permalink.To("/api/builds", build.Code, "why").With("line", position).With("objective", Codes.Of(objective)).ToString());
    }

    private static List<WhyAlternative> Alternatives(BuildQuestion question, string position, IReadOnlyList<Candidate> candidates)
    {
        var (solved, at) = (question.Solved, question.Terms.At(position));
        var plan = solved.Written.Chosen(solved.Solution);
        var works = solved.Written.WorksOf(solved.Solution);
        JudgedLine[] others = [.. candidates.Where(one => !one.IsSameAs(plan[position])).DistinctBy(one => (one.From, one.PartsKey)).Select(one => question.Run.Judge(one, plan, works))
            .OrderBy(line => line.Outcome).ThenBy(line => line.Candidate.From).ThenBy(line => line.Candidate.PartsKey, StringComparer.Ordinal)];
        var tried = others.Where(line => Forbidden(at, line.Candidate) is null).Take(MostForced).Select(line => (Line: line, Plan: question.SolveWithWishes(
            written => Otherwise.Force(written, position, one => one.IsSameAs(line.Candidate)), PlanTies.CostAndDays))).ToList();
        return
        [
            .. tried.Where(one => one.Plan.Solution.Choices.Count > 0).OrderBy(one => one.Plan.Solution.Totals.Cost)
                .Select(one => Alternative(question, one.Line, $"{Against(one.Line)}The plan with it {LineChanges.Difference(question.Terms, solved, one.Plan)}.")),
            .. tried.Where(one => one.Plan.Solution.Choices.Count == 0)
                .Select(one => Alternative(question, one.Line, $"{Against(one.Line)}{NoPlanWith(one.Plan.Solution.Status)}")),
            .. others.Except(tried.Select(one => one.Line))
                .Select(line => Alternative(question, line, Forbidden(at, line.Candidate) ?? $"{Against(line)}What it would cost was not reckoned.")),
            .. NotToBeHad(question, position, candidates).Select(line => Alternative(
                question, question.Run.Judge(line, plan, works), BuildWhyNots.NoCandidate(question.Run, position, line.Parts[0].Id))),
        ];
    }

    private static string NoPlanWith(PlanStatus status) => status == PlanStatus.Infeasible ? "No plan holds with it." : PlanWords.NoPlan(status);

    /// <summary>What speaks against it in the plan as it is; empty where it would fit there.</summary>
    private static string Against(JudgedLine line) =>
        line.Outcome is LineOutcome.Fails or LineOutcome.NotKnown && LineReasons.Against(line) is { } reason ? $"In the plan as it is: {reason} " : "";

    /// <summary>The wish that keeps it away.</summary>
    private static string? Forbidden(PositionTerms at, Candidate candidate) =>
        candidate.Parts.FirstOrDefault(part => at.Refuse.Contains(part.Id)) is { } refused ? $"You refuse {refused.Number} there."
        : at.Parts.Count > 0 && !candidate.Parts.All(part => at.Parts.Contains(part.Id)) ? $"You allow only {Fit.FitWording.List(at.Parts)} there."
        : at.Keep == KeepWish.Renew && candidate.IsDonors ? "You asked for a new one."
        : at.Keep == KeepWish.Keep && !candidate.IsDonors ? "You asked that the donor's own stays."
        : null;

    /// <summary>Parts of the kind that neither the donor has nor anybody sells.</summary>
    private static IEnumerable<Candidate> NotToBeHad(BuildQuestion question, string position, IReadOnlyList<Candidate> candidates)
    {
        var at = question.Terms.At(position);
        return at.Position.Group == BuildTerms.Services
            ? []
            : question.Terms.Facts.Family.PartsOfKind(at.Position.Kind)
                .Where(part => !candidates.Any(one => one.Parts.Any(held => held.Id == part.Id))).Select(part => Candidates.Bought(question.Terms, position, part));
    }

    private static WhyAlternative Alternative(BuildQuestion question, JudgedLine line, string whyNot) => new(
        line.Candidate.PartsKey.Replace("|", " or ", StringComparison.Ordinal),
        (line.Candidate.IsDonors ? "the donor's own: " : "") + string.Join(" or ", line.Candidate.Parts.Select(part => part.Name).Distinct()),
        line.Answer.Headline, line.Answer.HeadlineText, LineReasons.LinkOf(question.Run, question.Solved, line), whyNot.Trim());
}
