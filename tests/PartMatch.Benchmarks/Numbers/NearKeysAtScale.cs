using System.Diagnostics;
using System.Globalization;
using PartMatch.Core.LookAlikes;
using PartMatch.Core.NearKeys;

namespace PartMatch.Benchmarks.Numbers;

/// <summary>The index of near keys beside its peers in one run: <c>near dense</c>, <c>near shaped</c>, <c>near dense5</c>.</summary>
internal static class NearKeysAtScale
{
    private const int QuestionsToBruteForce = 500;

    public static void Show(string name, bool withPeers)
    {
        var set = KeySet.Of(name);
        Say($"{set.Name}: seed {set.Seed}, {set.Keys.Length:N0} keys, {set.Keys.Average(key => key.Length):0.0} characters, {set.Asked.Length:N0} questions, SHA-256 {set.Sha256}");
        var before = GC.GetTotalMemory(forceFullCollection: true);
        var index = Built(set);
        var kept = GC.GetTotalMemory(forceFullCollection: true) - before;
        Say($"index: {index.Bytes / (double)index.Count:0} bytes a key by its arrays, {kept / (double)index.Count:0} by the collector");
        var found = new List<NearKey>();
        var counts = Timed("index", 15, set, (asked, limit) =>
        {
            found.Clear();
            index.Find(asked, limit, found);
            return found.Count;
        });
        Say($"near keys of a question: median {counts.Order().ElementAt(counts.Length / 2)}, most {counts.Max()}");
        Recall(set, index);
        if (withPeers)
        {
            using var lucene = new LuceneFuzzy(set.Keys);
            Compare(counts, Timed("Lucene.Net, fuzzy query rewritten to all terms", 3, set, lucene.Rewritten), set);
            Compare(counts, Timed("Lucene.Net, its enumeration of terms alone", 3, set, lucene.Enumerated), set);
        }
    }

    private static NearKeyIndex Built(KeySet set)
    {
        var (best, index) = (double.MaxValue, (NearKeyIndex?)null);
        for (var round = 0; round < 3; round++)
        {
            index = null;
            GC.Collect();
            var watch = Stopwatch.StartNew();
            index = new NearKeyIndex(set.Keys);
            best = Math.Min(best, watch.Elapsed.TotalSeconds);
            Say($"built in {watch.Elapsed.TotalSeconds:0.00} s");
        }

        return index ?? throw new InvalidOperationException("Three rounds built nothing.");
    }

    // Each question is asked several times, one round after the other; the best time counts, so that a pause of the collector or of the machine does not.
    private static int[] Timed(string what, int rounds, KeySet set, Func<string, int, int> find)
    {
        var counts = new int[set.Asked.Length];
        double[] times = [.. Enumerable.Repeat(double.MaxValue, set.Asked.Length)];
        for (var round = 0; round < rounds; round++)
        {
            for (var index = 0; index < set.Asked.Length; index++)
            {
                var begun = Stopwatch.GetTimestamp();
                counts[index] = find(set.Asked[index], LookAlikeIndex.LimitFor(set.Asked[index]));
                times[index] = Math.Min(times[index], Stopwatch.GetElapsedTime(begun).TotalMicroseconds);
            }
        }

        Array.Sort(times);
        Say($"{what}: median {times[times.Length / 2]:0.0} µs, p99 {times[times.Length * 99 / 100]:0.0} µs, worst {times[^1]:0.0} µs");
        return counts;
    }

    private static void Compare(int[] ours, int[] theirs, KeySet set)
    {
        var differ = Enumerable.Range(0, ours.Length).Where(index => ours[index] != theirs[index]).ToList();
        Say($"  another count than the index in {differ.Count} of {ours.Length} questions");
        foreach (var index in differ.Take(3))
        {
            Say($"    {set.Asked[index]} has {ours[index]} by the index, {theirs[index]} by the peer");
        }
    }

    private static void Recall(KeySet set, NearKeyIndex index)
    {
        var (pairs, missed, wrong) = (0L, 0L, 0L);
        Parallel.ForEach(set.Asked.Take(QuestionsToBruteForce), asked =>
        {
            var limit = LookAlikeIndex.LimitFor(asked);
            var expected = Enumerable.Range(0, set.Keys.Length)
                .Select(place => new NearKey(place, NumberDistance.OptimalStringAlignmentWithin(asked, set.Keys[place], limit)))
                .Where(near => near.Edits <= limit).ToHashSet();
            var found = new List<NearKey>();
            index.Find(asked, limit, found);
            Interlocked.Add(ref pairs, expected.Count);
            Interlocked.Add(ref missed, expected.Except(found).Count());
            Interlocked.Add(ref wrong, found.Count - found.Intersect(expected).Count());
        });
        Say($"brute force over {QuestionsToBruteForce} questions: {pairs:N0} near keys, {missed} missed, {wrong} too many: recall {(pairs - missed) / (double)pairs:0.000000}");
    }

    private static void Say(FormattableString line) => Console.WriteLine(line.ToString(CultureInfo.InvariantCulture));
}
