using PartMatch.Core.Catalogue;
using PartMatch.Core.Fit;
using PartMatch.Core.Tests.Catalogue;
using Xunit;
using static PartMatch.Core.Tests.Catalogue.TestFamily;

namespace PartMatch.Core.Tests.Fit;

/// <summary>
/// Wholly inside what is surely accepted: yes; no point in common with what is possibly accepted: no; else not known.
/// The rule is the decision rule of ISO 14253-1; the bounds below are worked out by hand.
/// </summary>
public sealed class IntervalDecisionTests
{
    // Demand 10 −0.10/+0.20, known to ±0.01; allowance 0.05:
    // surely accepted 10 − 0.10 − 0.05 + 0.01 = 9.86 … 10 + 0.20 + 0.05 − 0.01 = 10.24; possibly 9.84 … 10.26.
    [Theory]
    [InlineData(9.860, Met.Yes)]
    [InlineData(9.861, Met.Yes)]
    [InlineData(9.859, Met.NotKnown)]
    [InlineData(9.840, Met.NotKnown)]
    [InlineData(9.841, Met.NotKnown)]
    [InlineData(9.839, Met.No)]
    [InlineData(10.240, Met.Yes)]
    [InlineData(10.239, Met.Yes)]
    [InlineData(10.241, Met.NotKnown)]
    [InlineData(10.260, Met.NotKnown)]
    [InlineData(10.261, Met.No)]
    public void Same_accepts_the_demand_widened_by_the_allowance_and_doubts_within_its_uncertainty(double bore, Met expected) =>
        Assert.Equal(expected, Decide(Relation.Same, Mm((decimal)bore)));

    // At least: surely from 10 − 0.10 − 0.05 + 0.01 = 9.86, possibly from 9.84, no upper end.
    [Theory]
    [InlineData(9.860, Met.Yes)]
    [InlineData(9.861, Met.Yes)]
    [InlineData(9.859, Met.NotKnown)]
    [InlineData(9.840, Met.NotKnown)]
    [InlineData(9.839, Met.No)]
    [InlineData(99999, Met.Yes)]
    public void At_least_has_no_upper_end(double bore, Met expected) => Assert.Equal(expected, Decide(Relation.AtLeast, Mm((decimal)bore)));

    // At most: surely to 10 + 0.20 + 0.05 − 0.01 = 10.24, possibly to 10.26, no lower end.
    [Theory]
    [InlineData(10.240, Met.Yes)]
    [InlineData(10.239, Met.Yes)]
    [InlineData(10.241, Met.NotKnown)]
    [InlineData(10.260, Met.NotKnown)]
    [InlineData(10.261, Met.No)]
    [InlineData(-99999, Met.Yes)]
    public void At_most_has_no_lower_end(double bore, Met expected) => Assert.Equal(expected, Decide(Relation.AtMost, Mm((decimal)bore)));

    // The part 10 ± 0.10 known to ± 0.02 lies in 9.88 … 10.12; with −0.12 it lies in 9.86 … , just inside; with −0.121 just outside.
    [Theory]
    [InlineData(0.10, Met.Yes)]
    [InlineData(0.12, Met.Yes)]
    [InlineData(0.121, Met.NotKnown)]
    public void A_part_spreads_by_the_makers_tolerance_and_by_how_well_it_is_known(double minus, Met expected) =>
        Assert.Equal(expected, Decide(Relation.Same, Mm(10, (decimal)minus, 0.10m, knownTo: 0.02m)));

    // 9.70 ± 0.10 known to ± 0.04 reaches up to 9.84, which is just possibly accepted; known to ± 0.039 it is not.
    [Theory]
    [InlineData(0.040, Met.NotKnown)]
    [InlineData(0.039, Met.No)]
    public void Intervals_that_touch_share_a_point(double knownTo, Met expected) =>
        Assert.Equal(expected, Decide(Relation.Same, Mm(9.70m, 0.10m, (decimal)knownTo)));

    // Known to ± 0.30, the demand 10 −0.10/+0.20 with allowance 0.05 leaves 10.15 … 9.95: nothing is surely accepted.
    [Fact]
    public void A_demand_known_too_badly_surely_accepts_nothing()
    {
        var vague = Mm(10, 0.10m, 0.20m, knownTo: 0.30m);

        Assert.Equal(Met.NotKnown, Decide(Relation.Same, Mm(10), vague));
        Assert.Equal(Met.No, Decide(Relation.Same, Mm(11), vague));
    }

    [Fact]
    public void Tenths_are_added_as_decimals()
    {
        // 0.1 + 0.2 is not 0.3 in binary: 10.3 would be just outside 10 + 0.1 + 0.2.
        var answer = Wheel(Relation.Same, allowance: 0.2m, Mm(10, 0.1m), Mm(10.3m)).Ask("W-2");

        Assert.Equal(Met.Yes, answer.Of("bore").Met);
    }

