using PartMatch.Core.Catalogue;
using PartMatch.Core.Fit;
using PartMatch.Core.Tests.Catalogue;
using PartMatch.Core.Variants;
using Snapshooter.Xunit3;
using Xunit;
using static PartMatch.Core.Tests.Catalogue.TestFamily;

namespace PartMatch.Core.Tests.Variants;

/// <summary>The same reasoning run position by position over several variants.</summary>
public sealed class VariantComparisonTests
{
    [Fact]
    public void The_same_part_on_every_variant_is_shared() =>
        Assert.Equal(PositionStatus.Shared, StatusOf(Wheels().Fitted("lark", "wheel", "W-1").Fitted("swift", "wheel", "W-1")));

    [Fact]
    public void Parts_that_stand_in_for_each_other_both_ways_are_shared() =>
        Assert.Equal(PositionStatus.Shared, StatusOf(Wheels().Fitted("lark", "wheel", "W-1").Fitted("swift", "wheel", "W-2").Replaced("W-1", "W-2", SupersessionWay.Both)));

    [Fact]
    public void A_newer_number_is_not_shared() =>
        Assert.Equal(PositionStatus.Differs, StatusOf(Wheels().Fitted("lark", "wheel", "W-1").Fitted("swift", "wheel", "W-2").Replaced("W-1", "W-2")));

    [Fact]
    public void A_link_both_ways_of_other_variants_or_of_retracted_evidence_shares_nothing()
    {
        Assert.Equal(PositionStatus.Differs, StatusOf(Wheels().Fitted("lark", "wheel", "W-1").Fitted("swift", "wheel", "W-2").Replaced("W-1", "W-2", SupersessionWay.Both, variants: ["heron"])));
        Assert.Equal(PositionStatus.Differs, StatusOf(Wheels().Fitted("lark", "wheel", "W-1").Fitted("swift", "wheel", "W-2").Replaced("W-1", "W-2", SupersessionWay.Both, evidence: Retracted())));
    }

    [Fact]
    public void A_part_on_one_and_known_to_be_absent_on_another_is_only_on_some() =>
        Assert.Equal(PositionStatus.OnlyOnSome, StatusOf(Wheels().Fitted("lark", "wheel", "W-1").Fitted("swift", "wheel", "none")));

    [Fact]
    public void Nothing_on_any_is_shared() => Assert.Equal(PositionStatus.Shared, StatusOf(Wheels().Fitted("lark", "wheel", "none").Fitted("swift", "wheel", "none")));

    [Fact]
    public void A_variant_of_which_nothing_is_recorded_makes_it_not_known() => Assert.Equal(PositionStatus.NotKnown, StatusOf(Wheels().Fitted("lark", "wheel", "W-1")));

    [Fact]
    public void A_fitment_of_retracted_evidence_is_not_recorded()
    {
        var position = Position(Wheels().Fitted("lark", "wheel", "W-1").Fitted("swift", "wheel", "W-1", evidence: Retracted()));

        Assert.Equal(PositionStatus.NotKnown, position.Status);
        Assert.Equal([FittedState.Fitted, FittedState.NotRecorded], position.Fitted.Select(one => one.State));
    }

    [Fact]
    public void A_third_variant_that_differs_makes_it_differ()
    {
        var family = Wheels().Variant("heron").Fitted("lark", "wheel", "W-1").Fitted("swift", "wheel", "W-1").Fitted("heron", "wheel", "W-2");

        Assert.Equal(PositionStatus.Differs, Assert.Single(family.Compare("lark", "swift", "heron").Positions).Status);
        Assert.Equal(PositionStatus.Differs, Assert.Single(family.Compare("heron", "swift", "lark").Positions).Status);
    }

    [Fact]
    public void Columns_stand_in_the_order_asked_with_numbers_quantities_and_spans()
    {
        var position = Position(Wheels().Fitted("swift", "wheel", "none").Fitted("lark", "wheel", "W-1", BuiltIn("2015-03", "2017-12")).Fitted("lark", "wheel", "W-2", BuiltIn("2018-01", null)));

        Assert.Equal([("lark", FittedState.Fitted), ("swift", FittedState.None)], position.Fitted.Select(one => (one.Variant, one.State)));
        Assert.Equal(
            [("W-1", 1, "2015-03", "2017-12"), ("W-2", 1, "2018-01", null)],
            position.Fitted[0].Parts.Select(part => (part.Number, part.Quantity ?? 0, part.Built?.From, part.Built?.To)));
    }

