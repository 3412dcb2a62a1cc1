namespace PartMatch.Core.Listings;

/// <summary>One number of a listing with every place it stands in.</summary>
/// <param name="Found">At least one; in the order of the listing.</param>
internal sealed record NumberGroup(string Key, IReadOnlyList<FoundNumber> Found)
{
    public string Written => Found.OrderBy(found => found.Role).First().Written;

    public bool IsKnown => Found[0].Known.Count > 0;

    public bool Identifies => IsKnown && Found[0].Known.All(number => number.Identifies);

    /// <summary>By key and, for a number read through look-alike characters, by the key it was read as; in the order of the listing.</summary>
    public static IReadOnlyList<NumberGroup> Of(IReadOnlyList<FoundNumber> found) =>
        [.. found.GroupBy(one => one.Key, StringComparer.Ordinal).Select(group => new NumberGroup(group.Key, [.. group]))];

    /// <summary>Numbers by the product they are sold as. What is said of the page as a whole is of its product where there is one only.</summary>
    /// <param name="counts">Of the places where a number stands as sold.</param>
    public static ILookup<int, NumberGroup> ByProduct(ReadListing listing, IReadOnlyList<NumberGroup> groups, Func<FoundNumber, bool> counts)
    {
        int? whole = listing.Products.Count == 1 ? 0 : null;
        return groups
            .SelectMany(
                group => group.Found.Where(found => found.Role == NumberRole.Sold && counts(found))
                    .Select(found => listing.Passages[found.Passage].Product ?? whole).OfType<int>().Distinct(),
                (group, product) => (Group: group, Product: product))
            .ToLookup(sold => sold.Product, sold => sold.Group);
    }

    /// <summary>Do both stand on one part of the base? A mark that narrows agrees with every part that carries it.</summary>
    public bool IsSamePartAs(NumberGroup other) => Found[0].Known.Select(number => number.Part).Intersect(other.Found[0].Known.Select(number => number.Part), StringComparer.Ordinal).Any();

    /// <summary>Where it stands, of one product; in words.</summary>
    public string PlaceOf(ReadListing listing, int product) => listing.Passages[
        Found.OrderBy(found => found.Role).ThenBy(found => listing.Passages[found.Passage].Product == product ? 0 : 1).First().Passage].Where;

    /// <summary>Every place, each once.</summary>
    public IReadOnlyList<string> Places(ReadListing listing) => [.. Found.Select(found => listing.Passages[found.Passage].Where).Distinct(StringComparer.Ordinal)];
}
