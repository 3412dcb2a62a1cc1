using System.Globalization;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Items;
using PartMatch.Core.Orders;

namespace PartMatch.Core.Builds;

/// <summary>
/// Bought pieces that were measured when they came in: what was read on them stands in the place of what is recorded of their number, as for any item.
/// </summary>
internal static class MeasuredCopies
{
    /// <summary>So many lots are tried in every combination where a position takes several pieces; of more, each alone and all together. Ours, no source.</summary>
    private const int MostCombined = 4;

    /// <summary>Names the offer that stands for them.</summary>
    public static string CodeOf(BoughtPieces bought) =>
        string.Create(CultureInfo.InvariantCulture, $"{bought.Order}.{bought.Line}.{Codes.Of(bought.State)}{(bought.Item == "" ? "" : "." + bought.Item)}");

    /// <summary>The example that was read of these pieces; null where none was, or nothing that counts.</summary>
    public static Item? Of(BuildFacts facts, BoughtPieces bought) => facts.Items.FirstOrDefault(
        item => bought.Item != "" && item.Address == bought.Item && item.Part == bought.Part && item.Readings.Any(item.Counts));

    /// <summary>Such pieces serve nowhere, whatever they fit.</summary>
    public static bool AreBeyondLimits(BuildFacts facts, BoughtPieces bought) => Beyond(facts, bought).Any();

    /// <summary>
    /// Do they serve only as they were measured? Where a part is chosen by measurement anywhere, its number speaks: there nobody goes by the piece.
    /// </summary>
    public static bool IsOne(BuildTerms terms, BoughtPieces bought) => Of(terms.Facts, bought) is not null && !terms.Facts.Family.Selects.Any(row =>
        row.Evidence?.IsRetracted != true && terms.Facts.Family.Fitments.Any(fitment => fitment.Position == row.Position && fitment.Part == bought.Part));

    /// <summary>A candidate as its number is recorded, and as the pieces were measured that the build has of it: alone, or together where one takes several.</summary>
    public static IEnumerable<Candidate> With(BuildTerms terms, PositionTerms at, Candidate asRecorded)
    {
        yield return asRecorded;
        var needed = Math.Max(1, asRecorded.Pieces ?? 1);
        List<BoughtPieces> lots =
        [
            .. terms.Facts.Bought.Pieces.Where(bought => bought.Part == asRecorded.Parts[0].Id && (bought.IsNew || !at.IsBoughtNew)
                && IsOne(terms, bought) && !AreBeyondLimits(terms.Facts, bought)),
        ];
        foreach (var some in Some(lots).Where(some => some.Sum(lot => lot.Pieces) - some.Min(lot => lot.Pieces) < needed))
        {
            Item[] examples = [.. some.Select(lot => Of(terms.Facts, lot)).OfType<Item>()];
            yield return asRecorded with { Parts = [MeasuredPart.Of(asRecorded.Parts[0], examples[0])], Examples = examples, Measured = some };
        }
    }

    private static IEnumerable<IReadOnlyList<BoughtPieces>> Some(List<BoughtPieces> lots) => lots.Count > MostCombined
        ? [.. lots.Select(lot => new[] { lot }), lots]
        : Enumerable.Range(1, (1 << lots.Count) - 1).Select(set => lots.Where((_, lot) => (set >> lot & 1) == 1).ToList());

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

    private const string WhatToDo = "Measure it once more; then say under Buying that it goes back, by the day on which it can.";

    /// <summary>Where it was to be, or nobody said and it could be, and the plan has something else.</summary>
    private static IEnumerable<Candidate> Asked(PlanRun run, BoughtPieces bought, IReadOnlyDictionary<string, Candidate> plan)
    {
        var meantFor = bought.For.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        return plan.Values.Any(one => one.Measured.Contains(bought)) ? []
            : run.Candidates.SelectMany(choices => choices).Where(one => one.Measured is [var alone] && alone == bought)
                .Where(one => meantFor.Length == 0 || meantFor.Contains(one.Position)).DistinctBy(one => one.Position);
    }

    private static IEnumerable<LimitAnswer> Beyond(BuildFacts facts, BoughtPieces bought) =>
        Of(facts, bought) is not { } item || facts.Family.FindPart(bought.Part) is not { } part || facts.Family.FindKind(part.Kind) is not { } kind ? []
            : ItemCheck.Decide(facts.Family, kind, facts.Family.Limits, part, item, []).Limits.Where(limit => limit.Condition == ItemCondition.BeyondLimits);

    private static string Name(BuildFacts facts, BoughtPieces bought) => $"{facts.Family.FindPart(bought.Part)?.Name ?? bought.Part} of {bought.Name}";
}
