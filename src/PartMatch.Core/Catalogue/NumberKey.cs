using System.Collections.Frozen;
using System.Globalization;
using System.Text;

namespace PartMatch.Core.Catalogue;

/// <summary>
/// The number key: what is left of a written number when the way of writing is taken away. NFKC, foreign letters that look Latin read as
/// Latin, upper case, separators (white space, every dash, dot, slash, underscore) removed. Equal keys are the same number.
/// </summary>
public static class NumberKey
{
    /// <summary>Longest key that is stored or asked about.</summary>
    public const int MaxLength = 40;

    // Source: Unicode Technical Standard 39, confusables.txt: the Greek and Cyrillic capitals whose skeleton is a Latin capital.
    private static readonly FrozenDictionary<char, char> _latinOf = Pairs(
        "\u0391A\u0392B\u0395E\u0396Z\u0397H\u0399I\u039AK\u039CM\u039DN\u039FO\u03A1P\u03A4T\u03A5Y\u03A7X"
        + "\u0410A\u0412B\u0415E\u041AK\u041CM\u041DH\u041EO\u0420P\u0421C\u0422T\u0425X\u0405S\u0406I\u0408J\u04AEY\u050CG\u051AQ\u051CW");

    public static string Of(string written)
    {
        var key = new StringBuilder(written.Length);
        foreach (var letter in written.Normalize(NormalizationForm.FormKC).ToUpperInvariant())
        {
            if (!IsSeparator(letter))
            {
                key.Append(_latinOf.GetValueOrDefault(letter, letter));
            }
        }

        return key.ToString();
    }

    private static bool IsSeparator(char letter) =>
        letter is '.' or '/' or '\\' or '_' or '\u2212' or '\u00B7' or '\u2022' or '\u00AD'
        || char.IsWhiteSpace(letter)
        || char.GetUnicodeCategory(letter) is UnicodeCategory.DashPunctuation or UnicodeCategory.Control or UnicodeCategory.Format or UnicodeCategory.SpaceSeparator;

    private static FrozenDictionary<char, char> Pairs(string pairs) =>
        pairs.Chunk(2).ToFrozenDictionary(pair => pair[0], pair => pair[1]);
}
