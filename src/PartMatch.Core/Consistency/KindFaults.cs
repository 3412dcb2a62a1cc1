using PartMatch.Core.Catalogue;

namespace PartMatch.Core.Consistency;

/// <summary>Kinds in use whose list of features that matter nobody has reviewed.</summary>
internal static class KindFaults
{
    public static IEnumerable<Fault> Find(FamilyFacts facts) => facts.Positions.GroupBy(position => position.Kind, StringComparer.Ordinal)
        .Select(group => (kind: facts.FindKind(group.Key), positions: group.ToList())).Where(one => one.kind?.Reviewed == false)
        .Select(one => Fault(facts, one.kind!, one.positions)); // filtered just above

    private static Fault Fault(FamilyFacts facts, Kind kind, List<Position> positions)
    {
        var rows = new FaultRows(facts);
        var listed = FaultWords.Count(kind.Features.Count, "feature is", "features are");
        var ruled = FaultWords.Count(kind.Rules.Select(rule => rule.Feature).Distinct().Count(), "has", "have");
        return new Fault(
            FaultSort.KindNotReviewed, $"{kind.Name}: the list of features that matter has not been reviewed",
            $"{listed} listed, {ruled} a rule. Until somebody has gone through what else could make a part of this kind not fit or run differently, "
                + "an answer can say no more than that nothing recorded speaks against it.",
            positions[0].Code, [.. facts.Variants.Select(variant => variant.Code)], [FaultRows.Of(kind), .. positions.Select(rows.Of)], null,
            "Go through the kind with somebody who knows it, add what is missing, then set reviewed to yes.");
    }
}
