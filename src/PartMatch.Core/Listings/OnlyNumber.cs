using System.Text.RegularExpressions;

namespace PartMatch.Core.Listings;

/// <summary>Words that name one part, and say of no number that it is the sold one, sell that part. Ours, no source.</summary>
internal static class OnlyNumber
{
    /// <param name="question">Words without a list may name another part by the way ("off an engine with block …"): only one of the kind that is needed, or a set, counts.</param>
    /// <returns>The numbers in their order; those of such a part as sold.</returns>
    public static IReadOnlyList<FoundNumber> AsSold(
        ListingFacts facts, ListingQuestion question, ReadListing listing, IReadOnlyList<FoundNumber> numbers)
    {
        var owners = numbers.Where(number => IsSaid(listing, number)).ToLookup(number => OwnerOf(listing, number));
        HashSet<FoundNumber> sold = [.. owners.Where(own => own.Key is not null).SelectMany(own => NamesOne(listing, own))
            .Where(number => listing.Passages[number.Passage].Product is not null || IsOfKind(facts, question, number))];
        return sold.Count == 0 ? numbers : [.. numbers.Select(number => sold.Contains(number) ? number with { Role = NumberRole.Sold } : number)];
    }

    // A number that no book knows may be the sold one as well: then nothing is taken for granted.
    private static IEnumerable<FoundNumber> NamesOne(ReadListing listing, IEnumerable<FoundNumber> own)
    {
        var all = own.ToList();
        var named = all.FindAll(number => number.Role == NumberRole.Mentioned && number.Known.Count > 0);
        var isOne = named.SelectMany(number => number.Known).Select(known => known.Part).Distinct(StringComparer.Ordinal).Take(2).Count() == 1
            || named.Select(number => number.Key).Distinct(StringComparer.Ordinal).Take(2).Count() == 1;
        return isOne && !all.Exists(number => number.Role == NumberRole.Sold) && !named.Exists(number => IsHedged(listing, number)) ? named : [];
    }

    private static bool IsHedged(ReadListing listing, FoundNumber number) => IsHedged(listing.Passages[number.Passage].Text, number);

    private static bool IsHedged(string text, FoundNumber number) =>
        IsAsked(text.AsSpan(number.Start + number.Length)) || _unread.IsMatch(text) || RoleWords.In(text).Any(cue => cue.End <= number.Start && cue.Kind is CueKind.Mentions or CueKind.OtherNumber);

    private static bool IsAsked(ReadOnlySpan<char> after) => after.IndexOfAny('.', '?', '!') is >= 0 and var end && after[end] == '?';

    private static readonly Regex _unread = new(
        @"\b(?:(?:cannot|can['’]t|could not|couldn['’]t) (?:read|make out|see the number)|illegible|unreadable|unleserlich|nicht (?:mehr )?(?:lesbar|zu lesen)|illisible|oläslig\w*|ilegible)\b",
        RegexOptions.NonBacktracking | RegexOptions.IgnoreCase | RegexOptions.CultureInvariant);

    private static bool IsOfKind(ListingFacts facts, ListingQuestion question, FoundNumber number) =>
        question.Place is not { } place || place.Family.FindPosition(place.Position)?.Kind is not { } kind
        || number.Known.Any(known => facts.LookAlikes.FindPart(known.Part).Part?.Kind == kind || facts.Contents[known.Part].Any());

    // A picture shows a thing, and a quotation is somebody else's word, or an earlier one.
    private static bool IsSaid(ReadListing listing, FoundNumber number) =>
        listing.Passages[number.Passage].Place is not (PassagePlace.Picture or PassagePlace.Quoted);

    private static int? OwnerOf(ReadListing listing, FoundNumber number) =>
        listing.Passages[number.Passage].Product ?? (listing.Products.Count == 1 ? 0 : null);
}
