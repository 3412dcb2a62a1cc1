using System.Numerics;
using PartMatch.Core.Catalogue;
using PartMatch.Core.LookAlikes;

namespace PartMatch.Core.Listings;

/// <summary>A stretch of key characters that is a known number.</summary>
/// <param name="To">Behind its last key character.</param>
/// <param name="Numbers">With this key, or, where none has, whose key looks alike; never empty.</param>
internal sealed record KnownSpan(int From, int To, IReadOnlyList<PartNumber> Numbers);

/// <summary>Finds every known number in a text: the longest first, none over another, of equally long ones the first in the text.</summary>
/// <remarks>Linear in the text: at each key character at most one look for each length that a number with this beginning has.</remarks>
internal static class KnownNumberSearch
{
    /// <returns>In the order of the text.</returns>
    public static List<KnownSpan> Find(NumberIndex index, PassageText passage)
    {
        var keys = passage.Keys;
        var beginnings = KeyHash.Beginnings(keys.Folded);
        var fitting = new List<Fitting>();
        for (var start = 0; start < keys.Length; start++)
        {
            var lengths = CanBegin(keys, start) ? index.LengthsAt(keys.Folded, start) : 0;
            var fit = 0UL;
            PartNumber[] longest = [];
            for (; lengths != 0; lengths &= lengths - 1)
            {
                var length = BitOperations.TrailingZeroCount(lengths);
                if (NumbersAt(index, passage, beginnings, start, length) is { Length: > 0 } numbers)
                {
                    fit |= 1UL << length;
                    longest = numbers;
                }
            }

            if (fit != 0)
            {
                fitting.Add(new Fitting(start, fit, longest));
            }
        }

        return fitting.Count == 0 ? [] : LongestFirst(fitting, keys.Length, (start, length) => NumbersAt(index, passage, beginnings, start, length));
    }

    /// <summary>Lengths of the numbers that can stand at a place, one bit each, and the numbers of the longest.</summary>
    private readonly record struct Fitting(int Start, ulong Lengths, PartNumber[] Longest);

    // Inside a word a number can only begin where the rest of the word has a digit; so a page of words costs next to nothing.
    private static bool CanBegin(KeyText keys, int start) =>
        !keys.CutsDigits(start) && (!keys.CutsLetters(start) || keys.HasDigit(start, keys.ChunkEnd(start)));

    private static PartNumber[] NumbersAt(NumberIndex index, PassageText passage, ulong[] beginnings, int start, int length)
    {
        var keys = passage.Keys;
        if (keys.CutsDigits(start + length))
        {
            return [];
        }

        var sameHash = index.WithHash(KeyHash.Of(beginnings, start, length));
        if (sameHash.IsEmpty || !NumberBounds.Allow(keys, start, start + length))
        {
            return [];
        }

        var numbers = new List<PartNumber>();
        var exact = false;
        foreach (var number in sameHash)
        {
            if (number.Key.Length == length && IsAt(keys, start, number.Key))
            {
                exact = true;
                numbers.Add(number);
            }
            else if (LooksLike(keys.Folded.AsSpan(start, length), number.Key) && LookAlikeReading.MayStand(keys, start, number))
            {
                numbers.Add(number);
            }
        }

        // Digits that look like a number with letters are as common as digits.
        var isShort = ShortNumbers.IsShort(keys.Key.Slice(start, length));
        return
        [
            .. numbers.Where(number => (!exact || IsAt(keys, start, number.Key))
                && ((!isShort && !ShortNumbers.IsShort(number.Key)) || ShortNumbers.MayStand(passage, start, number))),
        ];
    }

    private static bool IsAt(KeyText keys, int start, string key) => keys.Key.Slice(start, key.Length).SequenceEqual(key);

    private static bool LooksLike(ReadOnlySpan<char> folded, string key)
    {
        for (var index = 0; index < key.Length; index++)
        {
            if (key.Length != folded.Length || folded[index] != FoldingClasses.Fold(key[index]))
            {
                return false;
            }
        }

        return true;
    }

    private static List<KnownSpan> LongestFirst(List<Fitting> fitting, int textLength, Func<int, int, PartNumber[]> numbersAt)
    {
        var taken = new bool[textLength];
        var found = new List<KnownSpan>();
        for (var length = KeyHash.MaxLength; length > 0; length--)
        {
            foreach (var (start, lengths, longest) in fitting)
            {
                // What is taken is at least as long, so it cannot lie between the two ends.
                if ((lengths & (1UL << length)) != 0 && !taken[start] && !taken[start + length - 1])
                {
                    taken.AsSpan(start, length).Fill(true);
                    found.Add(new KnownSpan(start, start + length, lengths >> length == 1 ? longest : numbersAt(start, length)));
                }
            }
        }

        found.Sort((one, other) => one.From.CompareTo(other.From));
        return found;
    }
}
