using PartMatch.Core.Catalogue;
using PartMatch.Core.LookAlikes;
using Xunit;

namespace PartMatch.Core.Tests.LookAlikes;

public sealed class UnjudgedPairsTests
{
    // 123456 and 123465 are one swap apart, 123456 and I23456 one look-alike character, 123465 and I23456 a swap on folded keys; 987654 is near none.
    private static readonly LookAlikeIndex _index = new([Number("123456"), Number("123465"), Number("I23456"), Number("987654")]);

    private static readonly HashSet<string> _all = ["harl:123456", "harl:123465", "harl:I23456", "harl:987654"];

    [Fact]
    public void Likeliest_mix_up_comes_first_and_every_pair_is_counted_once()
    {
        var answer = Decide(_index, _all);
        Assert.Equal(3, answer.Total);
        Assert.Equal(("harl:123456", "harl:I23456", 0), Told(answer.Pairs[0]));
        Assert.Equal(3, answer.Pairs.Count);
        Assert.Equal(answer.Pairs.OrderBy(pair => pair.Cost), answer.Pairs);
    }

    [Fact]
    public void A_page_shows_the_likeliest_of_all_and_still_counts_the_others()
    {
        var answer = Decide(_index, _all, limit: 1);
        Assert.Equal(("harl:123456", "harl:I23456", 0), Told(Assert.Single(answer.Pairs)));
        Assert.Equal(3, answer.Total);
    }

    [Fact]
    public void A_pair_needs_one_part_of_the_book() => Assert.Equal(2, Decide(_index, ["harl:123465"]).Total);

    [Fact]
    public void What_somebody_has_judged_is_left_out() => Assert.Equal(2, Decide(_index, _all, isJudged: (one, other) => (one, other) is ("harl:123456", "harl:123465") or ("harl:123465", "harl:123456")).Total);

    [Fact]
    public void A_casting_mark_and_two_numbers_of_one_part_are_no_mix_up()
    {
        var index = new LookAlikeIndex([Number("123456"), Number("123457") with { Sort = NumberSort.CastingMark }, Number("123458") with { Part = "harl:123456" }]);
        Assert.Equal(0, Decide(index, [.. index.All.Select(number => number.Part)]).Total);
    }

    [Fact]
    public void Parts_that_have_changed_since_the_index_was_built_count_as_they_are_now()
    {
        var changed = _index.With(["harl:I23456", "harl:1234567"], [Number("1234567")]);
        var anew = new LookAlikeIndex([Number("123456"), Number("123465"), Number("987654"), Number("1234567")]);
        HashSet<string> parts = [.. anew.All.Select(number => number.Part)];
        Assert.Equal(3, Decide(anew, parts).Total); // each of the three that begin alike with each other
        Assert.Equal(Decide(anew, parts).Pairs, Decide(changed, parts).Pairs);
    }

    private static UnjudgedAnswer Decide(LookAlikeIndex index, HashSet<string> parts, int limit = 20, Func<string, string, bool>? isJudged = null)
    {
        var told = new List<UnjudgedProgress>();
        var answer = UnjudgedPairs.Decide(index, parts, new JudgedParts(_ => true, isJudged ?? ((_, _) => false)), new UnjudgedQuestion("list", limit), told.Add, CancellationToken.None);
        Assert.Equal(index.Count, told[^1].Numbers);
        return answer;
    }

    private static (string, string, int) Told(UnjudgedPair pair) => (pair.PartA, pair.PartB, pair.FoldedEdits);

    private static PartNumber Number(string key) => new("harl", key, key, NumberSort.Service, "harl:" + key);
}