    [Fact]
    public void With_a_build_date_only_what_was_fitted_then_is_compared()
    {
        var facts = Wheels().Fitted("swift", "wheel", "W-2").Fitted("lark", "wheel", "W-1", BuiltIn(null, "2017-12")).Fitted("lark", "wheel", "W-2", BuiltIn("2018-01", null)).Facts();

        PositionStatus At(string built) => Assert.Single(VariantComparison.Decide(
            facts, new CompareQuestion(["lark", "swift"], null, Show.All, new Dictionary<string, BuildDate> { ["lark"] = Date(built) ?? throw new FormatException(built) })).Positions).Status;

        Assert.Equal(PositionStatus.Differs, At("2016-05"));
        Assert.Equal(PositionStatus.Shared, At("2018-05"));
    }

    [Fact]
    public void A_feature_that_differs_is_listed_with_its_effect_and_both_values()
    {
        var difference = Assert.Single(Position(Wheels().Fitted("lark", "wheel", "W-1").Fitted("swift", "wheel", "W-3")).Differences);

        Assert.Equal(("bore", Effect.Stops, Met.No), (difference.Feature, difference.Effect ?? Effect.Work, difference.Same));
        Assert.Equal([("lark", "10 mm"), ("swift", "14 mm")], difference.Values.Select(value => (value.Variant, value.Value.Text)));
    }

    [Fact]
    public void A_feature_within_the_allowance_is_not_listed() =>
        Assert.Empty(Position(Wheels().Fitted("lark", "wheel", "W-1").Fitted("swift", "wheel", "W-2")).Differences); // 10 and 10.05, allowance 0.1

    [Fact]
    public void A_feature_with_a_rule_that_one_side_does_not_record_is_listed_as_not_known()
    {
        var difference = Assert.Single(Position(Wheels().Wheel("W-9").Fitted("lark", "wheel", "W-1").Fitted("swift", "wheel", "W-9")).Differences);

        Assert.Equal(("bore", Met.NotKnown), (difference.Feature, difference.Same));
        Assert.Equal(["10 mm", "not recorded"], difference.Values.Select(value => value.Value.Text));
    }

    [Fact]
    public void A_feature_without_a_rule_is_listed_only_where_it_is_seen_to_differ()
    {
        var family = WithWheels(wheel => wheel.Choice("colour").Choice("finish"))
            .Wheel("W-1", Has("colour", Word("red")), Has("finish", Word("bright"))).Wheel("W-2", Has("colour", Word("blue")))
            .Fitted("lark", "wheel", "W-1").Fitted("swift", "wheel", "W-2");

        var difference = Assert.Single(Position(family).Differences);

        Assert.Equal(("colour", Met.No), (difference.Feature, difference.Same));
        Assert.Null(difference.Effect);
    }

    [Theory]
    [InlineData(true, Met.NotKnown)]
    [InlineData(false, null)]
    public void The_same_grades_on_every_variant_are_not_seen_to_differ(bool hasRule, Met? expected)
    {
        var family = WithWheels(wheel => _ = hasRule ? wheel.CannotAlterRunning().Length("wall").Rule("wall", Effect.Stops, allowance: 0) : wheel.CannotAlterRunning().Length("wall"))
            .Wheel("W-1", Has("wall", Mm(1.4m))).Wheel("W-2", Has("wall", Mm(1.5m))).Wheel("W-3", Has("wall", Mm(1.5m))).Wheel("W-4", Has("wall", Mm(1.4m)))
            .Fitted("lark", "wheel", "W-1").Fitted("lark", "wheel", "W-2").Fitted("swift", "wheel", "W-3").Fitted("swift", "wheel", "W-4");

        Assert.Equal(expected, Position(family).Differences.Select(one => (Met?)one.Same).SingleOrDefault());
    }

    [Fact]
    public void A_side_that_carries_nothing_takes_no_part_in_the_differences() =>
        Assert.Empty(Position(Wheels().Fitted("lark", "wheel", "W-1").Fitted("swift", "wheel", "none")).Differences);

