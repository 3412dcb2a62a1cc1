using PartMatch.Core.Catalogue;
using PartMatch.Core.Measures;
using PartMatch.Core.Tests.Catalogue;
using PartMatch.Core.Tightening;
using Xunit;
using static PartMatch.Core.Tests.Catalogue.TestFamily;
using static PartMatch.Core.Tests.Tightening.TighteningCheckTests;

namespace PartMatch.Core.Tests.Tightening;

public sealed class RecordedTighteningTests
{
    [Fact]
    public void Recorded_torque_is_judged_by_its_last_pass_with_its_own_spread()
    {
        var family = Bolted().Tightened("lark", "bolt", Lubrication.Oiled, SingleUse.No, ["30 N·m", "70 N·m"], plusMinus: 5);
        var record = Assert.Single(Ask(At(family)).Records);

        // M10×1, 10.9: 10 − 0.9382 = 9.0618; squared 82.116; × π/4 = 64.494 mm²; × 830 MPa = 53 530 N. 70 ÷ 0.0018 = 38 889 N, 73 %.
        Assert.Equal(["30 N·m ± 5", "70 N·m ± 5"], record.Passes.Select(pass => pass.Text));
        Assert.Equal(0.726, record.Judged!.Conditions[0].ShareOfProof.Expected, 1e-3);
        Assert.Equal((65, 70, 75), (record.Judged.Torque.Low, record.Judged.Torque.Expected, record.Judged.Torque.High));
        Assert.Equal(["oiled", "dry"], record.Judged.Conditions.Select(one => one.Threads));
    }

    [Fact]
    public void Threads_and_nut_factor_that_are_typed_are_compared_with_the_record()
    {
        var place = At(Bolted().Tightened("lark", "bolt", Lubrication.Oiled, SingleUse.No, ["70 N·m"]));
        var typed = place with { Lubrication = Lubrication.ZincPlated, NutFactor = new QuantityRange(0.14, 0.15, 0.16, "1", "0.14 … 0.15 … 0.16") };

        Assert.Equal(
            [("oiled", true), ("given", false), ("dry", false), ("zinc-plated", false)],
            Ask(typed).Records[0].Judged!.Conditions.Select(one => (one.Threads, one.IsTold)));
    }

    [Theory]
    [InlineData(SingleUse.No, "90 deg", "the preload there comes from the angle")]
    [InlineData(SingleUse.Stretch, "60 N·m", "stretched for good")]
    public void Record_by_angle_or_by_stretch_is_shown_and_not_judged(SingleUse singleUse, string last, string reason)
    {
        var place = At(Bolted().Tightened("lark", "bolt", Lubrication.Oiled, singleUse, ["30 N·m", last]));
        var record = Assert.Single(Ask(place).Records);

        Assert.Null(record.Judged);
        Assert.Contains(reason, record.NotJudged!.Reason, StringComparison.Ordinal);
        Assert.Equal(2, record.Passes.Count);
        Assert.Equal("angle-tightened", Refuse(place with { Torque = NewtonMetres("60 N·m") }).Code);
    }

    [Theory]
    [InlineData("75 N·m", false)] // 70 + 5
    [InlineData("76 N·m", true)]
    [InlineData("90 deg", true)]
    public void Sources_that_end_in_different_turns_are_told_of(string other, bool expected)
    {
        var answer = Ask(At(Bolted()
            .Tightened("lark", "bolt", Lubrication.Oiled, SingleUse.No, ["30 N·m", "70 N·m"], plusMinus: 5)
            .Tightened("lark", "bolt", null, null, [other], By(EvidenceGrade.Reported))
            .Tightened("lark", "bolt", null, null, ["200 N·m"], Retracted())));

        Assert.Equal(expected, answer.Warnings.Any(warning => warning.Code == "sources-disagree"));
    }

    [Fact]
    public void Sources_of_different_engines_do_not_disagree_and_each_says_which()
    {
        var answer = Ask(At(Bolted()
            .Tightened("lark", "bolt", Lubrication.Oiled, SingleUse.No, ["70 N·m"], span: Serials(null, 100))
            .Tightened("lark", "bolt", Lubrication.Oiled, SingleUse.No, ["90 N·m"], span: Serials(101, null))));

        Assert.DoesNotContain(answer.Warnings, warning => warning.Code == "sources-disagree");
        Assert.Equal([(null, 100L), (101L, (long?)null)], answer.Records.Select(record => (record.Serial?.From, record.Serial?.To)));
    }

