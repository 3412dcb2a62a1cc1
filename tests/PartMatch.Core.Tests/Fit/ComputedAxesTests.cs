using PartMatch.Core.Catalogue;
using PartMatch.Core.Fit;
using PartMatch.Core.Tests.Catalogue;
using Xunit;
using static PartMatch.Core.Tests.Catalogue.TestFamily;

namespace PartMatch.Core.Tests.Fit;

/// <summary>Each axis is the set of values still possible: the worst of all relations, over every combination (Kleene 1952).</summary>
public sealed class ComputedAxesTests
{
    private const Mounts Yes = Mounts.Yes;
    private const Mounts WithWork = Mounts.WithWork;
    private const Mounts No = Mounts.No;

    public static TheoryData<Met, Met, Mounts[]> StopsAndWork { get; } = new()
    {
        { Met.Yes, Met.Yes, [Yes] },
        { Met.Yes, Met.No, [WithWork] },
        { Met.Yes, Met.NotKnown, [Yes, WithWork] },
        { Met.No, Met.Yes, [No] },
        { Met.No, Met.No, [No] },
        { Met.No, Met.NotKnown, [No] },
        { Met.NotKnown, Met.Yes, [Yes, No] },
        { Met.NotKnown, Met.No, [WithWork, No] },
        { Met.NotKnown, Met.NotKnown, [Yes, WithWork, No] },
    };

    [Theory]
    [MemberData(nameof(StopsAndWork))]
    public void Mounts_is_the_worst_of_a_stops_and_a_work_relation(Met stops, Met work, Mounts[] couldBe)
    {
        var mounts = Wheels(wheel => wheel.CannotAlterRunning().Choice("stops").Rule("stops", Effect.Stops).Choice("work").Rule("work", Effect.Work, work: "ream"), ("stops", stops), ("work", work))
            .Ask("W-2").Mounts;

        Assert.Equal(couldBe, mounts.CouldBe);
        Assert.Equal(couldBe.Length == 1 ? couldBe[0] : Mounts.NotKnown, mounts.Value);
    }

    public static TheoryData<Met, Met, Runs[]> TwoThatAlter { get; } = new()
    {
        { Met.Yes, Met.Yes, [Runs.Same] },
        { Met.Yes, Met.No, [Runs.Differently] },
        { Met.Yes, Met.NotKnown, [Runs.Same, Runs.Differently] },
        { Met.No, Met.No, [Runs.Differently] },
        { Met.No, Met.NotKnown, [Runs.Differently] },
        { Met.NotKnown, Met.NotKnown, [Runs.Same, Runs.Differently] },
    };

    [Theory]
    [MemberData(nameof(TwoThatAlter))]
    public void Runs_is_the_worst_of_two_relations_that_alter(Met one, Met other, Runs[] couldBe)
    {
        var runs = Wheels(wheel => wheel.Choice("one").Rule("one", Effect.Alters).Choice("other").Rule("other", Effect.Alters), ("one", one), ("other", other)).Ask("W-2").Runs;

        Assert.Equal(couldBe, runs.CouldBe);
        Assert.Equal(couldBe.Length == 1 ? couldBe[0] : Runs.NotKnown, runs.Value);
    }

    [Fact]
    public void A_relation_that_alters_says_nothing_about_mounting()
    {
        var answer = Wheels(wheel => wheel.Choice("stops").Rule("stops", Effect.Stops).Choice("alters").Rule("alters", Effect.Alters), ("stops", Met.Yes), ("alters", Met.No)).Ask("W-2");

        Assert.Equal((Mounts.Yes, Runs.Differently, Headline.MountsButRunsDifferently), (answer.Mounts.Value, answer.Runs.Value, answer.Headline));
    }

    [Fact]
    public void One_feature_may_stop_and_alter_by_two_rules_of_different_allowance()
    {
        var family = WithWheels(wheel => wheel.Length("bore").Rule("bore", Effect.Stops, allowance: 1).Rule("bore", Effect.Alters, allowance: 0.1m))
            .Wheel("W-1", Has("bore", Mm(10))).Wheel("W-2", Has("bore", Mm(10.5m))).Fitted("lark", "wheel", "W-1");

        var answer = family.Ask("W-2");

        Assert.Equal((Mounts.Yes, Runs.Differently), (answer.Mounts.Value, answer.Runs.Value));
    }

    [Fact]
    public void Without_a_rule_that_stops_or_needs_work_mounting_is_not_known()
    {
        var answer = Wheels(wheel => wheel.Choice("alters").Rule("alters", Effect.Alters), ("alters", Met.Yes)).Ask("W-2");

        Assert.Equal((Mounts.NotKnown, Runs.Same), (answer.Mounts.Value, answer.Runs.Value));
        Assert.Equal([Mounts.Yes, Mounts.WithWork, Mounts.No], answer.Mounts.CouldBe);
    }

    [Fact]
    public void A_feature_without_a_rule_is_no_rule()
    {
        var family = WithWheels(wheel => wheel.CannotAlterRunning().Choice("colour")).Wheel("W-1", Has("colour", Word("red"))).Wheel("W-2", Has("colour", Word("red"))).Fitted("lark", "wheel", "W-1");

        Assert.Equal(Mounts.NotKnown, family.Ask("W-2").Mounts.Value);
    }

