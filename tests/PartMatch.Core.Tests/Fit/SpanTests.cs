using PartMatch.Core.Catalogue;
using PartMatch.Core.Fit;
using PartMatch.Core.Tests.Catalogue;
using Xunit;
using static PartMatch.Core.Tests.Catalogue.TestFamily;

namespace PartMatch.Core.Tests.Fit;

/// <summary>Fitments that hold from–to by serial number or build date; an engine not known closely enough is judged over every span.</summary>
public sealed class SpanTests
{
    // The variant as recorded: built 2016-05 to 2022-06, serial numbers 30118 to 86020; on each bound and just outside it.
    [Theory]
    [InlineData("2016-05", 30118L, false)]
    [InlineData("2022-06", 86020L, false)]
    [InlineData("2016-04", null, true)]
    [InlineData("2022-07", null, true)]
    [InlineData(null, 30117L, true)]
    [InlineData(null, 86021L, true)]
    [InlineData(null, null, false)]
    public void An_engine_that_the_variant_cannot_be_is_told_and_changes_no_verdict(string? built, long? serial, bool isOutside)
    {
        var span = new Span(BuildDate.Find("2016-05"), BuildDate.Find("2022-06"), 30118, 86020);
        var family = Wheels().Variant("heron", span).Fitted("heron", "wheel", "W-1");

        var answer = family.Ask("W-1", on: "heron", built: built, serial: serial);

        Assert.Equal(Headline.Fits, answer.Headline);
        Assert.Equal(isOutside, answer.Reasons.Any(reason => reason.Code == "outside-variant"));
        Assert.Equal(isOutside, family.Ask("W-99", on: "heron", built: built, serial: serial).Reasons.Any(reason => reason.Code == "outside-variant"));
    }

