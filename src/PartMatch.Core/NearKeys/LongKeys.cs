using System.Numerics;
using PartMatch.Core.LookAlikes;

namespace PartMatch.Core.NearKeys;

/// <summary>Keys that are in no <see cref="DeletionTable"/>, being too long for it or of characters that take more than a byte; length by length.</summary>
/// <remarks>
/// The halves of a key (<see cref="KeyHalves"/>) say which to look at where there are many. A count of characters turns most of those away before the distance
/// is worked out: no edit takes away more than one character or adds more than one, so a key that lacks or has too many cannot be near.
/// </remarks>
internal sealed class LongKeys
{
    private readonly List<KeysOfLength> _byLength = [];

    /// <param name="keys">Folded, best those of one length together.</param>
    /// <param name="first">The place of the first one to hold; all behind it are held too.</param>
    public LongKeys(IReadOnlyList<string> keys, int first)
    {
        while (first < keys.Count)
        {
            var end = first;
            while (end < keys.Count && keys[end].Length == keys[first].Length)
            {
                end++;
            }

            _byLength.Add(new KeysOfLength(keys, first, end - first));
            first = end;
        }
    }

    public long Bytes => _byLength.Sum(keys => keys.Bytes);

    /// <summary>Adds every key within the limit.</summary>
    public void Find(ReadOnlySpan<char> asked, int limit, List<NearKey> found)
    {
        var text = (string?)null;
        foreach (var keys in _byLength)
        {
            if (Math.Abs(keys.Length - asked.Length) <= limit)
            {
                keys.Find(text ??= asked.ToString(), limit, found);
            }
        }
    }

    /// <summary>The key at a place that is held.</summary>
    public ReadOnlySpan<char> KeyAt(int place) => _byLength.First(keys => keys.Holds(place)).KeyAt(place);

    private sealed class KeysOfLength
    {
        private readonly int _first;
        private readonly char[] _letters;
        private readonly CharacterCount[] _counts;
        private readonly KeyHalves? _halves;

        public KeysOfLength(IReadOnlyList<string> keys, int first, int count)
        {
            (_first, Length) = (first, keys[first].Length);
            _letters = new char[count * Length];
            _counts = new CharacterCount[count];
            for (var index = 0; index < count; index++)
            {
                keys[first + index].CopyTo(_letters.AsSpan(index * Length));
                _counts[index] = CharacterCount.Of(keys[first + index]);
            }

            _halves = KeyHalves.IfWorth(_letters, Length, count);
        }

        public int Length { get; }

        public long Bytes => (_letters.LongLength * sizeof(char)) + (_counts.LongLength * 2 * sizeof(ulong)) + (_halves?.Bytes ?? 0);

        public bool Holds(int place) => place >= _first && place < _first + _counts.Length;

        public ReadOnlySpan<char> KeyAt(int place) => _letters.AsSpan((place - _first) * Length, Length);

        public void Find(string asked, int limit, List<NearKey> found)
        {
            var wanted = CharacterCount.Of(asked);
            if (_halves is null)
            {
                for (var index = 0; index < _counts.Length; index++)
                {
                    Compare(index);
                }

                return;
            }

            // One that both halves lead to comes twice.
            HashSet<int> compared = [];
            _halves.Visit(asked, limit, index =>
            {
                if (compared.Add(index))
                {
                    Compare(index);
                }
            });

            void Compare(int index)
            {
                if (wanted.CanBeWithin(limit, _counts[index])
                    && NumberDistance.OptimalStringAlignmentWithin(asked, _letters.AsSpan(index * Length, Length), limit) is var edits && edits <= limit)
                {
                    found.Add(new NearKey(_first + index, edits));
                }
            }
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
