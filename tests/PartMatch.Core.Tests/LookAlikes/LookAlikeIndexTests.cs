using CsCheck;
using PartMatch.Core.Catalogue;
using PartMatch.Core.LookAlikes;
using Xunit;

namespace PartMatch.Core.Tests.LookAlikes;

public sealed class LookAlikeIndexTests
{
    // Alphabets from dense to wide: digits only, confusables only, the letters and digits of real numbers, and letters outside ASCII.
    private static readonly Gen<string> _alphabet = Gen.OneOf("01", "0O1I7", "0123456789", "0OQD1IL2Z5S8B6G7", "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ", "01\u00C5\u0416\u0178");

    private static readonly Gen<(string[] Catalogue, string Asked)> _catalogue =
        from alphabet in _alphabet
        let key = Gen.String[Gen.Char[alphabet], 0, 11]
        from stored in key.Array[0, 60]
        from unrelated in key
        from changes in Gen.Select(Gen.Int[0, 3], Gen.Int[0, 10], Gen.Char[alphabet]).Array[0, 3]
        from pick in Gen.Int[0, 60]
        select (stored, stored.Length == 0 || pick == 60 ? unrelated : changes.Aggregate(stored[pick % stored.Length], Changed));

    [Fact]
    public void Finds_exactly_what_comparing_with_every_number_finds() =>
        _catalogue.Sample(
            (catalogue, asked) =>
            {
                var limit = asked.Length < 6 ? 1 : 2;
                var expected = catalogue.Distinct()
                    .Where(key => EditDistanceByDefinition.OptimalStringAlignment(EditDistanceByDefinition.Folded(asked), EditDistanceByDefinition.Folded(key)) <= limit)
                    .Order(StringComparer.Ordinal);
                var found = IndexOf(catalogue).Find(asked).Select(near => near.Number.Key).Order(StringComparer.Ordinal);
                return expected.SequenceEqual(found);
            },
            iter: 1_000);

    // A page of near numbers does not work out what all of them cost; whoever reads the whole list does.
    [Fact]
    public void First_page_of_near_numbers_is_the_beginning_of_the_whole_list() =>
        Gen.Select(_catalogue, Gen.Int[1, 12]).Sample(
            (drawn, limit) =>
            {
                var (index, key) = (IndexOf(drawn.Catalogue), NumberKey.Of(drawn.Asked));
                var page = NearSearch.Decide(index, new NearQuestion(drawn.Asked, Limit: limit));
                var whole = NearSearch.Decide(index, new NearQuestion(drawn.Asked, Limit: 200)).Numbers;
                var byCost = index.Find(key).Where(near => whole.Any(row => row.Part == near.Number.Part && row.Number == near.Number.Written)).Select(near => near.Cost);
                return page.Numbers.SequenceEqual(whole.Take(limit)) && page.Total == whole.Count && byCost.SequenceEqual(whole.Select(row => row.Cost));
            },
            iter: 1_000);

    [Fact]
    public void Edits_are_those_of_the_keys_as_they_are_and_as_folded() =>
        _catalogue.Sample((catalogue, asked) => IndexOf(catalogue).Find(asked).All(near =>
            near.Edits == EditDistanceByDefinition.OptimalStringAlignment(asked, near.Number.Key)
            && near.FoldedEdits == EditDistanceByDefinition.OptimalStringAlignment(EditDistanceByDefinition.Folded(asked), EditDistanceByDefinition.Folded(near.Number.Key))
            && near.MixUp == MixUpCost.Between(asked, near.Number.Key) with { At = near.MixUp.At } && near.Cost == near.MixUp.Cost));

    [Fact]
    public void Order_is_by_cost_then_key_and_does_not_depend_on_the_order_of_the_catalogue() =>
        _catalogue.Sample((catalogue, asked) =>
        {
            var found = IndexOf(catalogue).Find(asked).Select(near => (near.MixUp.Cost, near.Number.Key)).ToList();
            var reversed = IndexOf(catalogue.Reverse()).Find(asked).Select(near => (near.MixUp.Cost, near.Number.Key));
            return found.SequenceEqual(reversed)
                && found.Zip(found.Skip(1)).All(pair => pair.First.Cost < pair.Second.Cost
                    || (pair.First.Cost == pair.Second.Cost && string.CompareOrdinal(pair.First.Key, pair.Second.Key) < 0));
        });

