using System.Collections.Frozen;
using System.Globalization;
using System.Text;

namespace PartMatch.Core.Catalogue;

/// <summary>
/// The number key: what is left of a written number when the way of writing is taken away. NFKC, upper case, foreign capitals that look
/// Latin read as Latin, separators (white space, every dash, dot, slash, underscore) removed. Equal keys are the same number.
/// </summary>
/// <remarks>
/// Letters and digits of ASCII are never changed into one another here: 0 and O stay two characters. Telling which of them are easily
/// confused is the business of the look-alikes. Accents stay, and so does every other sign, because a maker may have meant it.
/// </remarks>
public static class NumberKey
{
    /// <summary>Longest key that is stored or asked about.</summary>
    public const int MaxLength = 40;

    private const int MostOnStack = 128;

    // Source: Unicode Technical Standard 39, confusables.txt 14.0.0: what its skeleton makes a Latin capital, a digit, or the bar that I and l share.
    // Only Greek, Cyrillic and Armenian capitals, because letters of those keyboards are what gets typed into a number by mistake.
    private const string Greek = "\u0391A\u0392B\u0395E\u0396Z\u0397H\u0399I\u037FJ\u039AK\u039CM\u03FAM\u039DN\u039FO\u03A1P\u03A4T\u03A5Y\u03A7X\u03DCF";

    private const string Cyrillic =
        "\u0410A\u0412B\u0415E\u04173\u041AK\u041CM\u041DH\u041EO\u0420P\u0421C\u0422T\u0423Y\u0425X\u0405S\u0406I\u0408J\u0474V\u04AEY\u04C0I\u050CG\u051CW";

    private const string Armenian = "\u054DU\u054FS\u0555O";

    // The dotless i has no capital under the invariant culture; the multiplication sign is written for the letter x ("M8×1").
    private const string Others = "\u0131I\u00D7X";

    private static readonly FrozenDictionary<char, char> _latinOf =
        (Greek + Cyrillic + Armenian + Others).Chunk(2).ToFrozenDictionary(pair => pair[0], pair => pair[1]);

    /// <summary>The key of a number as written. Writing in another case, with other separators or full-width characters gives the same key.</summary>
    /// <returns>Upper case; empty when the text holds nothing but separators. The key of a key is itself.</returns>
    public static string Of(string written)
    {
        if (Ascii.IsValid(written))
        {
            return BareAscii(written);
        }

        // Twice, because taking a separator out can bring a letter and its accent together, which NFKC then joins.
        var once = Bare(WholeRunes(written).Normalize(NormalizationForm.FormKC));
        return Bare(once.Normalize(NormalizationForm.FormKC));
    }

    /// <summary>Is it one of the signs that a key leaves out?</summary>
    internal static bool IsSeparator(char letter) =>
        letter is '.' or '/' or '\\' or '_' or '\u2212' or '\u00B7' or '\u2022' or '\u2044' or '\u2215'
        || char.IsWhiteSpace(letter)
        || char.GetUnicodeCategory(letter) is UnicodeCategory.DashPunctuation or UnicodeCategory.Control or UnicodeCategory.Format or UnicodeCategory.SpaceSeparator;

    /// <summary>The Latin capital a foreign capital looks like; itself where it looks like none.</summary>
    internal static char ReadAsLatin(char capital) => _latinOf.GetValueOrDefault(capital, capital);

    /// <summary>The byte order mark with its bytes exchanged, which .NET refuses to normalise.</summary>
    internal const char NoCharacter = '\uFFFE';

    // What Bare makes of ASCII, without asking for the category of each letter: a whole catalogue goes through here several times.
    // A key is given back as it is.
    private static string BareAscii(string written)
    {
        var key = written.Length <= MostOnStack ? stackalloc char[MostOnStack] : new char[written.Length];
        var length = 0;
        foreach (var letter in written)
        {
            if (letter is > ' ' and not ('-' or '.' or '/' or '\\' or '_' or '\u007F'))
            {
                key[length++] = letter is >= 'a' and <= 'z' ? (char)(letter - 'a' + 'A') : letter;
            }
        }

        return key[..length].SequenceEqual(written) ? written : new string(key[..length]);
    }

    private static string Bare(string normal)
    {
        var key = new StringBuilder(normal.Length);
        foreach (var letter in normal.ToUpperInvariant())
        {
            if (!IsSeparator(letter))
            {
                key.Append(ReadAsLatin(letter));
            }
        }

        return key.ToString();
    }

    // Normalize throws at half a surrogate pair, and at the byte order mark turned round; outside text may hold both.
    private static string WholeRunes(string written)
    {
        var whole = new StringBuilder(written.Length);
        foreach (var rune in written.EnumerateRunes())
        {
            whole.Append(rune.Value == NoCharacter ? Rune.ReplacementChar : rune);
        }

        return whole.ToString();
    }
}