    [Theory]
    [InlineData("9999-12", "9999-12-31")]
    [InlineData("2016-02", "2016-02-29")]
    [InlineData("2017-02", "2017-02-28")]
    public void A_month_ends_with_its_last_day(string month, string last) =>
        Assert.Equal(DateOnly.ParseExact(last, "yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture), BuildDate.Find(month)?.Last);

    [Theory]
    [InlineData(41206, Headline.Fits)]
    [InlineData(41207, Headline.DoesNotFit)]
    public void With_the_serial_number_given_the_fitment_of_that_span_counts(long serial, Headline expected) =>
        Assert.Equal(expected, BySerial().Ask("W-1", serial: serial).Headline);

    [Fact]
    public void Without_the_serial_number_the_answer_is_not_known_and_depends_on_it()
    {
        var answer = BySerial().Ask("W-1");

        Assert.Equal(Headline.NotKnownYet, answer.Headline);
        Assert.Equal([Mounts.Yes, Mounts.No], answer.Mounts.CouldBe);
        Assert.Contains("depends on the serial number", answer.AllText(), StringComparison.OrdinalIgnoreCase);
        Assert.Equal(
            [("serial before 41207", Headline.Fits, "alder:W-1"), ("serial from 41207", Headline.DoesNotFit, "alder:W-2")],
            answer.Spans.Select(span => (span.Span, span.Headline, Assert.Single(span.Fitted))));
    }

    [Fact]
    public void The_visible_mark_of_the_change_is_told()
    {
        var answer = BySerial().Ask("W-1");

        Assert.Equal([null, "seal groove painted yellow"], answer.Spans.Select(span => span.Mark));
        Assert.Contains("seal groove painted yellow", answer.AllText(), StringComparison.Ordinal);
    }

    [Fact]
    public void A_mark_that_both_spans_carry_shows_the_change_and_is_told_once()
    {
        const string Mark = "a groove in the rim on the late one";
        var text = Wheels().Fitted("lark", "wheel", "W-1", Serials(null, 41206, Mark)).Fitted("lark", "wheel", "W-2", Serials(41207, null, Mark)).Ask("W-1").Reasons[0].Text;

        Assert.Equal($"Depends on the serial number: read it off the engine. serial before 41207: fits; serial from 41207: does not fit. What shows the change: {Mark}.", text);
    }

    [Fact]
    public void A_part_that_suits_every_span_needs_no_serial_number()
    {
        var family = WithWheels(wheel => wheel.CannotAlterRunning().Length("bore").Rule("bore", Effect.Stops, allowance: 1))
            .Wheel("W-1", Has("bore", Mm(10))).Wheel("W-2", Has("bore", Mm(11))).Wheel("W-3", Has("bore", Mm(10.5m)))
            .Fitted("lark", "wheel", "W-1", Serials(null, 41206)).Fitted("lark", "wheel", "W-2", Serials(41207, null));

        var answer = family.Ask("W-3");

        Assert.Equal(Headline.Fits, answer.Headline);
        Assert.Empty(answer.Spans);
        Assert.Equal(["alder:W-1", "alder:W-2"], answer.Identity.Fitted);
    }

    [Fact]
    public void An_axis_that_is_the_same_over_every_span_stays_known()
    {
        var answer = BySerial().Ask("W-1");

        Assert.Equal(Runs.Same, answer.Runs.Value);
    }

    [Theory]
    [InlineData("2017-01-15", Headline.Fits)]
    [InlineData("2017-01-16", Headline.DoesNotFit)]
    [InlineData("2016-12", Headline.Fits)]
    [InlineData("2017-02", Headline.DoesNotFit)]
    public void With_a_build_date_that_falls_in_one_span_its_fitment_counts(string built, Headline expected) =>
        Assert.Equal(expected, ByDate("2017-01-15", "2017-01-16").Ask("W-1", built: built).Headline);

    [Fact]
    public void A_month_that_holds_the_change_is_not_close_enough()
    {
        var answer = ByDate("2017-01-15", "2017-01-16").Ask("W-1", built: "2017-01");

        Assert.Equal(Headline.NotKnownYet, answer.Headline);
        Assert.Equal(2, answer.Spans.Count);
        Assert.Contains("depends on the build date", answer.AllText(), StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("serial", answer.AllText(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("2017-01-31", Headline.Fits)]
    [InlineData("2017-01", Headline.Fits)]
    [InlineData("2017-02-01", Headline.DoesNotFit)]
    public void A_span_to_a_month_ends_with_its_last_day(string built, Headline expected) =>
        Assert.Equal(expected, ByDate("2017-01", "2017-02").Ask("W-1", built: built).Headline);

    [Fact]
    public void A_serial_number_given_leaves_the_build_date_open()
    {
        var answer = ByDate("2017-01", "2017-02").Ask("W-1", serial: 5);

        Assert.Equal(Headline.NotKnownYet, answer.Headline);
        Assert.Contains("depends on the build date", answer.AllText(), StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public void A_change_outside_the_years_in_which_the_variant_was_built_does_not_matter()
    {
        var family = new TestFamily().Variant("lark", BuiltIn("2018-01", "2019-12")).Place("wheel", wheel => wheel.CannotAlterRunning().Length("bore").Rule("bore", Effect.Stops))
            .Wheel("W-1", Has("bore", Mm(10))).Wheel("W-2", Has("bore", Mm(11)))
            .Fitted("lark", "wheel", "W-1", BuiltIn(null, "2017-01")).Fitted("lark", "wheel", "W-2", BuiltIn("2017-02", null));

        Assert.Equal(Headline.DoesNotFit, family.Ask("W-1").Headline);
        Assert.Equal(Headline.Fits, family.Ask("W-2").Headline);
    }

    [Fact]
    public void A_neighbour_that_changed_makes_the_answer_depend_on_the_serial_number()
    {
        var answer = WithShafts().Ask("W-2");

        Assert.Equal(Headline.NotKnownYet, answer.Headline);
        Assert.Equal([Headline.Fits, Headline.DoesNotFit], answer.Spans.Select(span => span.Headline));
        Assert.Equal(Headline.Fits, WithShafts().Ask("W-2", serial: 100).Headline);
    }

    [Fact]
    public void A_supersession_limited_to_a_span_makes_the_answer_depend_on_it()
    {
        var family = BySerial().Wheel("W-3").Replaced("W-2", "W-3", span: Serials(50000, null)).Fitted("swift", "wheel", "W-2");

        var answer = family.Ask("W-3", on: "swift");

        Assert.Equal(["serial before 50000", "serial from 50000"], answer.Spans.Select(span => span.Span));
    }

    // The whistle changed twice and a companion rule speaks of it, but not of wheels: only the wheel's own change is told.
    [Fact]
    public void Changes_that_make_no_difference_to_the_answer_are_not_told()
    {
        var family = BySerial().Place("whistle", whistle => whistle.Choice("tone")).Place("bell", bell => bell.Choice("tone"))
            .Part("H-1", "whistle", Has("tone", Word("high"))).Part("H-2", "whistle", Has("tone", Word("low"))).Part("B-1", "bell", Has("tone", Word("low")))
            .Fitted("lark", "whistle", "H-1", Serials(null, 100)).Fitted("lark", "whistle", "H-2", Serials(101, 60000)).Fitted("lark", "whistle", "H-1", Serials(60001, null))
            .Fitted("lark", "bell", "B-1", BuiltIn("2019-01", null)).Fitted("lark", "bell", "B-1", BuiltIn(null, "2018-12"))
            .Companion("tones", "whistle.tone", Word("low"), "bell.tone", Word("low"));

        Assert.Equal(["serial before 41207", "serial from 41207"], family.Ask("W-1").Spans.Select(span => span.Span));
    }

    // Before 1001 W-1 by a source that stands; from 1001 W-2 by a source that was withdrawn: as if that row were not there.
    [Fact]
    public void A_retracted_fitment_makes_no_span()
    {
        var family = WithWheels(wheel => wheel.Length("bore").Rule("bore", Effect.Stops)).Wheel("W-1").Wheel("W-2")
            .Fitted("lark", "wheel", "W-1", Serials(null, 1000)).Fitted("lark", "wheel", "W-2", Serials(1001, null, "green paint"), Retracted());

        var answer = family.Ask("W-1");

        Assert.Equal(Headline.Fits, answer.Headline);
        Assert.Empty(answer.Spans);
        Assert.Equal(["alder:W-1"], answer.Identity.Fitted);
    }

    [Fact]
    public void A_span_carrying_nothing_is_a_span_like_any_other()
    {
        var family = WithWheels(wheel => wheel.CannotAlterRunning().Length("bore").Rule("bore", Effect.Stops)).Wheel("W-1", Has("bore", Mm(10)))
            .Fitted("lark", "wheel", "W-1", Serials(null, 1000)).Fitted("lark", "wheel", "none", Serials(1001, null));

        var answer = family.Ask("W-1");

        Assert.Equal([Headline.Fits, Headline.NotKnownYet], answer.Spans.Select(span => span.Headline));
        Assert.Equal(Headline.NotKnownYet, answer.Headline);
    }

    // Before 1001 the wheel comes alone; from 1001 the shaft beside it has to be changed with it.
    [Fact]
    public void A_change_needed_on_one_span_only_is_perhaps_needed_when_the_span_is_not_known()
    {
        var family = WithWheelsAndShafts(wheel => wheel.CannotAlterRunning().Choice("size").Length("bore").Rule("bore", Effect.Stops), shaft => shaft.Choice("size"))
            .Wheel("W-1", Has("bore", Mm(10)), Has("size", Word("small"))).Wheel("W-2", Has("bore", Mm(10)), Has("size", Word("large")))
            .Shaft("S-1", Has("size", Word("large"))).Shaft("S-2", Has("size", Word("small"))).Fitted("lark", "wheel", "W-1")
            .Fitted("lark", "shaft", "S-1", Serials(null, 1000)).Fitted("lark", "shaft", "S-2", Serials(1001, null))
            .Companion("large-goes-on-large", "wheel.size", Word("large"), "shaft.size", Word("large"));

        Assert.Empty(family.Ask("W-2", serial: 1).AlsoNeeded);
        Assert.Equal(["shaft"], family.Ask("W-2", serial: 2000).AlsoNeeded.Positions());

        var answer = family.Ask("W-2");

        Assert.Equal(Headline.Fits, answer.Headline);
        Assert.Empty(answer.AlsoNeeded);
        Assert.Equal(["shaft"], answer.PerhapsNeeded.Positions());
    }

    // Until 41206 the shaft S-1 (11 thick in a bore of 10, asked is 0 … 1 play) asks for reaming; from 41207 S-2 (4 long beside 5, asked is 0 … 0.5) for facing.
    [Fact]
    public void A_work_that_only_some_engines_need_is_told_with_its_cautions_and_its_consequence()
    {
        var family = WithWorks();

        Assert.Equal(["ream"], family.Ask("W-2", serial: 100).Works.Select(work => work.Work));
        Assert.Equal(["face"], family.Ask("W-2", serial: 50000).Works.Select(work => work.Work));

        var answer = family.Ask("W-2");

        Assert.Equal(Headline.FitsWithWork, answer.Headline);
        Assert.Equal(["face", "ream"], answer.Works.Select(work => work.Work).Order());
        Assert.Equal(["hot-parts", "lifting"], answer.Cautions.Select(caution => caution.Code));
        Assert.Equal(Consequence.Injury, answer.Consequence);
        Assert.All(answer.Works.SelectMany(work => work.Reasons), id => Assert.Contains(answer.Reasons, reason => reason.Id == id));
    }

    // As above, and from 90000 a shaft beside which no work is needed.
    [Fact]
    public void Cautions_of_every_span_stay_and_works_name_reasons_that_are_there_when_the_answer_depends_on_the_engine()
    {
        var answer = WithWorks(last: 89999).Shaft("S-3", Has("diameter", Mm(9.5m)), Has("length", Mm(5)))
            .Fitted("lark", "shaft", "S-3", Serials(90000, null)).Ask("W-2");

        Assert.Equal([Headline.FitsWithWork, Headline.FitsWithWork, Headline.Fits], answer.Spans.Select(span => span.Headline));
        Assert.Equal(["hot-parts", "lifting"], answer.Cautions.Select(caution => caution.Code));
        Assert.All(answer.Works.SelectMany(work => work.Reasons), id => Assert.Contains(answer.Reasons, reason => reason.Id == id));
    }

    [Fact]
    public void Ids_of_reasons_stay_unique_and_what_decided_stays_findable_over_spans()
    {
        var answer = BySerial().Ask("W-1");

        Assert.Equal(answer.Reasons.Count, answer.Reasons.Select(reason => reason.Id).Distinct().Count());
        Assert.All(answer.Mounts.DecidedBy.Concat(answer.Runs.DecidedBy), id => Assert.Contains(answer.Reasons, reason => reason.Id == id));
    }

    private static TestFamily BySerial() => Wheels()
        .Fitted("lark", "wheel", "W-1", Serials(null, 41206)).Fitted("lark", "wheel", "W-2", Serials(41207, null, "seal groove painted yellow"));

    private static TestFamily ByDate(string to, string from) => Wheels().Fitted("lark", "wheel", "W-1", BuiltIn(null, to)).Fitted("lark", "wheel", "W-2", BuiltIn(from, null));

    private static TestFamily Wheels() => WithWheels(wheel => wheel.CannotAlterRunning().Length("bore").Rule("bore", Effect.Stops))
        .Wheel("W-1", Has("bore", Mm(10))).Wheel("W-2", Has("bore", Mm(11)));

    private static TestFamily WithShafts() =>
        WithWheelsAndShafts(wheel => wheel.CannotAlterRunning().Length("bore"), shaft => shaft.Length("diameter"))
            .Wheel("W-1", Has("bore", Mm(10))).Wheel("W-2", Has("bore", Mm(10))).Shaft("S-1", Has("diameter", Mm(9.5m))).Shaft("S-2", Has("diameter", Mm(11)))
            .Fitted("lark", "wheel", "W-1").Fitted("lark", "shaft", "S-1", Serials(null, 41206)).Fitted("lark", "shaft", "S-2", Serials(41207, null))
            .Joint("clearance", "shaft.diameter", "wheel.bore", min: 0, max: 1);

    private static TestFamily WithWorks(long? last = null) =>
        WithWheelsAndShafts(wheel => wheel.CannotAlterRunning().Length("bore").Length("width"), shaft => shaft.Length("diameter").Length("length"))
            .Wheel("W-1").Wheel("W-2", Has("bore", Mm(10)), Has("width", Mm(5))).Fitted("lark", "wheel", "W-1")
            .Shaft("S-1", Has("diameter", Mm(11)), Has("length", Mm(5))).Shaft("S-2", Has("diameter", Mm(9.5m)), Has("length", Mm(4)))
            .Fitted("lark", "shaft", "S-1", Serials(null, 41206)).Fitted("lark", "shaft", "S-2", Serials(41207, last))
            .Work("ream", "hot-parts").Work("face", "lifting")
            .Joint("play", "shaft.diameter", "wheel.bore", min: 0, max: 1, effect: Effect.Work, work: "ream", consequence: Consequence.Nuisance)
            .Joint("end", "shaft.length", "wheel.width", min: 0, max: 0.5m, effect: Effect.Work, work: "face", consequence: Consequence.Injury);
}
