using PartMatch.Core.Catalogue;
using PartMatch.Core.Fit;

namespace PartMatch.Core.Injectors;

/// <summary>Which injectors would go on the engine?</summary>
public static class InjectorFits
{
    private const string RatedFlow = "rated-flow";

    /// <summary>The position that the sums take as the injectors', or null when the family has none.</summary>
    public static Position? FindPosition(FamilyFacts facts) => facts.Positions.FirstOrDefault(position => position.Role == Roles.Injector);

    /// <summary>The fit of each injector at that position of the variant, by part; empty when the family has no such position.</summary>
    /// <param name="variant">A variant of this family.</param>
    public static IReadOnlyDictionary<string, InjectorFit> Of(FamilyFacts facts, string variant, IReadOnlyList<Part> injectors) =>
        FindPosition(facts) is { } position
            ? injectors.ToDictionary(injector => injector.Id, injector => Of(facts, variant, position.Code, injector, RatedFlow), StringComparer.Ordinal)
            : new Dictionary<string, InjectorFit>();

    /// <summary>The fit of a part that is chosen by what it delivers.</summary>
    /// <param name="delivery">The feature that a goal of another power changes anyway.</param>
    internal static InjectorFit Of(FamilyFacts facts, string variant, string position, Part part, string delivery)
    {
        var answer = FitCheck.Decide(facts, new FitQuestion(variant, position, part));
        var link = new Permalink("/api/fit").With("family", facts.Family.Code).With("variant", variant).With("position", position).With("part", part.Id);
        var unmet = answer.Reasons.Where(reason => reason.Met != Met.Yes
            && reason.By is (ReasonBy.Feature or ReasonBy.Joint or ReasonBy.Stack or ReasonBy.Companion))
            .Select(reason => reason.Feature ?? reason.Code ?? "").Where(what =>
                what.Length > 0).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal).ToList();
        return new InjectorFit(answer.Headline, answer.Sureness, link.ToString())
        {
            IsFitted = facts.FitmentsAt(variant, position).Any(fitment => fitment.Part == part.Id),
            Differs = [.. unmet.Where(what => what != delivery)],
            OnlyFlowDiffers = unmet.Count == 1 && unmet[0] == delivery,
        };
    }
}
