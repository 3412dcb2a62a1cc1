using System.Globalization;
using System.Text;
using PartMatch.Core.Catalogue;

namespace PartMatch.Core.Listings;

/// <summary>What stands between two characters of a key in the text, the weakest first.</summary>
internal enum KeyGap : byte
{
    /// <summary>Nothing a reader sees; a soft hyphen or a character of no width.</summary>
    Glued,

    /// <summary>A dash, dot, slash or underscore.</summary>
    Tied,
    Blank,
    LineBreak,
}

/// <summary>What one character of a text is in a number key; the same rules as <see cref="NumberKey"/>, character by character.</summary>
internal static class KeyCharacters
{
    private const char Separator = '\0';
    private const char Several = '\uFFFF';

    // Normalising a character costs a hundred times a look into this table, and a page in Cyrillic has nothing else.
    private static readonly char[] _single = Table();

    /// <summary>The one key character that stands for it, where it is that simple.</summary>
    /// <returns>False for a separator, and for what is several characters, joins the one before it, or is half a pair.</returns>
    public static bool IsSingle(char letter, out char key)
    {
        key = _single[letter];
        return key is not (Separator or Several);
    }

    /// <summary>Is it a separator, alone and simply?</summary>
    public static bool IsSeparator(char letter) => _single[letter] == Separator;

    /// <summary>What a separator does to the characters at its sides.</summary>
    public static KeyGap GapOf(char separator) => separator switch
    {
        '\n' or '\r' or '\v' or '\f' or '\u0085' or '\u2028' or '\u2029' => KeyGap.LineBreak,
        _ when char.IsWhiteSpace(separator) => KeyGap.Blank,
        _ when char.GetUnicodeCategory(separator) is UnicodeCategory.Format or UnicodeCategory.Control => KeyGap.Glued,
        _ => KeyGap.Tied,
    };

    /// <summary>Does it join the character before it?</summary>
    public static bool IsMark(Rune rune) =>
        Rune.GetUnicodeCategory(rune) is UnicodeCategory.NonSpacingMark or UnicodeCategory.SpacingCombiningMark or UnicodeCategory.EnclosingMark;

    private static char[] Table()
    {
        var table = new char[char.MaxValue + 1];
        for (var code = 0; code < table.Length; code++)
        {
            var letter = (char)code;
            table[code] = char.IsSurrogate(letter) || IsMark(new Rune(letter)) ? Several : SingleKey(letter);
        }

        return table;
    }

    private static char SingleKey(char letter)
    {
        var normal = (letter == NumberKey.NoCharacter ? '\uFFFD' : letter).ToString().Normalize(NormalizationForm.FormKC).ToUpperInvariant();
        return normal.Length != 1 ? Several : NumberKey.IsSeparator(normal[0]) ? Separator : NumberKey.ReadAsLatin(normal[0]);
    }
}
