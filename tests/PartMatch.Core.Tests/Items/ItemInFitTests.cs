using PartMatch.Core.Catalogue;
using PartMatch.Core.Fit;
using PartMatch.Core.Items;
using PartMatch.Core.Tests.Catalogue;
using PartMatch.Core.Tests.Fit;
using Xunit;
using static PartMatch.Core.Tests.Catalogue.TestFamily;
using static PartMatch.Core.Tests.Items.ItemCheckTests;

namespace PartMatch.Core.Tests.Items;

/// <summary>Asked about one example, what was read on it takes the place of what is recorded of its number; the number itself is not changed.</summary>
public sealed class ItemInFitTests
{
    // The engine accepts 9.9 … 10.1. The number: 10.0 ± 0.3, so not known. The example: read ± 0.02, and the 0.3 plays no part.
    [Theory]
    [InlineData(10.0, Mounts.Yes)]
    [InlineData(10.08, Mounts.Yes)]
    [InlineData(10.081, Mounts.NotKnown)]
    [InlineData(10.12, Mounts.NotKnown)]
    [InlineData(10.121, Mounts.No)]
    public void The_reading_and_its_uncertainty_stand_in_place_of_the_makers_spread(double read, Mounts expected)
    {
        var answer = Ask(Shafts(), "S-2", Read("journal", (decimal)read, 0.02m));

        Assert.Equal(Mounts.NotKnown, Shafts().Ask("S-2", at: "shaft").Mounts.Value);
        Assert.Equal(expected, answer.Mounts.Value);
        Assert.Equal(EvidenceGrade.Measured, answer.Of("journal").Grade);
        Assert.Equal(["ev-makers-document", "ev-measured-bench"], answer.Of("journal").Evidence);
    }

    [Fact]
    public void A_feature_that_was_not_read_stays_as_recorded_of_the_number()
    {
        var answer = Ask(Shafts(), "S-2", Read("run-out", 0.01m, 0.002m));

        Assert.Equal(Met.NotKnown, answer.Of("journal").Met);
        Assert.Equal(["ev-makers-document"], answer.Of("journal").Evidence);
    }

    [Fact]
    public void What_was_read_does_not_change_the_part()
    {
        var facts = Shafts().Facts();
        var part = facts.GetPart(Id("S-2"));
        var before = AsJson.Of(FitCheck.Decide(facts, new FitQuestion("lark", "shaft", part)));

        FitCheck.Decide(facts, new FitQuestion("lark", "shaft", part) { Item = ItemOf("S-2", Read("journal", 12, 0.02m)) });

        Assert.Equal(before, AsJson.Of(FitCheck.Decide(facts, new FitQuestion("lark", "shaft", part))));
    }

    // The maker fitted S-1, but this one of it measures 12: the number is right and the example is not as the maker made it.
    [Fact]
    public void An_example_of_the_fitted_number_is_not_taken_to_be_as_the_maker_made_it()
    {
        var answer = Ask(Shafts(), "S-1", Read("journal", 12, 0.02m));

        Assert.Equal((Met.No, Mounts.No, 1), (answer.Of("journal").Met, answer.Mounts.Value, answer.Mounts.Rank ?? 0));
        Assert.Equal(("yes", 3), (Assert.Single(answer.Disagreements).Says, answer.Disagreements[0].Rank));
        Assert.Equal(Sureness.Documented, answer.Mounts.Sureness); // proven, less one step
    }

    // A maker's document outranks one measured example of a number; for an item the measurement outranks the document.
    [Fact]
    public void The_measurement_of_the_item_outranks_the_document_of_its_number() =>
        Assert.Equal(Mounts.No, Ask(Shafts().Shaft("S-3", Has("journal", Mm(10))), "S-3", Read("journal", 12, 0.02m)).Mounts.Value);

    [Theory]
    [InlineData(EvidenceGrade.Reported, EvidenceGrade.Reported)]
    [InlineData(EvidenceGrade.Inferred, EvidenceGrade.Inferred)]
    [InlineData(EvidenceGrade.Measured, EvidenceGrade.Measured)]
    [InlineData(EvidenceGrade.TrialFitted, EvidenceGrade.Measured)]
    public void A_reading_that_is_only_told_stands_as_told(EvidenceGrade source, EvidenceGrade expected) =>
        Assert.Equal(expected, Ask(Shafts(), "S-2", Read("journal", 12, 0.02m) with { Evidence = By(source) }).Of("journal").Grade);

