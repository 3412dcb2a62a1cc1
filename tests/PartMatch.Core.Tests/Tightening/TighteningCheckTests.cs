using PartMatch.Core.Catalogue;
using PartMatch.Core.Measures;
using PartMatch.Core.Sums;
using PartMatch.Core.Tests.Catalogue;
using PartMatch.Core.Tightening;
using Xunit;
using static PartMatch.Core.Tests.Catalogue.TestFamily;

namespace PartMatch.Core.Tests.Tightening;

public sealed class TighteningCheckTests
{
    private static readonly TighteningQuestion _typed = new()
    {
        Thread = "M10×1.5", Class = PropertyClass.Find("8.8"), Lubrication = Lubrication.Dry, Torque = NewtonMetres("75.83 N·m"),
    };

    // 75.83 ÷ (0.30 × 0.010) = 25 277 N = 75.0 % of 33 700; ÷ (0.18 × 0.010) = 42 128 N = 125 %.
    [Fact]
    public void Typed_torque_is_judged_as_told_and_oiled_beside_it()
    {
        var torque = Ask(_typed).Torque!;

        Assert.Equal([("dry", true), ("oiled", false)], torque.Conditions.Select(one => (one.Threads, one.IsTold)));
        Assert.Equal((25_277, 42_128), (Math.Round(torque.Conditions[0].Preload.Expected), Math.Round(torque.Conditions[1].Preload.Expected)));
        Assert.Equal("dry: 25.3 kN, 75 % of the proof load, from 53 % to 98 %", torque.Conditions[0].Text);
        var flag = Assert.Single(torque.Warnings);
        Assert.Equal("above-proof-if", flag.Code);
        Assert.Contains("42.13 kN, 125 % of the proof load and 91 % of the least load that breaks it", flag.Text, StringComparison.Ordinal);
        Assert.EndsWith("a load cell under the head.", flag.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void Answer_says_what_it_says_nothing_about_and_shows_the_cautions()
    {
        var answer = Ask(_typed);

        Assert.Contains(answer.SaysNothing, text => text.Contains("aluminium", StringComparison.Ordinal));
        Assert.Contains(answer.SaysNothing, text => text.Contains("none is proposed", StringComparison.Ordinal));
        Assert.Equal(["oiled-threads", "single-use-bolts", "tightening", "wet-blind-holes"], answer.Cautions.Select(caution => caution.Code));
        Assert.Contains(answer.Assumed, one => one.Name == "scatter" && one.Source.Contains("no source", StringComparison.Ordinal));
    }

    [Fact]
    public void Torque_in_pound_feet_is_brought_to_newton_metres_in_the_working()
    {
        // 55 × 1.355 817 948 = 74.57 N·m.
        var working = Ask(_typed with { Torque = NewtonMetres("55 lbf·ft") }).Working;

        Assert.Contains(working, step => step.With == "55 lbf·ft" && step.Result == "74.57 N·m");
        Assert.Contains(working, step => step.With == "74.57 N·m ÷ (0.30 × 0.01 m)");
    }

    // K 0.16 … 0.30 of 75.83 N·m over 33 700 N, ± 30 %: least 0.7 × 25 277 = 17 694 N (53 %), most 1.3 × 47 394 = 61 612 N (183 %).
    [Fact]
    public void Unknown_threads_give_a_range_and_say_so()
    {
        var torque = Ask(_typed with { Lubrication = null }).Torque!;

        Assert.Equal(["not-recorded", "dry", "oiled"], torque.Conditions.Select(one => one.Threads));
        Assert.Equal((0.525, 1.828), (Math.Round(torque.Conditions[0].ShareOfProof.Low, 3), Math.Round(torque.Conditions[0].ShareOfProof.High, 3)));
        Assert.Contains(torque.Warnings, flag => flag.Code == "threads-not-recorded");
    }

    // Against 33 700, 48 100 and 56 300 N: 25 277 N is 75, 53 and 45 %; with ± 30 %: 31 … 98 %.
    [Fact]
    public void Unknown_class_gives_a_range_and_says_so()
    {
        var torque = Ask(_typed with { Class = null }).Torque!;

        Assert.Equal("31 … 53 … 98 %", torque.Conditions[0].ShareOfProof.Text);
        Assert.Contains(torque.Warnings, flag => flag.Code == "class-not-recorded");
    }

    [Fact]
    public void Typed_nut_factor_stands_for_the_state_of_the_threads()
    {
        var given = new QuantityRange(0.12, 0.14, 0.16, "1", "0.12 … 0.14 … 0.16");
        var torque = Ask(_typed with { NutFactor = given }).Torque!;

        Assert.Equal([("given", true), ("dry", false), ("oiled", false)], torque.Conditions.Select(one => (one.Threads, one.IsTold)));
        Assert.Equal(75.83 / 0.0014, torque.Conditions[0].Preload.Expected, 1e-6);
    }

    // With ± 0 % of scatter: T 33.7 × K·d: the share is T ÷ (0.30 × 0.010 × 33 700) = T ÷ 101.1.
    [Theory]
    [InlineData("101.1 N·m", null)]
    [InlineData("101.2 N·m", "above-proof")]
    [InlineData("75.9 N·m", null)]
    [InlineData("75.8 N·m", "below-usual")]
    public void Flags_begin_just_outside_their_bounds(string torque, string? expected)
    {
        var judged = Ask(_typed with { Torque = NewtonMetres(torque), Scatter = new Quantity(0, "1", "0 %") }).Torque!;

        Assert.Equal(expected, judged.Warnings.FirstOrDefault(flag => flag.Code != "above-proof-if")?.Code);
    }

    // 101.1 ÷ 1.3 = 77.77 N·m: the high end reaches the proof load.
    [Theory]
    [InlineData("77.7 N·m", false)]
    [InlineData("77.8 N·m", true)]
    public void Scatter_that_may_pass_the_proof_load_is_flagged(string torque, bool expected) =>
        Assert.Equal(expected, Ask(_typed with { Torque = NewtonMetres(torque) }).Torque!.Warnings.Any(flag => flag.Code == "may-pass-proof"));

    [Theory]
    [InlineData(0, 0.2, 0.3, "out-of-range", "torque")]
    [InlineData(75, 0.04, 0.3, "out-of-range", "nut-factor")]
    [InlineData(75, 0.2, 1.01, "out-of-range", "nut-factor")]
    public void Number_outside_what_it_can_be_is_refused(double torque, double lowFactor, double highFactor, string code, string field)
    {
        var refused = Refuse(_typed with
        {
            Torque = new QuantityRange(torque, torque, torque, "N·m", "typed"),
            NutFactor = new QuantityRange(lowFactor, 0.25, highFactor, "1", "typed"),
        });

        Assert.Equal((code, field), (refused.Code, refused.Field));
    }

    [Fact]
    public void Scatter_of_the_whole_is_refused() => Assert.Equal("scatter", Refuse(_typed with { Scatter = new Quantity(1, "1", "100 %") }).Field);

    [Fact]
    public void Angle_beside_a_torque_is_refused_because_the_preload_comes_from_it()
    {
        var refused = Refuse(_typed with { Angle = new Quantity(90, "deg", "90 deg") });

        Assert.Equal(("angle-tightened", "angle"), (refused.Code, refused.Field));
        Assert.Contains("the preload there comes from the angle", refused.Reason, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(null, "thread-not-known")]
    [InlineData("3/4-16 UNF", "thread-not-metric")]
    public void Thread_that_is_missing_or_no_metric_one_is_refused(string? thread, string code) => Assert.Equal(code, Refuse(_typed with { Thread = thread }).Code);

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

    private static QuantityRange NewtonMetres(string text) => Assert.IsType<RangeRead>(QuantityRangeParser.Parse(text, Dimension.Torque)).Range;

    private static TighteningJudged Ask(TighteningQuestion question) => Assert.IsType<TighteningJudged>(TighteningCheck.Judge(question));

    private static SumRefused Refuse(TighteningQuestion question) => Assert.IsType<SumRefused>(TighteningCheck.Judge(question));
}
