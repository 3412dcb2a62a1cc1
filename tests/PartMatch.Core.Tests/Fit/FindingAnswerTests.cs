using PartMatch.Core.Catalogue;
using PartMatch.Core.Fit;
using PartMatch.Core.Measures;
using PartMatch.Core.Tests.Catalogue;
using Snapshooter.Xunit3;
using Xunit;
using static PartMatch.Core.Tests.Catalogue.TestFamily;

namespace PartMatch.Core.Tests.Fit;

/// <summary>What findings make of the rest of an answer: its words, consequence, works, what to measure, who is cited; and of no other answer.</summary>
public sealed class FindingAnswerTests
{
    [Fact]
    public void Evidence_and_computed_reasoning_that_differ_stand_side_by_side()
    {
        var answer = Wheels().Found("f-1", "W-2", FindingOutcome.Yes, By(EvidenceGrade.TrialFitted)).Ask("W-2");

        Assert.Equal((Mounts.Yes, 1, Sureness.Documented), (answer.Mounts.Value, answer.Mounts.Rank ?? 0, answer.Mounts.Sureness)); // proven, less one step
        var disagreement = Assert.Single(answer.Disagreements);
        Assert.Equal((Axis.Mounts, "no", 4), (disagreement.Axis, disagreement.Says, disagreement.Rank));
        Assert.Equal((Met.No, Met.Yes), (answer.Of("bore").Met, answer.Of("f-1").Met));
        Assert.Equal([answer.Of("f-1").Id], answer.Mounts.DecidedBy);
    }

    [Theory]
    [InlineData(EvidenceGrade.TrialFitted, Mounts.Yes)] // 1 before 4
    [InlineData(EvidenceGrade.Measured, Mounts.Yes)] // 2 before 4
    [InlineData(EvidenceGrade.MakersDocument, Mounts.Yes)] // 3 before 4
    [InlineData(EvidenceGrade.Reported, Mounts.No)] // 5 after 4
    [InlineData(EvidenceGrade.Inferred, Mounts.No)] // 6 after 4
    public void A_computed_no_by_documented_values_outranks_what_is_only_reported(EvidenceGrade grade, Mounts expected) =>
        Assert.Equal(expected, Wheels().Found("f-1", "W-2", FindingOutcome.Yes, By(grade)).Ask("W-2").Mounts.Value);

    [Theory]
    [InlineData(EvidenceGrade.TrialFitted, Mounts.No, false)]
    [InlineData(EvidenceGrade.MakersDocument, Mounts.NotKnown, true)] // rank 3, as identity
    [InlineData(EvidenceGrade.Reported, Mounts.Yes, false)]
    public void A_finding_against_the_makers_own_number_is_weighed_against_identity(EvidenceGrade grade, Mounts expected, bool disputed)
    {
        var mounts = Wheels().Found("f-1", "W-1", FindingOutcome.No, By(grade)).Ask("W-1").Mounts;

        Assert.Equal((expected, disputed), (mounts.Value, mounts.Disputed));
    }

    [Fact]
    public void Two_findings_and_their_contradiction_on_both_axes_are_told_in_the_headline()
    {
        var family = AnyFindings.Nothing().Found("f-1", "W-2", FindingOutcome.Yes, By(EvidenceGrade.RanUnderLoad, "a"))
            .Found("f-2", "W-2", FindingOutcome.No, By(EvidenceGrade.TrialFitted))
            .Found("f-3", "W-2", FindingOutcome.Same, By(EvidenceGrade.RanUnderLoad, "a"))
                .Found("f-4", "W-2", FindingOutcome.Differently, By(EvidenceGrade.RanUnderLoad, "b"));

        Assert.Equal("Not known yet; equally good sources disagree on whether it mounts and on how the engine runs", family.Ask("W-2").HeadlineText);
    }

    // The bore, damage if wrong, is unmet by the document, but somebody has fitted it: no consequence and no work is left of that.
    [Fact]
    public void What_a_trial_fit_has_shown_to_be_no_hindrance_has_no_consequence_and_needs_no_work()
    {
        var family = WithWheels(wheel => wheel.CannotAlterRunning().Length("bore")
            .Rule("bore", Effect.Work, work: "ream", consequence: Consequence.Damage)).Work("ream")
            .Wheel("W-1", Has("bore", Mm(10))).Wheel("W-2", Has("bore", Mm(9))).Fitted("lark", "wheel", "W-1");

        var computed = family.Ask("W-2");
        var reported = family.Found("f-1", "W-2", FindingOutcome.Yes, By(EvidenceGrade.Reported)).Ask("W-2");
        var fitted = family.Found("f-2", "W-2", FindingOutcome.Yes, By(EvidenceGrade.TrialFitted)).Ask("W-2");

        Assert.Equal((Headline.FitsWithWork, Consequence.Damage, 1), (computed.Headline, computed.Consequence ?? 0, computed.Works.Count));
        Assert.Equal((Headline.FitsWithWork, Consequence.Damage, 1), (reported.Headline, reported.Consequence ?? 0, reported.Works.Count)); // 5 after 4
        Assert.Equal((Headline.Fits, null, 0), (fitted.Headline, fitted.Consequence, fitted.Works.Count));
        Assert.Equal("Fits", fitted.HeadlineText);
    }

