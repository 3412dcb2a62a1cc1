using PartMatch.Core.Catalogue;
using PartMatch.Core.Fit;
using PartMatch.Core.Tests.Catalogue;
using Xunit;
using static PartMatch.Core.Tests.Catalogue.TestFamily;

namespace PartMatch.Core.Tests.Fit;

/// <summary>A signed sum over several positions in a band: a worst-case interval sum with every term shown.</summary>
public sealed class StackTests
{
    // Travel left = 34.0 − lift − solid height, at least 1.0. Solid height 23.5 ± 0.1:
    // lift 9.35 ± 0.05 leaves 1.15 ± 0.15 = 1.00 … 1.30; 9.36 leaves 0.99 … 1.29; 9.65 leaves 0.70 … 1.00; 9.66 leaves 0.69 … 0.99.
    [Theory]
    [InlineData(9.35, Met.Yes)]
    [InlineData(9.34, Met.Yes)]
    [InlineData(9.36, Met.NotKnown)]
    [InlineData(9.65, Met.NotKnown)]
    [InlineData(9.66, Met.No)]
    public void The_worst_case_sum_lies_in_the_band_or_not(double lift, Met expected) =>
        Assert.Equal(expected, Springs(Mm((decimal)lift, 0.05m), Mm(23.5m, 0.1m)).Ask("W-2").Of("spring-travel").Met);

    [Fact]
    public void Every_term_is_shown_with_its_sign_and_the_sum()
    {
        var reason = Springs(Mm(9.35m, 0.05m), Mm(23.5m, 0.1m)).Ask("W-2").Of("spring-travel");

        Assert.Equal(
            ["+ 34 mm", "− 9.35 mm ± 0.05 (Wheel, lift)", "− 23.5 mm ± 0.1 (Shaft, solid height)"],
            (reason.Terms ?? []).Select(term => term.Text));
        Assert.Equal("1 … 1.3 mm", reason.Difference?.Text);
        Assert.Equal("at least 1 mm", reason.Band?.Text);
        Assert.Equal([null, "alder:W-2", "alder:S-1"], (reason.Terms ?? []).Select(term => term.Part));
    }

    [Theory]
    [InlineData(Effect.Stops, Mounts.No, Runs.Same)]
    [InlineData(Effect.Work, Mounts.WithWork, Runs.Same)]
    [InlineData(Effect.Alters, Mounts.Yes, Runs.Differently)]
    public void A_failed_stack_means_what_its_effect_says(Effect effect, Mounts mounts, Runs runs)
    {
        var family = Engagement(effect).Work("shim");

        var answer = family.Ask("W-2");

        Assert.Equal((mounts, runs), (answer.Mounts.Value, answer.Runs.Value));
        Assert.Equal(effect == Effect.Work ? ["shim"] : [], answer.Works.Select(work => work.Work));
    }

    // 38 mm of bolt in a flange of 12 mm leaves 26; a flange of 24 mm leaves 14, within 10 … 16.
    [Fact]
    public void A_failed_stack_lists_the_neighbours_that_would_mend_it()
    {
        var family = Engagement(Effect.Stops).Shaft("S-2", Has("flange", Mm(24))).Shaft("S-3", Has("flange", Mm(6)));

        var reason = family.Ask("W-2").Of("engagement");

        Assert.Contains("alder:S-2", reason.Mend, StringComparison.Ordinal);
        Assert.DoesNotContain("alder:S-3", reason.Mend, StringComparison.Ordinal);
    }

    [Fact]
    public void A_neighbour_named_in_the_question_is_summed_instead_of_the_fitted_one() =>
        Assert.Equal(Met.Yes, Engagement(Effect.Stops).Shaft("S-2", Has("flange", Mm(24))).Ask("W-2", with: "shaft=S-2").Of("engagement").Met);

    [Fact]
    public void A_stack_with_an_absent_neighbour_does_not_apply() => Assert.Empty(Engagement(Effect.Stops).Ask("W-2", with: "shaft=none").By(ReasonBy.Stack));

    [Fact]
    public void A_stack_of_other_variants_does_not_apply()
    {
        var family = Engagement(Effect.Stops).Fitted("swift", "shaft", "S-1").Stack("on-swift", "+wheel.length", min: 0, variants: ["swift"]);

        Assert.DoesNotContain(family.Ask("W-2").Reasons, reason => reason.Code == "on-swift");
        Assert.Contains(family.Ask("W-2", on: "swift").Reasons, reason => reason.Code == "on-swift");
    }

