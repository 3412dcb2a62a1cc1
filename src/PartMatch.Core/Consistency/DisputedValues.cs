using PartMatch.Core.Catalogue;
using PartMatch.Core.Fit;

namespace PartMatch.Core.Consistency;

/// <summary>Values of which equally good sources exclude each other; until one gives way the value counts as not known.</summary>
internal static class DisputedValues
{
    public static IEnumerable<Fault> Find(FamilyFacts facts, FittedPlaces places, OpenQuestions open)
    {
        var rows = new FaultRows(facts);
        foreach (var part in facts.Parts)
        {
            var kind = facts.FindKind(part.Kind);
            foreach (var feature in part.Values.Select(value => value.Feature).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal))
            {
                if (ValueSelection.Of(part, feature) is not DisputedValue disputed)
                {
                    continue;
                }

                var hangs = open.HangingOn(new LacksValue(part.Id, feature));
                var name = FaultWords.FeatureName(kind, feature);
                yield return new Fault(
                    FaultSort.ValuesDisputed, $"{part.Name} {part.Number}: sources exclude each other on {name}",
                    $"{FitWording.AsSentence(name)}: {disputed.Text}, from sources of the same standing; so it counts as not known. "
                        + FaultWords.Hangs(hangs.Unlocks),
                    places.FirstPosition(part.Id), places.VariantsOf(part.Id), [.. rows.Of(part, feature)], hangs.Fit ?? places.QuestionAbout(part.Id),
                    "Look at the sources again or measure once more, and retract the one that is wrong; "
                        + "where the part itself varies, record the spread that holds them all.")
                {
                    Unlocks = hangs.Unlocks,
                };
            }
        }
    }
}
