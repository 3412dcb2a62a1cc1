using CsCheck;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Measures;
using PartMatch.Core.Sums;
using PartMatch.Core.Tightening;
using Xunit;

namespace PartMatch.Core.Tests.Tightening;

public sealed class PreloadSumTests
{
    private static readonly MetricThread _m10 = MetricThreadTests.Get("M10×1.5");

    // Shigley, Mechanical Engineering Design, table 8-15; 0.30, 0.20 and 0.16 quoted second-hand, 0.18 from memory, high confidence.
    [Theory]
    [InlineData(Lubrication.Dry, 0.30)]
    [InlineData(Lubrication.ZincPlated, 0.20)]
    [InlineData(Lubrication.Oiled, 0.18)]
    [InlineData(Lubrication.CadmiumPlated, 0.16)]
    public void Nut_factor_is_that_of_the_table(Lubrication lubrication, double expected) =>
        Assert.Equal(Spread.Exactly(expected), NutFactors.Of(lubrication).Spread);

    [Fact]
    public void Oiled_factor_is_said_to_be_from_memory() => Assert.Contains("from memory", NutFactors.Of(Lubrication.Oiled).Source, StringComparison.Ordinal);

    // Mechanical Fastening, Joining, and Assembly, p. 85: d 0.190 in, F 1275 lb; torques of the printed series, to 0.1 lb·in.
    [Theory]
    [InlineData(0.30, 72.7)]
    [InlineData(0.25, 60.6)]
    [InlineData(0.20, 48.5)]
    [InlineData(0.15, 36.3)]
    [InlineData(0.10, 24.2)]
    public void Preload_agrees_with_the_published_series(double factor, double poundInches)
    {
        var screw = new MetricThread(0.190m * 25.4m, 0.8m, IsPitchTold: true); // only the diameter enters
        var torque = poundInches * (double)UnitTable.Get("lbf·in").Factor;

        var pounds = Sum(screw, torque, factor).Preload.Expected / (double)UnitTable.Get("lbf").Factor;

        Assert.InRange(pounds, 1275 * (1 - (0.1 / poundInches)), 1275 * (1 + (0.1 / poundInches)));
    }

    // T = K·d·F at 75 % of the proof load: 0.75 × 33 700 = 25 275 N; 0.20 × 0.010 × 25 275 = 50.55 N·m; 0.30: 75.825 N·m.
    [Theory]
    [InlineData(50.55, 0.20)]
    [InlineData(75.825, 0.30)]
    public void Torque_for_three_quarters_of_proof_pulls_three_quarters(double newtonMetres, double factor)
    {
        var sum = Sum(_m10, newtonMetres, factor);

        Assert.Equal(25_275, sum.Preload.Expected, 1e-6);
        Assert.Equal(0.75, sum.ShareOfProof.Expected, 1e-9);
    }

    // 75.825 ÷ (0.18 × 0.010) = 42 125 N; ÷ 33 700 = 1.25; ÷ 46 400 = 0.90787.
    [Fact]
    public void Dry_torque_on_an_oiled_thread_passes_the_proof_load()
    {
        var sum = Sum(_m10, 75.825, 0.18);

        Assert.Equal(42_125, sum.Preload.Expected, 1e-6);
        Assert.Equal(1.25, sum.ShareOfProof.Expected, 1e-9);
        Assert.Equal(0.908, sum.ShareOfUltimate.Expected, 1e-3);
    }

    // "An oiled or flooded thread breaks before its dry torque is reached": common practice, no source. With the scatter of 30 % the pull of the case
    // above may be 42 125 × 1.3 = 54 763 N, and 46 400 N is the least that breaks the bolt.
    [Fact]
    public void Oiled_thread_may_break_before_its_dry_torque_is_reached() =>
        Assert.Equal(54_762.5 / 46_400, Sum(_m10, 75.825, 0.18).ShareOfUltimate.High, 1e-9);

    // 25 275 N × 0.7 and × 1.3.
    [Fact]
    public void Scatter_widens_the_preload_both_ways()
    {
        var preload = Sum(_m10, 75.825, 0.30).Preload;

        Assert.Equal((17_692.5, 32_857.5), (Math.Round(preload.Low, 6), Math.Round(preload.High, 6)));
    }