    [Theory]
    [InlineData(FindingOutcome.No, Headline.DoesNotFit, Consequence.Loss)]
    [InlineData(FindingOutcome.WithWork, Headline.FitsWithWork, Consequence.Loss)]
    [InlineData(FindingOutcome.Yes, Headline.Fits, null)]
    public void A_finding_has_the_consequence_of_a_demand_without_a_rule_where_nothing_recorded_tells_another(FindingOutcome outcome, Headline headline,
        Consequence? consequence)
    {
        var answer = WithWheels(wheel => wheel.CannotAlterRunning()).Wheel("W-1").Wheel("W-2").Fitted("lark", "wheel", "W-1")
            .Found("f-1", "W-2", outcome, By(EvidenceGrade.TrialFitted)).Ask("W-2");

        Assert.Equal((headline, consequence), (answer.Headline, answer.Consequence));
    }

    [Fact]
    public void A_finding_that_agrees_with_an_unmet_relation_leaves_its_consequence() =>
        Assert.Equal(Consequence.Nuisance, WithWheels(wheel => wheel.CannotAlterRunning().Length("bore")
            .Rule("bore", Effect.Stops, consequence: Consequence.Nuisance))
            .Wheel("W-1", Has("bore", Mm(10))).Wheel("W-2", Has("bore", Mm(12))).Fitted("lark", "wheel", "W-1")
            .Found("f-1", "W-2", FindingOutcome.No, By(EvidenceGrade.TrialFitted)).Ask("W-2").Consequence);

    // The bore is not recorded: a caliper would tell, but somebody has fitted it.
    [Fact]
    public void Nothing_is_to_be_measured_on_an_axis_that_a_finding_decides()
    {
        var family = WithWheels(wheel => wheel.Length("bore")
            .Rule("bore", Effect.Stops, allowance: 0.5m).Check("bore", Method.Caliper, 4, 0.02m).Choice("hand")
            .Rule("hand", Effect.Alters).Check("hand", Method.Eye, 1))
            .Wheel("W-1", Has("bore", Mm(10)), Has("hand", Word("left"))).Wheel("W-2").Fitted("lark", "wheel", "W-1");

        Assert.Equal(["hand", "bore"], family.Ask("W-2").MeasureNext.Select(next => next.Feature));
        Assert.Equal(["hand"], family.Found("f-1", "W-2", FindingOutcome.Yes, By(EvidenceGrade.TrialFitted)).Ask("W-2").MeasureNext
            .Select(next => next.Feature));
        Assert.Empty(family.Found("f-2", "W-2", FindingOutcome.Same, By(EvidenceGrade.RanUnderLoad)).Ask("W-2").MeasureNext);
    }

    // A trial fit shows that it goes on; what a rule asks of the neighbour stays needed.
    [Fact]
    public void What_the_part_drags_in_stays_needed_whoever_has_fitted_it()
    {
        var answer = WithWheelsAndShafts(wheel => wheel.CannotAlterRunning().Choice("size"), shaft => shaft.Choice("size"))
            .Wheel("W-1").Wheel("W-2", Has("size", Word("large"))).Shaft("S-1", Has("size", Word("small"))).Fitted("lark", "wheel", "W-1")
                .Fitted("lark", "shaft", "S-1")
            .Companion("large-goes-on-large", "wheel.size", Word("large"), "shaft.size", Word("large"))
            .Found("f-1", "W-2", FindingOutcome.Yes, By(EvidenceGrade.TrialFitted)).Ask("W-2");

        Assert.Equal(["shaft"], answer.AlsoNeeded.Positions());
        Assert.Equal("Fits, with 1 other change", answer.HeadlineText);
    }

