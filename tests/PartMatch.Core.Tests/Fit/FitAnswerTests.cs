using PartMatch.Core.Catalogue;
using PartMatch.Core.Fit;
using PartMatch.Core.Tests.Catalogue;
using Snapshooter.Xunit3;
using Xunit;
using static PartMatch.Core.Tests.Catalogue.TestFamily;

namespace PartMatch.Core.Tests.Fit;

/// <summary>What an answer carries beside its axes: consequence, cautions, what was compared, and the whole of it as JSON shows it.</summary>
public sealed class FitAnswerTests
{
    [Fact]
    public void The_consequence_is_the_worst_of_the_unmet_relations()
    {
        var family = Wheels();

        Assert.Equal(Consequence.Damage, family.Ask("W-2").Consequence); // bore damage and hand nuisance unmet
        Assert.Null(family.Ask("W-1").Consequence);
    }

    [Fact]
    public void Cautions_of_the_kind_and_of_the_works_needed_are_shown_once_each()
    {
        var family = WithWheels(wheel => wheel.CannotAlterRunning().Caution("lifting").Choice("hand").Rule("hand", Effect.Work, work: "ream"))
            .Work("ream", "cleaner-vapour", "lifting").Wheel("W-1", Has("hand", Word("left"))).Wheel("W-2", Has("hand", Word("right"))).Fitted("lark", "wheel", "W-1");

        Assert.Equal(["cleaner-vapour", "lifting"], family.Ask("W-2").Cautions.Select(caution => caution.Code));
        Assert.Equal(["lifting"], family.Ask("W-1").Cautions.Select(caution => caution.Code));
    }

    [Fact]
    public void A_work_tells_who_how_long_and_whether_it_can_be_undone()
    {
        var family = WithWheels(wheel => wheel.CannotAlterRunning().Choice("hand").Rule("hand", Effect.Work, work: "ream-out"))
            .Work("ream-out").Wheel("W-1", Has("hand", Word("left"))).Wheel("W-2", Has("hand", Word("right"))).Fitted("lark", "wheel", "W-1");

        var answer = family.Ask("W-2");

        var work = Assert.Single(answer.Works);
        Assert.Equal(("ream out", "machine shop", 2m, false), (work.Name, work.Who, work.Days ?? 0, work.CanBeUndone ?? true));
        Assert.Equal([answer.Of("hand").Id], work.Reasons);
    }

    [Fact]
    public void How_many_features_were_compared_is_told_and_what_no_number_shows()
    {
        Assert.StartsWith("Compared: 2 features; nothing else. No number shows cracks", Wheels().Ask("W-2").NotCompared, StringComparison.Ordinal);
        Assert.StartsWith("Compared: 0 features; nothing else.", Wheels().Ask("X-9").NotCompared, StringComparison.Ordinal);
    }

    [Fact]
    public void A_kind_whose_list_is_not_reviewed_says_that_nothing_recorded_speaks_against_it_and_no_more()
    {
        var answer = WithWheels(wheel => wheel.CannotAlterRunning().NotReviewed().Choice("hand").Rule("hand", Effect.Stops))
            .Wheel("W-1", Has("hand", Word("left"))).Wheel("W-2", Has("hand", Word("left"))).Fitted("lark", "wheel", "W-1").Ask("W-2");

        Assert.Equal(Sureness.Unproven, answer.Sureness);
        Assert.Contains("nothing recorded speaks against", answer.NotCompared, StringComparison.Ordinal);
    }

    [Fact]
    public void The_question_is_repeated_with_its_neighbours_in_order()
    {
        var asked = Wheels().Place("shaft", _ => { }).Place("key", _ => { }).Shaft("S-1").Ask("W-2", built: "2017-01", serial: 5, with: ["shaft=S-1", "key=none"]).Asked;

        Assert.Equal(("finch-9", "lark", "wheel", "alder:W-2", "2017-01", 5L), (asked.Family, asked.Variant, asked.Position, asked.Part, asked.Built, asked.Serial));
        Assert.Equal(["key=none", "shaft=alder:S-1"], asked.With);
    }

    [Fact]
    public void A_variant_or_position_of_another_family_is_refused()
    {
        Assert.Throws<ArgumentException>(() => Wheels().Ask("W-1", on: "heron"));
        Assert.Throws<ArgumentException>(() => Wheels().Ask("W-1", at: "sail"));
    }

    [Fact]
    public void A_position_filled_by_a_choice_of_grades_says_measure_then_order()
    {
        var family = Wheels().Fitted("lark", "wheel", "W-2").Place("shaft", shaft => shaft.Length("diameter"))
            .Chosen("wheel", "shaft.diameter", 9.0m, 9.5m, "W-1").Chosen("wheel", "shaft.diameter", 9.5m, 10.0m, "W-2");

        var text = family.Ask("W-2").AllText();

        Assert.Contains("measure, then order", text, StringComparison.OrdinalIgnoreCase);
        Assert.Contains("9.5 … 10 mm", text, StringComparison.Ordinal);
    }

    [Fact]
    public void What_another_variant_has_is_asked_by_its_name()
    {
        var answer = Wheels().Fitted("swift", "wheel", "W-2").AskFrom("swift", on: "lark");

        Assert.Equal(("swift", "alder:W-2", Headline.DoesNotFit), (answer.Asked.From, answer.Asked.Part, answer.Headline));
    }