    [Fact]
    public void Preload_is_in_proportion_to_torque_and_falls_with_the_nut_factor() =>
        Gen.Select(Gen.Double[1, 500], Gen.Double[0.1, 0.3], Gen.Double[1.01, 3]).Sample((torque, factor, times) =>
        {
            var once = Sum(_m10, torque, factor).Preload;
            var (more, rougher) = (Sum(_m10, torque * times, factor).Preload, Sum(_m10, torque, factor * times).Preload);
            return Math.Abs((more.Expected / once.Expected) - times) < 1e-9 && Math.Abs((once.Expected / rougher.Expected) - times) < 1e-9
                && once.Low < once.Expected && once.Expected < once.High;
        });

    // 0.18 ÷ 1.3 = 0.13846; 0.18 ÷ 0.7 = 0.25714: what pulls 30 % more and 30 % less than 0.18 does.
    [Fact]
    public void Nut_factor_is_a_range_that_holds_the_scatter_and_says_who_says_so()
    {
        var sum = Sum(_m10, 75.825, 0.18);

        Assert.Equal((0.13846, 0.18, 0.25714), (Math.Round(sum.Factor.Low, 5), sum.Factor.Expected, Math.Round(sum.Factor.High, 5)));
        Assert.Contains("common practice, no source", sum.FactorSource, StringComparison.Ordinal);
        Assert.Contains(sum.Working("oiled"), step => step is { With: "0.18 ÷ (1 + 30 %) … 0.18 ÷ (1 − 30 %)", Result: "0.138 … 0.18 … 0.257" });
    }

    [Fact]
    public void Scatter_of_nothing_leaves_the_factor_one_number()
    {
        var sum = Sum(_m10, 75.825, 0.18) with { Scatter = 0 };

        Assert.Equal(Spread.Exactly(0.18), sum.Factor);
        Assert.DoesNotContain(sum.Working("oiled"), step => step.What.StartsWith("nut factor", StringComparison.Ordinal));
    }

    // Alone: torque 70 … 80 changes the share by 10/75 of it, the nut factor 0.16 ÷ 1.3 … 0.30 ÷ 0.7 by much more.
    [Fact]
    public void What_matters_most_comes_first()
    {
        var sum = new PreloadSum(_m10, BoltLoads.Of(_m10, PropertyClass.Find("8.8")), new Spread(70, 75, 80), NutFactors.OfUnknown, 0.30);

        // At T 75 over 33 700 N: K 0.16: 139.1 %, × 1.3 = 180.8 %; K 0.30: 74.2 %, × 0.7 = 51.9 %. Torque: 14.8.
        Assert.Equal(["nut factor", "torque"], sum.Influences.Select(one => one.Input));
        Assert.Equal("nut factor: alone from 181 % at its least down to 52 % at its most", sum.Influences[0].Text);
    }

    // M10×1.5: d2 = 9.0258, d0 = 8.5927, P ÷ 2π = 0.23873 mm. K 0.20: µ = (2 − 0.23873) ÷ (0.577 × 9.0258 + 6.5) = 0.15044; G = 1.02218; r = 4 × 1.02218 ÷
    // 8.5927 = 0.47584; √(1 + 3 × 0.22643) = 1.2959. K 0.30: µ 0.23585, G 1.46700, r 0.68290: 1.5489.
    [Theory]
    [InlineData(0.20, 1.2959)]
    [InlineData(0.30, 1.5489)]
    public void Torsion_adds_to_the_pull_by_von_mises(double factor, double expected)
    {
        Assert.Equal(expected, BoltTorsion.Times(_m10, factor), 1e-4);
        Assert.Equal(0.75 * expected, Sum(_m10, 25_275 * factor * 0.010, factor).ShareWithTorsion.Expected, 1e-4);
    }

    [Fact]
    public void Thread_that_rubs_less_than_its_pitch_alone_takes_has_no_negative_friction() =>
        Assert.Equal(Math.Sqrt(1 + (3 * Math.Pow(4 * 0.238732 / 8.5927, 2))), BoltTorsion.Times(_m10, 0.01), 1e-5);

    private static PreloadSum Sum(MetricThread thread, double newtonMetres, double factor) =>
        new(thread, BoltLoads.Of(_m10, PropertyClass.Find("8.8")), Spread.Exactly(newtonMetres), new Figure(factor, factor, factor, "the test"), 0.30);
}
