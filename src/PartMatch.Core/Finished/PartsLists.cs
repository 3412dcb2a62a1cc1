using System.Globalization;
using PartMatch.Core.Builds;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Fit;
using PartMatch.Core.Orders;
using PartMatch.Core.Parts;

namespace PartMatch.Core.Finished;

/// <summary>What is in a build: as it was told where it was told, else as it is planned.</summary>
public static class PartsLists
{
    public static PartsList Of(BuildFacts facts, Build build, BuildPlan plan)
    {
        var family = facts.Family;
        Finding[] found = [.. family.Findings.Where(finding => Sittings.IsOf(build.Code, finding.Evidence) && !finding.Evidence.IsRetracted)];
        var learned = found.GroupBy(finding => (finding.Position, finding.Part, finding.Evidence.Code)).Select(same => Learned(family, [.. same]))
            .OrderBy(line => line.Position, StringComparer.Ordinal).ThenBy(line => line.Evidence, StringComparer.Ordinal).ToList();

        // What was told last is what is there.
        var built = found.OrderBy(finding => finding.Evidence.Date, StringComparer.Ordinal).ThenBy(finding => finding.Evidence.Code, StringComparer.Ordinal)
            .GroupBy(finding => finding.Position).ToDictionary(same => same.Key, same => same.Last().Part, StringComparer.Ordinal);
        ListedPart[] parts = [.. plan.Lines.Where(line => line.Group != BuildTerms.Services).Select(line => Listed(family, line,
            built.GetValueOrDefault(line.Position)))];
        ListedPart[] beside =
        [
            .. family.Positions.Where(position => position.Group != BuildTerms.Services && built.ContainsKey(position.Code) && parts.All(part => part.Position != position.Code))
                .Select(position => Told(family, position, built[position.Code])),
        ];
        return new PartsList(
            plan.Asked, build.Title, Engine(family, build), Goal(build), plan.Status, HeadlineOf(plan, parts, learned), [.. parts, .. beside],
            [.. plan.Works.Where(work => !GradeOrders.IsWaiting(work.Work)).Select(work => new ListedWork(work.Name, work.Who, work.Price, work.Days))], learned,
            [.. found.Select(finding => finding.Evidence).DistinctBy(evidence => evidence.Code).OrderBy(evidence => evidence.Code, StringComparer.Ordinal)
                .Select(evidence => SourceShown.Of(evidence))],
            plan.Cost?.Total, plan.Cautions);
    }

    private static ListedPart Listed(FamilyFacts family, BuildLine line, string? built)
    {
        string[] planned = line.Part is { } only ? [only] : [.. line.OneOf];
        var isAsPlanned = built is null || (built == Part.None ? planned.Length == 0 : planned.Contains(built));
        return new ListedPart(
            line.Position, line.Name, line.Group, built is null ? planned : Numbers(built),
                built is null || planned is [_] && isAsPlanned ? line.PartName : family.FindPart(built)?.Name,
            line.Pieces, isAsPlanned ? line.ActionText : "Otherwise than planned", isAsPlanned ? line.Works : [],
            built is null ? ListedStanding.Planned : ListedStanding.Built, isAsPlanned ? line.Headline : null, isAsPlanned ? line.Sureness : null)
        {
            NotYet = isAsPlanned ? [.. Missing(line)] : [],
            Mounts = !isAsPlanned ? null : line.Headline == Headline.FitsWithWork ? FindingOutcome.WithWork : FindingOutcome.Yes,
            Runs = !isAsPlanned ? null : line.Headline == Headline.MountsButRunsDifferently ? FindingOutcome.Differently : FindingOutcome.Same,
        };
    }

    /// <summary>What is still to happen, as far as the orders and the plan tell, before anything can be found of it.</summary>
    private static IEnumerable<string> Missing(BuildLine line)
    {
        if (line.Buy.Count > 0)
        {
            yield return "not ordered yet";
        }

        foreach (var bought in line.Bought.Where(bought => bought.State is LineState.Ordered or LineState.Arrived))
        {
            yield return SayNotYet(bought.State, bought.Order, bought.Line);
        }

        if (line.Works.Count > 0)
        {
            yield return $"work to be done: {string.Join(", ", line.Works)}";
        }
    }

    /// <param name="state">Ordered or arrived.</param>
    internal static string SayNotYet(LineState state, int order, int line) =>
        string.Create(CultureInfo.InvariantCulture, $"{(state == LineState.Ordered ? "on the way" : "there, and not looked at")} (order {order}, line {line})");

    private static ListedPart Told(FamilyFacts family, Position position, string part) => new(
        position.Code, position.Name, position.Group, Numbers(part), family.FindPart(part)?.Name, null, "Not in the plan", [], ListedStanding.Built, null,
            null);

    private static IReadOnlyList<string> Numbers(string part) => part == Part.None ? [] : [part];

    private static LearnedLine Learned(FamilyFacts family, IReadOnlyList<Finding> same)
    {
        var first = same[0];
        FindingOutcome? On(Axis axis) => same.FirstOrDefault(finding => finding.Axis == axis)?.Outcome;
        return new LearnedLine(
            first.Position, family.Positions.FirstOrDefault(position => position.Code == first.Position)?.Name ?? first.Position, first.Part,
                On(Axis.Mounts), On(Axis.Runs),
            [.. first.With.OrderBy(pair => pair.Key, StringComparer.Ordinal).Select(pair => $"{pair.Key}={pair.Value ?? Part.None}")], first.Note, first.Evidence.Code,
            [.. same.Select(finding => finding.Code)]);
    }

    private static string Engine(FamilyFacts family, Build build)
    {
        string NameOf(string code) => family.FindVariant(code)?.Name ?? code;
        return build.Target is { } target && target != build.Donor.Variant ? $"{NameOf(build.Donor.Variant)} → {NameOf(target)}" : NameOf(build.Donor.Variant);
    }

    private static string? Goal(Build build) => build.Goal is not { } goal ? null : string.Join(
        ", ", new[] { goal.Power is { } power ? $"{power}{(goal.Speed is { } speed ? $" at {speed}" : "")}" : null,
            goal.Boost is { } boost ? $"{boost} of boost" : null, goal.Fuel }.OfType<string>());

    private static string HeadlineOf(BuildPlan plan, ListedPart[] parts, List<LearnedLine> learned)
    {
        var built = parts.Count(part => part.Standing == ListedStanding.Built);
        return learned.Count == 0
            ? plan.Cost is null ? plan.HeadlineText : "As planned: nobody has told yet what was built."
            : string.Create(CultureInfo.InvariantCulture, $"{built} of {parts.Length} positions are as somebody built them; the others are as planned.");
    }
}
