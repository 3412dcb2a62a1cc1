using System.Globalization;
using System.Security.Cryptography;
using System.Text;

namespace PartMatch.Core.Buying;

/// <summary>The words of a listing as they are kept with an offer: what was promised can be read again when the page is gone.</summary>
public static class ListingText
{
    /// <summary>Longest text that is kept, in UTF-16 code units. Ours, no source: forty printed pages.</summary>
    public const int MostCharacters = 65_536;

    /// <summary>
    /// The text in the form in which books keep it: normal form C, line feeds, no other control characters, none that turn the direction of writing; cut at
    /// the bound.
    /// </summary>
    /// <returns>Empty when there is nothing to keep. What it returns it leaves as it is.</returns>
    public static KeptText Keep(string text)
    {
        var whole = new StringBuilder(text.Length);
        foreach (var rune in text.ReplaceLineEndings("\n").EnumerateRunes())
        {
            if (rune.Value is '\n' or '\t' || (Rune.GetUnicodeCategory(rune) != UnicodeCategory.Control && !IsTurning(rune.Value)))
            {
                whole.Append(rune);
            }
        }

        var kept = whole.ToString().Normalize().Trim();
        return kept.Length <= MostCharacters ? new KeptText(kept, IsCut: false) : new KeptText(Cut(kept), IsCut: true);
    }

    /// <summary>SHA-256 of the text in UTF-8, in small hexadecimal digits.</summary>
    public static string DigestOf(string text) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text)));

    // Never through the middle of a pair; a mark that lost its letter would be normal all the same.
    private static string Cut(string text) => text[..(char.IsHighSurrogate(text[MostCharacters - 1]) ? MostCharacters - 1 : MostCharacters)].TrimEnd();

    // Embeddings, overrides and isolates of the Unicode Bidirectional Algorithm (UAX #9): a book refuses them.
    private static bool IsTurning(int letter) => letter is (>= 0x202A and <= 0x202E) or (>= 0x2066 and <= 0x2069);
}

/// <param name="IsCut">Was there more?</param>
public sealed record KeptText(string Text, bool IsCut)
{
    public string Digest => ListingText.DigestOf(Text);
}
