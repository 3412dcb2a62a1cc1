using PartMatch.Core.Catalogue;
using PartMatch.Core.Identification;
using PartMatch.Core.Tests.Catalogue;
using Xunit;
using static PartMatch.Core.Tests.Catalogue.TestFamily;

namespace PartMatch.Core.Tests.Identification;

/// <summary>Three variants, told apart by three positions: the cover is outside, the wheel ten minutes inside, and of the shaft nobody wrote down how to see it.</summary>
public sealed class VariantIdentificationTests
{
    private static readonly string[] _all = ["lark", "swift", "heron"];

    private static TestFamily Birds() => WithWheelsAndShafts(
            wheel => wheel.Choice("curve", "left", "right").Check("curve", Method.Photo, 1).Length("width").Check("width", Method.Caliper, 3, 0.05m),
            shaft => shaft.Choice("nose", "fixed", "moving").Check("nose", Method.Eye, 1))
        .Variant("heron").Place("cover", cover => cover.Choice("colour", "grey", "red").Check("colour", Method.Photo, 1).Check("colour", Method.Eye, 0.5m))
        .Part("C1", "cover", Has("colour", Word("grey"))).Part("C2", "cover", Has("colour", Word("red")))
        .Wheel("W1", Has("curve", Word("left")), Has("width", Mm(20))).Wheel("W2", Has("curve", Word("right")), Has("width", Mm(21)))
        .Shaft("S1", Has("nose", Word("fixed"))).Shaft("S2", Has("nose", Word("moving")))
        .Access("cover", 0).Access("wheel", 10, "take the cover off");

    // Cover: grey on lark and swift, red on heron. Wheel: left on lark, right on the others. Shaft: one for each, but never to be seen.
    private static TestFamily Fitted() => Birds()
        .Fitted("lark", "cover", "C1").Fitted("swift", "cover", "C1").Fitted("heron", "cover", "C2")
        .Fitted("lark", "wheel", "W1").Fitted("swift", "wheel", "W2").Fitted("heron", "wheel", "W2")
        .Fitted("lark", "shaft", "S1").Fitted("swift", "shaft", "S2").Fitted("heron", "shaft", "S1");

    [Fact]
    public void Before_paying_only_what_shows_from_outside_counts()
    {
        var answer = Ask(Fitted(), CheckMode.BeforePaying, []);
        Assert.Equal(TellApartHeadline.Partly, answer.Headline);
        Assert.Equal(("cover", "colour", Method.Photo, 1m), (answer.Key?.Check.Position, answer.Key?.Check.Feature, answer.Key?.Check.Method, answer.ExpectedMinutes));
        Assert.Equal([("grey", "cover.colour@photo:grey"), ("red", "cover.colour@photo:red")], answer.Key?.Answers.Select(one => (one.Text, one.Seen)) ?? []);
        var pair = Assert.Single(answer.Inseparable);
        Assert.Equal(["lark", "swift"], pair.Candidates);
        Assert.Equal("Wheel: curve, in hand, by photo, 11 min.", pair.WouldSeparate[0].Text);
        Assert.Equal("Taken as equally likely. 2 of 3 positions have a recorded access and take part.", answer.WeightsText);
    }

    // Cover by eye 0.5 min, then for two of three the wheel: 10 min to get there and 1 to look. 0.5 + 2/3 × 11 = 7.83; at worst 11.5.
    [Fact]
    public void In_hand_the_way_to_a_position_counts()
    {
        var answer = Ask(Fitted(), CheckMode.InHand, []);
        Assert.Equal((TellApartHeadline.ToldApart, 7.83m, 11.5m), (answer.Headline, answer.ExpectedMinutes, answer.WorstMinutes));
        Assert.Equal(
            "All 3 are told apart in 7.8 min on average, 11.5 at most. One swapped part deceives a single check: go round the engine as well.", answer.HeadlineText);
        var wheel = answer.Key?.Answers.Select(one => one.Next).OfType<KeyStep>().Single().Check;
        Assert.Equal(("wheel", 1m, (decimal?)10m, "take the cover off"), (wheel?.Position, wheel?.Minutes, wheel?.AccessMinutes, wheel?.Access));
        Assert.DoesNotContain(answer.Inseparable.SelectMany(pair => pair.WouldSeparate), would => would.Feature.StartsWith("shaft", StringComparison.Ordinal));
    }

    [Fact]
    public void Whether_anything_is_there_is_a_question_of_its_own()
    {
        var family = Birds().Fitted("lark", "cover", "C1").Fitted("swift", "cover", Part.None);
        var answer = Decided(VariantIdentification.Decide(family.Facts(), ["lark", "swift"], new TellApartTerms(CheckMode.BeforePaying, [], [])));
        Assert.Equal(TellApartHeadline.ToldApart, answer.Headline);
        Assert.Equal(
            [("no", "cover.present@photo:no", "swift"), ("yes", "cover.present@photo:yes", "lark")],
            answer.Key?.Answers.Select(one => (one.Text, one.Seen, one.Candidates.Single())) ?? []);
        Assert.Contains("1. Whether this is fitted: cover. A photo of the place, please.", answer.Message?.Text, StringComparison.Ordinal);
    }

