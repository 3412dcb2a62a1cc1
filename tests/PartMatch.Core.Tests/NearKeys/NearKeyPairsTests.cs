using CsCheck;
using PartMatch.Core.LookAlikes;
using PartMatch.Core.NearKeys;
using Xunit;

namespace PartMatch.Core.Tests.NearKeys;

public sealed class NearKeyPairsTests
{
    private static readonly Gen<string[]> _keys =
        from letters in Gen.OneOf("01", "0123456789", "01\u00C5\u0416")
        from longest in Gen.OneOf(Gen.Const(7), Gen.Const(12), Gen.Const(40))
        from keys in Gen.String[Gen.Char[letters], 0, longest].Array[0, 80]
        select (string[])[.. keys.OrderBy(key => !ByteKey.Fits(key)).ThenBy(key => key.Length)];

    // By the limit of the longer one: a key of five characters finds one of six by one edit only, but that one finds it by two.
    [Fact]
    public void Every_two_keys_that_either_finds_near_come_once() =>
        _keys.Sample(
            keys =>
            {
                var expected = from place in Enumerable.Range(0, keys.Length)
                               from before in Enumerable.Range(0, place)
                               let edits = NumberDistance.OptimalStringAlignment(keys[place], keys[before])
                               where edits <= (Math.Max(keys[place].Length, keys[before].Length) < 6 ? 1 : 2)
                               select new KeyPair(place, before, edits);
                return expected.SequenceEqual(PairsOf(keys).OrderBy(pair => pair.Place).ThenBy(pair => pair.Before));
            },
            iter: 1_000);

    [Fact]
    public void Progress_ends_with_every_key()
    {
        var keys = Enumerable.Range(0, 3_000).Select(index => $"{index:0000000}").ToArray();
        var told = new List<int>();
        NearKeyPairs.Each(new NearKeyIndex(keys), _ => { }, told.Add, CancellationToken.None);
        Assert.Equal(told.Order(), told);
        Assert.Equal(keys.Length, told[^1]);
    }

    [Fact]
    public void A_cancelled_search_stops()
    {
        using var cancelled = new CancellationTokenSource();
        var index = new NearKeyIndex([.. Enumerable.Range(0, 3_000).Select(index => $"{index:0000000}")]);
        Assert.Throws<OperationCanceledException>(() => NearKeyPairs.Each(index, _ => { }, _ => cancelled.Cancel(), cancelled.Token));
    }

    private static List<KeyPair> PairsOf(string[] keys)
    {
        var pairs = new List<KeyPair>();
        NearKeyPairs.Each(
            new NearKeyIndex(keys),
            some =>
            {
                lock (pairs)
                {
                    pairs.AddRange(some);
                }
            },
            null,
            CancellationToken.None);
        return pairs;
    }
}
