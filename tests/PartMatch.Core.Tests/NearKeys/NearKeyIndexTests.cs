using CsCheck;
using PartMatch.Core.LookAlikes;
using PartMatch.Core.NearKeys;
using Xunit;

namespace PartMatch.Core.Tests.NearKeys;

public sealed class NearKeyIndexTests
{
    // From a few figures, where everything is near everything, to letters outside ASCII; from short keys to the longest that the base holds.
    private static readonly Gen<(string[] Keys, string Asked, int Limit)> _catalogue =
        from letters in Gen.OneOf("01", "0123456789", "0123456789ACEFHJKMNPRTUVWXY", "01\u00C5\u0416\u0178")
        from longest in Gen.OneOf(Gen.Const(6), Gen.Const(11), Gen.Const(19), Gen.Const(40))
        let key = Gen.String[Gen.Char[letters], 0, longest]
        from some in key.Array[1, 60]
        from copies in Gen.Select(Gen.Int[0, 59], EditedKey.Changes(letters, most: 3)).Array[0, 60]
        let keys = some.Concat(copies.Select(copy => EditedKey.Of(some[copy.Item1 % some.Length], copy.Item2))).ToArray()
        from pick in Gen.Int[0, keys.Length - 1]
        from changes in EditedKey.Changes(letters, most: 3)
        from limit in Gen.Int[1, 2]
        select (keys, EditedKey.Of(keys[pick], changes), limit);

    [Fact]
    public void Finds_exactly_what_comparing_with_every_key_finds() =>
        _catalogue.Sample(
            one =>
            {
                var keys = InOrder(one.Keys);
                var found = new List<NearKey>();
                new NearKeyIndex(keys).Find(one.Asked, one.Limit, found);
                return Compared(keys, one.Asked, one.Limit).SequenceEqual(found.OrderBy(near => near.Place));
            },
            iter: 5_000);

    [Fact]
    public void A_catalogue_of_nothing_but_long_keys_keeps_within_its_memory_and_misses_none() =>
        (from keys in Gen.String[Gen.Char["0123"], 15, 18].Array[400]
         from changes in EditedKey.Changes("0123", most: 3)
         select (keys, asked: EditedKey.Of(keys[0], changes)))
        .Sample(
            one =>
            {
                var keys = InOrder(one.keys);
                var index = new NearKeyIndex(keys);
                var found = new List<NearKey>();
                index.Find(one.asked, 2, found);
                return index.Bytes <= 330 * keys.Length && Compared(keys, one.asked, 2).SequenceEqual(found.OrderBy(near => near.Place));
            },
            iter: 200);

    [Fact]
    public void Searches_of_several_threads_in_several_indexes_do_not_meet()
    {
        // Counted on in steps of a prime, so that each index holds other keys; each knows of its neighbours what comparing says.
        NearKeyIndex[] indexes = [.. Enumerable.Range(1, 3).Select(index => new NearKeyIndex(Counted(index)))];
        var expected = Enumerable.Range(1, 3).Select(index => Compared(Counted(index), "0051974", 2)).ToArray();
        Parallel.For(0, 300, round =>
        {
            var found = new List<NearKey>();
            indexes[round % 3].Find("0051974", 2, found);
            Assert.Equal(expected[round % 3], found.OrderBy(near => near.Place));
        });
    }

    private static string[] Counted(int step) => [.. Enumerable.Range(0, 2_000).Select(index => $"{index * 37L * step:0000000}")];

    private static string[] InOrder(IEnumerable<string> keys) => [.. keys.OrderBy(key => !ByteKey.Fits(key)).ThenBy(key => key.Length)];

    private static List<NearKey> Compared(string[] keys, string asked, int limit) =>
    [
        .. keys.Select((key, place) => new NearKey(place, NumberDistance.OptimalStringAlignment(asked, key))).Where(near => near.Edits <= limit),
    ];
}
