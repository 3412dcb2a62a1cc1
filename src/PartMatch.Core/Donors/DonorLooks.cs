using System.Globalization;
using PartMatch.Core.Builds;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Fit;
using PartMatch.Core.Identification;
using PartMatch.Core.Measures;
using PartMatch.Core.Planning;

namespace PartMatch.Core.Donors;

/// <summary>What to look at by hand before a donor is paid for.</summary>
internal static class DonorLooks
{
    /// <summary>What fits into a pocket. Ours, no source.</summary>
    private static readonly Method[] _tools = [Method.SteelRule, Method.Caliper];

    /// <summary>More is not read in the rain. Ours, no source.</summary>
    private const int MostIdentity = 6;

    public static DonorLook Of(BuildToRank asked, Build build, BuildPlan plan, CancellationToken stop)
    {
        var family = asked.Facts.Family;
        string[] variants = [build.Donor.Variant, .. family.Variants.Select(variant => variant.Code).Where(code => code != build.Donor.Variant)];
        var identity = variants.Length > 1 && VariantIdentification.Decide(family, variants,
            new TellApartTerms(CheckMode.InHand, _tools, [])) is TellApartDecided decided
            ? decided.Answer
            : null;
        return new DonorLook(
            identity is null ? "The family has this variant alone: there is nothing to tell it apart from." : DonorWords.Identity(identity),
            identity is null ? [] : Identity(build.Donor.Variant, identity), [.. Parts(asked, build, plan, stop)]);
    }

    /// <summary>The checks of the key, and beside them more of a walk round: one part that was swapped or lost deceives a single check.</summary>
    private static IReadOnlyList<Confirmation> Identity(string variant, TellApartAnswer identity) =>
    [
        .. identity.Confirm.Concat(identity.WalkRound
                .Where(stop => !identity.Confirm.Any(check => check.Check.Position == stop.Position))
                .Select(stop => Expected(variant, identity, stop)).Where(check => check.RulesOut.Count > 0 && check.Check.AccessMinutes == 0))
            .Take(MostIdentity),
    ];

    private static Confirmation Expected(string variant, TellApartAnswer identity, WalkRoundStop stop)
    {
        WalkRoundAnswer[] own = [.. stop.Answers.Where(answer => answer.Candidates.Contains(variant))];
        return new Confirmation(
            stop.Check, string.Join(" or ", own.Select(answer => answer.Text)),
            [.. identity.Candidates.Select(row => row.Candidate).Where(code => !own.Any(answer => answer.Candidates.Contains(code)))]);
    }

    private static IEnumerable<PartToSee> Parts(BuildToRank asked, Build build, BuildPlan plan, CancellationToken stop)
    {
        BuildLine[] open = [.. plan.Lines.Where(PlannedDonor.IsNotInspected)];
        if (open.Length == 0)
        {
            return [];
        }

        // The very question of the plan that the row shows: it is remembered, and both differ in days only where days differ.
        var question = new BuildQuestion(asked.Facts, build, asked.Version, asked.Objective, asked.Today, asked.Effort, asked.Memory, stop);
        return open.Select((line, index) =>
            {
                asked.Looking(index, open.Length);
                return Part(question, line);
            })
            .OrderBy(part => part.IfBad is not null).ThenByDescending(part => part.IfBad is { } more ? Amount.Of(more).Minor : 0)
            .ThenBy(part => part.Position, StringComparer.Ordinal);
    }

    private static PartToSee Part(BuildQuestion question, BuildLine line)
    {
        var without = question.SolveWithWishes(written => Otherwise.Forbid(written, line.Position, candidate => candidate.IsDonors), PlanTies.CostAndDays);
        var isThere = without.Solution.Choices.Count > 0;
        Money? more = isThere ? LineChanges.CostMore(question.Terms, question.Solved, without) : null;
        var position = question.Terms.At(line.Position).Position;
        return new PartToSee(
            line.Position, line.Name, line.Part is { } only ? [only] : line.OneOf, line.Pieces, more, Text(question, without, isThere), position.AccessMinutes,
            position.Access, Limits(question.Facts.Family, position, line));
    }

    private static string Text(BuildQuestion question, SolvedPlan without, bool isThere) => (isThere, without.Solution.Status) switch
    {
        (true, _) => $"If it turns out to be bad, the build {LineChanges.Difference(question.Terms, question.Solved, without)}.",
        (_, PlanStatus.Infeasible) => "If it turns out to be bad, there is no plan: nothing else that serves can be had.",
        _ => "What it costs if it turns out to be bad was not found out in the time.",
    };

    private static IReadOnlyList<string> Limits(FamilyFacts family, Position position, BuildLine line) =>
    [
        .. family.Limits.Where(limit => limit.Kind == position.Kind && limit.Evidence?.IsRetracted != true && (limit.Part is null || limit.Part == line.Part))
            .Select(limit => string.Create(
                CultureInfo.InvariantCulture,
                $"{FitWording.AsSentence(family.FindKind(position.Kind)?.FindFeature(limit.Feature)?.Name ?? limit.Feature)}: {FitWording.Text(limit.Band, limit.Unit)}{Source(limit)}")),
    ];

    private static string Source(ServiceLimit limit) => limit.Evidence is { } evidence ? $" ({evidence.Code})" : "";
}
