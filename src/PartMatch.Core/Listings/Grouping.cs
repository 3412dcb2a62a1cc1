using PartMatch.Core.Catalogue;

namespace PartMatch.Core.Listings;

/// <summary>Separators of a number as it stands in a text, against those of the base.</summary>
internal static class Grouping
{
    /// <summary>Does the number have a separator, of whatever kind, wherever the text has white space?</summary>
    public static bool BlanksStandAtSeparators(KeyText keys, int from, PartNumber number) =>
        Compare(keys, from, number, (text, known) => text < KeyGap.Blank || known != KeyGap.Glued);

    /// <summary>Does the number have white space wherever the text has it?</summary>
    public static bool BlanksStandAtBlanks(KeyText keys, int from, PartNumber number) =>
        Compare(keys, from, number, (text, known) => text < KeyGap.Blank || known >= KeyGap.Blank);

    /// <summary>Are text and number both parted, and at the same places?</summary>
    public static bool IsThatOf(KeyText keys, int from, PartNumber number) =>
        keys.End(from + number.Key.Length - 1) - keys.Start(from) > number.Key.Length
        && Compare(keys, from, number, (text, known) => (text == KeyGap.Glued) == (known == KeyGap.Glued));

    private static bool Compare(KeyText keys, int from, PartNumber number, Func<KeyGap, KeyGap, bool> agree)
    {
        var known = new KeyText(number.Written);
        if (known.Length != number.Key.Length)
        {
            return false;
        }

        for (var index = 1; index < known.Length; index++)
        {
            if (!agree(keys.Before[from + index], known.Before[index]))
            {
                return false;
            }
        }

        return true;
    }
}
