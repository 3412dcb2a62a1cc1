using PartMatch.Core.Compression;
using PartMatch.Core.Measures;
using Xunit;
using static PartMatch.Core.Tests.ValveTiming.TimingExamples;

namespace PartMatch.Core.Tests.Compression;

/// <summary>
/// The boosted engine of the examples: bore 85, stroke 94, rod 152, deck 230.2 − 47 − 152 − 31 = 0.2 mm, chamber 43, bowl 14.6, gasket 86 × 0.95.
/// </summary>
public sealed class CompressionReckoningTests
{
    private static readonly CompressionQuestion _late = new("late");

    // 5.5184 + 1.1349 + 43 + 14.6 = 64.2533 cm3; (533.4032 + 64.2533) ÷ 64.2533 = 9.3016; squish 0.95 + 0.2.
    [Fact]
    public void Variant_builds_up_from_its_own_parts_to_what_is_recorded()
    {
        var answer = Reckon(_late);

        Assert.Equal(9.3016, answer.Ratio.Expected, 1e-4);
        Assert.Equal(1.15, answer.Squish.Expected * 1000, 1e-9);
        Assert.Equal(["chamber", "bowl", "gasket", "deck", "clearance", "swept"], answer.Volumes.Select(term => term.Name));
        Assert.Equal([43.0, 14.6, 5.5184, 1.1349, 64.2533, 533.4032], answer.Volumes.Select(term => Math.Round(term.Volume.Expected * 1e6, 4)));
        Assert.Empty(answer.Changes);
        Assert.Equal("0.65 … 1.3 mm", answer.SquishWanted?.Band);
        Assert.DoesNotContain(answer.Warnings, warning => warning.Code is "squish-outside" or "ratio-differs-from-volumes");
    }

    // Gasket 0.60: 3.4853 cm3, clearance 62.2202, ratio 9.5728; trapped 1 + 8.5728 × 0.897413 = 8.6934; squish 0.80.
    [Fact]
    public void Thinner_gasket_raises_ratio_and_trapped_and_narrows_the_squish()
    {
        var answer = Reckon(_late with { HeadGasket = ThinGasket });

        Assert.Equal(9.5728, answer.Ratio.Expected, 1e-4);
        Assert.Equal(8.6934, answer.Trapped?.Expected ?? 0, 1e-4);
        Assert.Equal(["compression ratio rises: 9.57 instead of 9.30", "trapped compression rises: 8.69 instead of 8.45", "squish 0.80 instead of 1.15 mm"],
            answer.Changes);
        Assert.Contains(answer.Warnings, warning => warning.Code == "trapped-above-family");
    }

    // Band 0.65 … 1.30: gasket 0.45 + deck 0.2 lies on it, 0.44 just outside; below 0 the crown can meet the head.
    [Theory]
    [InlineData("0.45 mm", null)]
    [InlineData("0.44 mm", "squish-outside")]
    [InlineData("1.10 mm", null)]
    [InlineData("1.11 mm", "squish-outside")]
    public void Squish_outside_what_the_base_wants_is_flagged(string thickness, string? code)
    {
        var codes = Reckon(_late with { GasketThickness = Range(thickness, Dimension.Length) }).Warnings.Select(warning => warning.Code).Where(one =>
            one.StartsWith("squish", StringComparison.Ordinal));

        Assert.Equal(code is null ? [] : [code], codes);
    }

    // The hole of the gasket is 86 mm.
    [Theory]
    [InlineData("86 mm", false)]
    [InlineData("86.01 mm", true)]
    [InlineData("85.98..85.99..86.01 mm", true)]
    public void Gasket_that_may_stand_in_the_cylinder_is_flagged(string bore, bool flagged) => Assert.Equal(
        flagged, Reckon(_late with { Bore = Range(bore, Dimension.Length) }).Warnings.Any(warning => warning.Code == "gasket-in-the-cylinder"));

    // 230.2 − 94 ÷ 2 − 152 − 31 = 0.2 mm; a measured deck needs no such sum.
    [Fact]
    public void Working_shows_the_deck_from_its_four_lengths()
    {
        var step = Assert.Single(Reckon(_late).Working, one => one.What == "deck");

        Assert.Equal(("230.20 mm − 94.00 mm ÷ 2 − 152.00 mm − 31.00 mm", "0.20 mm"), (step.With, step.Result));
        Assert.DoesNotContain(Reckon(_late with { DeckClearance = Range("0.2 mm", Dimension.Length) }).Working, one => one.What == "deck");
    }

    // Crown 2 mm above the block under a gasket of 0.95 mm: 1.05 mm too little room, with a true minus.
    [Fact]
    public void Squish_below_nothing_has_its_sign() =>
        Assert.Contains("squish −1.05 instead of 1.15 mm", Reckon(_late with { DeckClearance = Range("-2 mm", Dimension.Length) }).Changes);

    [Fact]
    public void Block_skimmed_beyond_gasket_and_deck_is_flagged_as_meeting() =>
        Assert.Contains(Reckon(_late with { BlockSkim = Range("1.15 mm", Dimension.Length) }).Warnings, warning => warning.Code == "squish-gone");

    // A rod 0.02 mm longer stands in the deck as well: the ratio it alone makes is (533.4032 + 64.2533 − 0.1135) ÷ (64.2533 − 0.1135) = 9.3163.
    [Fact]
    public void Length_that_stands_in_the_deck_moves_the_ratio_too()
    {
        var answer = Reckon(_late with { RodLength = Range("152.00..152.02 mm", Dimension.Length) });

        Assert.Equal(9.3163, answer.Ratio.High, 1e-4);
        Assert.Equal(["rod length"], answer.Influences.Select(one => one.Input));
    }