    // Nothing is there to have a colour, and that is seen; the question whether anything is there comes first among equals.
    [Fact]
    public void Where_nothing_is_fitted_nothing_is_what_is_seen_of_any_feature()
    {
        var family = Birds().Fitted("lark", "wheel", "W1").Fitted("swift", "wheel", Part.None).Fitted("heron", "wheel", "W2");
        Assert.Equal(["swift"], Left(Ask(family, CheckMode.InHand, ["wheel.curve:nothing-there"])));
        Assert.Equal(["swift"], Left(Ask(family, CheckMode.InHand, ["wheel.width@caliper:nothing-there"])));
        Assert.Equal(["lark"], Left(Ask(family, CheckMode.InHand, ["wheel.width:20 mm"]))); // no engine without a wheel gives a reading
        Assert.Equal(["lark", "heron"], Left(Ask(family, CheckMode.InHand, ["wheel.present:yes"])));
        Assert.Equal(["heron"], Left(Ask(family, CheckMode.InHand, ["wheel.curve:right"])));
    }

    // One stop for each position that tells something, the nearest first; the shaft has no recorded access. At the cover the eye is quickest, at the wheel the photo.
    [Fact]
    public void Walk_round_the_engine_stops_once_at_each_position_that_differs()
    {
        var round = Ask(Fitted(), CheckMode.InHand, []).WalkRound;
        Assert.Equal([("cover", "colour", Method.Eye), ("wheel", "curve", Method.Photo)], round.Select(stop => (stop.Position, stop.Check.Feature, stop.Check.Method)));
        Assert.Equal([("grey", "lark swift"), ("red", "heron")], round[0].Answers.Select(answer => (answer.Text, string.Join(' ', answer.Candidates))));
        Assert.Equal(round.Select(stop => stop.Position), Ask(Fitted(), CheckMode.InHand, ["wheel.curve:right"]).WalkRound.Select(stop => stop.Position)); // a part of another is looked for still
        Assert.Equal(["cover"], Ask(Fitted(), CheckMode.BeforePaying, []).WalkRound.Select(stop => stop.Position));
        Assert.NotEmpty(Ask(Fitted(), CheckMode.InHand, ["cover.colour:red"]).WalkRound);
    }

    // A red cover rules lark out; lark's wheel may be in it all the same. By the caliper 10 and 10.08 ± 0.05 each are one answer, 10.3 is another.
    [Fact]
    public void Walk_round_still_looks_for_parts_of_a_variant_that_is_ruled_out()
    {
        var family = WithWheels(wheel => wheel.Length("width").Check("width", Method.Caliper, 3, 0.05m)).Variant("heron").Access("wheel", 0)
            .Place("cover", cover => cover.Choice("colour", "grey", "red").Check("colour", Method.Eye, 1)).Access("cover", 0)
            .Wheel("W1", Has("width", Mm(10))).Wheel("W2", Has("width", Mm(10.08m))).Wheel("W3", Has("width", Mm(10.3m)))
            .Part("C1", "cover", Has("colour", Word("grey"))).Part("C2", "cover", Has("colour", Word("red")))
            .Fitted("lark", "wheel", "W1").Fitted("swift", "wheel", "W2").Fitted("heron", "wheel", "W3")
            .Fitted("lark", "cover", "C1").Fitted("swift", "cover", "C2").Fitted("heron", "cover", "C2");
        var terms = new TellApartTerms(CheckMode.InHand, [Method.Caliper], ["cover.colour:red"]);
        var stop = Decided(VariantIdentification.Decide(family.Facts(), _all, terms)).WalkRound.Single(one => one.Position == "wheel");
        Assert.Equal([("10 … 10.08 mm", "lark swift"), ("10.3 mm", "heron")], stop.Answers.Select(answer => (answer.Text, string.Join(' ', answer.Candidates))));
    }

    // Early larks have the grey cover, late ones the red: either can be seen on one.
    [Fact]
    public void Variant_that_was_built_with_either_part_is_told_from_none_of_them()
    {
        var family = Birds().Fitted("lark", "cover", "C1", Serials(null, 500)).Fitted("lark", "cover", "C2", Serials(501, null))
            .Fitted("swift", "cover", "C1").Fitted("heron", "cover", "C2");
        var answer = Ask(family, CheckMode.BeforePaying, []);
        Assert.Equal([["lark", "swift"], ["lark", "heron"]], answer.Key?.Answers.Select(one => one.Candidates) ?? []);
        Assert.Equal([0.5m, 0.5m], answer.Key?.Answers.Select(one => one.Share) ?? []);
        Assert.Equal([["lark", "swift"], ["lark", "heron"]], answer.Inseparable.Select(pair => pair.Candidates));
        Assert.Equal(["lark"], Left(Ask(family, CheckMode.BeforePaying, ["cover.colour:grey", "cover.colour:red"]))); // two covers at once: only what a lark may have
    }

