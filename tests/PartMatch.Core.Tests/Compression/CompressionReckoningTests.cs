using PartMatch.Core.Compression;
using PartMatch.Core.Measures;
using PartMatch.Core.Sums;
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

    // To 10.0: clearance 533.4032 ÷ 9 = 59.26702, 4.98625 less. Gasket − 4.98625 ÷ 58.0880 cm2 = 0.95 − 0.8584 = 0.0916 mm; block 4.98625 ÷ 56.7450 = 0.8787 mm;
    // head over three quarters of the bore, 42.5588 cm2: 1.1716 mm; bowl 14.6 − 4.98625 = 9.61375.
    [Fact]
    public void Ways_to_a_wanted_ratio_each_tell_the_squish_they_leave()
    {
        var ways = Reckon(_late with { WantedRatio = Read("10", Dimension.Ratio) }).Wanted;

        Assert.Equal([0.0916, 0.8787, 1.1716], ways.Take(3).Select(way => Math.Round((way.Amount?.Expected ?? 0) * 1000, 4)));
        Assert.Equal(9.61375, (ways[3].Amount?.Expected ?? 0) * 1e6, 1e-4);
        Assert.Equal([0.2916, 0.2713, 1.15, 1.15], ways.Select(way => Math.Round((way.Squish?.Expected ?? 0) * 1000, 4)));
    }

    // Gasket and block leave 0.29 and 0.27 mm where the stack wants 0.65 … 1.3; head and bowl leave 1.15.
    [Fact]
    public void Way_that_leaves_less_squish_than_the_base_wants_says_so_and_ends_in_measuring()
    {
        var ways = Reckon(_late with { WantedRatio = Read("10", Dimension.Ratio) }).Wanted;

        Assert.Equal([true, true, false, false], ways.Select(way => way.IsSquishFlagged));
        Assert.Contains("Squish 0.29 mm; the base wants 0.65 … 1.3 mm here (squish, ev-1).", ways[0].Text, StringComparison.Ordinal);
        Assert.EndsWith("Measure it with soft metal over the crown, the gasket tightened.", ways[0].Text, StringComparison.Ordinal);
        Assert.Contains("more than 0.50 mm is seldom taken (common practice, no source)", ways[2].Text, StringComparison.Ordinal);
        Assert.EndsWith("the head comes 1.17 mm nearer to the crankshaft: measure piston-to-valve by hand", ways[2].Text, StringComparison.Ordinal);
    }

    // To 10.5: clearance 533.4032 ÷ 9.5 = 56.1477, 8.1056 less; ÷ 56.7450 cm2 = 1.4284 mm; squish 1.15 − 1.4284 = −0.2784 mm.
    [Fact]
    public void Way_on_which_the_crown_would_meet_the_head_is_not_offered()
    {
        var block = Reckon(_late with { WantedRatio = Read("10.5", Dimension.Ratio) }).Wanted[1];

        Assert.Null(block.Amount);
        Assert.Equal(-0.2784, (block.Squish?.Expected ?? 0) * 1000, 1e-4);
        Assert.EndsWith("Not offered: squish −0.28 mm, the crown would meet the head", block.Text, StringComparison.Ordinal);
    }

    // Nothing of the base adds gasket and piston up here: 0.90 mm is the usual least. To 9.56: clearance 533.4032 ÷ 8.56 = 62.3135, 1.9398 less, ÷ 58.0880
    // cm2 = 0.3339 mm off the gasket: 0.8161 mm. To 9.47: 62.9756, 1.2777 less: 0.2200 mm: 0.9300 mm.
    [Theory]
    [InlineData("9.56", true)]
    [InlineData("9.47", false)]
    public void Where_the_base_wants_nothing_the_usual_least_squish_is_named_as_without_source(string ratio, bool isFlagged)
    {
        var gasket = Reckon(_late with { WantedRatio = Read(ratio, Dimension.Ratio) }, Family(null, "squish")).Wanted[0];

        Assert.Equal(isFlagged, gasket.IsSquishFlagged);
        Assert.Equal(isFlagged, gasket.Text.Contains("usual is 0.90 mm and more with steel rods, cold (common practice, no source", StringComparison.Ordinal));
    }

    // Over half of the bore, 28.3725 cm2, at the worst. To 11.7: clearance 533.4032 ÷ 10.7 = 49.8508, 14.4025 less: 5.0762 mm; to 11.6: 50.3211: 4.9105 mm.
    [Theory]
    [InlineData("11.7", true)]
    [InlineData("11.6", false)]
    public void Skim_deeper_than_these_sums_take_is_not_offered(string ratio, bool expected) =>
        Assert.Equal(expected, Reckon(_late with { WantedRatio = Read(ratio, Dimension.Ratio) }).Wanted[2].Amount is null);

    // Level: 0.95 + 0.2 = 1.15 whatever is taken. 0.4 below: 1.55; with 0.3 taken 1.25; with 0.4 and 0.5 taken the land is the face: 1.15.
    [Theory]
    [InlineData(null, "0.3 mm", 1.15, "land-taken-as-level")]
    [InlineData("0.4 mm", "0 mm", 1.55, null)]
    [InlineData("0.4 mm", "0.3 mm", 1.25, null)]
    [InlineData("0.4 mm", "0.4 mm", 1.15, null)]
    [InlineData("0.4 mm", "0.5 mm", 1.15, "skim-past-the-land")]
    [InlineData("0 mm", "0.5 mm", 1.15, null)]
    public void Skim_of_the_head_brings_a_land_below_its_face_nearer(string? depth, string skim, double squish, string? code)
    {
        var answer = Reckon(_late with
        {
            LandDepth = depth is null ? null : Range(depth, Dimension.Length),
            HeadSkim = Range(skim, Dimension.Length),
        });

        Assert.Equal(squish, answer.Squish.Expected * 1000, 1e-9);
        Assert.Equal(code, answer.Warnings.Select(warning => warning.Code).FirstOrDefault(one => one.Contains("land", StringComparison.Ordinal)));
    }

    [Fact]
    public void Working_shows_what_a_skim_of_the_head_does_to_either_land()
    {
        WorkingStep Of(QuantityRange? depth) =>
            Reckon(_late with { LandDepth = depth, HeadSkim = Range("0.3 mm", Dimension.Length) }).Working.Single(step => step.What == "squish");
        var below = Of(Range("0.4 mm", Dimension.Length));

        Assert.Equal(("0.95 mm + 0.20 mm − 0.00 mm + (0.40 mm − 0.30 mm, at least 0)", "1.25 mm"), (below.With, below.Result));
        Assert.Contains("a skim of the head cuts such a land with the face", Of(null).Source, StringComparison.Ordinal);
    }

    // As built 0.95 mm: 1.10 lifts the head by 0.15, 0.60 lowers it by 0.35; a skim of 0.2 under a gasket that is 0.2 thicker moves nothing.
    [Theory]
    [InlineData("1.10 mm", "0 mm", "head-sits-higher", "0.15 mm further")]
    [InlineData("0.60 mm", "0 mm", "head-sits-lower", "0.35 mm nearer")]
    [InlineData("0.95 mm", "0.2 mm", "head-sits-lower", "0.20 mm nearer")]
    [InlineData("1.15 mm", "0.2 mm", null, null)]
    public void Head_that_moves_is_told_with_its_way_and_amount(string gasket, string skim, string? code, string? says)
    {
        var warning = Reckon(_late with { GasketThickness = Range(gasket, Dimension.Length), BlockSkim = Range(skim, Dimension.Length) }).Warnings
            .FirstOrDefault(one => one.Code.StartsWith("head-", StringComparison.Ordinal));

        Assert.Equal(code, warning?.Code);
        Assert.Contains(says ?? "", warning?.Text ?? "", StringComparison.Ordinal);
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
        { "land-depth", _late with { LandDepth = Range("-0.1 mm", Dimension.Length) } },
        { "land-depth", _late with { LandDepth = Range("50.1 mm", Dimension.Length) } },
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
}
