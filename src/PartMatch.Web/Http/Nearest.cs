using PartMatch.Core.LookAlikes;

namespace PartMatch.Web.Http;

/// <summary>Which known word was probably meant?</summary>
internal static class Nearest
{
    // Beyond a third of its letters a word is another word, not a slip.
    private const int LettersPerEdit = 3;

    // An unknown word of any length comes from outside; no known one is longer.
    private const int LongestWord = 60;

    /// <summary>The known word with the fewest edits from the one found; where nothing is near, one that begins like it; else null.</summary>
    public static string? Find(string found, IReadOnlyCollection<string> known)
    {
        if (found.Length is 0 or > LongestWord)
        {
            return null;
        }

        var folded = found.ToLowerInvariant();
        var (word, edits) = known.Select(word => (word, edits: NumberDistance.OptimalStringAlignment(folded, word))).OrderBy(pair => pair.edits).FirstOrDefault();
        return word is not null && edits <= Math.Max(1, folded.Length / LettersPerEdit)
            ? word
            : known.FirstOrDefault(candidate => candidate.StartsWith(folded, StringComparison.Ordinal) || folded.StartsWith(candidate, StringComparison.Ordinal));
    }
}