    // Source: F. J. Damerau, CACM 7(3):171–176, 1964 (from memory): over 80 % of misspellings are one insertion, deletion, substitution or swap of
    // neighbours. Each of them is found, even for a key so short that one edit is the limit.
    [Fact]
    public void Every_single_error_of_the_four_common_kinds_is_found() =>
        Gen.Select(Gen.String[Gen.Char["0123456789ABC"], 2, 10], Gen.Int[0, 3], Gen.Int[0, 10], Gen.Char["0123456789ABC"])
            .Sample((meant, kind, place, letter) => IndexOf([meant]).Find(Changed(meant, (kind, place, letter))).Count == 1);

    [Theory]
    [InlineData("I0OOI2", "1QDO1Z")] // every character a look-alike
    [InlineData("P5611470", "PSGIL47O")]
    [InlineData("P56114709", "PSGIL47OE")] // the same and one substitution
    public void Any_number_of_look_alike_characters_counts_nothing(string stored, string asked) => Assert.Single(IndexOf([stored]).Find(asked));

    [Fact]
    public void Seven_is_not_folded_with_one()
    {
        Assert.Empty(IndexOf(["7777775"]).Find("1117775"));
        Assert.Equal(2, Assert.Single(IndexOf(["7777775"]).Find("1177775")).FoldedEdits);
    }

    [Theory]
    [InlineData("12345", "12389", 0)] // five characters: one edit
    [InlineData("12345", "12349", 1)]
    [InlineData("12345", "123489", 0)]
    [InlineData("123456", "123489", 1)] // six characters: two edits
    [InlineData("123456", "1234", 1)]
    [InlineData("123456", "124389", 0)]
    public void A_key_shorter_than_six_allows_one_edit_and_a_longer_one_two(string asked, string stored, int found) =>
        Assert.Equal(found, IndexOf([stored]).Find(asked).Count);

    [Fact]
    public void The_same_number_of_two_makers_and_of_two_parts_comes_once_for_each()
    {
        var index = new LookAlikeIndex(
        [
            Number("harl", "12-3456", "harl:12-3456"),
            Number("kestlow", "123456", "kestlow:123456"),
            Number("harl", "12-3456", "harl:other", NumberSort.CastingMark),
            Number("harl", "12 3456", "harl:12-3456", NumberSort.Aftermarket), // the same number of the same part, written otherwise
        ]);
        Assert.Equal(3, index.Count);
        Assert.Equal(["harl:12-3456", "harl:other", "kestlow:123456"], index.Find("123456").Select(near => near.Number.Part));
        Assert.All(index.Find("123456"), near => Assert.Equal((0, 0, 0.0), (near.Edits, near.FoldedEdits, near.MixUp.Cost)));
    }

    [Fact]
    public void An_empty_catalogue_and_an_empty_key_find_nothing()
    {
        Assert.Empty(IndexOf([]).Find("123456"));
        Assert.Empty(IndexOf(["12", "123456"]).Find(""));
        Assert.Single(IndexOf(["1", "12"]).Find(""));
    }

    private static LookAlikeIndex IndexOf(IEnumerable<string> keys) => new(keys.Select(key => Number("harl", key, "harl:" + key)));

    private static PartNumber Number(string maker, string written, string part, NumberSort sort = NumberSort.Service) =>
        new(maker, written, NumberKey.Of(written), sort, part);

    private static string Changed(string key, (int Kind, int Place, char Letter) change)
    {
        var place = Math.Min(change.Place, Math.Max(0, key.Length - 1));
        return change.Kind switch
        {
            0 => key.Insert(place, change.Letter.ToString()),
            1 when key.Length > 0 => key.Remove(place, 1),
            2 when key.Length > 0 => key.Remove(place, 1).Insert(place, change.Letter.ToString()),
            3 when place + 1 < key.Length => string.Concat(key.AsSpan(0, place), key.AsSpan(place + 1, 1), key.AsSpan(place, 1), key.AsSpan(place + 2)),
            _ => key,
        };
    }
}
