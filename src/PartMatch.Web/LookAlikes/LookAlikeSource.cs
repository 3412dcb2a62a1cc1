using PartMatch.Core.Catalogue;
using PartMatch.Core.LookAlikes;
using PartMatch.Storage.Families;
using PartMatch.Storage.LookAlikes;

namespace PartMatch.Web.LookAlikes;

/// <summary>The facts behind every look-alike question, built once and kept until something of them changes in the base.</summary>
internal sealed class LookAlikeSource(LookAlikeStamp stamps, NumberSource numbers, FamilyStore families, OddsStore odds)
{
    private Built? _built;

    private sealed record Built(string Stamp, LookAlikeFacts Facts);

    /// <summary>The facts as the base stands. Two requests that build at once both build the same.</summary>
    public LookAlikeFacts Get()
    {
        var stamp = stamps.Get();
        if (_built is { } built && built.Stamp == stamp)
        {
            // Counts change with every offer that is stored; the same instance where nobody has committed anything.
            return (_built = built with { Facts = built.Facts.With(odds.Get()) }).Facts;
        }

        var facts = Build();

        // Kept only where nothing was committed meanwhile: else the facts may be of a later state than the stamp.
        if (ReferenceEquals(stamps.Get(), stamp))
        {
            _built = new Built(stamp, facts);
        }

        return facts;
    }

    private LookAlikeFacts Build() => new(
        numbers.Get(),
        [.. families.List().Select(family => families.FindFamily(family.Family)).OfType<FamilyFacts>()],
        odds.Get());
}