    // On the early engines it was tried and goes on, on the late ones it was tried and does not: both findings are told once.
    [Fact]
    public void Findings_are_not_repeated_over_the_spans_of_an_engine_that_is_not_known()
    {
        var family = AnyFindings.Nothing().Found("f-1", "W-2", FindingOutcome.Yes, By(EvidenceGrade.TrialFitted, "a"), span: Serials(null, 1000))
            .Found("f-2", "W-2", FindingOutcome.No, By(EvidenceGrade.TrialFitted, "b"), span: Serials(1001, null));

        var answer = family.Ask("W-2");

        Assert.Equal(["f-1", "f-2"], answer.Findings.Select(found => found.Code));
        Assert.Equal((Mounts.NotKnown, false), (answer.Mounts.Value, answer.Mounts.Disputed));
        Assert.Equal([Mounts.Yes, Mounts.No], answer.Mounts.CouldBe);
        Assert.Equal(["serial before 1001", "serial from 1001"], answer.Spans.Select(span => span.Span));
        Assert.Equal((Mounts.Yes, Mounts.No), (family.Ask("W-2", serial: 1000).Mounts.Value, family.Ask("W-2", serial: 1001).Mounts.Value));
    }

    // Mounts is surest on the early engines, runs on the late ones: over all of them neither is sure.
    [Fact]
    public void Over_spans_each_axis_is_as_sure_as_where_it_is_least_sure()
    {
        var answer = AnyFindings.Nothing().Found("f-1", "W-2", FindingOutcome.Yes, By(EvidenceGrade.Measured), span: Serials(null, 1000))
            .Found("f-2", "W-2", FindingOutcome.Same, By(EvidenceGrade.RanUnderLoad), span: Serials(1001, null)).Ask("W-2");

        Assert.Equal((Mounts.Yes, 3, Sureness.Documented), (answer.Mounts.Value, answer.Mounts.Rank ?? 0, answer.Mounts.Sureness));
        Assert.Equal((Runs.Same, 3, Sureness.Documented), (answer.Runs.Value, answer.Runs.Rank ?? 0, answer.Runs.Sureness));
        Assert.Empty(answer.Spans);
        Assert.All(answer.Mounts.DecidedBy.Concat(answer.Runs.DecidedBy), id => Assert.Contains(answer.Reasons, reason => reason.Id == id));
    }

    [Fact]
    public void A_finding_says_who_says_so_when_how_long_at_which_output_and_on_what_fuel()
    {
        var by = new Evidence("ev-0031", EvidenceGrade.RanUnderLoad, "2026-04-12", "builder 5", "message about a season", null, null, null)
        {
            Details = new SourceDetails(SpeaksOf.Item, "plug-in meter", 40.5m, new QuantityReading(150_000, null, null, null, UnitTable.Get("kW"), "150 kW"),
                "petrol E0", "page 3", null),
        };
        var family = AnyFindings.Nothing()
            .WithFindings([AnyFindings.One("f-1", by, FindingOutcome.Same, span: Serials(1000, 2000)) with { Note = "on a dynamometer" }]);

        var answer = family.Ask("W-2", serial: 1000);

        Assert.Equal(
            "Ran under load on lark (serial 1000 to 2000): the engine runs the same with it. " +
            "Says builder 5, 2026-04-12, message about a season, page 3, plug-in meter, 40.5 h under load, 150 kW, on petrol E0. On a dynamometer.",
            answer.Findings[0].Text);
        Assert.Equal((150_000m, "W", "150 kW"), (answer.Findings[0].Evidence.Details?.Output?.Value ?? 0, answer.Findings[0].Evidence.Details?.Output?.Unit,
            answer.Findings[0].Evidence.Details?.Output?.Text));
    }

    [Fact]
    public void Every_source_cited_is_listed_once()
    {
        var answer = Wheels().Found("f-1", "W-2", FindingOutcome.Yes, By(EvidenceGrade.Reported))
            .Found("f-2", "W-2", FindingOutcome.Same, By(EvidenceGrade.Reported))
            .Found("f-3", "W-2", FindingOutcome.Yes, Retracted(EvidenceGrade.TrialFitted)).Ask("W-2");

        Assert.Equal(["ev-makers-document", "ev-reported", "ev-trial-fitted-retracted"], answer.Sources.Select(source => source.Evidence));
        Assert.Equal([null, null, "2026-05-01"], answer.Sources.Select(source => source.RetractedOn));
        Assert.All(answer.Reasons.SelectMany(reason => reason.Evidence), code => Assert.Contains(answer.Sources, source => source.Evidence == code));
    }

