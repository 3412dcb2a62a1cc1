using PartMatch.Core.Catalogue;
using PartMatch.Core.Injectors;
using PartMatch.Core.Measures;
using Xunit;
using static PartMatch.Core.Tests.Injectors.InjectorExamples;

namespace PartMatch.Core.Tests.Injectors;

public sealed class InjectorRatingTests
{
    [Fact]
    public void A_whole_rating_misses_nothing() => Assert.Empty(Judge(HillClimb, Injector("I-1", "620 cm3/min")).Missing);

    // 620 cm3/min of an unknown fluid at 3.00 bar, petrol 720 … 745 … 775: 620 × √(ρ rated × ρ fuel).
    // 620 × √(0.6838 × 0.720) = 435.033; × √(0.7294 × 0.745) = 457.038; × √(0.775 × 0.775) = 480.500 g/min.
    [Fact]
    public void An_unknown_fluid_is_a_range_from_heptane_to_petrol()
    {
        var judged = Judge(HillClimb, Injector("I-6202", "620 cm3/min", fluid: null));
        var flow = judged.Flow;
        Assert.NotNull(flow);
        Near(435.033, In("g/min", flow.Low), 2e-6);
        Near(457.038, In("g/min", flow.Expected), 2e-6);
        Near(480.500, In("g/min", flow.High), 2e-6);
        Assert.Equal("rated-fluid", Assert.Single(judged.Missing).Feature);
        Assert.Null(judged.Rated.Fluid);
    }

    [Fact]
    public void The_two_620s_are_both_listed_and_the_unknown_one_is_less_sure()
    {
        var sized = Size(HillClimb, Injector("I-6201", "620 cm3/min"), Injector("I-6202", "620 cm3/min", fluid: null)).Injectors;
        Assert.Equal(2, sized.Count);
        Assert.True(Width(sized[1].Duty) > Width(sized[0].Duty));

        static double Width(QuantityRange? range) => range is null ? 0 : range.High - range.Low;
    }

    // 500 cm3/min rated at 2.5 … 3.0 … 4.0 bar, brought to 3.0: factors √(3/4) = 0.866025, 1, √(3/2.5) = 1.095445 (common practice, no source).
    [Fact]
    public void An_unknown_pressure_is_a_range_of_the_usual_ones()
    {
        var (known, unknown) = (Judge(HillClimb, Injector("I-1", "500 cm3/min")), Judge(HillClimb, Injector("I-1", "500 cm3/min", pressure: null)));
        Assert.NotNull(known.Flow);
        Assert.NotNull(unknown.Flow);
        Near(0.866025, unknown.Flow.Low / known.Flow.Low, 1e-6);
        Near(1.0, unknown.Flow.Expected / known.Flow.Expected, 1e-12);
        Near(1.095445, unknown.Flow.High / known.Flow.High, 1e-6);
        Assert.Equal("rated-pressure", Assert.Single(unknown.Missing).Feature);
    }

    [Fact]
    public void Without_a_flow_there_is_no_number_but_the_injector_stays()
    {
        var judged = Judge(HillClimb, Injector("I-1", null));
        Assert.Equal((Enough.NotKnown, null, null, null), (judged.Enough, judged.Flow, judged.Duty, judged.PowerAtDuty));
        Assert.Equal("Not known. The rated flow is not recorded: no sum can be done.", judged.Because);
        Assert.Equal(new RatedAs(null, "3.00 bar", "n-heptane"), judged.Rated);
    }

    [Fact]
    public void A_fluid_of_unknown_density_gives_no_number()
    {
        var judged = Judge(HillClimb, Injector("I-1", "550 cm3/min", fluid: "white-spirit"));
        Assert.Null(judged.Flow);
        Assert.Contains("density of white-spirit", judged.Because, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("0 cm3/min")]
    [InlineData("-5 cm3/min")]
    public void A_flow_of_nothing_is_no_rating(string flow)
    {
        var judged = Judge(HillClimb, Injector("I-1", flow));
        Assert.Null(judged.Flow);
        Assert.Contains($"no usable figure ({flow})", judged.Because, StringComparison.Ordinal);
    }

    // Two documents that exclude each other: neither is chosen.
    [Fact]
    public void A_disputed_flow_is_not_known()
    {
        var judged = Judge(HillClimb, Injector("I-1", "440 cm3/min", more: Value("rated-flow", "550 cm3/min", Dimension.VolumeFlow)));
        Assert.Equal(Enough.NotKnown, judged.Enough);
        Assert.Null(judged.Flow);
        Assert.Contains("disputed (", judged.Because, StringComparison.Ordinal);
    }

    [Fact]
    public void The_document_outranks_a_measured_example_and_retracted_values_do_not_count()
    {
        var measured = Value("rated-flow", "431 cm3/min", Dimension.VolumeFlow, Source("ev-0002", EvidenceGrade.Measured));
        var retracted = Value("rated-flow", "999 cm3/min", Dimension.VolumeFlow, Source("ev-0003", EvidenceGrade.MakersDocument, "2026-03"));
        Assert.Equal(Judge(HillClimb, Injector("I-1", "440 cm3/min")).Flow, Judge(HillClimb, Injector("I-1", "440 cm3/min", more: [measured, retracted])).Flow);
    }

    [Fact]
    public void A_missing_temperature_or_voltage_is_named_and_changes_no_number()
    {
        var whole = Injector("I-1", "550 cm3/min");
        var bare = whole with { Values = [.. whole.Values.Where(value => value.Feature is not ("rated-temperature" or "rated-voltage"))] };
        var judged = Judge(HillClimb, bare);
        Assert.Equal(["rated-temperature", "rated-voltage"], judged.Missing.Select(fact => fact.Feature));
        Assert.Equal(Judge(HillClimb, whole).Duty, judged.Duty);
    }
}
