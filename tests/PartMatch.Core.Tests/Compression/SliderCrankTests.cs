using CsCheck;
using PartMatch.Core.Compression;
using Xunit;

namespace PartMatch.Core.Tests.Compression;

/// <summary>
/// Source: Heywood, Internal Combustion Engine Fundamentals, 1988, equations 2.4 to 2.6 (formula seen in three public sources, equation numbers from memory).
/// </summary>
public sealed class SliderCrankTests
{
    // Bore 86, stroke 86, rod 143, ratio 10, a quarter turn after top dead centre: 43 + 143 − 0 − √(143² − 43²) = 186 − √18600 = 186 − 136.3818 = 49.6182 mm;
    // swept 499.557 cm3, clearance 499.557 ÷ 9 = 55.5064 cm3, volume 55.5064 + π/4 × 8.6² × 4.96182 = 343.729 cm3.
    [Fact]
    public void Quarter_turn_of_a_square_engine_is_past_half_the_stroke()
    {
        var belowTop = new SliderCrank(0.086, 0.143).BelowTopM(90);
        var swept = ClearanceVolume.Swept(0.086, 0.086);
        var clearance = ClearanceVolume.For(10, swept);

        Assert.Equal(49.6182, belowTop * 1000, 1e-4);
        Assert.Equal(499.557, swept * 1e6, 1e-3);
        Assert.Equal(55.5064, clearance * 1e6, 1e-4);
        Assert.Equal(343.729, (clearance + (ClearanceVolume.Area(0.086) * belowTop)) * 1e6, 2e-3);
        Assert.Equal(1998.229, 4 * swept * 1e6, 2e-3);
    }

    // Rod 3.5 throws, ratio 10: V/Vc = 1 + ½ × 9 × (R + 1 − cos θ − √(R² − sin² θ)).
    [Theory]
    [InlineData(60, 3.7397575)]
    [InlineData(90, 6.1565412)]
    [InlineData(240, 8.2397575)]
    public void Volume_over_clearance_is_the_dimensionless_form(double degrees, double expected) =>
        Assert.Equal(expected, 1 + (9 * new SliderCrank(2, 3.5).ShareBelowTop(degrees)), 1e-7);

    [Theory]
    [InlineData(0, 0)]
    [InlineData(180, 1)]
    [InlineData(360, 0)]
    public void Dead_centres_are_the_ends_of_the_stroke(double degrees, double share) =>
        Assert.Equal(share, new SliderCrank(0.094, 0.152).ShareBelowTop(degrees), 1e-12);

    [Fact]
    public void Angle_found_for_a_share_of_the_stroke_gives_that_share_back() =>
        Gen.Select(Gen.Double[0.03, 0.2], Gen.Double[1.2, 3], Gen.Double[0.001, 0.999]).Sample((stroke, rodInStrokes, share) =>
        {
            var crank = new SliderCrank(stroke, stroke * rodInStrokes);
            return Math.Abs(crank.ShareBelowTop(crank.DegreesAt(share)) - share) < 1e-9;
        });
}
