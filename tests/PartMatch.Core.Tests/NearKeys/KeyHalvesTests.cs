using CsCheck;
using PartMatch.Core.NearKeys;
using PartMatch.Core.Tests.LookAlikes;
using Xunit;

namespace PartMatch.Core.Tests.NearKeys;

public sealed class KeyHalvesTests
{
    // So many keys of each length that the index goes by halves: two figures and lengths down to one, eight figures and the lengths of real numbers.
    private static readonly Gen<(string[] Catalogue, string Asked)> _catalogue =
        from range in Gen.OneOf(
            Gen.Const((Figures: "01", Shortest: 1, Longest: 8, Keys: 2_000)), Gen.Const((Figures: "01345679", Shortest: 5, Longest: 8, Keys: 4_000)))
        from stored in Gen.String[Gen.Char[range.Figures], range.Shortest, range.Longest].Array[range.Keys]
        from changes in Gen.Select(Gen.Int[0, 3], Gen.Int[0, 7], Gen.Char[range.Figures + "X"]).Array[0, 3]
        select (stored, changes.Aggregate(stored[0], Changed));

    [Fact]
    public void Many_keys_give_exactly_what_comparing_with_every_one_finds() =>
        _catalogue.Sample(
            (catalogue, asked) =>
            {
                string[] keys = [.. catalogue.OrderBy(key => key.Length)];
                var expected = Enumerable.Range(0, keys.Length)
                    .Where(place => Math.Abs(keys[place].Length - asked.Length) <= 2 && EditDistanceByDefinition.OptimalStringAlignment(asked, keys[place]) <= 2);
                var found = new List<NearKey>();
                new LongKeys(keys, 0).Find(asked, 2, found);
                return expected.SequenceEqual(found.Select(near => near.Place).Order());
            },
            iter: 25);

    [Theory]
    [InlineData("12345678", "12354678")] // the two in the middle swapped
    [InlineData("12345678", "12354687")] // and another two
    [InlineData("12345678", "1235467")] // and one lost behind
    [InlineData("12345678", "72354678")] // and one before
    [InlineData("12345678", "912345678")]
    [InlineData("12345678", "9912345678")]
    [InlineData("12345678", "345678")]
    [InlineData("12345678", "92345679")]
    [InlineData("12345678", "21436587", false)] // two edits in each half
    public void Asked_for_a_key_they_lead_to_every_one_within_two_edits(string stored, string asked, bool near = true)
    {
        var visited = new List<int>();
        Halves(stored).Visit(asked, KeyHalves.MostEdits, visited.Add);
        Assert.Equal(near, visited.Contains(0));
    }

    [Fact]
    public void They_lead_to_few_of_many()
    {
        var visited = new HashSet<int>();
        Halves("12345678").Visit("12345679", KeyHalves.MostEdits, index => visited.Add(index));
        Assert.InRange(visited.Count, 1, Keys / 10);
    }

    [Theory]
    [InlineData(319, false)] // 8 characters: 4 x 2 x (8 + 2) x 4 figures = 320
    [InlineData(320, true)]
    public void Few_keys_are_not_worth_it(int count, bool worth) =>
        Assert.Equal(worth, KeyHalves.IfWorth(string.Concat(Enumerable.Repeat("12344321", count)), 8, count) is not null);

    private const int Keys = 20_000;

    // The one and multiples of a prime: 8 figures, all sorts of halves.
    private static KeyHalves Halves(string first)
    {
        var keys = string.Concat(Enumerable.Range(1, Keys - 1).Select(index => $"{index * 7_919L % 100_000_000:00000000}").Prepend(first));
        var halves = KeyHalves.IfWorth(keys, 8, Keys);
        Assert.NotNull(halves);
        return halves;
    }

    private static string Changed(string key, (int Kind, int Place, char Letter) change)
    {
        var place = Math.Min(change.Place, Math.Max(0, key.Length - 1));
        return change.Kind switch
        {
            0 => key.Insert(place, change.Letter.ToString()),
            1 when key.Length > 1 => key.Remove(place, 1),
            2 when key.Length > 0 => key.Remove(place, 1).Insert(place, change.Letter.ToString()),
            3 when place + 1 < key.Length => string.Concat(key.AsSpan(0, place), key.AsSpan(place + 1, 1), key.AsSpan(place, 1), key.AsSpan(place + 2)),
            _ => key,
        };
    }
}
