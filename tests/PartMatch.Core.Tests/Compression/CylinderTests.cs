using CsCheck;
using PartMatch.Core.Compression;
using PartMatch.Core.Measures;
using Xunit;

namespace PartMatch.Core.Tests.Compression;

/// <summary>Ratio = (swept + clearance) ÷ clearance, definition. Bore and stroke 86 mm unless said: swept 499.557 cm3.</summary>
public sealed class CylinderTests
{
    private const double Cm3 = 1e-6;
    private const double Mm = 1e-3;

    private static readonly Cylinder _square = new(86 * Mm, 86 * Mm, 143 * Mm, 48.0 * Cm3, 6.0 * Cm3, 1.0 * Mm, 88 * Mm, 0.2 * Mm, 0, 0,
        ClearanceVolume.Area(86 * Mm));

    // π/4 × 8.8² × 0.10 = 6.08212; π/4 × 8.6² × 0.02 = 1.16176; + 48 + 6 = 61.24388 cm3; (499.557 + 61.24388) ÷ 61.24388 = 9.15685.
    [Fact]
    public void Clearance_is_built_up_from_gasket_deck_chamber_and_bowl()
    {
        Assert.Equal(6.08212, _square.GasketM3 / Cm3, 1e-5);
        Assert.Equal(1.16176, _square.DeckM3 / Cm3, 1e-5);
        Assert.Equal(61.24388, _square.ClearanceM3 / Cm3, 1e-5);
        Assert.Equal(9.15685, _square.Ratio, 1e-5);
        Assert.Equal(1.2, _square.SquishM / Mm, 1e-9);
    }

    // Ratio 9.0: clearance 62.4446 cm3. 0.5 mm over the whole bore: π/4 × 8.6² × 0.05 = 2.90440 cm3; (499.557 + 59.5402) ÷ 59.5402 = 9.39024.
    [Fact]
    public void Skim_over_the_whole_bore_raises_the_ratio()
    {
        var before = OfRatio(9.0);
        var skimmed = before with { HeadSkimM = 0.5 * Mm };

        Assert.Equal(9.0, before.Ratio, 1e-9);
        Assert.Equal(2.90440, (before.ClearanceM3 - skimmed.ClearanceM3) / Cm3, 1e-5);
        Assert.Equal(9.39024, skimmed.Ratio, 1e-5);
    }

    // Gasket bore 88: 1.2 mm is 7.29855 cm3, 0.7 mm is 4.25749 cm3; 62.4446 − 3.04106 = 59.4035 cm3; ratio 9.40955.
    [Fact]
    public void Thinner_gasket_raises_the_ratio_and_narrows_the_squish()
    {
        var before = OfRatio(9.0, gasketMm: 1.2);
        var thin = before with { GasketM = 0.7 * Mm };

        Assert.Equal(7.29855, before.GasketM3 / Cm3, 1e-5);
        Assert.Equal(4.25749, thin.GasketM3 / Cm3, 1e-5);
        Assert.Equal(9.40955, thin.Ratio, 1e-5);
        Assert.Equal(0.5, (before.SquishM - thin.SquishM) / Mm, 1e-9);
    }

    [Fact]
    public void Skim_of_the_head_leaves_the_squish_and_skim_of_the_block_takes_it()
    {
        Assert.Equal(1.2, (_square with { HeadSkimM = 0.15 * Mm }).SquishM / Mm, 1e-9);
        Assert.Equal(1.05, (_square with { BlockSkimM = 0.15 * Mm }).SquishM / Mm, 1e-9);
        Assert.Equal((_square with { HeadSkimM = 0.15 * Mm }).Ratio, (_square with { BlockSkimM = 0.15 * Mm }).Ratio, 1e-12);
    }

    // A chamber that opens over 40 cm2 instead of the bore's 58.0880 cm2: 0.5 mm takes 2.0 cm3 instead of 2.9044.
    [Fact]
    public void Skim_of_a_chamber_with_squish_lands_takes_less()
    {
        var lands = _square with { HeadSkimM = 0.5 * Mm, OpeningM2 = 40e-4 };

        Assert.Equal(2.0, (_square.ClearanceM3 - lands.ClearanceM3) / Cm3, 1e-9);
    }

