using PartMatch.Core.Listings;
using PartMatch.Core.LookAlikes;
using PartMatch.Storage.Listings;
using PartMatch.Web.LookAlikes;

namespace PartMatch.Web.Listings;

/// <summary>What listings are read and judged with, built once and kept until something of it changes in the base.</summary>
internal sealed class ListingSource(LookAlikeSource lookAlikes, ContentsStore contents)
{
    private Built? _built;

    private sealed record Built(LookAlikeFacts Facts, NumberFinder Finder);

    /// <summary>The facts as the base stands, and the finder of their numbers.</summary>
    public (ListingFacts Facts, NumberFinder Finder) Get()
    {
        var facts = lookAlikes.Get();
        var built = _built;
        if (built is null || !ReferenceEquals(built.Facts, facts))
        {
            _built = built = new Built(facts, new NumberFinder(facts.Numbers.All));
        }

        return (new ListingFacts(facts, contents.All()), built.Finder);
    }
}