    [Fact]
    public void Part_of_several_without_a_recorded_value_leaves_the_variant_open()
    {
        var family = Birds().Part("C3", "cover").Fitted("lark", "cover", "C1").Fitted("lark", "cover", "C3").Fitted("swift", "cover", "C2");
        var answer = Decided(VariantIdentification.Decide(family.Facts(), ["lark", "swift"], new TellApartTerms(CheckMode.BeforePaying, [], [])));
        Assert.Equal(TellApartHeadline.NotToldApart, answer.Headline);
        Assert.Equal(["lark", "swift"], Left(Ask(family, CheckMode.InHand, ["cover.colour:red"])).Where(code => code != "heron"));
    }

    [Fact]
    public void Retracted_fitment_and_a_position_that_nobody_recorded_separate_nothing()
    {
        var family = Birds().Fitted("lark", "cover", "C1").Fitted("swift", "cover", "C2", evidence: Retracted());
        var answer = Decided(VariantIdentification.Decide(family.Facts(), ["lark", "swift"], new TellApartTerms(CheckMode.InHand, TellApartTerms.AllTools, [])));
        Assert.Equal(TellApartHeadline.NotToldApart, answer.Headline);
    }

    // Grey cover and left wheel speak for a lark; the cover of a heron on it is foreign.
    [Fact]
    public void Foreign_part_in_an_engine_is_found()
    {
        var family = Fitted().Place("sump", sump => sump.Choice("depth", "deep", "flat").Check("depth", Method.Eye, 1)).Access("sump", 0)
            .Part("D1", "sump", Has("depth", Word("deep"))).Part("D2", "sump", Has("depth", Word("flat")))
            .Fitted("lark", "sump", "D1").Fitted("swift", "sump", "D2").Fitted("heron", "sump", "D2");
        var answer = Ask(family, CheckMode.InHand, ["wheel.curve:left", "cover.colour:red", "sump.depth:deep"]);
        Assert.Equal(TellApartHeadline.NoneLeft, answer.Headline);
        Assert.Equal("What was seen fits none of these: it is something else, a part of another is in it, or something was misread.", answer.HeadlineText);
        Assert.Equal(
            [
                ("wheel", false, "Wheel: curve left: as on lark."), ("cover", true, "Cover: colour red: as on heron, while the rest speaks for lark."),
                ("sump", false, "Sump: depth deep: as on lark."),
            ],
            answer.Positions.Select(one => (one.Position, one.IsForeign, one.Text)));
        Assert.Equal([["lark"], ["heron"], ["lark"]], answer.Positions.Select(one => one.As));
        Assert.Equal(["Cover: colour red"], answer.Candidates[0].RuledOutBy);
    }

    [Fact]
    public void Where_all_that_was_seen_agrees_nothing_is_foreign()
    {
        var answer = Ask(Fitted(), CheckMode.InHand, ["wheel.curve:right", "cover.colour:red"]);
        Assert.Equal((TellApartHeadline.Identified, "By what was seen it is heron, if it is one of these."), (answer.Headline, answer.HeadlineText));
        Assert.Equal(
            [("Wheel: curve right: as on swift or heron.", false), ("Cover: colour red: as on heron.", false)],
            answer.Positions.Select(one => (one.Text, one.IsForeign)));
    }

    [Fact]
    public void What_is_on_none_of_them_is_said_and_foreign()
    {
        var family = Birds().Fitted("lark", "cover", "C1").Fitted("swift", "cover", "C1");
        var answer = Decided(VariantIdentification.Decide(family.Facts(), ["lark", "swift"], new TellApartTerms(CheckMode.InHand, [], ["cover.colour:red"])));
        Assert.Equal([("Cover: colour red: as on none of these.", true)], answer.Positions.Select(one => (one.Text, one.IsForeign)));
    }

    [Fact]
    public void Order_of_the_variants_does_not_change_the_key()
    {
        var one = Ask(Fitted(), CheckMode.InHand, []);
        var other = Decided(VariantIdentification.Decide(Fitted().Facts(), ["heron", "swift", "lark"], new TellApartTerms(CheckMode.InHand, [], [])));
        Assert.Equal((one.ExpectedMinutes, one.WorstMinutes, one.HeadlineText), (other.ExpectedMinutes, other.WorstMinutes, other.HeadlineText));
        Assert.Equal(Answers(one), Answers(other));

        static IEnumerable<string> Answers(TellApartAnswer whole) =>
            whole.Key?.Answers.Select(answer => $"{answer.Seen} {answer.Share} {string.Join(' ', answer.Candidates.Order(StringComparer.Ordinal))}") ?? [];
    }

    private static TellApartAnswer Ask(TestFamily family, CheckMode mode, string[] seen) =>
        Decided(VariantIdentification.Decide(family.Facts(), _all, new TellApartTerms(mode, [], seen)));

    private static TellApartAnswer Decided(TellApartOutcome outcome) => Assert.IsType<TellApartDecided>(outcome).Answer;

    private static IEnumerable<string> Left(TellApartAnswer answer) => answer.Candidates.Where(row => row.State == CandidateState.Possible).Select(row => row.Candidate);
}
