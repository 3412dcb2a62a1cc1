using System.Diagnostics;
using System.Globalization;
using System.Runtime.Intrinsics;
using PartMatch.Core.NearKeys;

namespace PartMatch.Benchmarks.Numbers;

/// <summary>All near pairs of a key set: <c>pairs dense</c>; of a set that ends in -tenth also held against comparing every two keys.</summary>
internal static class PairsAtScale
{
    public static void Show(string name)
    {
        var set = KeySet.Of(name);
        var index = new NearKeyIndex(set.Keys);
        using var process = Process.GetCurrentProcess();
        var (watch, before) = (Stopwatch.StartNew(), process.TotalProcessorTime);
        var (count, sum) = (0L, 0UL);
        NearKeyPairs.Each(
            index,
            pairs =>
            {
                var own = 0UL;
                foreach (var pair in pairs)
                {
                    own += Mixed(pair.Place, pair.Before, pair.Edits);
                }

                Interlocked.Add(ref count, pairs.Count);
                Interlocked.Add(ref sum, own);
            },
            null,
            CancellationToken.None);
        var seconds = watch.Elapsed.TotalSeconds;
        process.Refresh();
        Say($"{set.Name}, {set.Keys.Length:N0} keys: {count:N0} near pairs, check sum {sum:x16}, {seconds:0.00} s ({(process.TotalProcessorTime - before).TotalSeconds:0.00} s of processor time), {count / seconds / 1e6:0.0} million pairs a second, {process.PeakWorkingSet64 >> 20} MB at most");
        if (name.EndsWith("-tenth", StringComparison.Ordinal))
        {
            Say($"{BruteForce(set.Keys)}");
        }
    }

    // Every key against every one before it: no table, no hash; the distance is the one that a test holds against its definition.
    private static string BruteForce(string[] keys)
    {
        var watch = Stopwatch.StartNew();
        var (count, sum) = (0L, 0UL);
        var bytes = Array.ConvertAll(keys, key => key.Length <= ByteKey.MaxLength ? ByteKey.Of(key) : Vector128<byte>.Zero);
        Parallel.For(0, keys.Length, place =>
        {
            if (bytes[place] == Vector128<byte>.Zero)
            {
                Slowly(place);
                return;
            }

            Span<byte> own = stackalloc byte[ByteKey.MaxLength];
            bytes[place].CopyTo(own);
            var (asked, limit, found, mixed) = (new AskedKey(own[..keys[place].Length]), NearKeyIndex.LimitFor(keys[place].Length), 0L, 0UL);
            for (var before = place - 1; before >= 0 && keys[place].Length - keys[before].Length <= limit; before--)
            {
                if (asked.EditsTo(bytes[before], limit) is var edits && edits <= limit)
                {
                    found++;
                    mixed += Mixed(place, before, edits);
                }
            }

            Interlocked.Add(ref count, found);
            Interlocked.Add(ref sum, mixed);
        });
        return string.Create(CultureInfo.InvariantCulture, $"brute force: {count:N0} near pairs, check sum {sum:x16}, {watch.Elapsed.TotalSeconds:0.0} s");

        void Slowly(int place)
        {
            for (var before = place - 1; before >= 0 && keys[place].Length - keys[before].Length <= NearKeyIndex.MostEdits; before--)
            {
                if (Core.LookAlikes.NumberDistance.OptimalStringAlignmentWithin(keys[place], keys[before], NearKeyIndex.MostEdits) is var edits && edits <= NearKeyIndex.MostEdits)
                {
                    Interlocked.Increment(ref count);
                    Interlocked.Add(ref sum, Mixed(place, before, edits));
                }
            }
        }
    }

    // The order of the pairs does not count.
    private static ulong Mixed(int place, int before, int edits)
    {
        var mixed = ((ulong)place << 32 | (uint)before) * 0x9E3779B97F4A7C15 + (ulong)edits;
        return (mixed ^ (mixed >> 31)) * 0xBF58476D1CE4E5B9;
    }

    private static void Say(FormattableString line) => Console.WriteLine(line.ToString(CultureInfo.InvariantCulture));
}
