using PartMatch.Core.Measures;
using PartMatch.Core.Tightening;
using Xunit;

namespace PartMatch.Core.Tests.Tightening;

/// <summary>Source: ISO 898-1, tables of proof loads and of minimum ultimate tensile loads, coarse thread; table 3 for the stresses. Seen.</summary>
public sealed class BoltLoadsTests
{
    public static TheoryData<string, string, double, double> Printed => new()
    {
        { "8.8", "M6", 11_600, 16_100 }, { "8.8", "M8", 21_200, 29_200 }, { "8.8", "M10", 33_700, 46_400 }, { "8.8", "M12", 48_900, 67_400 },
        { "10.9", "M6", 16_700, 20_900 }, { "10.9", "M8", 30_400, 38_100 }, { "10.9", "M10", 48_100, 60_300 }, { "10.9", "M12", 70_000, 87_700 },
        { "12.9", "M6", 19_500, 24_500 }, { "12.9", "M8", 35_500, 44_600 }, { "12.9", "M10", 56_300, 70_800 }, { "12.9", "M12", 81_800, 103_000 },
    };

    [Theory]
    [MemberData(nameof(Printed))]
    public void Coarse_bolt_has_the_printed_loads(string known, string thread, double proof, double ultimate)
    {
        var loads = BoltLoads.Of(MetricThreadTests.Get(thread), PropertyClass.Find(known));

        Assert.Equal((Spread.Exactly(proof), Spread.Exactly(ultimate)), (loads.Proof, loads.Ultimate));
        Assert.All(loads.Working.Skip(1), step => Assert.Contains("printed", step.Formula, StringComparison.Ordinal));
    }

    // The printed loads are rounded, and of rounded areas: 36.6 mm² × 800 MPa = 29 280 N, printed 29 200; M6 is furthest off,
    // 20.123 × 580 = 11 672, printed 11 600.
    [Theory]
    [MemberData(nameof(Printed))]
    public void Printed_load_is_area_times_stress_but_for_rounding(string known, string thread, double proof, double ultimate)
    {
        var metric = MetricThreadTests.Get(thread);
        var strength = PropertyClass.Find(known)!.For(metric);

        Assert.InRange(metric.StressAreaM2 * strength.ProofPa / proof, 0.993, 1.007);
        Assert.InRange(metric.StressAreaM2 * strength.UltimatePa / ultimate, 0.993, 1.007);
    }

    [Theory]
    [InlineData("8.8", 800, 580)]
    [InlineData("10.9", 1040, 830)]
    [InlineData("12.9", 1220, 970)]
    public void Class_has_the_stresses_of_the_standard(string known, double ultimateMPa, double proofMPa)
    {
        var strength = PropertyClass.Find(known)!.For(MetricThreadTests.Get("M16"));

        Assert.Equal((ultimateMPa * 1e6, proofMPa * 1e6), (strength.UltimatePa, strength.ProofPa));
    }

    // ISO 898-1, table 3, class 8.8 above M16: 830 and 600 MPa; from memory, high confidence.
    [Fact]
    public void Class_8_8_is_stronger_above_M16()
    {
        var strength = PropertyClass.Find("8.8")!.For(MetricThreadTests.Get("M18"));

        Assert.Equal((830e6, 600e6), (strength.UltimatePa, strength.ProofPa));
    }

    // 61.1985 mm² × 830 MPa = 50 795 N; × 1040 MPa = 63 646 N.
    [Fact]
    public void Fine_bolt_has_no_printed_load_and_is_computed_and_says_so()
    {
        var loads = BoltLoads.Of(MetricThreadTests.Get("M10×1.25"), PropertyClass.Find("10.9"));

        Assert.Equal((50_795, 63_646), (Math.Round(loads.Proof.Expected), Math.Round(loads.Ultimate.Expected)));
        Assert.Contains(loads.Working, step => step.Source.Contains("computed", StringComparison.Ordinal) && step.With == "61.20 mm² × 830 MPa");
    }

    [Fact]
    public void Unknown_class_gives_a_range_over_the_three()
    {
        var loads = BoltLoads.Of(MetricThreadTests.Get("M8"), null);

        Assert.Equal((new Spread(21_200, 30_400, 35_500), new Spread(29_200, 38_100, 44_600)), (loads.Proof, loads.Ultimate));
    }

    [Theory]
    [InlineData("10-9", "10.9")]
    [InlineData("8.8", "8.8")]
    [InlineData("5.6", null)]
    [InlineData("", null)]
    public void Class_is_read_as_stamped_and_as_a_word_of_a_book(string text, string? expected) => Assert.Equal(expected, PropertyClass.Find(text)?.Code);
}
