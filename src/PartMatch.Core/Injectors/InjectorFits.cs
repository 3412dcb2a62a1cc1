using PartMatch.Core.Catalogue;
using PartMatch.Core.Fit;

namespace PartMatch.Core.Injectors;

/// <summary>Which injectors would go on the engine?</summary>
public static class InjectorFits
{
    /// <summary>The position that the sums take as the injectors', or null when the family has none.</summary>
    public static Position? FindPosition(FamilyFacts facts) => facts.Positions.FirstOrDefault(position => position.Role == "injector");

    /// <summary>The fit of each injector at that position of the variant, by part; empty when the family has no such position.</summary>
    /// <param name="variant">A variant of this family.</param>
    public static IReadOnlyDictionary<string, InjectorFit> Of(FamilyFacts facts, string variant, IReadOnlyList<Part> injectors) =>
        FindPosition(facts) is { } position
            ? injectors.ToDictionary(injector => injector.Id, injector => Of(facts, variant, position.Code, injector), StringComparer.Ordinal)
            : new Dictionary<string, InjectorFit>();

    private static InjectorFit Of(FamilyFacts facts, string variant, string position, Part injector)
    {
        var answer = FitCheck.Decide(facts, new FitQuestion(variant, position, injector));
        var link = new Permalink("/api/fit").With("family", facts.Family.Code).With("variant", variant).With("position", position).With("part", injector.Id);
        return new InjectorFit(answer.Headline, answer.Sureness, link.ToString());
    }
}
