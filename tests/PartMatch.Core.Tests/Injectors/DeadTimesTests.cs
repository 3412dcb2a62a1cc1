using PartMatch.Core.Catalogue;
using PartMatch.Core.Injectors;
using PartMatch.Core.Measures;
using Xunit;
using static PartMatch.Core.Tests.Injectors.InjectorExamples;

namespace PartMatch.Core.Tests.Injectors;

public sealed class DeadTimesTests
{
    // volts × bar across: 12 V 1.10 at 3 bar, 1.30 at 4 bar; 14 V 0.92 and 1.08.
    private static readonly CurvePoint[] Table = [Dead(12, 3, 1.10m), Dead(14, 3, 0.92m), Dead(12, 4, 1.30m), Dead(14, 4, 1.08m)];

    // Bilinear by hand. 13 V, 3.5 bar: (1.10 + 0.92 + 1.30 + 1.08) ÷ 4 = 1.10. 13.5 V, 3.25 bar: at 3 bar 1.10 × 0.25 + 0.92 × 0.75 = 0.965,
    // at 4 bar 1.30 × 0.25 + 1.08 × 0.75 = 1.135; 0.965 × 0.75 + 1.135 × 0.25 = 1.0075.
    [Theory]
    [InlineData("12 V", "3.0 bar", 1.10)]
    [InlineData("14 V", "4.0 bar", 1.08)]
    [InlineData("13 V", "3.5 bar", 1.10)]
    [InlineData("13.5 V", "3.25 bar", 1.0075)]
    [InlineData("14 V", "3.5 bar", 1.00)]
    [InlineData("13 V", "4.0 bar", 1.19)]
    public void Between_the_points_of_the_table_it_is_bilinear(string volt, string across, double expectedMilliseconds)
    {
        var deadTime = At(volt, across, Table).DeadTime;
        Assert.NotNull(deadTime);
        Assert.Equal(expectedMilliseconds, deadTime.Low * 1000, 1e-9);
        Assert.Equal(deadTime.Low, deadTime.High, 1e-15);
    }

    [Theory]
    [InlineData("11.99 V", "3.5 bar")]
    [InlineData("14.01 V", "3.5 bar")]
    [InlineData("13 V", "2.99 bar")]
    [InlineData("13 V", "4.01 bar")]
    public void Beyond_the_table_nothing_is_known(string volt, string across)
    {
        var judged = At(volt, across, Table);
        Assert.Equal((Enough.NotKnown, null, null, null), (judged.Enough, judged.DeadTime, judged.Duty, judged.PowerAtDuty));
        Assert.NotNull(judged.Flow); // the orifice does not hang on the table
        Assert.Contains("recorded for 12.0 … 14.0 V and 3.00 … 4.00 bar across, not for", judged.Because.Replace("bar … ", "… ", StringComparison.Ordinal), StringComparison.Ordinal);
        Assert.Contains("nothing is read beyond a table", judged.Because, StringComparison.Ordinal);
    }

    [Fact]
    public void A_gap_in_the_table_is_not_bridged()
    {
        var judged = At("13 V", "3.5 bar", Table[..3]);
        Assert.Equal((Enough.NotKnown, null), (judged.Enough, judged.DeadTime));
        Assert.Contains("gap at 14.0 V, 4.00 bar", judged.Because, StringComparison.Ordinal);
        Assert.Equal(1.01, At("13 V", "3.0 bar", Table[..3]).DeadTime!.Expected * 1000, 1e-9); // on the grid line the gap does not matter
    }

    // Common practice, no source: 0.6 … 1.0 … 1.5 ms.
    [Fact]
    public void Without_a_table_common_practice_stands_in_and_says_so()
    {
        var judged = At("14 V", "3.0 bar", []);
        Assert.Equal("0.60 … 1.00 … 1.50 ms", judged.DeadTime!.Text); // it is always there without a table
        Assert.Contains(judged.Warnings, warning => warning.Code == "dead-time-not-recorded" && warning.Text.Contains("common practice, no source", StringComparison.Ordinal));
    }

    [Fact]
    public void Points_without_pressure_or_on_retracted_evidence_do_not_count()
    {
        var retracted = Source("ev-0002", EvidenceGrade.Measured, "2026-03");
        Assert.Equal("0.60 … 1.00 … 1.50 ms", At("14 V", "3.0 bar", [Dead(14, null, 0.92m), Dead(14, 3, 0.5m, retracted)]).DeadTime!.Text); // as above
    }

    // Document 0.92 outranks a report of 2.00; two documents of 0.90 and 0.94 are a range with the mean as expected.
    [Fact]
    public void The_best_source_of_a_point_speaks_and_equals_make_a_range()
    {
        var report = Dead(14, 3, 2.00m, Source("ev-0003", EvidenceGrade.Reported));
        Assert.Equal("0.92 ms", At("14 V", "3.0 bar", [Dead(14, 3, 0.92m), report]).DeadTime!.Text); // the point is on the grid
        Assert.Equal("0.90 … 0.92 … 0.94 ms", At("14 V", "3.0 bar", [Dead(14, 3, 0.90m), Dead(14, 3, 0.94m), report]).DeadTime!.Text); // likewise
    }

    [Fact]
    public void A_dead_time_given_stands_for_every_table()
    {
        var question = HillClimb with { DeadTime = ReadRange("0.7..0.8..0.9 ms", Dimension.Time), Voltage = Read("9 V", Dimension.Voltage) };
        var judged = Judge(question, Injector("I-1", "550 cm3/min", deadTimes: Table));
        Assert.Equal("0.70 … 0.80 … 0.90 ms", judged.DeadTime!.Text); // a given one is always there
    }

    // A fixed rail of 4.0 bar against 1.1 bar of boost leaves 2.9 bar across: below the table, although the rail is inside it.
    [Fact]
    public void The_table_is_read_at_the_pressure_across_not_at_the_rail()
    {
        var question = HillClimb with { Pressure = Read("4.0 bar", Dimension.Pressure), Supply = FuelSupply.ReturnAmbient };
        Assert.Null(Judge(question, Injector("I-1", "550 cm3/min", deadTimes: Table)).DeadTime);
    }

    private static SizedInjector At(string volt, string across, CurvePoint[] table) => Judge(
        HillClimb with { Voltage = Read(volt, Dimension.Voltage), Pressure = Read(across, Dimension.Pressure) }, Injector("I-1", "550 cm3/min", deadTimes: table));
}