    [Fact]
    public void What_another_variant_had_at_different_times_is_judged_part_by_part()
    {
        var family = Wheels().Fitted("swift", "wheel", "W-1", BuiltIn(null, "2017-01")).Fitted("swift", "wheel", "W-2", BuiltIn("2017-02", null));

        Assert.Equal(Headline.Fits, family.AskFrom("swift", on: "lark", builtFrom: "2016-05").Headline);
        Assert.Equal(Headline.DoesNotFit, family.AskFrom("swift", on: "lark", builtFrom: "2018-01").Headline);

        var open = family.AskFrom("swift", on: "lark");

        Assert.Equal(Headline.NotKnownYet, open.Headline);
        Assert.Null(open.Asked.Part);
        Assert.Contains("which part the donor really has", open.AllText(), StringComparison.Ordinal);
        Assert.Equal([Headline.Fits, Headline.DoesNotFit], open.Spans.Select(span => span.Headline));
    }

    [Fact]
    public void What_is_not_recorded_of_another_variant_is_not_judged()
    {
        var answer = Wheels().AskFrom("swift", on: "lark");

        Assert.Equal(Headline.NotKnownYet, answer.Headline);
        Assert.Contains("not recorded", answer.AllText(), StringComparison.Ordinal);
    }

    [Fact]
    public void What_another_variant_is_known_to_do_without_is_a_position_left_empty()
    {
        var answer = Wheels().Fitted("swift", "wheel", "none").AskFrom("swift", on: "lark");

        // A wrong wheel cannot alter running; of a missing one that says nothing.
        Assert.Equal((Headline.NotKnownYet, Runs.NotKnown, "none"), (answer.Headline, answer.Runs.Value, answer.Asked.Part));
        Assert.Contains("Left empty: the maker fitted W-1 there", answer.AllText(), StringComparison.Ordinal);
    }

    [Fact]
    public void Nothing_fits_where_the_maker_fitted_nothing()
    {
        var answer = Wheels().Fitted("swift", "wheel", "none").Fitted("heron", "wheel", "none").Variant("heron").AskFrom("swift", on: "heron");

        Assert.Equal((Headline.Fits, Sureness.Documented, IdentityRelation.FittedHere), (answer.Headline, answer.Sureness, answer.Identity.Relation));
    }

    // A rear-driven pump for an engine that drives it from the belt: mounts, turns backwards, drags a cam with it; one feature still to measure.
    [Fact]
    public void Whole_answer_as_JSON_shows_it()
    {
        var answer = Pumps().Ask("P-30-2", at: "coolant-pump");

        Snapshot.Match(AsJson.Of(answer));
    }

    private static TestFamily Wheels() =>
        WithWheels(wheel => wheel.CannotAlterRunning().Length("bore").Rule("bore", Effect.Stops, consequence: Consequence.Damage).Choice("hand").Rule("hand", Effect.Stops, consequence: Consequence.Nuisance))
            .Wheel("W-1", Has("bore", Mm(10)), Has("hand", Word("left"))).Wheel("W-2", Has("bore", Mm(12)), Has("hand", Word("right"))).Fitted("lark", "wheel", "W-1");

    private static TestFamily Pumps() => new TestFamily().Variant("lark").Variant("swift")
        .Place("coolant-pump", pump => pump.Caution("hot-parts")
            .Length("flange-bore").Rule("flange-bore", Effect.Stops, allowance: 0.2m).Choice("rotation").Rule("rotation", Effect.Alters, consequence: Consequence.Damage)
            .Length("inlet-reach").Rule("inlet-reach", Effect.Work, allowance: 1, work: "shorten-inlet").Check("inlet-reach", Method.SteelRule, 2, 0.5m)
            .Choice("drive"))
        .Place("exhaust-cam", cam => cam.Choice("rear-end")).Place("pulley", pulley => pulley.Length("offset"))
        .Work("shorten-inlet", "cleaner-vapour")
        .Part("P-30-1", "coolant-pump", Has("flange-bore", Mm(42, 0.1m)), Has("rotation", Word("clockwise")), Has("inlet-reach", Mm(31)), Has("drive", Word("belt")))
        .Part("P-30-2", "coolant-pump", Has("flange-bore", Mm(42.1m, 0.05m, knownTo: 0.02m), By(EvidenceGrade.Measured)), Has("rotation", Word("anticlockwise")), Has("drive", Word("rear-of-cam")))
        .Part("C-12-1", "exhaust-cam", Has("rear-end", Word("plain"))).Part("C-12-2", "exhaust-cam", Has("rear-end", Word("tang")))
        .Part("Y-8-1", "pulley", Has("offset", Bare(3)))
        .Fitted("lark", "coolant-pump", "P-30-1").Fitted("lark", "exhaust-cam", "C-12-1").Fitted("lark", "pulley", "Y-8-1").Fitted("swift", "coolant-pump", "P-30-2")
        .Joint("pulley-plane", "pulley.offset", "coolant-pump.flange-bore", min: 38, max: 40)
        .Companion("rear-drive-needs-tang", "coolant-pump.drive", Word("rear-of-cam"), "exhaust-cam.rear-end", Word("tang"));
}
