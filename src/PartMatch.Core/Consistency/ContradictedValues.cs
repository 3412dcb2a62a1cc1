using PartMatch.Core.Catalogue;
using PartMatch.Core.Fit;

namespace PartMatch.Core.Consistency;

/// <summary>Values that a better source decides and somebody read or heard otherwise: a worn example, another part, or a slip.</summary>
internal static class ContradictedValues
{
    public static IEnumerable<Fault> Find(FamilyFacts facts, FittedPlaces places)
    {
        var rows = new FaultRows(facts);
        foreach (var part in facts.Parts)
        {
            var kind = facts.FindKind(part.Kind);
            foreach (var feature in part.Values.Select(value => value.Feature).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal))
            {
                if (ValueSelection.Of(part, feature) is not StatedValue { Against: { Count: > 0 } against } stated)
                {
                    continue;
                }

                var name = FaultWords.FeatureName(kind, feature);
                var said = FitWording.List(against.Select(weaker => $"{weaker.Reading.Text} ({FaultWords.Source(weaker.Evidence)})"));
                yield return new Fault(
                    FaultSort.ValuesContradicted, $"{part.Name} {part.Number}: a weaker source says otherwise on {name}",
                    $"{FitWording.AsSentence(name)}: {FitWording.Text(stated)} counts. Against it: {said}.",
                    places.FirstPosition(part.Id), places.VariantsOf(part.Id), [.. rows.Of(part, feature)], places.QuestionAbout(part.Id),
                    "Measure once more: a worn example, another part than its number says, or a slip. Retract the source that is wrong; "
                        + "what is true of one example only belongs to an item.");
            }
        }
    }
}
