using System.Text.RegularExpressions;

namespace PartMatch.Core.Listings;

/// <summary>Does somebody look for a part instead of selling one? In English, German, French, Swedish and Spanish; trade usage, from memory.</summary>
internal static class WantedWords
{
    // "Suche" and "Recherche" alone head the search field of a shop.
    private static readonly Regex _wanted = new(
        @"^\W*(?:wanted|wtb|want to buy|looking (?:for|to buy)|in search of|(?:suche|gesucht|kaufe|recherche|je cherche|cherche|köpes|sökes|söker|busco|compro)[:,]?\s+\p{L}{3})",
        RegexOptions.NonBacktracking | RegexOptions.IgnoreCase | RegexOptions.CultureInvariant);

    /// <summary>Said at the beginning: of the title, of the first heading, or of words without either.</summary>
    public static bool Speak(ReadListing listing) => Beginnings(listing).Any(_wanted.IsMatch);

    private static IEnumerable<string> Beginnings(ReadListing listing)
    {
        var heads = listing.Passages.Where(passage => passage.Place is PassagePlace.Title or PassagePlace.Heading).Take(2).Select(passage => passage.Text).ToList();
        return heads.Count > 0 ? heads : listing.Passages.Where(passage => passage is { Place: PassagePlace.Text, Product: null }).Take(1).Select(passage => passage.Text);
    }
}
