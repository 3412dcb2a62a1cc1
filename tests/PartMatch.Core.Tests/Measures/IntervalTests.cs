using CsCheck;
using PartMatch.Core.Measures;
using Xunit;

namespace PartMatch.Core.Tests.Measures;

public sealed class IntervalTests
{
    // ISO 286-2:2010, nominal size 25 mm, deviations in µm (a subset table of the standard): holes H7 +21/0, shafts g6 −7/−20, k6 +15/+2,
    // n6 +28/+15, s6 +48/+35. Clearance = hole − shaft.
    [Theory]
    [InlineData(0, 21, -20, -7, 7, 41)] // H7/g6: clearance
    [InlineData(0, 21, 2, 15, -15, 19)] // H7/k6: transition
    [InlineData(0, 21, 15, 28, -28, 6)] // H7/n6: transition
    [InlineData(0, 21, 35, 48, -48, -14)] // H7/s6: interference 14 … 48
    [InlineData(7, 28, -13, 0, 7, 41)] // G7/h6: the same clearance in the hole-shaft mirrored system
    [InlineData(-48, -27, -13, 0, -48, -14)] // S7/h6
    public void Clearance_is_hole_minus_shaft(int holeLow, int holeHigh, int shaftLow, int shaftHigh, int low, int high) =>
        Assert.Equal(Micrometres(low, high), Hole(25, holeLow, holeHigh) - Hole(25, shaftLow, shaftHigh));

    // ISO 286-2:2010 at 14 mm: H7 +18/0, H8 +27/0, f7 −16/−34, h9 0/−43 µm. By hand: 14 H7/f7 16 … 52, 14 H8/h9 0 … 70 µm.
    [Fact]
    public void Plug_and_bore_of_14_mm_have_their_clearances()
    {
        Assert.Equal(Micrometres(16, 52), Hole(14, 0, 18) - Hole(14, -34, -16));
        Assert.Equal(Micrometres(0, 70), Hole(14, 0, 27) - Hole(14, -43, 0));
    }

    // A joint band 7 … 41 µm holds the H7/g6 fit exactly; one micrometre narrower on either side does not.
    [Theory]
    [InlineData(7, 41, true)]
    [InlineData(8, 41, false)]
    [InlineData(7, 40, false)]
    public void A_joint_holds_only_where_every_pair_of_sizes_lies_in_the_band(int min, int max, bool inside) =>
        Assert.Equal(inside, (Hole(25, 0, 21) - Hole(25, -20, -7)).LiesIn(Micrometres(min, max)));

    [Theory]
    [InlineData(1.0, 2.0, 1.0, 2.0, true)] // the same
    [InlineData(1.0, 2.0, 1.0, 3.0, true)]
    [InlineData(0.999, 2.0, 1.0, 3.0, false)]
    [InlineData(1.0, 3.001, 1.0, 3.0, false)]
    [InlineData(1.0, 2.0, null, null, true)]
    [InlineData(1.0, 2.0, null, 2.0, true)]
    [InlineData(1.0, 2.0, 1.0, null, true)]
    [InlineData(null, 2.0, 1.0, 3.0, false)] // an open end lies in no closed one
    [InlineData(1.0, null, 1.0, 3.0, false)]
    [InlineData(1.0, null, 1.0, null, true)]
    [InlineData(1.0, 1.0, 3.0, 1.0, false)] // nothing lies in an empty interval
    public void Lies_in(double? low, double? high, double? otherLow, double? otherHigh, bool expected) =>
        Assert.Equal(expected, Of(low, high).LiesIn(Of(otherLow, otherHigh)));

    [Theory]
    [InlineData(1.0, 2.0, 2.0, 3.0, true)] // ends that touch share a point
    [InlineData(1.0, 2.0, 2.001, 3.0, false)]
    [InlineData(2.0, 3.0, 1.0, 1.999, false)]
    [InlineData(null, 1.0, 1.0, null, true)]
    [InlineData(null, 0.999, 1.0, null, false)]
    [InlineData(null, null, 5.0, 5.0, true)]
    [InlineData(2.0, 1.0, 0.0, 9.0, false)] // an empty interval meets nothing
    public void Meets(double? low, double? high, double? otherLow, double? otherHigh, bool expected)
    {
        Assert.Equal(expected, Of(low, high).Meets(Of(otherLow, otherHigh)));
        Assert.Equal(expected, Of(otherLow, otherHigh).Meets(Of(low, high)));
    }

    [Fact]
    public void Tenths_add_up_exactly() => Assert.Equal(new Interval(0.3m, 0.3m), new Interval(0.1m, 0.1m) + new Interval(0.2m, 0.2m));

    [Fact]
    public void An_open_end_stays_open()
    {
        var atLeastOne = new Interval(1, null);
        Assert.Equal(new Interval(3, null), atLeastOne + new Interval(2, 5));
        Assert.Equal(new Interval(-4, null), atLeastOne - new Interval(2, 5));
        Assert.Equal(new Interval(null, 4), new Interval(2, 5) - atLeastOne);
        Assert.Equal(new Interval(null, -1), -atLeastOne);
        Assert.Equal(new Interval(0.5m, null), atLeastOne.Widened(0.5m));
        Assert.Equal(Interval.Everything, atLeastOne.Hull(new Interval(null, 0)));
    }

    [Fact]
    public void Narrowing_beyond_the_middle_leaves_nothing() => Assert.True(new Interval(1, 2).Widened(-0.6m).IsEmpty);

    [Fact]
    public void A_sum_holds_every_sum_of_members_and_its_ends_are_reached() =>
        Gen.Select(Members, Members).Sample((left, right) =>
        {
            var sum = left.Interval + right.Interval;
            Assert.True(new Interval(left.Member + right.Member, left.Member + right.Member).LiesIn(sum));
            Assert.Equal(left.Interval.Low + right.Interval.Low, sum.Low);
            Assert.Equal(left.Interval - right.Interval, left.Interval + -right.Interval);
        });

    [Fact]
    public void Lying_in_implies_meeting() =>
        Gen.Select(Members, Members).Sample((left, right) => !left.Interval.LiesIn(right.Interval) || left.Interval.Meets(right.Interval));

    private static readonly Gen<(Interval Interval, decimal Member)> Members =
        Gen.Select(Gen.Int[-100, 100], Gen.Int[0, 50], Gen.Int[0, 50]).Select((low, below, above) => (new Interval(low, low + below + above), (decimal)(low + below)));

    private static Interval Hole(int nominalMm, int lowUm, int highUm) => new(nominalMm + (lowUm / 1000m), nominalMm + (highUm / 1000m));

    private static Interval Micrometres(int low, int high) => new(low / 1000m, high / 1000m);

    private static Interval Of(double? low, double? high) => new((decimal?)low, (decimal?)high);
}