    [Fact]
    public void A_term_not_recorded_leaves_the_sum_not_known_and_still_shows_the_others()
    {
        var reason = Springs(Mm(9.35m), null).Ask("W-2").Of("spring-travel");

        Assert.Equal(Met.NotKnown, reason.Met);
        Assert.Contains("not recorded (Shaft, solid height)", reason.Text, StringComparison.Ordinal);
        Assert.Contains("9.35 mm", reason.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_neighbour_not_recorded_leaves_the_sum_not_known()
    {
        var family = WithWheelsAndShafts(wheel => wheel.CannotAlterRunning().Length("lift"), shaft => shaft.Length("solid-height")).Wheel("W-2", Has("lift", Mm(9)))
            .Stack("spring-travel", "+34.0|-wheel.lift|-shaft.solid-height", min: 1);

        Assert.Equal(Met.NotKnown, family.Ask("W-2").Of("spring-travel").Met);
    }

    [Fact]
    public void A_term_without_the_makers_spread_makes_the_sum_inferred_and_it_says_so()
    {
        var reason = Springs(Mm(9), Bare(23.5m)).Ask("W-2").Of("spring-travel");

        Assert.Equal((Met.Yes, EvidenceGrade.Inferred), (reason.Met, reason.Grade));
        Assert.Contains("spread is not recorded", reason.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_sum_of_counts_and_lengths_of_one_part_alone_is_judged_too()
    {
        var family = WithWheels(wheel => wheel.CannotAlterRunning().Length("length").Length("head")).Wheel("W-2", Has("length", Mm(26)), Has("head", Mm(10)))
            .Stack("shank", "+wheel.length|-wheel.head", min: 16, max: 16);

        Assert.Equal(Met.Yes, family.Ask("W-2").Of("shank").Met);
    }

    // Which of two shafts an engine has is not known: with S-1 the spring has room, with S-2 it goes solid.
    [Fact]
    public void Several_neighbours_valid_together_that_differ_leave_the_sum_not_known()
    {
        var family = Springs(Mm(9), Mm(23.5m)).Shaft("S-2", Has("solid-height", Mm(28))).Fitted("lark", "shaft", "S-2");

        Assert.Equal(Met.NotKnown, family.Ask("W-2").Of("spring-travel").Met);
    }

    // The lash is 3.0 − 2.5 = 0.5 where 0.13 … 0.30 is wanted; the work brings the thickness to what makes it right.
    [Fact]
    public void Sum_that_alters_running_is_met_once_the_work_is_done_that_sets_one_of_its_terms()
    {
        var answer = Lash("shaft.thickness").Ask("W-2");

        Assert.Equal((Headline.FitsWithWork, Mounts.WithWork, Runs.Same), (answer.Headline, answer.Mounts.Value, answer.Runs.Value));
        Assert.Equal(["set-lash"], answer.Works.Select(work => work.Work));
        var altering = Assert.Single(answer.By(ReasonBy.Stack), reason => reason.Effect == Effect.Alters);
        Assert.Equal((Met.Yes, "set-lash"), (altering.Met, altering.OnceDone));
    }

    [Theory]
    [InlineData("wheel.thread", "+wheel.seat|-shaft.thickness")] // no term of the sum
    [InlineData("shaft.thickness", "+wheel.seat|-shaft.thickness|-0.01")] // another sum
    [InlineData("shaft.thickness", "+wheel.seat|+wheel.seat|-shaft.thickness")] // another sum of the same terms: 3.0 + 3.0 − 2.5 = 3.5
    public void Work_that_does_not_set_the_sum_leaves_it_running_differently(string changes, string terms)
    {
        var answer = Lash(changes, terms).Ask("W-2");

        Assert.Equal(Runs.Differently, answer.Runs.Value);
        Assert.All(answer.By(ReasonBy.Stack), reason => Assert.Null(reason.OnceDone));
    }

    [Fact]
    public void Work_that_leaves_the_sum_in_a_wider_band_sets_nothing() =>
        Assert.Equal(Runs.Differently, Lash("shaft.thickness", most: 0.35m).Ask("W-2").Runs.Value);

    /// <summary>A wheel whose seat stands 3.0 high instead of 2.8 over a shaft of 2.5; the fitted one has 0.3.</summary>
    private static TestFamily Lash(string changes, string terms = "+wheel.seat|-shaft.thickness", decimal most = 0.30m) =>
        WithWheelsAndShafts(
                wheel => wheel.Length("seat").Choice("thread").Rule("thread", Effect.Stops).Rule("thread", Effect.Alters), shaft => shaft.Length("thickness"))
            .Wheel("W-1", Has("seat", Mm(2.8m)), Has("thread", Word("m10"))).Wheel("W-2", Has("seat", Mm(3)), Has("thread", Word("m10")))
            .Shaft("S-1", Has("thickness", Mm(2.5m))).Fitted("lark", "wheel", "W-1").Fitted("lark", "shaft", "S-1")
            .Stack("lash", "+wheel.seat|-shaft.thickness", min: 0.13m, max: 0.30m, effect: Effect.Alters)
            .Stack("lash-set", terms, min: 0.13m, max: most, effect: Effect.Work, work: "set-lash").WorkOn("set-lash", null, null, changes);

    private static TestFamily Springs(QuantityReading lift, QuantityReading? solid) =>
        WithWheelsAndShafts(wheel => wheel.CannotAlterRunning().Length("lift"), shaft => shaft.Length("solid-height"))
            .Wheel("W-2", Has("lift", lift)).Shaft("S-1", solid is null ? [] : [Has("solid-height", solid)]).Fitted("lark", "shaft", "S-1")
            .Stack("spring-travel", "+34.0|-wheel.lift|-shaft.solid-height", min: 1);

    /// <summary>A wheel like the fitted one but for its length, 38 instead of 26, whose engagement in a flange of 12 has to be 10 … 16.</summary>
    private static TestFamily Engagement(Effect effect) =>
        WithWheelsAndShafts(wheel => wheel.Length("length").Choice("thread").Rule("thread", Effect.Stops).Rule("thread", Effect.Alters), shaft => shaft.Length("flange"))
            .Wheel("W-1", Has("length", Mm(26)), Has("thread", Word("m10"))).Wheel("W-2", Has("length", Mm(38)), Has("thread", Word("m10"))).Shaft("S-1", Has("flange", Mm(12)))
            .Fitted("lark", "wheel", "W-1").Fitted("lark", "shaft", "S-1")
            .Stack("engagement", "+wheel.length|-shaft.flange", min: 10, max: 16, effect: effect, work: effect == Effect.Work ? "shim" : null, consequence: Consequence.Injury);
}
