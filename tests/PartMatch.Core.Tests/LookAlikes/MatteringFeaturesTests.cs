using PartMatch.Core.Catalogue;
using PartMatch.Core.LookAlikes;
using PartMatch.Core.Tests.Catalogue;
using Xunit;
using static PartMatch.Core.Tests.Catalogue.TestFamily;

namespace PartMatch.Core.Tests.LookAlikes;

/// <summary>A feature matters where a rule, a need, a joint, a stack, a companion rule or one of the sums reads it.</summary>
public sealed class MatteringFeaturesTests
{
    private static TestFamily Bolts() => WithWheelsAndShafts(
            wheel => wheel.Length("length").Length("head").Choice("colour", "grey", "red").Check("colour", Method.Photo, 1).Check("length", Method.Caliper, 2, 0.05m),
            shaft => shaft.Length("depth"))
        .Wheel("26-1147-C", Has("length", Mm(20)), Has("head", Mm(8)), Has("colour", Word("grey")))
        .Wheel("26-1147-E", Has("length", Mm(26)), Has("head", Mm(9)), Has("colour", Word("grey")));

    // No rule of the kind reads the length; the stack of the joint does: a bolt 6 mm too long bottoms in its hole.
    [Fact]
    public void Feature_that_only_a_stack_reads_matters_and_makes_two_parts_look_alikes()
    {
        var family = Bolts().Stack("engagement", "+wheel.length|-shaft.depth", 10, 12);
        var row = Assert.Single(LookAlikeSearch.Decide(family.LookAlikes(), new LookAlikeQuestion("26-1147-C")).LookAlikes);
        Assert.True(row.SameToTheEye);
        Assert.Equal([("length", true), ("head", false)], row.Differs.Select(difference => (difference.Feature, difference.Matters)));
        Assert.Single(PairRanking.Decide(family.LookAlikes(), new PairQuestion("finch-9")).Pairs, pair => pair.SameToTheEye);
    }

    [Fact]
    public void Feature_that_nothing_reads_does_not_matter()
    {
        var row = Assert.Single(LookAlikeSearch.Decide(Bolts().LookAlikes(), new LookAlikeQuestion("26-1147-C")).LookAlikes);
        Assert.False(row.SameToTheEye);
        Assert.DoesNotContain(row.Differs, difference => difference.Matters);
    }

    [Fact]
    public void What_a_need_a_joint_a_companion_rule_or_a_rule_of_the_kind_reads_matters()
    {
        Assert.Equal(["head"], Read(Bolts().Need("lark", "wheel", "head", Effect.Stops, Relation.AtLeast, Mm(8))));
        Assert.Equal(["length"], Read(Bolts().Joint("seat", "shaft.depth", "wheel.length", min: 0, max: 1)));
        Assert.Equal(["length"], Read(Bolts().Joint("seat", "wheel.length", "shaft.depth", min: 0, max: 1)));
        Assert.Equal(["colour"], Read(Bolts().Companion("pair", "wheel.colour", Word("red"), "shaft.depth", Mm(4))));
        Assert.Equal(["colour"], Read(Bolts().Companion("pair", "shaft.depth", Mm(4), "wheel.colour", Word("red"))));
        Assert.Empty(Read(Bolts()));
        Assert.Equal(["length"], Read(WithWheels(wheel => wheel.Length("length").Length("head").Rule("length", Effect.Stops))));
    }

    private static IEnumerable<string> Read(TestFamily family)
    {
        var facts = family.Facts();
        var kind = facts.FindKind("wheel") ?? throw new InvalidOperationException("The family has wheels.");
        var mattering = new MatteringFeatures([facts]);
        return kind.Features.Select(feature => feature.Code).Where(feature => mattering.Contains(kind, feature));
    }
}