    [Fact]
    public void Record_that_does_not_say_whether_it_is_renewed_is_flagged()
    {
        bool Flagged(SingleUse? singleUse) => Ask(At(Bolted().Tightened("lark", "bolt", Lubrication.Oiled, singleUse, ["70 N·m"])))
            .Records[0].Judged!.Warnings.Any(warning => warning.Code == "single-use-not-recorded");

        Assert.Equal([true, false, false], new SingleUse?[] { null, SingleUse.No, SingleUse.Yes }.Select(Flagged));
    }

    [Fact]
    public void Retracted_record_comes_last_and_is_not_judged()
    {
        var records = Ask(At(Bolted()
            .Tightened("lark", "bolt", Lubrication.Dry, null, ["90 N·m"], Retracted())
            .Tightened("lark", "bolt", Lubrication.Oiled, null, ["70 N·m"], By(EvidenceGrade.Reported)))).Records;

        Assert.Equal([null, "retracted"], records.Select(record => record.NotJudged?.Code));
        Assert.NotNull(records[0].Judged);
    }

    [Fact]
    public void Angle_of_a_retracted_source_does_not_stand_in_the_way_of_a_typed_torque()
    {
        var place = At(Bolted().Tightened("lark", "bolt", null, null, ["30 N·m", "90 deg"], Retracted()));

        Assert.NotNull(Ask(place with { Torque = NewtonMetres("70 N·m") }).Torque);
    }

    [Fact]
    public void Place_that_is_no_fastener_shows_its_records_and_refuses_a_typed_torque()
    {
        var place = At(Bolted(role: null).Tightened("lark", "bolt", Lubrication.Dry, null, ["25 N·m"]));

        Assert.Equal("not-a-fastener", Assert.Single(Ask(place).Records).NotJudged?.Code);
        Assert.Equal("not-a-fastener", Refuse(place with { Torque = NewtonMetres("25 N·m") }).Code);
        Assert.NotNull(Ask(place with { Torque = NewtonMetres("25 N·m"), Thread = "M14×1.25" }).Torque);
    }

    [Fact]
    public void Parts_of_two_threads_over_the_years_are_asked_about()
    {
        var family = Bolted(Serials(null, 100)).Part("B-2", "bolt", Has("thread", Word("m12x1-25"))).Fitted("lark", "bolt", "B-2", Serials(101, null));

        Assert.Equal("thread-not-known", Ask(At(family)).NotJudged?.Code);
        Assert.Equal("M12×1.25", Ask(At(family, "B-2")).Bolt?.Thread);
        Assert.Null(Ask(At(family, "B-2")).Bolt?.Class);
    }

    [Fact]
    public void Class_that_the_sums_do_not_hold_is_said_and_can_be_overridden()
    {
        var family = new TestFamily().Variant("lark")
            .Kind("bolt", kind => kind.Choice("thread", "m10x1").Choice("strength", "5-6")).Position("bolt", "bolt", role: Roles.Fastener)
            .Part("B-1", "bolt", Has("thread", Word("m10x1")), Has("strength", Word("5-6"))).Fitted("lark", "bolt", "B-1");

        Assert.Equal("class-not-known", Ask(At(family)).NotJudged?.Code);
        Assert.Equal("8.8", Ask(At(family) with { Class = PropertyClass.Find("8.8") }).Bolt?.Class);
    }

    [Fact]
    public void Fastener_that_is_used_again_is_not_cautioned_as_single_use()
    {
        var place = At(Bolted().Tightened("lark", "bolt", Lubrication.Oiled, SingleUse.No, ["70 N·m"]));

        Assert.DoesNotContain(Ask(place).Cautions, caution => caution.Code == "single-use-bolts");
        Assert.Contains(Ask(At(Bolted())).Cautions, caution => caution.Code == "single-use-bolts");
    }

    private static TestFamily Bolted(Span? span = null, string? role = Roles.Fastener) => new TestFamily().Variant("lark")
        .Kind("bolt", kind => kind.Choice("thread", "m10x1", "m12x1-25").Choice("strength", "10-9")).Position("bolt", "bolt", role: role)
        .Part("B-1", "bolt", Has("thread", Word("m10x1")), Has("strength", Word("10-9"))).Fitted("lark", "bolt", "B-1", span);

    private static TighteningQuestion At(TestFamily family, string? part = null)
    {
        var facts = family.Facts();
        return new TighteningQuestion { Place = new FastenerPlace(facts, "lark", facts.FindPosition("bolt")!, part is null ? null : facts.GetPart(Id(part))) };
    }
}
