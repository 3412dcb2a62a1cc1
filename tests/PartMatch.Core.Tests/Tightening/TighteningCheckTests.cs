using PartMatch.Core.Catalogue;
using PartMatch.Core.Measures;
using PartMatch.Core.Sums;
using PartMatch.Core.Tightening;
using Xunit;

namespace PartMatch.Core.Tests.Tightening;

public sealed class TighteningCheckTests
{
    private static readonly TighteningQuestion _typed = new()
    {
        Thread = "M10×1.5",
        Class = PropertyClass.Find("8.8"),
        Lubrication = Lubrication.Dry,
        Torque = NewtonMetres("75.83 N·m"),
    };

    // 75.83 ÷ (0.30 × 0.010) = 25 277 N = 75.0 % of 33 700; ÷ (0.18 × 0.010) = 42 128 N = 125 %.
    [Fact]
    public void Typed_torque_is_judged_as_told_and_oiled_beside_it()
    {
        var torque = Ask(_typed).Torque!;

        Assert.Equal([("dry", true), ("oiled", false)], torque.Conditions.Select(one => (one.Threads, one.IsTold)));
        Assert.Equal((25_277, 42_128), (Math.Round(torque.Conditions[0].Preload.Expected), Math.Round(torque.Conditions[1].Preload.Expected)));
        Assert.Equal("dry: 25.3 kN, 75 % of the proof load, from 53 % to 98 %; twisted while it is tightened, 116 % of the proof stress", torque.Conditions[0].Text);
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

        Assert.Equal(expected, judged.Warnings.FirstOrDefault(flag => flag.Code is not ("above-proof-if" or "breaks-if"))?.Code);
    }

    // 101.1 ÷ 1.3 = 77.77 N·m: the high end reaches the proof load.
    // 36 N·m ÷ (0.30 × 10 mm) = 12 kN of 33.7: 36 % of the proof load, 46 % with the scatter.
    [Fact]
    public void Pull_below_the_usual_is_no_reason_to_tighten_further() => Assert.Contains(
        "this is no reason to tighten further than the maker says",
        Assert.Single(Ask(_typed with { Torque = NewtonMetres("36 N·m") }).Torque!.Warnings, flag => flag.Code == "below-usual").Text, StringComparison.Ordinal);

    [Theory]
    [InlineData("77.7 N·m", false)]
    [InlineData("77.8 N·m", true)]
    public void Scatter_that_may_pass_the_proof_load_is_flagged(string torque, bool expected) =>
        Assert.Equal(expected, Ask(_typed with { Torque = NewtonMetres(torque) }).Torque!.Warnings.Any(flag => flag.Code == "may-pass-proof"));

    [Theory]
    [InlineData(0, 0.2, 0.3, "out-of-range", "torque")]
    [InlineData(10_000.1, 0.2, 0.3, "out-of-range", "torque")]
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

    // The least load that breaks it is 46 400 N: 0.18 × 0.010 × 46 400 = 83.52 N·m.
    [Theory]
    [InlineData("83.5 N·m", false)]
    [InlineData("83.6 N·m", true)]
    public void Pull_beyond_the_least_that_breaks_the_bolt_is_said_to_break_it_without_a_number_beyond(string torque, bool expected)
    {
        var judged = Ask(_typed with { Lubrication = Lubrication.Oiled, Torque = NewtonMetres(torque) }).Torque!;

        Assert.Equal(expected, judged.Conditions[0].Breaks);
        Assert.Equal(expected, judged.Conditions[0].Text == "oiled: more than the 46.4 kN that break it at the least: the bolt breaks");
        Assert.Equal(expected ? "breaks" : "above-proof", judged.Warnings[0].Code);
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
    public void Thread_that_is_missing_or_no_metric_one_is_refused(string? thread, string code) =>
        Assert.Equal(code, Refuse(_typed with { Thread = thread }).Code);

    internal static QuantityRange NewtonMetres(string text) => Assert.IsType<RangeRead>(QuantityRangeParser.Parse(text, Dimension.Torque)).Range;

    internal static TighteningJudged Ask(TighteningQuestion question) => Assert.IsType<TighteningJudged>(TighteningCheck.Judge(question));

    internal static SumRefused Refuse(TighteningQuestion question) => Assert.IsType<SumRefused>(TighteningCheck.Judge(question));
}
