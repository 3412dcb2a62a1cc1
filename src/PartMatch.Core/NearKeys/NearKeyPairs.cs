namespace PartMatch.Core.NearKeys;

/// <summary>Two keys that are near each other, by their places; the later one first.</summary>
internal readonly record struct KeyPair(int Place, int Before, int Edits);

/// <summary>All near pairs of an index, each once, told as they are found: nothing is kept but what one worker has at hand.</summary>
internal static class NearKeyPairs
{
    private const int KeysAtATime = 512;

    /// <param name="take">Given the pairs of so many keys at a time, from several workers at once; the list is used again afterwards.</param>
    /// <param name="progress">Told, by one worker after the other, how many keys have been looked at.</param>
    /// <exception cref="OperationCanceledException">Cancelled; some pairs have been told.</exception>
    public static void Each(NearKeyIndex index, Action<IReadOnlyList<KeyPair>> take, Action<int>? progress, CancellationToken cancellation)
    {
        var (telling, done) = (new Lock(), 0);
        var options = new ParallelOptions { CancellationToken = cancellation };
        Parallel.For(0, (index.Count + KeysAtATime - 1) / KeysAtATime, options, static () => new Hands(), (chunk, _, hands) =>
        {
            var end = Math.Min(index.Count, (chunk + 1) * KeysAtATime);
            for (var place = chunk * KeysAtATime; place < end; place++)
            {
                hands.Near.Clear();
                index.FindBefore(place, hands.Near);
                foreach (var near in hands.Near)
                {
                    hands.Pairs.Add(new KeyPair(place, near.Place, near.Edits));
                }
            }

            take(hands.Pairs);
            lock (telling)
            {
                progress?.Invoke(done += end - (chunk * KeysAtATime));
            }

            hands.Pairs.Clear();
            return hands;
        }, static _ => { });
    }

    private sealed class Hands
    {
        public List<NearKey> Near { get; } = [];

        public List<KeyPair> Pairs { get; } = [];
    }
}
