using System.Numerics;
using PartMatch.Core.Catalogue;
using PartMatch.Core.LookAlikes;

namespace PartMatch.Core.Listings;

/// <summary>Every number of the base by its folded key, to be asked whether a stretch of a text is one. Immutable.</summary>
/// <remarks>
/// Per number a hash, a reference, and about six bytes of tables. Two guards turn nearly all stretches away before memory that is not in the
/// cache is touched: which lengths begin with these four characters, and a bit for the hash.
/// </remarks>
internal sealed class NumberIndex
{
    private const int PrefixLength = 4;

    // Ours: a megabyte at most, which stays in the cache.
    private const int MostPrefixBits = 17;

    // Ours: sixteen bits for each number let one wrong stretch in seventeen through, at 2 MB for a million numbers.
    private const int GuardBits = 4;

    private readonly ulong[] _hashes;
    private readonly PartNumber[] _numbers;
    private readonly int[] _bucketStarts;
    private readonly int _bucketShift;
    private readonly ulong[] _guard;
    private readonly int _prefixShift;
    private readonly ulong[] _lengthsOfPrefix;
    private readonly ulong _shortLengths;

    /// <param name="numbers">Every number, in any order; a key longer than <see cref="KeyHash.MaxLength"/> is never found.</param>
    public NumberIndex(IEnumerable<PartNumber> numbers)
    {
        _numbers = [.. numbers.Where(number => number.Key.Length is > 0 and <= KeyHash.MaxLength)];
        _hashes = new ulong[_numbers.Length];
        var bits = Math.Clamp(BitOperations.Log2((uint)_numbers.Length + 1), 2, 24);
        var prefixBits = Math.Min(bits + 1, MostPrefixBits);
        _prefixShift = 32 - prefixBits;
        _lengthsOfPrefix = new ulong[1 << prefixBits];
        Span<char> folded = stackalloc char[KeyHash.MaxLength];
        for (var index = 0; index < _numbers.Length; index++)
        {
            var key = Fold(_numbers[index].Key, folded);
            _hashes[index] = KeyHash.Of(key);
            if (key.Length < PrefixLength)
            {
                _shortLengths |= 1UL << key.Length;
            }
            else
            {
                _lengthsOfPrefix[PrefixOf(key)] |= 1UL << key.Length;
            }
        }

        Array.Sort(_hashes, _numbers);
        OrderEqualHashes();
        _bucketShift = 64 - bits;
        _bucketStarts = BucketStarts(1 << bits);
        _guard = Guard(bits + GuardBits);
    }

    /// <summary>Numbers held.</summary>
    public int Count => _numbers.Length;

    /// <summary>One bit for each length that a key beginning at this place of the text can have; may hold too many, never too few.</summary>
    public ulong LengthsAt(char[] folded, int start)
    {
        var left = folded.Length - start;
        var lengths = left < PrefixLength ? _shortLengths : _shortLengths | _lengthsOfPrefix[PrefixOf(folded.AsSpan(start, PrefixLength))];
        return left < KeyHash.MaxLength ? lengths & ((1UL << (left + 1)) - 1) : lengths;
    }

    /// <summary>The numbers whose folded key has this hash, nearly always those of one folded key; by key, maker, part, as written.</summary>
    public ReadOnlySpan<PartNumber> WithHash(ulong hash)
    {
        var bit = hash >> (_bucketShift - GuardBits);
        if ((_guard[bit >> 6] & (1UL << (int)(bit & 63))) == 0)
        {
            return [];
        }

        var bucket = (int)(hash >> _bucketShift);
        var (first, end) = (_bucketStarts[bucket], _bucketStarts[bucket + 1]);
        while (first < end && _hashes[first] < hash)
        {
            first++;
        }

        var after = first;
        while (after < end && _hashes[after] == hash)
        {
            after++;
        }

        return _numbers.AsSpan(first, after - first);
    }

    /// <summary>The numbers with exactly this key.</summary>
    public PartNumber[] WithKey(string key)
    {
        Span<char> folded = stackalloc char[KeyHash.MaxLength];
        return key.Length > KeyHash.MaxLength
            ? []
            : [.. WithHash(KeyHash.Of(Fold(key, folded))).ToArray().Where(number => string.Equals(number.Key, key, StringComparison.Ordinal))];
    }

    private static ReadOnlySpan<char> Fold(string key, Span<char> folded)
    {
        for (var index = 0; index < key.Length; index++)
        {
            folded[index] = FoldingClasses.Fold(key[index]);
        }

        return folded[..key.Length];
    }

    private int PrefixOf(ReadOnlySpan<char> folded) =>
        (int)((((folded[0] * 131u + folded[1]) * 131u + folded[2]) * 131u + folded[3]) * 2654435769u >> _prefixShift);

    private void OrderEqualHashes()
    {
        for (var first = 0; first < _numbers.Length;)
        {
            var end = first + 1;
            while (end < _numbers.Length && _hashes[end] == _hashes[first])
            {
                end++;
            }

            if (end - first > 1)
            {
                Array.Sort(_numbers, first, end - first, _byKey);
            }

            first = end;
        }
    }

    private static readonly Comparer<PartNumber> _byKey = Comparer<PartNumber>.Create((one, other) =>
    {
        var order = string.CompareOrdinal(one.Key, other.Key);
        order = order != 0 ? order : string.CompareOrdinal(one.Maker, other.Maker);
        order = order != 0 ? order : string.CompareOrdinal(one.Part, other.Part);
        return order != 0 ? order : string.CompareOrdinal(one.Written, other.Written);
    });

    private int[] BucketStarts(int buckets)
    {
        var starts = new int[buckets + 1];
        for (int bucket = 0, index = 0; bucket <= buckets; bucket++)
        {
            while (index < _hashes.Length && _hashes[index] >> _bucketShift < (ulong)bucket)
            {
                index++;
            }

            starts[bucket] = index;
        }

        return starts;
    }

    private ulong[] Guard(int bits)
    {
        var guard = new ulong[Math.Max(1, 1 << (bits - 6))];
        foreach (var hash in _hashes)
        {
            var bit = hash >> (64 - bits);
            guard[bit >> 6] |= 1UL << (int)(bit & 63);
        }

        return guard;
    }
}
