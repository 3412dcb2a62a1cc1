using PartMatch.Core.Catalogue;
using PartMatch.Core.LookAlikes;
using Xunit;

namespace PartMatch.Core.Tests.LookAlikes;

public sealed class LookAlikeFactsTests
{
    private static readonly JudgedPair _shared = new("harl:X", "harl:Y", PairJudgement.Harmless, WrenFamily.Document, null);
    private static readonly JudgedPair _own = new("harl:A", "harl:B", PairJudgement.Trap, null, null);

    [Fact]
    public void Pairs_are_those_of_every_family_and_a_shared_one_counts_once()
    {
        var first = WrenFamily.Wren([], [], pairs: [_shared, _own]);
        var second = WrenFamily.Wren([], [], pairs: [_shared with { }]);
        Assert.Equal([_own, _shared], WrenFamily.Facts([first, second], []).Pairs);
    }

    [Fact]
    public void Two_judgements_of_one_pair_are_both_kept()
    {
        var other = _shared with { Judgement = PairJudgement.Trap };
        var facts = WrenFamily.Facts([WrenFamily.Wren([], [], pairs: [_shared]), WrenFamily.Wren([], [], pairs: [other])], []);
        Assert.Equal([_shared, other], facts.Pairs);
    }

    [Theory]
    [InlineData("harl:A", "harl:B", 1, true)]
    [InlineData("harl:B", "harl:A", 1, true)] // whichever was ordered
    [InlineData("harl:A", "harl:B", 0, false)] // looked at, and always right
    [InlineData("harl:A", "harl:C", 1, false)]
    [InlineData(null, "harl:B", 1, false)]
    public void Parts_came_in_place_of_one_another_where_any_delivery_was_wrong(string? one, string other, int wrong, bool came) =>
        Assert.Equal(came, new Odds(new Dictionary<string, int>(), [new MixUpCount("harl:A", "harl:B", 10, wrong)]).CameInstead(one, other));

    [Fact]
    public void Odds_are_those_given_and_none_when_not()
    {
        var odds = new Odds(new Dictionary<string, int> { ["harl:A"] = 3 }, [new MixUpCount("harl:A", "harl:B", 10, 2)]);
        Assert.Same(odds, WrenFamily.Facts([], [], odds: odds).Odds);
        Assert.Same(odds, WrenFamily.Facts([], []).With(odds).Odds);
        Assert.Same(Odds.None, WrenFamily.Facts([], []).Odds);
        Assert.Empty(Odds.None.OffersByPart);
        Assert.Empty(Odds.None.MixUps);
    }
}