    [Fact]
    public void A_reading_nobody_knows_how_well_it_was_read_is_compared_as_a_bare_value() =>
        Assert.Equal(EvidenceGrade.Inferred, Ask(Shafts(), "S-2", Read("journal", 12, null)).Of("journal").Grade);

    [Fact]
    public void A_withdrawn_reading_leaves_what_is_recorded_of_the_number() =>
        Assert.Equal(Met.NotKnown, Ask(Shafts(), "S-2", Read("journal", 12, 0.02m) with { Evidence = Retracted(EvidenceGrade.Measured) }).Of("journal").Met);

    // S-1 is recorded as 10 ± 0.1, which the engine accepts; the 12 that was read rests on the item's source, which was withdrawn.
    [Fact]
    public void A_reading_on_the_withdrawn_source_of_its_item_leaves_what_is_recorded_of_the_number()
    {
        var item = ItemOf("S-1", Read("journal", 12, 0.02m) with { Evidence = null }) with { Evidence = Retracted(EvidenceGrade.Measured) };

        var answer = FitCheck.Decide(Shafts().Facts(), Shafts().Question("S-1", at: "shaft") with { Item = item });

        Assert.Equal((Met.Yes, "10 mm ± 0.1"), (answer.Of("journal").Met, answer.Of("journal").Part?.Text));
    }

    [Fact]
    public void A_reading_without_a_source_of_its_own_is_cited_by_its_item()
    {
        var answer = Ask(Shafts(), "S-2", Read("journal", 12, 0.02m) with { Evidence = null });

        Assert.Equal((EvidenceGrade.Measured, "2026-03-02", "read on the item finch-9/i-0001, micrometer"),
            Assert.Single(answer.Sources, source => source.Evidence == "i-0001") is var cited ? (cited.Grade, cited.Date, cited.Source) : default);
    }

    // A journal read at 10.0 on a shaft that goes into the wheel: the joint is judged with the reading.
    [Fact]
    public void Joints_are_judged_with_what_was_read()
    {
        var family = Shafts().Place("wheel", wheel => wheel.Length("bore")).Wheel("W-1", Has("bore", Mm(10.05m))).Fitted("lark", "wheel", "W-1")
            .Joint("clearance", "shaft.journal", "wheel.bore", min: 0, max: 0.1m);

        Assert.Equal(Met.NotKnown, family.Ask("S-2", at: "shaft").Of("clearance").Met);
        Assert.Equal(Met.Yes, Ask(family, "S-2", Read("journal", 10.0m, 0.02m)).Of("clearance").Met);
        Assert.Equal(Met.No, Ask(family, "S-2", Read("journal", 10.1m, 0.02m)).Of("clearance").Met);
    }

    [Theory]
    [InlineData(10.0, ItemCondition.WithinLimits)]
    [InlineData(9.0, ItemCondition.BeyondLimits)]
    public void The_answer_tells_the_condition_of_the_item_beside_the_fit(double read, ItemCondition expected)
    {
        var answer = Ask(Shafts().Limit("shaft", "journal", 9.95m, null, evidence: By(EvidenceGrade.MakersDocument, "limits")), "S-2",
            Read("journal", (decimal)read, 0.02m));

        Assert.Equal((expected, "i-0001", "finch-9/i-0001"), (answer.Item?.Condition, answer.Item?.Item, answer.Asked.Item));
        Assert.Contains(answer.Sources, source => source.Evidence == "ev-makers-document-limits");
        Assert.Null(Shafts().Ask("S-2", at: "shaft").Item);
    }

    [Fact]
    public void An_item_claimed_to_be_another_part_is_refused() =>
        Assert.Throws<ArgumentException>(() =>
            FitCheck.Decide(Shafts().Facts(), Shafts().Question("S-1", at: "shaft") with { Item = ItemOf("S-2", Read("journal", 10, 0.02m)) }));

    private static Item ItemOf(string number, params ItemReading[] readings) => Item(readings) with { Part = Id(number) };

    private static FitAnswer Ask(TestFamily family, string number, params ItemReading[] readings) =>
        FitCheck.Decide(family.Facts(), family.Question(number, at: "shaft") with { Item = ItemOf(number, readings) });

    /// <summary>S-1 of 10 ± 0.1 is fitted; S-2 is 10 ± 0.3.</summary>
    private static TestFamily Shafts() => new TestFamily().Variant("lark")
        .Place("shaft", shaft => shaft.CannotAlterRunning().Length("journal").Rule("journal", Effect.Stops).Length("run-out"))
        .Shaft("S-1", Has("journal", Mm(10, 0.1m))).Shaft("S-2", Has("journal", Mm(10, 0.3m))).Fitted("lark", "shaft", "S-1");
}