    [Theory]
    [InlineData(10.10, Met.Yes)]
    [InlineData(10.11, Met.No)]
    public void A_value_without_the_makers_spread_is_compared_bare_graded_inferred_and_says_so(double bore, Met expected)
    {
        var reason = Wheel(Relation.Same, allowance: 0.1m, Mm(10), Bare((decimal)bore)).Ask("W-2").Of("bore");

        Assert.Equal(expected, reason.Met);
        Assert.Equal(EvidenceGrade.Inferred, reason.Grade);
        Assert.Contains("spread is not recorded", reason.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_weaker_source_that_says_otherwise_is_told_with_the_comparison()
    {
        var reason = WithWheels(wheel => wheel.CannotAlterRunning().Length("bore").Rule("bore", Effect.Stops, allowance: 0.1m)).Wheel("W-1", Has("bore", Mm(10)))
            .Wheel("W-2", Has("bore", Mm(10)), Has("bore", Mm(14), By(EvidenceGrade.Measured, "a"))).Fitted("lark", "wheel", "W-1").Ask("W-2").Of("bore");

        Assert.Equal(Met.Yes, reason.Met);
        Assert.EndsWith(" A weaker source says otherwise: 14 mm (measured, ev-measured-a) in place of 10 mm.", reason.Text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("rear-of-exhaust-cam", "rear of exhaust cam")]
    [InlineData("m20x1-5", "M20×1.5")]
    [InlineData("m10x1", "M10×1")]
    [InlineData("p36-1", "p36-1")]
    [InlineData("unf-3-4-16", "unf 3-4-16")]
    public void A_code_reads_as_words_and_a_thread_as_on_a_drawing(string code, string words) => Assert.Equal(words, FitWording.InWords(code));

    [Fact]
    public void A_bare_demand_is_graded_inferred_and_says_so_as_well()
    {
        var reason = Wheel(Relation.Same, allowance: 0.1m, Bare(10), Mm(10)).Ask("W-2").Of("bore");

        Assert.Equal(EvidenceGrade.Inferred, reason.Grade);
        Assert.Contains("spread is not recorded", reason.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_bare_value_too_close_to_call_says_so_as_well()
    {
        var reason = Wheel(Relation.Same, allowance: 0.1m, Mm(10, 0, knownTo: 0.05m), Bare(10.1m)).Ask("W-2").Of("bore");

        Assert.Equal(Met.NotKnown, reason.Met);
        Assert.Contains("spread is not recorded", reason.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_value_with_the_makers_spread_keeps_its_grade_and_says_nothing_of_bare()
    {
        var reason = Wheel(Relation.Same, allowance: 0.1m, Mm(10), Mm(10)).Ask("W-2").Of("bore");

        Assert.Equal(EvidenceGrade.MakersDocument, reason.Grade);
        Assert.DoesNotContain("spread is not recorded", reason.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void Bore_not_recorded_for_the_part_gives_not_known_with_its_reason()
    {
        var reason = Wheel(Relation.Same, allowance: 0.1m, Mm(10), null).Ask("W-2").Of("bore");

        Assert.Equal(Met.NotKnown, reason.Met);
        Assert.Contains("not recorded for this part", reason.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void Bore_not_recorded_for_the_fitted_part_gives_not_known_with_its_reason()
    {
        var reason = Wheel(Relation.Same, allowance: 0.1m, null, Mm(10)).Ask("W-2").Of("bore");

        Assert.Equal(Met.NotKnown, reason.Met);
        Assert.Contains("not recorded for what the maker fitted", reason.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_compared_quantity_shows_both_sides_the_allowance_and_the_difference()
    {
        var reason = Wheel(Relation.Same, allowance: 0.05m, Mm(10, 0.1m), Mm(10.2m, 0.02m, knownTo: 0.01m)).Ask("W-2").Of("bore");

        Assert.Equal(0.01017m, reason.Part?.Low);
        Assert.Equal(0.01023m, reason.Part?.High);
        Assert.Equal("m", reason.Part?.Unit);
        Assert.Equal("10.2 mm ± 0.02 (known to ± 0.01)", reason.Part?.Text);
        Assert.Equal(0.0099m, reason.Need?.Low);
        Assert.Equal(0.0101m, reason.Need?.High);
        Assert.Equal("fitted-part", reason.Need?.From);
        Assert.Equal("0.05 mm", reason.Allowance?.Text);
        Assert.Equal("0.2 mm", reason.Difference?.Text);
    }

    private static Met Decide(Relation relation, QuantityReading part, QuantityReading? demand = null) =>
        Wheel(relation, allowance: 0.05m, demand ?? Mm(10, 0.10m, 0.20m, knownTo: 0.01m), part).Ask("W-2").Of("bore").Met;

    private static TestFamily Wheel(Relation relation, decimal allowance, QuantityReading? fitted, QuantityReading? asked) =>
        WithWheels(wheel => wheel.CannotAlterRunning().Length("bore").Rule("bore", Effect.Stops, relation, allowance))
            .Wheel("W-1", fitted is null ? [] : [Has("bore", fitted)])
            .Wheel("W-2", asked is null ? [] : [Has("bore", asked)])
            .Fitted("lark", "wheel", "W-1");
}
