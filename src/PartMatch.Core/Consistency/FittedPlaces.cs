using PartMatch.Core.Catalogue;

namespace PartMatch.Core.Consistency;

/// <summary>Where each part is fitted, over all variants of a family.</summary>
internal sealed class FittedPlaces(FamilyFacts facts)
{
    private readonly ILookup<string, Fitment> _ofPart = facts.Fitments
        .Where(fitment => fitment.Part is not null && fitment.Evidence?.IsRetracted != true)
        .ToLookup(fitment => fitment.Part!, StringComparer.Ordinal); // filtered just above

    /// <summary>Ordered by variant, then position.</summary>
    public IEnumerable<Fitment> Of(string part) => _ofPart[part];

    /// <summary>In ordinal order; empty where it is fitted nowhere in this family.</summary>
    public IReadOnlyList<string> VariantsOf(params IEnumerable<string> parts) =>
        [.. parts.SelectMany(part => _ofPart[part]).Select(fitment => fitment.Variant).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)];

    public string? FirstPosition(string part) => _ofPart[part].FirstOrDefault()?.Position;
}
