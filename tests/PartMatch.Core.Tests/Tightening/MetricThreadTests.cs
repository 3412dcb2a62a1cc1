using PartMatch.Core.Tightening;
using Xunit;

namespace PartMatch.Core.Tests.Tightening;

public sealed class MetricThreadTests
{
    // ISO 898-1, table of stress areas, coarse and fine; As = π/4 (d − 0.9382 P)². Coarse seen in two copies of the table, fine by the formula:
    // M10×1.25: 10 − 0.9382 × 1.25 = 8.82725; squared 77.9203; × π/4 = 61.199.
    [Theory]
    [InlineData("M6×1", 20.1)]
    [InlineData("M8×1.25", 36.6)]
    [InlineData("M10×1.5", 58.0)]
    [InlineData("M12×1.75", 84.3)]
    [InlineData("M8×1", 39.17)]
    [InlineData("M10×1.25", 61.20)]
    [InlineData("M12×1.25", 92.07)]
    public void Stress_area_is_that_of_the_standard(string thread, double expectedMm2) =>
        Assert.InRange(Get(thread).StressAreaM2 * 1e6, expectedMm2 - 0.05, expectedMm2 + 0.05);

    [Theory]
    [InlineData("M10×1.25")]
    [InlineData("M10x1.25")]
    [InlineData("m10x1-25")]
    [InlineData("M 10 * 1.25")]
    public void Thread_is_read_however_it_is_written(string written)
    {
        Assert.Equal(new MetricThread(10, 1.25m, IsPitchTold: true), MetricThread.Find(written));
        Assert.Equal("M10×1.25", Get(written).Text);
    }

    // ISO 261, coarse series; M6, M8, M10 and M12 stand with these pitches in the tables of ISO 898-1.
    [Theory]
    [InlineData("M6", 1)]
    [InlineData("M8", 1.25)]
    [InlineData("M10", 1.5)]
    [InlineData("M12", 1.75)]
    public void Diameter_alone_means_the_coarse_pitch_and_says_so(string written, double pitchMm)
    {
        Assert.Equal((decimal)pitchMm, Get(written).PitchMm);
        Assert.False(Get(written).IsPitchTold);
        Assert.True(Get(written).IsCoarse);
    }

    [Theory]
    [InlineData("")]
    [InlineData("unf-3-4-16")]
    [InlineData("3/4-16 UNF")]
    [InlineData("M10×1.25×40")]
    [InlineData("M10×0")]
    [InlineData("M10×2.6")] // more than a quarter of the diameter
    [InlineData("M0×1")]
    [InlineData("M65×2")]
    [InlineData("M13")] // not in the coarse series
    [InlineData("M10,5×1")]
    [InlineData("10×1.25")]
    public void Anything_else_is_no_metric_thread(string written) => Assert.Null(MetricThread.Find(written));

    [Fact]
    public void Pitch_up_to_a_quarter_of_the_diameter_is_read() => Assert.NotNull(MetricThread.Find("M10×2.5"));

    internal static MetricThread Get(string written) => MetricThread.Find(written) ?? throw new ArgumentException(written, nameof(written));
}
