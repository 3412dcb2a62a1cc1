namespace PartMatch.Core.Listings;

/// <summary>"Water pump P-26-1147-E, used, £40": in a few words nobody labels the number, and there is only one.</summary>
/// <remarks>Ours, no source. Only of plain words: a page has a heading for what it sells, and names related goods below.</remarks>
internal static class SoleNumber
{
    /// <returns>The same numbers; the only one that is merely mentioned counts as sold where none is.
    /// One of the base goes before those that only have the shape.</returns>
    public static IReadOnlyList<FoundNumber> Read(ReadListing listing, IReadOnlyList<FoundNumber> numbers)
    {
        if (listing.Products.Count != 1 || numbers.Any(one => one.Role == NumberRole.Sold)
            || listing.Passages.Any(passage => passage.Place is not (PassagePlace.Text or PassagePlace.Definition)))
        {
            return numbers;
        }

        var mentioned = numbers.Where(one => one.Role == NumberRole.Mentioned && !IsToldOtherwise(listing, one)).ToList();
        var known = mentioned.Where(one => one.Known.Count > 0).ToList();
        var keys = (known.Count > 0 ? known : mentioned).Select(one => one.Key).Distinct(StringComparer.Ordinal).Take(2).ToList();
        return keys is not [var only]
            ? numbers
            : [.. numbers.Select(one => one.Key == only && one.Role == NumberRole.Mentioned ? one with { Role = NumberRole.Sold } : one)];
    }

    // "Wanted: …", "tel …", "similar to …": the words just before it say what it is.
    private static bool IsToldOtherwise(ReadListing listing, FoundNumber number)
    {
        var before = RoleWords.In(listing.Passages[number.Passage].Text[..number.Start]);
        return before is [.., { Kind: CueKind.Mentions or CueKind.OtherNumber or CueKind.SellersOwn or CueKind.Not }];
    }
}
