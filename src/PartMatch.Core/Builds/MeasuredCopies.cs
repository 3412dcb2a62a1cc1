using PartMatch.Core.Catalogue;
using PartMatch.Core.Items;
using PartMatch.Core.Orders;
using PartMatch.Core.Planning;

namespace PartMatch.Core.Builds;

/// <summary>
/// Bought pieces that were measured when they came in: what was read on them stands in the place of what is recorded of their number, as for any item.
/// </summary>
internal static class MeasuredCopies
{
    /// <summary>The examples that were read of these pieces; empty where nothing was, or nothing that counts.</summary>
    public static IReadOnlyList<Item> Of(BuildFacts facts, BoughtPieces bought) =>
    [
        .. bought.Items.Split(' ', StringSplitOptions.RemoveEmptyEntries)
            .Select(address => facts.Items.FirstOrDefault(item => item.Address == address)).OfType<Item>()
            .Where(item => item.Part == bought.Part && item.Readings.Any(item.Counts)),
    ];

    /// <summary>The examples of a part that the build has bought and that are within their limits, as far as those can be held against it.</summary>
    public static IReadOnlyList<Item> Of(BuildTerms terms, string part) =>
    [
        .. terms.Facts.Bought.Pieces.Where(bought => bought.Part == part && !AreBeyondLimits(terms.Facts, bought))
            .SelectMany(bought => Of(terms.Facts, bought)),
    ];

    /// <summary>Such pieces serve nowhere, whatever they fit.</summary>
    public static bool AreBeyondLimits(BuildFacts facts, BoughtPieces bought) => Beyond(facts, bought).Any();

    /// <summary>
    /// What several positions take is counted once: where one of them takes a part as it was measured, the others do as well. Ours, no source.
    /// </summary>
    public static IEnumerable<PlanRule> Rules(IReadOnlyList<IReadOnlyList<Candidate>> candidates)
    {
        var choices = candidates.SelectMany((all, place) => all.Select((one, choice) => (one, made: new ChoiceMade(place, choice))))
            .Where(choice => choice.one is { From: CandidateFrom.Supply, IsGraded: false }).ToList();
        return choices.Where(choice => choice.one.IsMeasuredCopy).SelectMany(measured => choices
            .Where(other => !other.one.IsMeasuredCopy && other.one.PartsKey == measured.one.PartsKey && other.one.Position != measured.one.Position)
            .Select(other => new PlanRule([measured.made, other.made], [])));
    }

    /// <summary>Pieces that were measured and that the plan no longer counts, and why.</summary>
    public static IEnumerable<string> NotCounted(PlanRun run, SolvedPlan solved)
    {
        var facts = run.Terms.Facts;
        var (plan, works) = (solved.Written.Chosen(solved.Solution), solved.Written.WorksOf(solved.Solution));
        foreach (var bought in facts.Bought.Pieces)
        {
            var limits = Beyond(facts, bought).ToList();
            if (limits.Count > 0)
            {
                yield return $"{Name(facts, bought)} is not counted as good: {string.Join(" ", limits.Select(limit => limit.Text))} {WhatToDo}";
                continue;
            }

            foreach (var measured in Asked(run, bought, plan))
            {
                if (LineReasons.Say(run.Judge(measured, plan, works)) is { } said)
                {
                    yield return $"{Name(facts, bought)} is not counted as good for {run.Terms.At(measured.Position).Position.Name}, "
                        + $"as it was measured: {said} {WhatToDo}";
                }
            }
        }
    }

    private const string WhatToDo = "Measure it once more, then tell at goods in that it is wrong, by the day on which it can go back.";

    /// <summary>Where it was to be, or nobody said and it could be, and the plan has something else.</summary>
    private static IEnumerable<Candidate> Asked(PlanRun run, BoughtPieces bought, IReadOnlyDictionary<string, Candidate> plan)
    {
        var examples = Of(run.Terms.Facts, bought);
        var meantFor = bought.For.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        return examples.Count == 0 || plan.Values.Any(one => one.IsMeasuredCopy && one.Parts[0].Id == bought.Part) ? []
            : run.Candidates.SelectMany(choices => choices).Where(one => one.IsMeasuredCopy && one.Parts[0].Id == bought.Part)
                .Where(one => meantFor.Length == 0 || meantFor.Contains(one.Position))
                .DistinctBy(one => one.Position).Select(one => one with { Examples = examples });
    }

    private static IEnumerable<LimitAnswer> Beyond(BuildFacts facts, BoughtPieces bought) =>
        facts.Family.FindPart(bought.Part) is not { } part || facts.Family.FindKind(part.Kind) is not { } kind ? []
            : Of(facts, bought).SelectMany(item => ItemCheck.Decide(facts.Family, kind, facts.Family.Limits, part, item, []).Limits)
                .Where(limit => limit.Condition == ItemCondition.BeyondLimits);

    private static string Name(BuildFacts facts, BoughtPieces bought) => $"{facts.Family.FindPart(bought.Part)?.Name ?? bought.Part} of {bought.Name}";
}
