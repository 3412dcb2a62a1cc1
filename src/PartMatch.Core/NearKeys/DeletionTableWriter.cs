using System.Numerics;
using System.Runtime.Intrinsics;

namespace PartMatch.Core.NearKeys;

/// <summary>Writes the entries of a <see cref="DeletionTable"/>: counts those of each bucket, then puts each into its own.</summary>
/// <remarks>
/// Nothing but the table itself is allocated. Each worker goes over all keys and writes the buckets of its own stretch of hashes only, so none waits for
/// another: working out the hashes is cheap beside writing them where the processor has nothing cached.
/// </remarks>
internal static class DeletionTableWriter
{
    // Ours, measured: about so many entries a bucket. Fewer make the list of beginnings too large for the cache, more take longer to compare.
    private const int EntriesPerBucket = 8;

    // Two, because each goes over all keys: more would mostly repeat one another.
    private const int Workers = 2;

    public static (uint[] Starts, uint[] Entries, int Shift) Write(Vector128<byte>[] keys, long entriesExpected)
    {
        var bits = Math.Max(1, BitOperations.Log2((ulong)Math.Max(entriesExpected, 1)) - BitOperations.Log2(EntriesPerBucket) + 1);
        var shift = 64 - bits;

        // Counted two places on: after summing up, place b + 1 is where bucket b begins, and after writing where it ends and the next begins.
        var starts = new uint[(1 << bits) + 2];
        Parallel.For(0, Workers, worker => Count(keys, shift, (ulong)worker, starts));
        for (var bucket = 2; bucket < starts.Length; bucket++)
        {
            starts[bucket] += starts[bucket - 1];
        }

        var entries = new uint[starts[^1] + Vector256<uint>.Count];
        Parallel.For(0, Workers, worker => Put(keys, shift, (ulong)worker, starts, entries));
        return (starts, entries, shift);
    }

    private static void Count(Vector128<byte>[] keys, int shift, ulong worker, uint[] starts)
    {
        Span<DeletionVariant> variants = stackalloc DeletionVariant[DeletionVariants.Most(ByteKey.MaxLength)];
        foreach (var key in keys)
        {
            foreach (var variant in variants[..DeletionVariants.Write(key, variants)])
            {
                if (variant.Hash >> 63 == worker)
                {
                    starts[(variant.Hash >> shift) + 2]++;
                }
            }
        }
    }

    private static void Put(Vector128<byte>[] keys, int shift, ulong worker, uint[] starts, uint[] entries)
    {
        Span<DeletionVariant> variants = stackalloc DeletionVariant[DeletionVariants.Most(ByteKey.MaxLength)];
        for (var place = 0; place < keys.Length; place++)
        {
            foreach (var variant in variants[..DeletionVariants.Write(keys[place], variants)])
            {
                if (variant.Hash >> 63 == worker)
                {
                    entries[starts[(variant.Hash >> shift) + 1]++] = variant.EntryOf(place);
                }
            }
        }
    }
}
