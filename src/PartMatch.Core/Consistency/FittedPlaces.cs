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
    [
        .. parts.SelectMany(part => _ofPart[part]).Select(fitment => fitment.Variant).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal),
    ];

    /// <summary>The first place where it is fitted; of a part fitted nowhere, the first where its kind sits.</summary>
    public string? FirstPosition(string part) => _ofPart[part].FirstOrDefault()?.Position ?? PositionOfKind(part)?.Code;

    /// <summary>Does a part fitted nowhere go where its kind sits? Null where it is fitted, or its kind sits nowhere.</summary>
    public string? QuestionAbout(string part)
    {
        if (_ofPart[part].Any() || PositionOfKind(part) is not { } position)
        {
            return null;
        }

        bool HasOne(Variant variant) => facts.FitmentsAt(variant.Code, position.Code).Any(fitment => fitment.Part is not null);
        return facts.Variants.FirstOrDefault(HasOne) is not { } there ? null : new Permalink("/api/fit")
            .With("family", facts.Family.Code).With("variant", there.Code).With("position", position.Code).With("part", part).ToString();
    }

    private Position? PositionOfKind(string part) =>
        facts.FindPart(part) is { } found ? facts.Positions.FirstOrDefault(position => position.Kind == found.Kind) : null;
}
