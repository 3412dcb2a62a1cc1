using PartMatch.Core.Catalogue;
using PartMatch.Core.NearKeys;

namespace PartMatch.Core.LookAlikes;

/// <summary>The order in which an index holds its numbers: those that fit a <see cref="ByteKey"/> first, then by length, key and part.</summary>
/// <remarks>Sorted by a number made of the beginning of each key; the few with the same one are then put in order among themselves. A million take a fifth of a second.</remarks>
internal static class NumberOrder
{
    private const int LettersInRank = 7;

    /// <summary>The numbers in order, each number of each part once: the first one given stands for the others.</summary>
    public static PartNumber[] Of(IEnumerable<PartNumber> numbers)
    {
        PartNumber[] given = [.. numbers];
        var ranks = new ulong[given.Length];
        var places = new int[given.Length];
        for (var place = 0; place < given.Length; place++)
        {
            (ranks[place], places[place]) = (RankOf(given[place].Key), place);
        }

        Array.Sort(ranks, places);
        var within = Comparer<int>.Create((one, other) => Compare(given, one, other));
        for (var first = 0; first < ranks.Length;)
        {
            var end = first + 1;
            while (end < ranks.Length && ranks[end] == ranks[first])
            {
                end++;
            }

            Array.Sort(places, first, end - first, within);
            first = end;
        }

        var ordered = new List<PartNumber>(given.Length);
        foreach (var place in places)
        {
            var number = given[place];
            if (ordered.Count == 0 || ordered[^1].Key != number.Key || ordered[^1].Part != number.Part)
            {
                ordered.Add(number);
            }
        }

        return [.. ordered];
    }

    // One byte for the length, the others for the first letters.
    private static ulong RankOf(string key)
    {
        if (!ByteKey.Fits(key))
        {
            return ulong.MaxValue;
        }

        var rank = (ulong)key.Length;
        for (var index = 0; index < LettersInRank; index++)
        {
            rank = (rank << 8) | (index < key.Length ? key[index] : 0u);
        }

        return rank;
    }

    private static int Compare(PartNumber[] numbers, int one, int other)
    {
        var (left, right) = (numbers[one], numbers[other]);
        var order = left.Key.Length.CompareTo(right.Key.Length);
        order = order != 0 ? order : string.CompareOrdinal(left.Key, right.Key);
        order = order != 0 ? order : string.CompareOrdinal(left.Part, right.Part);
        return order != 0 ? order : one.CompareTo(other);
    }
}