    [Fact]
    public void Every_ordered_pair_is_judged_as_the_fit_question_would_be()
    {
        var family = Wheels().Variant("heron").Fitted("lark", "wheel", "W-1").Fitted("swift", "wheel", "W-3").Fitted("heron", "wheel", "W-2");

        var across = Assert.Single(family.Compare("lark", "swift", "heron").Positions).Across;

        Assert.Equal(
            ["heron>lark", "heron>swift", "lark>heron", "lark>swift", "swift>heron", "swift>lark"],
            across.Select(pair => $"{pair.From}>{pair.To}").Order(StringComparer.Ordinal));
        Assert.All(across, pair =>
        {
            var answer = family.AskFrom(pair.From, on: pair.To);
            Assert.Equal((answer.Mounts.Value, answer.Runs.Value, answer.Headline, answer.Sureness), (pair.Mounts, pair.Runs, pair.Headline, pair.Sureness));
            Assert.Equal($"/api/fit?family=finch-9&variant={pair.To}&position=wheel&from={pair.From}", pair.Fit);
        });
        Assert.Equal(Headline.DoesNotFit, across.Single(pair => pair.From == "lark" && pair.To == "swift").Headline);
        Assert.Equal(Headline.Fits, across.Single(pair => pair.From == "lark" && pair.To == "heron").Headline);
    }

    [Fact]
    public void Where_one_side_carries_nothing_neither_direction_is_answered_from_thin_air()
    {
        var across = Position(Wheels().Fitted("lark", "wheel", "W-1").Fitted("swift", "wheel", "none")).Across;

        Assert.All(across, pair => Assert.Equal((Headline.NotKnownYet, Sureness.Unproven), (pair.Headline, pair.Sureness)));
    }

    [Theory]
    [InlineData(Show.All, new[] { "engine", "shaft", "spare", "wheel" })]
    [InlineData(Show.Differences, new[] { "engine", "spare", "wheel" })]
    [InlineData(Show.Stoppers, new[] { "wheel" })]
    public void Counts_are_over_all_positions_whatever_is_shown(Show show, string[] positions)
    {
        var answer = VariantComparison.Decide(Four().Facts(), new CompareQuestion(["lark", "swift"], null, show, new Dictionary<string, BuildDate>()));

        Assert.Equal(new CompareCounts(Shared: 1, Differs: 1, OnlyOnSome: 1, NotKnown: 1, Stoppers: 1), answer.Counts);
        Assert.Equal(positions, answer.Positions.Select(position => position.Position));
    }

    [Fact]
    public void A_group_is_compared_by_itself()
    {
        var answer = VariantComparison.Decide(Four().Facts(), new CompareQuestion(["lark", "swift"], "drive", Show.All, new Dictionary<string, BuildDate>()));

        Assert.Equal(["spare"], answer.Positions.Select(position => position.Position));
        Assert.Equal(new CompareCounts(0, 0, 1, 0, 0), answer.Counts);
    }

    [Fact]
    public void A_variant_of_another_family_is_refused() => Assert.Throws<ArgumentException>(() => Wheels().Compare("lark", "heron"));

    [Fact]
    public void Whole_comparison_as_JSON_shows_it() => Snapshot.Match(AsJson.Of(Four().Compare("lark", "swift")));

    /// <summary>One position of each status: a wheel that differs, a shaft shared, a spare on lark only, an engine mount not recorded on swift.</summary>
    private static TestFamily Four() => Wheels()
        .Place("shaft", shaft => shaft.CannotAlterRunning().Length("diameter").Rule("diameter", Effect.Stops)).Position("spare", "wheel", group: "drive")
        .Place("engine", mount => mount.CannotAlterRunning())
        .Shaft("S-1", Has("diameter", Mm(9.5m))).Part("M-1", "engine")
        .Fitted("lark", "wheel", "W-1").Fitted("swift", "wheel", "W-3").Fitted("lark", "shaft", "S-1").Fitted("swift", "shaft", "S-1")
        .Fitted("lark", "spare", "W-2").Fitted("swift", "spare", "none").Fitted("lark", "engine", "M-1");

    private static TestFamily Wheels() => WithWheels(wheel => wheel.CannotAlterRunning().Length("bore").Rule("bore", Effect.Stops, allowance: 0.1m))
        .Wheel("W-1", Has("bore", Mm(10))).Wheel("W-2", Has("bore", Mm(10.05m))).Wheel("W-3", Has("bore", Mm(14)));

    private static ComparedPosition Position(TestFamily family) => Assert.Single(family.Compare("lark", "swift").Positions);

    private static PositionStatus StatusOf(TestFamily family) => Position(family).Status;
}
