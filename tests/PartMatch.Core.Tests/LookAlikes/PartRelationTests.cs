using PartMatch.Core.Catalogue;
using PartMatch.Core.LookAlikes;
using Xunit;

namespace PartMatch.Core.Tests.LookAlikes;

public sealed class PartRelationTests
{
    private static readonly Supersession[] _chain =
    [
        WrenFamily.Replaced("harl:B", "harl:C", SupersessionWay.One, new Span(null, null, null, 41206), "wa"),
        WrenFamily.Replaced("harl:C", "harl:D", SupersessionWay.Both),
        WrenFamily.Replaced("harl:D", "harl:E", SupersessionWay.Both),
    ];

    [Theory]
    [InlineData("harl:C", "harl:C", PartRelation.SamePart)]
    [InlineData("harl:C", "harl:D", PartRelation.SamePart)]
    [InlineData("harl:E", "harl:C", PartRelation.SamePart)] // both links hold both ways
    [InlineData("harl:B", "harl:C", PartRelation.NewerNumber)]
    [InlineData("harl:C", "harl:B", PartRelation.OlderNumber)]
    [InlineData("harl:B", "harl:E", PartRelation.NewerNumber)]
    [InlineData("harl:E", "harl:B", PartRelation.OlderNumber)]
    [InlineData("harl:B", "harl:F", PartRelation.NotJudged)]
    public void Supersessions_say_which_is_newer(string asked, string other, PartRelation expected) =>
        Assert.Equal(expected, PartRelations.Between(_chain, [], asked, other).Relation);

    [Fact]
    public void The_text_names_the_limits()
    {
        var text = PartRelations.Between(_chain, [], "harl:B", "harl:C").Text;
        Assert.Equal("harl:B is replaced by harl:C (not the other way round); only on wa, serial to 41206.", text);
    }

    [Fact]
    public void One_way_links_in_a_loop_say_nothing()
    {
        Supersession[] loop = [WrenFamily.Replaced("harl:B", "harl:C", SupersessionWay.One), WrenFamily.Replaced("harl:C", "harl:B", SupersessionWay.One)];
        Assert.Equal(PartRelation.NotJudged, PartRelations.Between(loop, [], "harl:B", "harl:C").Relation);
    }

    [Fact]
    public void A_judged_pair_counts_in_either_order_unless_its_evidence_is_retracted_or_a_supersession_speaks()
    {
        JudgedPair[] pairs =
        [
            new("harl:C", "harl:X", PairJudgement.Trap, WrenFamily.Document, "overheats"),
            new("harl:C", "harl:Y", PairJudgement.Harmless, WrenFamily.Document, null),
            new("harl:C", "harl:Z", PairJudgement.Trap, WrenFamily.Retracted, null),
            new("harl:C", "harl:D", PairJudgement.Trap, WrenFamily.Document, null),
            new("harl:W", "harl:C", PairJudgement.SamePart, WrenFamily.Document, "one casting, two stickers"),
        ];
        Assert.Equal((PartRelation.Trap, "overheats"), PartRelations.Between(_chain, pairs, "harl:X", "harl:C"));
        Assert.Equal(PartRelation.Harmless, PartRelations.Between(_chain, pairs, "harl:C", "harl:Y").Relation);
        Assert.Equal((PartRelation.SamePart, "one casting, two stickers"), PartRelations.Between(_chain, pairs, "harl:C", "harl:W"));
        Assert.Equal(PartRelation.NotJudged, PartRelations.Between(_chain, pairs, "harl:C", "harl:Z").Relation);
        Assert.Equal(PartRelation.SamePart, PartRelations.Between(_chain, pairs, "harl:C", "harl:D").Relation);
    }

    [Theory]
    [InlineData(PairJudgement.SamePart, PairJudgement.Harmless, PartRelation.Harmless)]
    [InlineData(PairJudgement.SamePart, PairJudgement.Trap, PartRelation.Trap)]
    [InlineData(PairJudgement.Harmless, PairJudgement.Trap, PartRelation.Trap)]
    public void Of_two_judgements_the_more_careful_one_counts_with_its_own_note(PairJudgement mild, PairJudgement careful, PartRelation expected)
    {
        JudgedPair[] pairs = [new("harl:C", "harl:X", mild, WrenFamily.Document, "mild"), new("harl:X", "harl:C", careful, null, "careful")];
        Assert.Equal((expected, "careful"), PartRelations.Between([], pairs, "harl:C", "harl:X"));
        Assert.Equal((expected, "careful"), PartRelations.Between([], [.. pairs.Reverse()], "harl:X", "harl:C"));
    }
}
