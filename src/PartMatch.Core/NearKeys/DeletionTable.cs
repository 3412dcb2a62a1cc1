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

    public int LengthAt(int place) => ByteKey.LengthOf(_keys[place]);

    private void Find(ReadOnlySpan<byte> bytes, int limit, uint before, List<NearKey> found)
    {
        Span<ulong> hashes = stackalloc ulong[1 + AskedKey.MaxLength + (AskedKey.MaxLength * (AskedKey.MaxLength - 1) / 2)];
        hashes = hashes[..DeletionVariants.Write(bytes, limit, hashes)];
        Touch(hashes);
        var places = PlaceSet.Empty(_keys.Length);
        foreach (var hash in hashes)
        {
            Collect(hash, before, places);
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

    /// <summary>Adds every key within the limit of the one at that place that comes before it.</summary>
    public void FindBefore(int place, int limit, List<NearKey> found)
    {
        Span<byte> bytes = stackalloc byte[ByteKey.MaxLength];
        _keys[place].CopyTo(bytes);
        Find(bytes[..ByteKey.LengthOf(_keys[place])], limit, (uint)place, found);
    }

    // Asks memory for all buckets at once; one after the other each would be waited for.
    private uint Touch(ReadOnlySpan<ulong> hashes)
    {
        Span<uint> starts = stackalloc uint[hashes.Length];
        for (var index = 0; index < hashes.Length; index++)
        {
            starts[index] = _starts[hashes[index] >> _shift];
        }

        var read = 0u;
        foreach (var start in starts)
        {
            read ^= _entries[start];
        }

        return read;
    }

    private void Collect(ulong hash, uint before, PlaceSet places)
    {
        var bucket = hash >> _shift;
        var (start, end) = (_starts[bucket], _starts[bucket + 1]);
        var wanted = Vector256.Create(DeletionTableWriter.Fingerprint(hash));
        for (; start < end; start += (uint)Vector256<uint>.Count)
        {
            var entries = Vector256.LoadUnsafe(ref _entries[0], start); // the last bucket is followed by room for a whole vector
            var alike = Vector256.Equals(entries & Vector256.Create(DeletionTableWriter.FingerprintMask), wanted).ExtractMostSignificantBits();
            if (end - start < (uint)Vector256<uint>.Count)
            {
                alike &= (1u << (int)(end - start)) - 1;
            }

            for (; alike != 0; alike &= alike - 1)
            {
                var place = _entries[start + (uint)BitOperations.TrailingZeroCount(alike)] & (MostKeys - 1);
                if (place >= before)
                {
                    return; // a bucket is in the order of its places
                }

                places.Add(place);
            }
        }
    }
}
