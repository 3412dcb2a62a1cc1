using PartMatch.Core.Belts;
using Xunit;

namespace PartMatch.Core.Tests.Belts;

/// <summary>Source: ISO 9981:2020, extracts seen; the pitch of 3.56 mm from memory, high confidence.</summary>
public sealed class RibbedBeltTests
{
    // Ribs × 3.56 mm.
    [Theory]
    [InlineData(4, 14.24)]
    [InlineData(5, 17.80)]
    [InlineData(6, 21.36)]
    [InlineData(7, 24.92)]
    public void Belt_is_as_wide_as_its_ribs(int ribs, double expectedMm) => Assert.Equal(expectedMm, RibbedBelt.WidthM(ribs) * 1000, 0.01);

    // 5.2: 45 mm; 5.4: b_e = 2 mm.
    [Fact]
    public void Least_diameter_and_line_differential_are_those_of_the_standard() =>
        Assert.Equal((0.045, 0.002), (RibbedBelt.LeastEffectiveDiameterM, RibbedBelt.LineDifferentialM));

    // (150 + 4) ÷ (60 + 4) = 2.406 25: 3.9 % off the 2.5 of the bare diameters.
    [Fact]
    public void Speed_ratio_is_of_the_lines_of_the_cords()
    {
        Assert.Equal(2.406_25, RibbedBelt.SpeedRatio(0.150, 0.060), 1e-5);
        Assert.Equal(0.039, (2.5 / RibbedBelt.SpeedRatio(0.150, 0.060)) - 1, 1e-3);
    }

    [Fact]
    public void Equal_pulleys_turn_alike() => Assert.Equal(1, RibbedBelt.SpeedRatio(0.060, 0.060));

    [Fact]
    public void Belt_without_ribs_and_pulley_without_diameter_are_mistakes()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => RibbedBelt.WidthM(0));
        Assert.Throws<ArgumentOutOfRangeException>(() => RibbedBelt.SpeedRatio(0, 0.060));
        Assert.Throws<ArgumentOutOfRangeException>(() => RibbedBelt.SpeedRatio(0.060, 0));
    }
}