    // Tern: bore 85, stroke 94 (swept 533.403 cm3), gasket bore 86, deck 0.2 mm (1.1349 cm3). TV: 41.0 + 9.6 + 4.3566 + 1.1349 = 56.0915; 589.495 ÷ 56.0915 =
    // 10.51.
    [Theory]
    [InlineData(41.0, 9.6, 0.75, 10.51)]
    [InlineData(41.0, -1.2, 0.60, 13.01)]
    [InlineData(43.0, 14.6, 0.95, 9.30)]
    [InlineData(41.0, 14.0, 0.75, 9.82)]
    public void Tern_variants_build_up_to_their_recorded_ratio(double chamber, double bowl, double gasket, double recorded) =>
        Assert.Equal(recorded, new Cylinder(85 * Mm, 94 * Mm, 152 * Mm, chamber * Cm3, bowl * Cm3, gasket * Mm, 86 * Mm, 0.2 * Mm, 0, 0, 0).Ratio, 0.005);

    // HS-2: bore 84, stroke 68 (swept 376.840 cm3), ring bore 85 × 0.60 (3.4047 cm3), deck 0.3 mm (1.6625 cm3).
    [Theory]
    [InlineData(38.8, 10.0, 8.00)]
    [InlineData(38.8, 5.7, 8.60)]
    [InlineData(36.6, 3.2, 9.40)]
    public void Twin_variants_build_up_to_their_recorded_ratio(double chamber, double bowl, double recorded) =>
        Assert.Equal(recorded, new Cylinder(84 * Mm, 68 * Mm, 132 * Mm, chamber * Cm3, bowl * Cm3, 0.6 * Mm, 85 * Mm, 0.3 * Mm, 0, 0, 0).Ratio, 0.005);

    [Fact]
    public void Clearance_for_a_ratio_gives_that_ratio_back() =>
        Gen.Double[4, 20].Sample(ratio => Math.Abs(ClearanceVolume.Ratio(5e-4, ClearanceVolume.For(ratio, 5e-4)) - ratio) < 1e-9);

    // 8.11 against 8.45 with n 1.25, 1.30, 1.35: 0.95976^1.35 = 0.94604, ^1.30 = 0.94800, ^1.25 = 0.94996. Below 1 the greatest exponent gives the least.
    [Fact]
    public void End_of_compression_takes_the_exponent_that_is_worst_at_each_end()
    {
        var less = EndOfCompression.Ratio(Spread.Exactly(8.11), 8.45);
        var more = EndOfCompression.Ratio(Spread.Exactly(8.45), 8.11);

        Assert.Equal(0.94604, less.Low, 1e-4);
        Assert.Equal(0.94800, less.Expected, 1e-4);
        Assert.Equal(0.94996, less.High, 1e-4);
        Assert.Equal(1 / less.High, more.Low, 1e-12);
        Assert.Equal(1 / less.Low, more.High, 1e-12);
    }

    [Fact]
    public void End_of_compression_over_equality_spreads_both_ways()
    {
        var either = EndOfCompression.Ratio(new Spread(9, 10, 11), 10);

        Assert.Equal(Math.Pow(0.9, 1.35), either.Low, 1e-12);
        Assert.Equal(1, either.Expected, 1e-12);
        Assert.Equal(Math.Pow(1.1, 1.35), either.High, 1e-12);
    }

    /// <summary>The same engine with a chamber that makes the ratio.</summary>
    private static Cylinder OfRatio(double ratio, double gasketMm = 1.0)
    {
        var rest = _square with { ChamberM3 = 0, BowlM3 = 0, GasketM = gasketMm * Mm, DeckM = 0 };
        return rest with { ChamberM3 = ClearanceVolume.For(ratio, rest.SweptM3) - rest.ClearanceM3 };
    }
}
