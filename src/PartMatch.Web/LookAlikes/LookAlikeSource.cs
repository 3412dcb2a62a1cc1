using PartMatch.Core.Catalogue;
using PartMatch.Core.LookAlikes;
using PartMatch.Storage.Families;
using PartMatch.Storage.LookAlikes;

namespace PartMatch.Web.LookAlikes;

/// <summary>The facts behind every look-alike question, built once and kept until the base changes.</summary>
internal sealed class LookAlikeSource(NumberStore numbers, FamilyStore families, OddsStore odds)
{
    private Built? _built;

    private sealed record Built(IReadOnlyList<KnownNumber> From, LookAlikeFacts Facts);

    /// <summary>The facts as the base stands.</summary>
    public LookAlikeFacts Get()
    {
        // The store hands out the same list until the base changes. Two requests that build at once both build the same.
        var all = numbers.All();
        if (_built is not { } built || !ReferenceEquals(built.From, all))
        {
            _built = built = new Built(all, Build(all));
        }

        return built.Facts;
    }

    private LookAlikeFacts Build(IReadOnlyList<KnownNumber> all) => new(
        new LookAlikeIndex(all.Select(known => known.Number)),
        [.. families.List().Select(family => families.FindFamily(family.Family)).OfType<FamilyFacts>()],
        odds.Get());
}