    // Codes repeat between books: the part of another family brings its own ev-0001.
    [Fact]
    public void Two_sources_of_one_code_are_both_listed()
    {
        var (own, other) = (new Evidence("ev-0001", EvidenceGrade.MakersDocument, null, "alder", "list 1", null, null, null),
            new Evidence("ev-0001", EvidenceGrade.Reported, null, "builder 9", "letter", null, null, null));
        var answer = WithWheels(wheel => wheel.Length("bore").Rule("bore", Effect.Stops)).Wheel("W-1", Has("bore", Mm(10), own))
            .Wheel("W-2", Has("bore", Mm(12), other)).Fitted("lark", "wheel", "W-1").Ask("W-2");

        Assert.Equal(["ev-0001"], answer.Of("bore").Evidence);
        Assert.Equal(["builder 9", "alder"], answer.Sources.Select(source => source.Author));
    }

    [Fact]
    public void The_word_for_the_sureness_has_one_meaning_wherever_it_stands()
    {
        Assert.Equal([Sureness.Proven, Sureness.Documented, Sureness.Indicated, Sureness.Unproven], SurenessMeaning.All.Select(meaning => meaning.Sureness));
        Assert.Equal(SurenessMeaning.Of(Sureness.Documented), Wheels().Ask("W-1").SurenessText);
        Assert.Equal(SurenessMeaning.All, Wheels().Compare("lark", "swift").SurenessMeanings);
    }

    // One line for every question about the family; where the finding changes the answer, the line before and the line after.
    [Fact]
    public void A_finding_changes_one_axis_of_one_answer()
    {
        var before = Wheels().Fitted("swift", "wheel", "W-2");
        var after = Wheels().Fitted("swift", "wheel", "W-2").Found("f-1", "W-2", FindingOutcome.Yes, By(EvidenceGrade.TrialFitted));
        List<string> lines = [];
        foreach (var (variant, number) in new[] { "lark", "swift" }.SelectMany(_ => new[] { "W-1", "W-2", "W-3" }, (variant, number) => (variant, number)))
        {
            var (was, becomes) = (Line(before.Ask(number, on: variant)), Line(after.Ask(number, on: variant)));
            lines.AddRange(was == becomes ? [$"{number} on {variant}: {was}"] : [$"{number} on {variant}, before: {was}",
                $"{number} on {variant}, after:  {becomes}"]);
        }

        Assert.Equal(["W-2 on lark, before", "W-2 on lark, after"], lines
            .Where(line => line.Contains("before:", StringComparison.Ordinal) || line.Contains("after:", StringComparison.Ordinal))
            .Select(line => line.Split(':')[0]));
        Snapshot.Match(string.Join('\n', lines));
    }

    // Ran under load on this engine, reported on its sister, retold, withdrawn, tried with another shaft, and against what the document says of the bore.
    [Fact]
    public void Whole_answer_with_findings_as_JSON_shows_it()
    {
        var family = Wheels().Fitted("swift", "wheel", "W-1").Place("shaft", _ => { }).Shaft("S-1").Shaft("S-2").Fitted("lark", "shaft", "S-1")
            .Found("f-1", "W-2", FindingOutcome.Yes, By(EvidenceGrade.RanUnderLoad))
                .Found("f-2", "W-2", FindingOutcome.Differently, By(EvidenceGrade.RanUnderLoad))
            .Found("f-3", "W-2", FindingOutcome.No, By(EvidenceGrade.Reported, "letter"), on: "swift")
                .Found("f-4", "W-2", FindingOutcome.No, By(EvidenceGrade.Reported, "retold", copyOf: "ev-reported-letter"))
            .Found("f-5", "W-2", FindingOutcome.Same, Retracted(EvidenceGrade.Reported))
                .Found("f-6", "W-2", FindingOutcome.WithWork, By(EvidenceGrade.TrialFitted), with: "shaft=S-2");

        Snapshot.Match(AsJson.Of(family.Ask("W-2")));
    }

    private static string Line(FitAnswer answer) =>
        $"{answer.HeadlineText} ({Codes.Of(answer.Sureness)}); mounts {Said(answer.Mounts)}; runs {Said(answer.Runs)}";

    private static string Said<T>(AxisAnswer<T> axis)
        where T : struct, Enum
    {
        var rank = axis.Rank is { } known ? FormattableString.Invariant($"{known}") : "none";
        return $"{Codes.Of(axis.Value)}, rank {rank}, {Codes.Of(axis.Sureness)}";
    }

    /// <summary>W-1 of bore 10 is fitted; W-2 of bore 12, by a document, does not go on, which would do damage; of how it runs nothing is recorded.</summary>
    private static TestFamily Wheels() => WithWheels(wheel => wheel.Length("bore").Rule("bore", Effect.Stops, consequence: Consequence.Damage))
        .Wheel("W-1", Has("bore", Mm(10))).Wheel("W-2", Has("bore", Mm(12))).Wheel("W-3").Fitted("lark", "wheel", "W-1");
}