    [Fact]
    public void Measured_deck_stands_in_place_of_the_lengths()
    {
        var answer = Reckon(_late with { DeckClearance = Range("-0.1 mm", Dimension.Length) }, Family(null, "deck-height"));

        Assert.Equal(0.85, answer.Squish.Expected * 1000, 1e-9);
        Assert.DoesNotContain(answer.Assumed, one => one.Name == "compression-height");
    }

    // To 10.0: clearance 533.4032 ÷ 9 = 59.26702, 4.98625 less. Gasket − 4.98625 ÷ 58.0880 cm2 = 0.95 − 0.8584 = 0.0916 mm; block and head − 4.98625 ÷ 56.7450
    // = 0.8787 mm; bowl 14.6 − 4.98625 = 9.61375.
    [Fact]
    public void Ways_to_a_wanted_ratio_each_tell_the_squish_they_leave()
    {
        var ways = Reckon(_late with { WantedRatio = Read("10", Dimension.Ratio) }).Wanted;

        Assert.Equal([0.0916, 0.8787, 0.8787], ways.Take(3).Select(way => Math.Round((way.Amount?.Expected ?? 0) * 1000, 4)));
        Assert.Equal(9.61375, (ways[3].Amount?.Expected ?? 0) * 1e6, 1e-4);
        Assert.Equal([0.2916, 0.2713, 1.15, 1.15], ways.Select(way => Math.Round((way.Squish?.Expected ?? 0) * 1000, 4)));
    }

    [Fact]
    public void Lower_ratio_is_not_reached_by_a_skim()
    {
        var ways = Reckon(_late with { WantedRatio = Read("9", Dimension.Ratio) }).Wanted;

        Assert.Equal([false, true, true, false], ways.Select(way => way.Amount is null));
    }

    // 1 − r^(1 − γ) for 8, 9, 10, 11, 13 with γ 1.4 and 1.3: any thermodynamics text.
    [Theory]
    [InlineData(8, 0.5647, 0.4641)]
    [InlineData(9, 0.5848, 0.4827)]
    [InlineData(10, 0.6019, 0.4988)]
    [InlineData(11, 0.6168, 0.5129)]
    [InlineData(13, 0.6416, 0.5367)]
    public void Ideal_efficiency_grows_with_the_ratio(double ratio, double ofAir, double ofMixture)
    {
        Assert.Equal(ofAir, IdealCycle.Efficiency(ratio, 1.4), 1e-4);
        Assert.Equal(ofMixture, IdealCycle.Efficiency(ratio, 1.3), 1e-4);
    }

    [Fact]
    public void Volume_that_nobody_recorded_is_asked_for_by_its_name()
    {
        var refused = Refuse(_late with { Piston = Of("P-9", "piston", ("compression-height", Mm(31))) });

        Assert.Equal(("not-recorded", "bowl-volume", "nothing"), (refused.Code, refused.Field, refused.Found));
    }

    [Fact]
    public void Piston_of_unknown_height_does_not_take_the_deck_of_the_own_one() =>
        Assert.Equal("deck-clearance", Refuse(_late with { Piston = Of("P-9", "piston", ("bowl-volume", Head.Values[0].Reading)) }).Field);

    public static TheoryData<string, CompressionQuestion> Impossible => new()
    {
        { "bore", _late with { Bore = Range("0 mm", Dimension.Length) } },
        { "head-skim", _late with { HeadSkim = Range("-0.1 mm", Dimension.Length) } },
        { "head-skim", _late with { HeadSkim = Range("5.1 mm", Dimension.Length) } },
        { "intake-closes", _late with { IntakeCloses = Angle("180 deg") } },
        { "wanted-ratio", _late with { WantedRatio = Read("30.1", Dimension.Ratio) } },
        { "bowl-volume", _late with { BowlVolume = Range("-60 cm3", Dimension.Volume) } },
        { "bore", _late with { Bore = Range("1000.1 mm", Dimension.Length) } },
        { "stroke", _late with { Stroke = Range("5000 m", Dimension.Length) } },
        { "chamber-volume", _late with { ChamberVolume = Range("0 cm3", Dimension.Volume) } },
        { "chamber-volume", _late with { ChamberVolume = Range("10.1 L", Dimension.Volume) } },
        { "bowl-volume", _late with { BowlVolume = Range("10.1 L", Dimension.Volume) } },
        { "chamber-area", _late with { ChamberArea = Range("10001 cm2", Dimension.Area) } },
        { "deck-clearance", _late with { DeckClearance = Range("-50.1 mm", Dimension.Length) } },
        { "rod-length", _late with { RodLength = Range("47 mm", Dimension.Length), DeckClearance = Range("0.2 mm", Dimension.Length) } },
    };

    [Theory]
    [MemberData(nameof(Impossible))]
    public void What_cannot_be_is_refused_at_its_field(string field, CompressionQuestion question)
    {
        var refused = Refuse(question);

        Assert.Equal(("out-of-range", field), (refused.Code, refused.Field));
    }

    [Fact]
    public void Skim_of_the_head_is_said_to_be_taken_over_the_bore_until_its_opening_is_given()
    {
        var skim = _late with { HeadSkim = Range("0.3 mm", Dimension.Length) };

        Assert.Contains(Reckon(skim).Warnings, warning => warning.Code == "skim-over-the-bore");
        Assert.DoesNotContain(Reckon(skim with { ChamberArea = Range("40 cm2", Dimension.Area) }).Warnings, warning => warning.Code == "skim-over-the-bore");
    }
}
