using CsCheck;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Consistency;
using PartMatch.Core.Fit;
using PartMatch.Core.Tests.Catalogue;
using Snapshooter.Xunit3;
using Xunit;
using static PartMatch.Core.Tests.Catalogue.TestFamily;

namespace PartMatch.Core.Tests.Consistency;

/// <summary>The list as a whole: order, narrowing, counts, near numbers.</summary>
public sealed class ConsistencyCheckTests
{
    [Fact]
    public void The_worst_come_first() =>
        Assert.Equal(
            [
                FaultSort.SupersessionLoop, FaultSort.JointContradicts, FaultSort.ValuesDisputed, FaultSort.SpansOverlap, FaultSort.MissingValue, FaultSort.NotRecorded,
                FaultSort.NoEvidence, FaultSort.KindNotReviewed,
            ],
            Bad().Look().Faults.Select(fault => fault.Sort).Distinct());

    [Fact]
    public void Within_a_sort_the_worst_consequence_comes_first()
    {
        var family = WithWheelsAndShafts(wheel => wheel.CannotAlterRunning().Length("bore").Length("hub"), shaft => shaft.CannotAlterRunning().Length("diameter"))
            .Wheel("W-1", Has("bore", Mm(10)), Has("hub", Mm(10))).Shaft("S-1", Has("diameter", Mm(11))).Fitted("lark", "wheel", "W-1").Fitted("lark", "shaft", "S-1")
            .Joint("a-mild", "shaft.diameter", "wheel.bore", min: 0, consequence: Consequence.Nuisance).Joint("b-bad", "shaft.diameter", "wheel.hub", min: 0, consequence: Consequence.Injury);

        Assert.Equal([Consequence.Injury, Consequence.Nuisance], family.Faults(FaultSort.JointContradicts).Select(fault => fault.Consequence));
    }

    [Fact]
    public void Counts_and_total_are_over_all_whatever_is_listed()
    {
        var all = Bad().Look();
        var one = Bad().Look(sort: FaultSort.NotRecorded, limit: 1);

        Assert.Equal(all.Counts, one.Counts);
        Assert.Equal(all.Counts.Values.Sum(), all.Total);
        Assert.Equal((one.Counts["not-recorded"], 1), (one.Total, one.Faults.Count));
        Assert.True(one.Total > 1);
    }

    [Fact]
    public void A_variant_leaves_out_what_does_not_concern_it()
    {
        var lark = Bad().Look("lark");

        Assert.All(lark.Faults, fault => Assert.Contains("lark", fault.Variants));
        Assert.Equal(Bad().Look().Faults.Count(fault => fault.Variants.Contains("lark")), lark.Total);
        Assert.InRange(lark.Total, 1, Bad().Look().Total - 1);
    }

    [Fact]
    public void A_sound_family_has_no_fault_and_a_count_of_each_sort()
    {
        var answer = WithWheels(wheel => wheel.CannotAlterRunning().Length("bore").Rule("bore", Effect.Stops)).Wheel("W-1", Has("bore", Mm(10)))
            .Fitted("lark", "wheel", "W-1").Fitted("swift", "wheel", "W-1").Look();

        Assert.Empty(answer.Faults);
        Assert.Equal(Codes.All<FaultSort>().Except(["near-unjudged"]), answer.Counts.Keys);
        Assert.All(answer.Counts.Values, count => Assert.Equal(0, count));
    }