    [Fact]
    public void A_kind_that_can_alter_without_a_rule_that_alters_leaves_running_not_known()
    {
        var answer = Wheels(wheel => wheel.Choice("stops").Rule("stops", Effect.Stops), ("stops", Met.Yes)).Ask("W-2");

        Assert.Equal((Mounts.Yes, Runs.NotKnown, Headline.NotKnownYet), (answer.Mounts.Value, answer.Runs.Value, answer.Headline));
    }

    [Fact]
    public void A_kind_that_cannot_alter_runs_the_same_for_that_reason()
    {
        var answer = Wheels(wheel => wheel.CannotAlterRunning().Choice("stops").Rule("stops", Effect.Stops), ("stops", Met.Yes)).Ask("W-2");

        Assert.Equal(Runs.Same, answer.Runs.Value);
        var reason = Assert.Single(answer.By(ReasonBy.Kind));
        Assert.Contains(reason.Id, answer.Runs.DecidedBy);
        Assert.Contains("cannot change how the engine runs", reason.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_joint_with_an_absent_neighbour_is_not_applied_and_so_shows_nothing()
    {
        var family = WithWheelsAndShafts(wheel => wheel.CannotAlterRunning().Length("bore"), shaft => shaft.Length("diameter"))
            .Wheel("W-2", Has("bore", Mm(10))).Fitted("lark", "wheel", "none").Fitted("lark", "shaft", "none")
            .Joint("on-shaft", "shaft.diameter", "wheel.bore", min: 0, max: 1);

        var answer = family.Ask("W-2");

        Assert.Empty(answer.By(ReasonBy.Joint));
        Assert.Equal(Mounts.NotKnown, answer.Mounts.Value);
    }

    [Fact]
    public void A_part_of_another_kind_does_not_mount_whatever_its_values()
    {
        var family = WithWheelsAndShafts(wheel => wheel.Length("bore").Rule("bore", Effect.Stops).Rule("bore", Effect.Alters), shaft => shaft.Length("bore"))
            .Wheel("W-1", Has("bore", Mm(10))).Shaft("S-1", Has("bore", Mm(10))).Fitted("lark", "wheel", "W-1");

        var answer = family.Ask("S-1");

        Assert.Equal((Mounts.No, Headline.DoesNotFit), (answer.Mounts.Value, answer.Headline));
        Assert.Contains(answer.By(ReasonBy.Kind), reason => reason.Text.Contains("recorded as Shaft", StringComparison.Ordinal));
    }

    [Fact]
    public void A_number_in_no_book_is_not_known()
    {
        var answer = Wheels(wheel => wheel.Choice("stops").Rule("stops", Effect.Stops), ("stops", Met.Yes)).Ask("X-9");

        Assert.Equal((Headline.NotKnownYet, IdentityRelation.UnknownNumber, Sureness.Unproven), (answer.Headline, answer.Identity.Relation, answer.Sureness));
        Assert.Equal(["alder:W-1"], answer.Identity.Fitted);
        Assert.Equal([Mounts.Yes, Mounts.WithWork, Mounts.No], answer.Mounts.CouldBe);
        Assert.Equal([Runs.Same, Runs.Differently], answer.Runs.CouldBe);
        Assert.Contains("X-9", answer.AllText(), StringComparison.Ordinal);
    }

    [Fact]
    public void Position_of_nothing_recorded_gives_not_known_with_its_reason()
    {
        var answer = WithWheels(wheel => wheel.CannotAlterRunning().Length("bore").Rule("bore", Effect.Stops)).Wheel("W-2", Has("bore", Mm(10))).Ask("W-2");

        Assert.Equal([Mounts.Yes, Mounts.No], answer.Mounts.CouldBe);
        Assert.Contains("not recorded for what the maker fitted", answer.Of("bore").Text, StringComparison.Ordinal);
    }

    [Fact]
    public void The_fitted_part_meets_every_default_demand_even_of_values_not_recorded_or_disputed()
    {
        var family = WithWheels(wheel => wheel.Length("bore").Rule("bore", Effect.Stops).Choice("hand").Rule("hand", Effect.Alters).Length("width").Rule("width", Effect.Stops))
            .Wheel("W-1", Has("bore", Mm(10, 0, knownTo: 0.5m)), Has("width", Mm(1), By(EvidenceGrade.Measured, "a")), Has("width", Mm(2), By(EvidenceGrade.Measured, "b")))
            .Fitted("lark", "wheel", "W-1");

        Assert.All(family.Ask("W-1").By(ReasonBy.Feature), reason => Assert.Equal(Met.Yes, reason.Met));
    }

    /// <summary>A wheel that meets, fails or leaves open each of these choices.</summary>
    private static TestFamily Wheels(Action<TestKind> describe, params (string Feature, Met Met)[] relations) => WithWheels(describe)
        .Wheel("W-1", [.. relations.Select(relation => Has(relation.Feature, Word("a")))])
        .Wheel("W-2", [.. relations.Where(relation => relation.Met != Met.NotKnown).Select(relation => Has(relation.Feature, Word(relation.Met == Met.Yes ? "a" : "b")))])
        .Fitted("lark", "wheel", "W-1");
}
