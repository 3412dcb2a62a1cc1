namespace PartMatch.Core.LookAlikes;

/// <summary>Characters that are taken for one another, and what stands for all of them.</summary>
/// <param name="ReadAs">The digit that every character of the class folds to.</param>
/// <param name="Characters">The class, the digit first.</param>
/// <param name="Source">Where the class comes from, character by character.</param>
public sealed record FoldingClass(char ReadAs, string Characters, string Source);

/// <summary>
/// The look-alike characters. Folding a key replaces each by the digit of its class, so that two keys that differ only by look-alike
/// characters fold to the same text, however many they are.
/// </summary>
/// <remarks>
/// 7 is folded with nothing although it is often confused with 1: in numbers made of digits it would flood every answer. The pairs 1/7 and
/// 2/7 are cheap substitutions instead (<see cref="CharacterConfusions"/>).
/// </remarks>
public static class FoldingClasses
{
    private const string NoSource = "common practice, no source";

    /// <summary>The classes, by digit.</summary>
    public static IReadOnlyList<FoldingClass> All { get; } =
    [
        new('0', "0OQD",
            "0/O: ISMP Medication Safety Alert, 12 January 2000, and D. Crockford, Base 32. O and Q: not used in vehicle identification numbers, ISO 3779. D: " + NoSource),
        new('1', "1IL", "1/I and 1/l: ISMP Medication Safety Alert, 12 January 2000, and D. Crockford, Base 32. I: not used in vehicle identification numbers, ISO 3779"),
        new('2', "2Z", "ISMP Medication Safety Alert, 12 January 2000"),
        new('5', "5S", NoSource),
        new('6', "6G", NoSource),
        new('8', "8B", NoSource),
    ];

    private static readonly char[] _asciiReadAs = ReadAsTable();

    /// <summary>The folded character; itself when it is in no class.</summary>
    public static char Fold(char letter) => letter < _asciiReadAs.Length ? _asciiReadAs[letter] : letter;

    /// <summary>The folded key, as long as the key.</summary>
    /// <param name="key">A number key; lower case letters are in no class.</param>
    public static string Fold(string key) =>
        string.Create(key.Length, key, static (folded, from) =>
        {
            for (var index = 0; index < folded.Length; index++)
            {
                folded[index] = Fold(from[index]);
            }
        });

    /// <summary>Do they differ by look-alike characters only, or not at all?</summary>
    internal static bool IsSameFolded(string one, string other)
    {
        if (one.Length != other.Length)
        {
            return false;
        }

        for (var index = 0; index < one.Length; index++)
        {
            if (Fold(one[index]) != Fold(other[index]))
            {
                return false;
            }
        }

        return true;
    }

    private static char[] ReadAsTable()
    {
        var table = new char[128];
        for (var letter = 0; letter < table.Length; letter++)
        {
            table[letter] = (char)letter;
        }

        foreach (var foldingClass in All)
        {
            foreach (var letter in foldingClass.Characters)
            {
                table[letter] = foldingClass.ReadAs;
            }
        }

        return table;
    }
}
