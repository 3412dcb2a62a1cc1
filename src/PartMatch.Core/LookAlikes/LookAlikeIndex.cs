using System.Numerics;
using PartMatch.Core.Catalogue;

namespace PartMatch.Core.LookAlikes;

/// <summary>A number whose key is near the key asked about.</summary>
/// <param name="Edits">Optimal string alignment distance of the keys as they are.</param>
/// <param name="FoldedEdits">The same of the folded keys; this one is within the limit.</param>
public sealed record NearNumber(PartNumber Number, int Edits, int FoldedEdits, MixUp MixUp);

/// <summary>
/// All numbers of the base, ready to be asked for those near a key. Complete: no number within the limit is missed, whether or not the key
/// asked about is itself in the base. Immutable.
/// </summary>
/// <remarks>
/// The folded keys lie in one block by length; where there are many of a length, their halves (<see cref="KeyHalves"/>) say which to look at. A count of
/// characters turns most of those away before the distance is worked out: no edit takes away more than one character or adds more than one, so a
/// candidate that lacks or has too many characters cannot be near.
/// </remarks>
public sealed class LookAlikeIndex
{
    private const int ShortKey = 6;

    private readonly PartNumber[] _numbers;
    private readonly char[] _foldedKeys;
    private readonly CharacterCount[] _counts;
    private readonly Dictionary<int, KeysOfLength> _byLength;

    /// <param name="numbers">Every number of every part, in any order. One number may stand on several parts.</param>
    public LookAlikeIndex(IEnumerable<PartNumber> numbers)
    {
        _numbers =
        [
            .. numbers.DistinctBy(number => (number.Key, number.Part))
                .OrderBy(number => number.Key.Length).ThenBy(number => number.Key, StringComparer.Ordinal).ThenBy(number => number.Part, StringComparer.Ordinal),
        ];
        _foldedKeys = new char[_numbers.Sum(number => number.Key.Length)];
        _counts = new CharacterCount[_numbers.Length];
        _byLength = [];
        var offset = 0;
        for (var index = 0; index < _numbers.Length; index++)
        {
            var folded = FoldingClasses.Fold(_numbers[index].Key);
            folded.CopyTo(_foldedKeys.AsSpan(offset));
            _counts[index] = CharacterCount.Of(folded);
            _byLength[folded.Length] = _byLength.TryGetValue(folded.Length, out var same) ? same with { Count = same.Count + 1 } : new KeysOfLength(index, 1, offset);
            offset += folded.Length;
        }

        foreach (var (length, same) in _byLength)
        {
            _byLength[length] = same with { Halves = KeyHalves.IfWorth(_foldedKeys.AsSpan(same.Offset, same.Count * length), length, same.Count) };
        }
    }

    /// <param name="Halves">Null where looking at every key is faster.</param>
    private readonly record struct KeysOfLength(int First, int Count, int Offset, KeyHalves? Halves = null);

    /// <summary>Every number held, by length, key and part.</summary>
    public IReadOnlyList<PartNumber> All => _numbers;

    /// <summary>Numbers held, each number of each part counted once.</summary>
    public int Count => _numbers.Length;

    /// <summary>How many edits on folded keys count as near for this key: 1 when it is shorter than 6 characters, otherwise 2.</summary>
    public static int LimitFor(string key) => key.Length < ShortKey ? 1 : 2;

    /// <summary>Every number whose folded key is within the limit of the asked key's, equal keys included.</summary>
    /// <param name="key">A number key (<see cref="NumberKey"/>).</param>
    /// <returns>Ordered by cost, then key, then part; a number that stands on several parts comes once for each.</returns>
    public IReadOnlyList<NearNumber> Find(string key)
    {
        var limit = LimitFor(key);
        var folded = FoldingClasses.Fold(key);
        var found = new List<NearNumber>();
        for (var length = Math.Max(0, folded.Length - limit); length <= folded.Length + limit; length++)
        {
            if (_byLength.TryGetValue(length, out var keys))
            {
                Scan(keys, length, key, folded, limit, found);
            }
        }

        return
        [
            .. found.OrderBy(near => near.MixUp.Cost)
                .ThenBy(near => near.Number.Key, StringComparer.Ordinal).ThenBy(near => near.Number.Part, StringComparer.Ordinal),
        ];
    }

    private void Scan(KeysOfLength keys, int length, string key, string folded, int limit, List<NearNumber> found)
    {
        var wanted = CharacterCount.Of(folded);
        if (keys.Halves is { } halves)
        {
            // One that both halves lead to comes twice.
            HashSet<int> near = [];
            halves.Visit(folded, limit, index =>
            {
                if (wanted.CanBeWithin(limit, _counts[keys.First + index]) && EditsTo(index) <= limit && near.Add(index))
                {
                    Add(index);
                }
            });
            return;
        }

        var counts = _counts.AsSpan(keys.First, keys.Count);
        for (var index = 0; index < counts.Length; index++)
        {
            if (wanted.CanBeWithin(limit, counts[index]) && EditsTo(index) <= limit)
            {
                Add(index);
            }
        }

        int EditsTo(int index) => NumberDistance.OptimalStringAlignmentWithin(folded, _foldedKeys.AsSpan(keys.Offset + (index * length), length), limit);

        void Add(int index)
        {
            var number = _numbers[keys.First + index];
            found.Add(new NearNumber(number, NumberDistance.OptimalStringAlignment(key, number.Key), EditsTo(index), MixUpCost.Between(key, number.Key)));
        }
    }

    /// <summary>Which characters a key has at least once, and which at least twice, one bit each; characters that share a bit only let more through.</summary>
    private readonly record struct CharacterCount(ulong Once, ulong Twice)
    {
        public static CharacterCount Of(ReadOnlySpan<char> key)
        {
            var (once, twice) = (0UL, 0UL);
            foreach (var letter in key)
            {
                var bit = 1UL << (letter & 63);
                twice |= once & bit;
                once |= bit;
            }

            return new CharacterCount(once, twice);
        }

        public bool CanBeWithin(int limit, in CharacterCount other) =>
            BitOperations.PopCount(Once & ~other.Once) + BitOperations.PopCount(Twice & ~other.Twice) <= limit
            && BitOperations.PopCount(other.Once & ~Once) + BitOperations.PopCount(other.Twice & ~Twice) <= limit;
    }
}