    // A red wheel in place of a blue one mounts and runs differently: dangerous. One character differs.
    [Fact]
    public void Near_numbers_that_nobody_has_judged_are_looked_for_where_they_can_be_and_counted_only_then()
    {
        var family = WithWheels(wheel => wheel.Choice("hand").Rule("hand", Effect.Stops).Choice("colour").Rule("colour", Effect.Alters, consequence: Consequence.Damage))
            .Wheel("WHEEL-1147-C", Has("hand", Word("left")), Has("colour", Word("red"))).Wheel("WHEEL-1147-E", Has("hand", Word("left")), Has("colour", Word("blue")))
            .Fitted("lark", "wheel", "WHEEL-1147-C").Fitted("swift", "wheel", "WHEEL-1147-E");
        ConsistencyAnswer Look() => ConsistencyCheck.Decide(family.Facts(), new ConsistencyQuestion(Sort: FaultSort.NearUnjudged), family.LookAlikes());

        var fault = Assert.Single(Look().Faults);

        Assert.Equal(["parts alder:WHEEL-1147-C", "parts alder:WHEEL-1147-E"], fault.Keys());
        Assert.Equal(1, Look().Counts["near-unjudged"]);
        Assert.False(family.Look().Counts.ContainsKey("near-unjudged"));
        family.Judged("WHEEL-1147-C", "WHEEL-1147-E", PairJudgement.Trap);
        Assert.Empty(Look().Faults);
    }

    [Fact]
    public void An_unknown_variant_is_refused() => Assert.Throws<ArgumentException>(() => Bad().Look("robin"));

    [Fact]
    public void Every_question_that_is_said_to_hang_on_something_is_not_known_yet() => AnyFamily.Of().Sample(
        family =>
        {
            var facts = family.Facts();
            var hanging = ConsistencyCheck.Decide(facts, new ConsistencyQuestion(Limit: ConsistencyQuestion.MaxLimit)).Faults.Where(fault => fault.Unlocks is { } unlocks && unlocks != Unlocks.None);
            foreach (var asked in hanging.Select(fault => (fault.Fit ?? "").Split('?', '&').Skip(1).Select(pair => pair.Split('=')).ToDictionary(pair => pair[0], pair => pair[1])))
            {
                Assert.Equal(Headline.NotKnownYet, FitCheck.DecideFrom(facts, asked["from"], null, new FitQuestion(asked["variant"], asked["position"], null)).Headline);
            }
        },
        iter: 100, threads: 1);

    [Fact]
    public void The_order_of_the_rows_plays_no_part() => Gen.Select(AnyFamily.Of(), Gen.Int).Sample(
        (family, seed) =>
        {
            var question = new ConsistencyQuestion(Limit: ConsistencyQuestion.MaxLimit);
            Assert.Equal(AsJson.Of(ConsistencyCheck.Decide(family.Facts(), question)), AsJson.Of(ConsistencyCheck.Decide(family.Facts(new Shuffled(seed)), question)));
        },
        iter: 25, threads: 1);

    [Fact]
    public void Whole_answer_as_JSON_shows_it() => Snapshot.Match(AsJson.Of(Bad().Look("swift")));

    /// <summary>Something of almost every sort.</summary>
    private static TestFamily Bad() => WithWheelsAndShafts(
            wheel => wheel.NotReviewed().Length("bore").Rule("bore", Effect.Stops).Check("bore", Method.Caliper, 4, 0.02m, "inside jaws").Choice("hand"), shaft => shaft.CannotAlterRunning().Length("diameter"))
        .Place("pin", pin => pin.CannotAlterRunning()).Access("pin", 20, "wheel off")
        .Wheel("W-1", Has("bore", Mm(10)), Has("hand", Word("left"), null)).Wheel("W-2").Wheel("W-3", Has("bore", Mm(12), By(EvidenceGrade.Measured, "a")), Has("bore", Mm(13), By(EvidenceGrade.Measured, "b")))
        .Shaft("S-1", Has("diameter", Mm(11)))
        .Fitted("lark", "wheel", "W-1").Fitted("swift", "wheel", "W-2", Serials(null, 1500)).Fitted("swift", "wheel", "W-3", Serials(1000, null)).Fitted("lark", "shaft", "S-1")
        .Joint("clearance", "shaft.diameter", "wheel.bore", min: 0, max: 0.1m).Replaced("W-2", "W-3").Replaced("W-3", "W-2");
}
