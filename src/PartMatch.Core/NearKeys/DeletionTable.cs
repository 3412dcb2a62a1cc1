using System.Numerics;
using System.Runtime.Intrinsics;

namespace PartMatch.Core.NearKeys;

/// <summary>Keys of at most sixteen characters by what is left of them when up to two characters are taken away. Complete within two edits; immutable.</summary>
/// <remarks>
/// One array of entries in the order of their bucket, one of where each bucket begins. An entry is the place of a key and eight more bits of the hash, so that
/// nearly every key that only shares the bucket is passed over without being fetched.
/// </remarks>
internal sealed class DeletionTable
{
    /// <summary>An entry has so many bits for the place of its key.</summary>
    public const int PlaceBits = 24;

    /// <summary>The most keys of one table.</summary>
    public const int MostKeys = 1 << PlaceBits;

    private readonly Vector128<byte>[] _keys;
    private readonly uint[] _starts;
    private readonly uint[] _entries;
    private readonly int _shift;

    /// <param name="keys">Best in order: keys that are found together then lie together.</param>
    /// <param name="variants">Of all of them together, or a little more.</param>
    public DeletionTable(Vector128<byte>[] keys, long variants)
    {
        ArgumentOutOfRangeException.ThrowIfGreaterThan(keys.Length, MostKeys);
        _keys = keys;
        (_starts, _entries, _shift) = DeletionTableWriter.Write(keys, variants);
    }

    /// <summary>Of the table itself and of the keys in it.</summary>
    public long Bytes => (_starts.LongLength + _entries.LongLength) * sizeof(uint) + (_keys.LongLength * ByteKey.MaxLength);

    /// <summary>Adds every key within the limit.</summary>
    /// <param name="limit">1 or 2.</param>
    public void Find(ReadOnlySpan<char> asked, int limit, List<NearKey> found)
    {
        if (asked.Length > AskedKey.MaxLength)
        {
            return;
        }

        Span<byte> bytes = stackalloc byte[AskedKey.MaxLength];
        bytes = bytes[..asked.Length];
        ByteKey.Write(asked, bytes);
        Find(bytes, limit, (uint)_keys.Length, found);
    }

    /// <summary>Adds every key within the limit of the one at that place that comes before it.</summary>
    public void FindBefore(int place, int limit, List<NearKey> found)
    {
        Span<byte> bytes = stackalloc byte[ByteKey.MaxLength];
        _keys[place].CopyTo(bytes);
        Find(bytes[..ByteKey.LengthOf(_keys[place])], limit, (uint)place, found);
    }

    public int LengthAt(int place) => ByteKey.LengthOf(_keys[place]);

    private void Find(ReadOnlySpan<byte> bytes, int limit, uint before, List<NearKey> found)
    {
        Span<DeletionVariant> variants = stackalloc DeletionVariant[1 + AskedKey.MaxLength + (AskedKey.MaxLength * (AskedKey.MaxLength - 1) / 2)];
        variants = variants[..DeletionVariants.Write(bytes, limit, variants)];
        Touch(variants);
        var places = PlaceSet.Empty(_keys.Length);
        foreach (ref readonly var variant in variants)
        {
            Collect(variant, before, places);
        }

        var key = new AskedKey(bytes);
        foreach (var place in places.Places)
        {
            if (key.EditsTo(_keys[place], limit) is var edits && edits <= limit)
            {
                found.Add(new NearKey((int)place, edits));
            }
        }
    }

    // Asks memory for all buckets at once; one after the other each would be waited for.
    private uint Touch(ReadOnlySpan<DeletionVariant> variants)
    {
        Span<uint> starts = stackalloc uint[variants.Length];
        for (var index = 0; index < variants.Length; index++)
        {
            starts[index] = _starts[variants[index].Hash >> _shift];
        }

        var read = 0u;
        foreach (var start in starts)
        {
            read ^= _entries[start];
        }

        return read;
    }

    private void Collect(in DeletionVariant variant, uint before, PlaceSet places)
    {
        var bucket = variant.Hash >> _shift;
        var (start, end) = (_starts[bucket], _starts[bucket + 1]);
        for (; start < end; start += (uint)Vector256<uint>.Count)
        {
            var near = variant.CanBeNear(Vector256.LoadUnsafe(ref _entries[0], start)); // the last bucket is followed by room for a whole vector
            if (end - start < (uint)Vector256<uint>.Count)
            {
                near &= (1u << (int)(end - start)) - 1;
            }

            for (; near != 0; near &= near - 1)
            {
                var place = _entries[start + (uint)BitOperations.TrailingZeroCount(near)] & (MostKeys - 1);
                if (place >= before)
                {
                    return; // a bucket is in the order of its places
                }

                places.Add(place);
            }
        }
    }
}
