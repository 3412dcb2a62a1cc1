using PartMatch.Core.Catalogue;
using PartMatch.Core.Fit;

namespace PartMatch.Core.Consistency;

/// <summary>Companion rules that a variant breaks as the maker built it.</summary>
internal static class CompanionFaults
{
    private sealed record Broken(string Variant, Part When, Part Then, string Fit);

    public static IEnumerable<Fault> Find(FamilyFacts facts) => facts.Companions.Where(rule => rule.Evidence?.IsRetracted != true)
        .SelectMany(rule => facts.Variants.Where(variant => rule.HoldsFor(variant.Code)).Select(variant => OnVariant(facts, variant, rule))
            .Where(broken => broken.Count > 0)
            .GroupBy(broken => string.Join('\n', broken.Select(pair => $"{pair.When.Id} {pair.Then.Id}")), StringComparer.Ordinal)
            .Select(group => Fault(facts, rule, [.. group])));

    /// <summary>
    /// Pairs in which the "when" certainly holds and the "then" certainly not, of a part for which that is so with everything that may be at the
    /// other position on some stretch of engines.
    /// </summary>
    private static IReadOnlyList<Broken> OnVariant(FamilyFacts facts, Variant variant, Companion rule)
    {
        var built = new AsBuilt(facts, variant, rule.When.At.Position, rule.Then.At.Position);
        var found = new List<Broken>();
        foreach (var stretch in built.Stretches)
        {
            var itself = rule.When.At.Position == rule.Then.At.Position;
            (Part When, Part Then)[] pairs =
            [
                .. HeldAt(facts, built, rule.When.At.Position, stretch)
                    .SelectMany(when => itself ? [when] : HeldAt(facts, built, rule.Then.At.Position, stretch), (when, then) => (when, then)),
            ];
            bool IsBroken((Part When, Part Then) pair) => Holds(pair.When, rule.When) == Met.Yes && Holds(pair.Then, rule.Then) == Met.No;
            bool AlwaysBroken((Part When, Part Then) pair) =>
                pairs.Where(other => other.When == pair.When).All(IsBroken) || pairs.Where(other => other.Then == pair.Then).All(IsBroken);
            found.AddRange(pairs.Where(pair => IsBroken(pair) && AlwaysBroken(pair))
                .Select(pair => new Broken(variant.Code, pair.When, pair.Then, built.Question(rule.When.At.Position, pair.When.Id, stretch))));
        }

        return [.. found.DistinctBy(pair => (pair.When.Id, pair.Then.Id))];
    }

    private static IEnumerable<Part> HeldAt(FamilyFacts facts, AsBuilt built, string position, EngineSpan stretch)
    {
        var nothing = Part.Nothing(facts.FindPosition(position)?.Kind ?? "");
        return built.FittedAt(position, stretch).Select(fitment => fitment.Part is { } part ? facts.GetPart(part) : nothing).DistinctBy(part => part.Id);
    }

    /// <summary>Where nothing is, no condition holds but that nothing is there.</summary>
    public static Met Holds(Part part, Condition condition) =>
        part.IsNothing && condition.At.Feature != Feature.Present.Code ? Met.No : condition.HoldsOf(part);

    private static Fault Fault(FamilyFacts facts, Companion rule, IReadOnlyList<IReadOnlyList<Broken>> byVariant)
    {
        var (rows, pairs) = (new FaultRows(facts), byVariant[0]);
        string[] variants = [.. byVariant.Select(broken => broken[0].Variant)];
        string[] positions = [rule.When.At.Position, rule.Then.At.Position];
        return new Fault(
            FaultSort.CompanionContradicts,
            $"{string.Join(", ", variants)} as built {(variants.Length == 1 ? "breaks" : "break")} the companion rule {rule.Code}",
            $"{InWords(facts, rule.When)}, goes only with {InWords(facts, rule.Then)}. {string.Join(" ", pairs.Select(pair => Found(facts, rule, pair)))}",
            rule.When.At.Position, variants,
            [
                rows.Of(rule),
                .. pairs.SelectMany(pair => rows.Of(pair.When, rule.When.At.Feature).Concat(rows.Of(pair.Then, rule.Then.At.Feature))),
                .. variants.SelectMany(_ => positions, facts.FitmentsAt).SelectMany(fitments => fitments).Select(rows.Of),
            ],
            pairs[0].Fit,
            "Either the rule is too wide (limit it to variants, or correct its values), or a value or fitment is wrong: "
                + "look at the sources again and correct the row.")
            .WithoutRepeatedRows();
    }

    private static string InWords(FamilyFacts facts, Condition condition)
    {
        var place = FaultWords.PlaceName(facts, condition.At.Position);
        var feature = FaultWords.FeatureName(facts, condition.At.Position, condition.At.Feature);
        return condition.At.Feature == Feature.Present.Code
            ? $"{place}: {(condition.Value.Text == "no" ? "nothing fitted" : "a part fitted")}"
            : $"{place}: {feature} {FaultWords.Condition(condition.Relation, condition.Value)}";
    }

    private static string Found(FamilyFacts facts, Companion rule, Broken pair) =>
        $"The maker fitted {Has(pair.When, rule.When.At)} with {Has(pair.Then, rule.Then.At)} at {FaultWords.PlaceName(facts, rule.Then.At.Position)}.";

    private static string Has(Part part, FeatureAt at) =>
        part.IsNothing ? "nothing"
        : at.Feature == Feature.Present.Code ? part.Number
        : $"{part.Number} ({FitWording.Text(ValueSelection.Of(part, at.Feature))})";
}
