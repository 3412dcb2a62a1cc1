using PartMatch.Core.Catalogue;
using PartMatch.Core.Fit;
using PartMatch.Core.Injectors;

namespace PartMatch.Core.Supply;

/// <summary>Which of the pumps first?</summary>
public static class PumpRanking
{
    /// <summary>The position that the sums take as the pump's, or null when the family has none.</summary>
    public static Position? FindPosition(FamilyFacts facts) => facts.Positions.FirstOrDefault(position => position.Role == Roles.FuelPump);

    /// <summary>The answer with its pumps ranked, and with what the maker rates the engine at where the injectors are those that it fitted.</summary>
    /// <param name="pumps">The pumps of the catalogue, to ask whether they fit.</param>
    public static SupplySized Rank(SupplySized sized, FamilyFacts facts, IReadOnlyList<Part> pumps)
    {
        var rated = sized.Goal is { } goal && sized.Asked.Injector is { } injector && FittedInjectors.AreFitted(facts, sized.Asked.Variant, injector)
            ? FittedInjectors.RatedWith(goal, facts)
            : null;
        return sized with
        {
            Pumps = Rank(sized.Pumps, facts, sized.Asked.Variant, pumps),
            Links = rated is null ? sized.Links : [.. sized.Links.Select(link =>
                link.Link == "injectors" ? link with { Because = link.Because + FittedInjectors.InWords(link.Enough, rated) } : link)],
        };
    }

    /// <summary>Orders by enough, recorded for the fuel, fit headline, among those that are enough the smallest, then part; numbers them from 1.</summary>
    /// <param name="pumps">The pumps of the catalogue, to ask whether they fit.</param>
    public static IReadOnlyList<SizedPump> Rank(IReadOnlyList<SizedPump> sized, FamilyFacts facts, string variant, IReadOnlyList<Part> pumps)
    {
        var position = FindPosition(facts);
        var fits = position is null
            ? new Dictionary<string, InjectorFit>()
            : pumps.ToDictionary(pump => pump.Id, pump => InjectorFits.Of(facts, variant, position.Code, pump, "rated-delivery"), StringComparer.Ordinal);
        return
        [
            .. sized.Select(pump => pump with { Fit = fits.GetValueOrDefault(pump.Part) })
                .OrderBy(pump => pump.Enough).ThenBy(pump => pump.WettedFor).ThenBy(pump => pump.Fit?.Headline ?? Headline.NotKnownYet)
                .ThenBy(pump => pump.Enough == Enough.Yes ? pump.Flow?.Expected ?? 0 : 0).ThenBy(pump => pump.Part, StringComparer.Ordinal)
                .Select((pump, index) => pump with { Rank = index + 1 }),
        ];
    }
}
