using PartMatch.Core.Catalogue;
using PartMatch.Core.Fit;
using PartMatch.Core.Measures;
using PartMatch.Core.Tests.Catalogue;
using Xunit;
using static PartMatch.Core.Tests.Catalogue.TestFamily;

namespace PartMatch.Core.Tests.Fit;

/// <summary>Who says so: what a finding tells of its source, which sources an answer names, and what the word for its sureness means.</summary>
public sealed class FindingSourceTests
{
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

    /// <summary>W-1 of bore 10 is fitted; W-2 of bore 12, by a document, does not go on, which would do damage; of how it runs nothing is recorded.</summary>
    private static TestFamily Wheels() => WithWheels(wheel => wheel.Length("bore").Rule("bore", Effect.Stops, consequence: Consequence.Damage))
        .Wheel("W-1", Has("bore", Mm(10))).Wheel("W-2", Has("bore", Mm(12))).Wheel("W-3").Fitted("lark", "wheel", "W-1");
}
