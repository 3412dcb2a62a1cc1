using PartMatch.Core.Catalogue;

namespace PartMatch.Core.Consistency;

/// <summary>Statements that cite no evidence, or whose only evidence was retracted.</summary>
/// <remarks>A retracted row beside one that counts is no fault: it stays to be seen.</remarks>
internal static class EvidenceFaults
{
    private const string Cite =
        "Find the source and name it in the row; where there is none, say so: evidence of grade inferred, with who thought so and when.";

    private const string Replace =
        "Find another source and record what it says; where there is none, the row may stay: it is shown and counts as not recorded.";

    public static IEnumerable<Fault> Find(FamilyFacts facts, FittedPlaces places)
    {
        var rows = new FaultRows(facts);
        return
        [
            .. facts.Parts.SelectMany(part => OfPart(rows, places, part)),
            .. facts.Parts.SelectMany(part => OfValues(facts, rows, places, part)),
            .. facts.Fitments.GroupBy(fitment => (fitment.Variant, fitment.Position)).SelectMany(place => OfFitments(facts, rows, [.. place])),
            .. facts.Needs.SelectMany(need => One(
                $"need of {need.Variant} at {FaultWords.PlaceName(facts, need.Position)}", need.Evidence, rows.Of(need), need.Position, [need.Variant])),
            .. facts.Joints.SelectMany(joint => One(
                $"joint {joint.Code}", joint.Evidence, rows.Of(joint), joint.Left.Position, On(facts, joint.HoldsFor))),
            .. facts.Stacks.SelectMany(stack => One(
                $"stack {stack.Code}", stack.Evidence, rows.Of(stack), stack.Terms.OfType<FeatureTerm>().FirstOrDefault()?.At.Position,
                On(facts, stack.HoldsFor))),
            .. facts.Companions.SelectMany(rule => One(
                $"companion rule {rule.Code}", rule.Evidence, rows.Of(rule), rule.When.At.Position, On(facts, rule.HoldsFor))),
            .. facts.Supersessions.SelectMany(link => One(
                $"replacement of {link.OldPart} by {link.NewPart}", link.Evidence, rows.Of(link), places.FirstPosition(link.OldPart),
                places.VariantsOf(link.OldPart, link.NewPart))),
            .. facts.Pairs.Where(pair => pair.Evidence is null).SelectMany(pair => One(
                $"judgement of {pair.PartA} and {pair.PartB}", pair.Evidence, rows.Of(pair), null,
                places.VariantsOf(pair.PartA, pair.PartB))),
        ];
    }

    private static IReadOnlyList<string> On(FamilyFacts facts, Func<string, bool> holds) => [.. facts.Variants.Select(variant => variant.Code).Where(holds)];

    private static IEnumerable<Fault> OfPart(FaultRows rows, FittedPlaces places, Part part) =>
        One($"part {part.Id}", part.Evidence, rows.Of(part), places.FirstPosition(part.Id), places.VariantsOf(part.Id));

    /// <summary>One fault for all values of a part that cite nothing, one for all features that only retracted sources speak of.</summary>
    private static IEnumerable<Fault> OfValues(FamilyFacts facts, FaultRows rows, FittedPlaces places, Part part)
    {
        var byFeature = part.Values.GroupBy(value => value.Feature, StringComparer.Ordinal).ToList();
        RecordedValue[] bare = [.. part.Values.Where(value => value.Evidence is null)];
        RecordedValue[] retracted = [.. byFeature.Where(values => values.All(value => value.Evidence?.IsRetracted == true)).SelectMany(values => values)];
        string Names(RecordedValue[] values) =>
            string.Join(", ", values.Select(value => FaultWords.FeatureName(facts.FindKind(part.Kind), value.Feature)).Distinct());
        Fault Of(RecordedValue[] values, string says, string mend) => new(
            FaultSort.NoEvidence,
            $"{part.Name} {part.Number}: {FaultWords.Count(values.Length, "value", "values")} {says}",
            $"Without a source that counts: {Names(values)}.",
            places.FirstPosition(part.Id), places.VariantsOf(part.Id), [.. values.Select(value => rows.Of(part, value))], null, mend);
        return
        [
            .. bare.Length > 0 ? [Of(bare, "without evidence", Cite)] : Array.Empty<Fault>(),
            .. retracted.Length > 0 ? [Of(retracted, "on retracted evidence only", Replace)] : Array.Empty<Fault>(),
        ];
    }

    private static IEnumerable<Fault> OfFitments(FamilyFacts facts, FaultRows rows, IReadOnlyList<Fitment> place)
    {
        // Where every row is retracted, the position is listed as not recorded.
        Fitment[] bare = [.. place.Where(fitment => fitment.Evidence is null)];
        return bare.Length == 0 ? [] :
        [
            new Fault(
                FaultSort.NoEvidence,
                $"{FaultWords.PlaceName(facts, bare[0].Position)} on {bare[0].Variant}: what the maker fitted is recorded without evidence",
                $"Recorded without a source: {string.Join(", ", bare.Select(fitment => fitment.Part ?? "nothing").Distinct())}.",
                bare[0].Position, [bare[0].Variant], [.. bare.Select(rows.Of)], null, Cite),
        ];
    }

    private static IEnumerable<Fault> One(string what, Evidence? evidence, FaultRow row, string? position, IReadOnlyList<string> variants)
    {
        if (evidence is null)
        {
            yield return new Fault(
                FaultSort.NoEvidence, $"The {what} is recorded without evidence", "It counts, and nobody can look up why.",
                position, variants, [row], null, Cite);
        }
        else if (evidence.IsRetracted)
        {
            var why = evidence.RetractedWhy is null ? "" : $": {evidence.RetractedWhy}";
            yield return new Fault(
                FaultSort.NoEvidence, $"The {what} rests on retracted evidence only",
                $"{evidence.Code} was retracted {evidence.RetractedOn}{why}. It counts as not recorded.", position, variants, [row], null, Replace);
        }
    }
}
