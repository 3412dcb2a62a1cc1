using CsCheck;
using PartMatch.Core.Compression;
using PartMatch.Core.Measures;
using Xunit;

namespace PartMatch.Core.Tests.Compression;

/// <summary>
/// V(closing) ÷ clearance from the slider-crank volume (Heywood 1988, equations 2.4 to 2.6): computed outside the project with the same geometry.
/// </summary>
public sealed class TrappedCompressionTests
{
    private static readonly SliderCrank _square = new(0.086, 0.143);
    private static readonly SliderCrank _tern = new(0.094, 0.152);

    // Bore 86, stroke 86, rod 143; geometric 10 and geometric 13, closing late.
    [Theory]
    [InlineData(0, 10.000, 13.000)]
    [InlineData(20, 9.808, 12.744)]
    [InlineData(30, 9.567, 12.423)]
    [InlineData(40, 9.229, 11.973)]
    [InlineData(50, 8.795, 11.393)]
    [InlineData(60, 8.266, 10.689)]
    [InlineData(70, 7.649, 9.865)]
    [InlineData(80, 6.953, 8.937)]
    [InlineData(90, 6.193, 7.924)]
    [InlineData(100, 5.390, 6.853)]
    [InlineData(110, 4.571, 5.761)]
    public void Late_closing_lowers_the_trapped_ratio(double closes, double ofTen, double ofThirteen)
    {
        Assert.Equal(ofTen, TrappedCompression.Of(10, _square, closes), 1e-3);
        Assert.Equal(ofThirteen, TrappedCompression.Of(13, _square, closes), 1e-3);
    }

    // Closing at 60 … 80° after bottom dead centre pushes 19 … 34 % of the swept volume back: the published 20 to 30 % of late-closing engines lie there.
    [Theory]
    [InlineData(60, 0.19)]
    [InlineData(80, 0.34)]
    public void Share_pushed_back_agrees_with_what_is_published_of_late_closing(double closes, double share) =>
        Assert.Equal(share, 1 - TrappedCompression.ShareEnclosed(_square, closes), 0.005);

    // The demo families' table, stroke 94 and rod 152, by a pencil sum of x = 47 + 152 − 47·cos θ − √(152² − 47²·sin² θ): TV 32° after, θ = 212°:
    // 199 + 39.8583 − √(23104 − 620.3) = 88.9127 mm = 0.94588 strokes; 1 + 9.51 × 0.94588 = 9.995.
    [Theory]
    [InlineData(10.51, 32, 10.00)]
    [InlineData(13.01, -52, 11.29)]
    [InlineData(9.30, 44, 8.45)]
    [InlineData(9.82, 18, 9.67)]
    public void Tern_variants_have_the_trapped_ratio_of_their_table(double ratio, double closes, double expected) =>
        Assert.Equal(expected, TrappedCompression.Of(ratio, _tern, closes), 0.005);

    // Stroke 68, rod 132. Cart, 36° after, θ = 216°: 34 + 132 + 27.5066 − √(17424 − 399.4) = 63.0284 mm = 0.92689 strokes; 1 + 7.60 × 0.92689 = 8.044.
    [Theory]
    [InlineData(8.00, 28, 7.69)]
    [InlineData(8.60, 36, 8.04)]
    [InlineData(9.40, 52, 8.13)]
    public void Twin_variants_have_the_trapped_ratio_of_the_same_sum(double ratio, double closes, double expected) =>
        Assert.Equal(expected, TrappedCompression.Of(ratio, new SliderCrank(0.068, 0.132), closes), 0.005);

    [Fact]
    public void Closing_as_far_before_as_after_bottom_dead_centre_traps_the_same() =>
        Gen.Double[0, 120].Sample(closes => Math.Abs(TrappedCompression.Of(10, _tern, closes) - TrappedCompression.Of(10, _tern, -closes)) < 1e-12);

    // 9.30 with a closing anywhere from 20° before to 40° after: the most is at bottom dead centre itself (9.30), the least at 40° after.
    // θ = 220°: 199 + 36.0041 − √(23104 − 912.7) = 86.0368 mm = 0.915285 strokes; 1 + 8.30 × 0.915285 = 8.5969.
    [Fact]
    public void Range_over_bottom_dead_centre_has_its_most_there_and_not_at_an_end()
    {
        var trapped = TrappedCompression.Of(Spread.Exactly(9.30), Spread.Exactly(0.094), Spread.Exactly(0.152), new Spread(-20, 10, 40));

        Assert.Equal(8.597, trapped.Low, 1e-3);
        Assert.Equal(9.30, trapped.High, 1e-12);
        Assert.InRange(trapped.Expected, trapped.Low, trapped.High);
    }

    [Fact]
    public void Nothing_inside_the_ranges_lies_outside_the_result() =>
        Gen.Select(Gen.Double[-90, 90], Gen.Double[0, 60], Gen.Double[0, 1], Gen.Double[7, 14], Gen.Double[0, 1]).Sample((low, width, at, ratio, ratioAt) =>
        {
            var closes = new Spread(low, low + (width / 2), low + width);
            var ratios = new Spread(ratio, ratio + 0.1, ratio + 0.2);
            var trapped = TrappedCompression.Of(ratios, Spread.Exactly(0.094), Spread.Exactly(0.152), closes);
            var inside = TrappedCompression.Of(ratio + (0.2 * ratioAt), _tern, low + (width * at));
            return inside >= trapped.Low - 1e-9 && inside <= trapped.High + 1e-9;
        });

    // Which closing gives 9.0 from 9.30? 8.0 ÷ 8.3 = 0.963855 of the stroke; that is 90.6024 mm, y = 199 − 90.6024 = 108.3976 mm;
    // cos θ = (108.3976² + 47² − 152²) ÷ (2 × 47 × 108.3976) = (11750.04 + 2209 − 23104) ÷ 10189.4 = −0.897508; θ = 153.83°: 26.17° from the bottom.
    [Fact]
    public void Closing_for_a_wanted_ratio_is_found_on_both_sides_of_bottom_dead_centre()
    {
        var found = TrappedCompression.FindClosing(9.30, _tern, 9.0);

        Assert.NotNull(found);
        Assert.Equal(26.17, found.Value, 0.01);
        Assert.Equal(9.0, TrappedCompression.Of(9.30, _tern, found.Value), 1e-9);
        Assert.Equal(9.0, TrappedCompression.Of(9.30, _tern, -found.Value), 1e-9);
    }

    [Theory]
    [InlineData(9.31)]
    [InlineData(1.0)]
    public void No_closing_gives_more_than_the_geometric_ratio_or_no_compression(double wanted) =>
        Assert.Null(TrappedCompression.FindClosing(9.30, _tern, wanted));

    [Theory]
    [InlineData(9.30, 0)]
    [InlineData(9.29, 4.7)]
    public void Whole_geometric_ratio_is_trapped_at_bottom_dead_centre_only(double wanted, double closes) =>
        Assert.Equal(closes, TrappedCompression.FindClosing(9.30, _tern, wanted) ?? double.NaN, 0.15);

    [Fact]
    public void Widest_input_is_named_first()
    {
        var influences = TrappedCompression.Influences(new Spread(9.2, 9.3, 9.4), new Spread(0.09396, 0.094, 0.09404), Spread.Exactly(0.152),
            new Spread(43.5, 44, 44.5));

        Assert.Equal(["compression ratio", "intake closing"], influences.Take(2).Select(one => one.Input));
    }
}
