using CsCheck;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Identification;
using PartMatch.Core.LookAlikes;
using PartMatch.Core.Tests.Catalogue;
using Xunit;
using static PartMatch.Core.Tests.Catalogue.TestFamily;

namespace PartMatch.Core.Tests.Identification;

public sealed class PartIdentificationTests
{
    // Curve and stamp can be seen before paying, the width only roughly (2 mm), the bore not at all.
    private static TestFamily Wheels() => WithWheelsAndShafts(
        wheel => wheel
            .Choice("curve", "left", "right").Choice("stamp", "k1", "k2", "k3").Length("width").Length("bore")
            .Rule("curve", Effect.Alters, consequence: Consequence.Damage).Rule("width", Effect.Alters).Rule("bore", Effect.Stops)
            .Check("curve", Method.Photo, 1).Check("stamp", Method.Label, 2)
            .Check("width", Method.Photo, 2, 2).Check("width", Method.Caliper, 3, 0.05m).Check("bore", Method.Gauge, 5, 0.01m),
        shaft => shaft.Length("width").Check("width", Method.Caliper, 3, 0.05m));

    [Fact]
    public void Before_paying_only_photo_and_label_count_and_the_answer_says_what_would_help_in_hand()
    {
        var family = Wheels().Wheel("1", Has("curve", Word("left")), Has("width", Mm(20)), Has("bore", Mm(8)), Has("stamp", Word("k1")))
            .Wheel("2", Has("curve", Word("left")), Has("width", Mm(21)), Has("bore", Mm(8)), Has("stamp", Word("k1")));
        var answer = Before(family, "1", "2");
        Assert.Equal((TellApartHeadline.NotToldApart, "Nothing at hand separates the two."), (answer.Headline, answer.HeadlineText));
        Assert.Null(answer.Key);
        Assert.Null(answer.Message);
        var pair = Assert.Single(answer.Inseparable);
        Assert.Equal("No check at hand separates 1 and 2.", pair.Text);
        Assert.Equal(["Width, in hand, with a caliper, 3 min."], pair.WouldSeparate.Select(would => would.Text));

        var inHand = InHand(family, [Method.Caliper], "1", "2");
        Assert.Equal((TellApartHeadline.ToldApart, 3m, 3m), (inHand.Headline, inHand.ExpectedMinutes, inHand.WorstMinutes));
        Assert.Equal("The two are told apart in 3 min.", inHand.HeadlineText);
        Assert.Null(inHand.Message);
    }

    [Fact]
    public void Tools_that_are_not_there_are_not_used_but_eye_photo_and_label_always_are()
    {
        var family = Wheels().Wheel("1", Has("stamp", Word("k1")), Has("width", Mm(20))).Wheel("2", Has("stamp", Word("k1")), Has("width", Mm(21)))
            .Wheel("3", Has("stamp", Word("k2")), Has("width", Mm(21)));
        var bare = InHand(family, [], "1", "2", "3");
        Assert.Equal(TellApartHeadline.Partly, bare.Headline);
        Assert.Equal(("stamp", Method.Label), (bare.Key?.Check.Feature, bare.Key?.Check.Method));
        Assert.Equal(["Width, in hand, with a caliper, 3 min."], Assert.Single(bare.Inseparable).WouldSeparate.Select(would => would.Text).Take(1));
        Assert.Equal(TellApartHeadline.ToldApart, InHand(family, [Method.Caliper], "1", "2", "3").Headline);
        Assert.Equal(TellApartHeadline.Partly, InHand(family, [Method.Gauge, Method.Scale], "1", "2", "3").Headline);
    }

    // By hand: curve first 1 min; the two on the right then by the stamp: 1 + 2/3 × 2 = 2.33. Stamp first would cost 2 min and identify all three: cheaper.
    [Fact]
    public void Key_is_the_cheapest_on_average()
    {
        var answer = Before(Three(), "1", "2", "3");
        Assert.Equal((TellApartHeadline.ToldApart, KeyMethod.Exact, 2m, 2m), (answer.Headline, answer.Method, answer.ExpectedMinutes, answer.WorstMinutes));
        Assert.Equal("All 3 are told apart by one question to the seller: stamp.", answer.HeadlineText);
        Assert.Equal(
            [("k1", "stamp@label:k1", Id("1"), 0.3333m), ("k2", "stamp@label:k2", Id("2"), 0.3333m), ("k3", "stamp@label:k3", Id("3"), 0.3333m)],
            answer.Key?.Answers.Select(one => (one.Text, one.Seen, one.Candidates.Single(), one.Share)) ?? []);
        Assert.Equal("Taken as equally likely: no offers are recorded.", answer.WeightsText);
    }

    // Now the first is offered eight times and the others never, with one added to each: 9, 1, 1. The curve first: 1 + 2/11 × 2 = 1.36.
    [Fact]
    public void What_is_offered_most_is_looked_for_first()
    {
        var odds = new Odds(new Dictionary<string, int> { [Id("1")] = 8 }, []);
        var answer = Decided(PartIdentification.Decide(Three().LookAlikes(odds), [Id("1"), Id("2"), Id("3")], new TellApartTerms(CheckMode.BeforePaying, [], [])));
        Assert.Equal(("curve", 1.36m, 3m), (answer.Key?.Check.Feature, answer.ExpectedMinutes, answer.WorstMinutes));
        Assert.Equal([0.8182m, 0.0909m, 0.0909m], answer.Candidates.Select(row => row.Weight)); // 9/11, 1/11, 1/11
        Assert.Equal("Weighted by what is on offer: 8 offers recorded, one added to each so that none is impossible.", answer.WeightsText);
    }

    [Fact]
    public void What_was_seen_narrows_and_says_what_it_ruled_out()
    {
        var answer = Before(Three(), ["curve:right"], "1", "2", "3");
        Assert.Equal([CandidateState.RuledOut, CandidateState.Possible, CandidateState.Possible], answer.Candidates.Select(row => row.State));
        Assert.Equal(["curve right"], answer.Candidates[0].RuledOutBy);
        Assert.Empty(answer.Candidates[1].RuledOutBy);
        Assert.Equal([Id("2"), Id("3")], answer.Key?.Candidates);
        Assert.Equal("The two are told apart by one question to the seller: stamp.", answer.HeadlineText);
    }

    [Fact]
    public void One_left_is_identified_and_none_left_is_said()
    {
        var one = Before(Three(), ["curve:right", "stamp@label:k3"], "1", "2", "3");
        Assert.Equal((TellApartHeadline.Identified, "By what was seen it is 3, if it is one of these."), (one.Headline, one.HeadlineText));
        Assert.Null(one.Key);
        Assert.Null(one.Message);
        var none = Before(Three(), ["curve:left", "stamp@label:k3"], "1", "2", "3");
        Assert.Equal(TellApartHeadline.NoneLeft, none.Headline);
        Assert.All(none.Candidates, row => Assert.Equal(CandidateState.RuledOut, row.State));
        Assert.Equal((0m, 0m), (none.ExpectedMinutes, none.WorstMinutes));
        Assert.Empty(none.Inseparable);
    }

    [Fact]
    public void What_was_seen_and_cannot_be_understood_refuses_the_question()
    {
        var outcome = PartIdentification.Decide(Three().LookAlikes(), [Id("1"), Id("2")], new TellApartTerms(CheckMode.BeforePaying, [], ["curve:up"]));
        Assert.Equal(new SeenRefused("curve:up", "curve: and one of left, right", "for example curve@photo:left"), outcome);
    }

    [Fact]
    public void Different_kinds_are_told_apart_by_what_they_are()
    {
        var answer = Before(Wheels().Wheel("1").Shaft("2"), "1", "2");
        Assert.Equal((TellApartHeadline.ToldApart, 1m), (answer.Headline, answer.ExpectedMinutes));
        Assert.Equal(("kind", "what it is", Method.Photo), (answer.Key?.Check.Feature, answer.Key?.Check.Name, answer.Key?.Check.Method));
        Assert.Equal([("shaft", Id("2")), ("wheel", Id("1"))], answer.Key?.Answers.Select(one => (one.Text, one.Candidates.Single())) ?? []);
        Assert.Contains("1. A photo of the whole of it.", answer.Message?.Text, StringComparison.Ordinal);
    }

    // The same number but for one character, the same to the eye, and the wrong one turns the wrong way: high. The shaft's number is as near, but it is no wheel: low.
    [Fact]
    public void Part_asked_about_alone_is_compared_with_its_dangerous_look_alikes()
    {
        var family = Wheels()
            .Wheel("26-1147-C", Has("curve", Word("left")), Has("width", Mm(20)), Has("bore", Mm(8)))
            .Wheel("26-1147-E", Has("curve", Word("left")), Has("width", Mm(21)), Has("bore", Mm(8)))
            .Shaft("26-1147-H").Wheel("88-0000", Has("curve", Word("right")))
            .Fitted("lark", "wheel", "26-1147-C").Fitted("swift", "wheel", "26-1147-E").Fitted("lark", "shaft", "26-1147-H");
        Assert.Equal([Id("26-1147-C"), Id("26-1147-E")], InHand(family, [Method.Caliper], "26-1147-C").Candidates.Select(row => row.Candidate));
        Assert.Equal([Id("26-1147-C"), Id("26-1147-E")], InHand(family, [Method.Caliper], "26-1147-C", "26-1147-C").Candidates.Select(row => row.Candidate)); // named twice
        var alone = Before(family, "88-0000");
        Assert.Equal((TellApartHeadline.ToldApart, "Nothing recorded can be taken for it with more than low danger."), (alone.Headline, alone.HeadlineText));
    }

    [Fact]
    public void Numbers_that_stand_in_for_each_other_need_no_telling_apart()
    {
        var answer = Before(Wheels().Wheel("1").Wheel("2").Replaced("1", "2", SupersessionWay.Both), "1", "2");

        Assert.StartsWith("Nothing at hand separates the two: one replaces the other", answer.HeadlineText, StringComparison.Ordinal);
        Assert.Equal(
            "alder:1 is replaced by alder:2 (either may stand in for the other). They need not be told apart where that holds.",
            Assert.Single(answer.Inseparable).Text);
    }

    // The newer does for the older, not the other way round: whoever needs the newer must still know.
    [Theory]
    [InlineData("1", "2")]
    [InlineData("2", "1")]
    public void Old_and_new_number_need_no_telling_apart_for_whoever_needs_the_old(string first, string second) => Assert.Equal(
        "alder:1 is replaced by alder:2 (not the other way round); only on lark. "
            + "Where that holds they need not be told apart by whoever needs 1; whoever needs 2 has to know which one it is.",
        Assert.Single(Before(Wheels().Wheel("1").Wheel("2").Replaced("1", "2", variants: ["lark"]), first, second).Inseparable).Text);

    [Theory]
    [InlineData("One casting, two stickers", "One casting, two stickers. They need not be told apart where that holds.")]
    [InlineData("One casting, two stickers.", "One casting, two stickers. They need not be told apart where that holds.")]
    [InlineData(null, "Found to be one part under two numbers. They need not be told apart where that holds.")]
    public void Parts_found_to_be_one_are_said_to_need_no_telling_apart(string? note, string text) => Assert.Equal(
        text, Assert.Single(Before(Wheels().Wheel("1").Wheel("2").Judged("2", "1", PairJudgement.SamePart, note), "1", "2").Inseparable).Text);

    [Fact]
    public void Missing_value_separates_nothing_and_the_answer_says_that_recording_it_might()
    {
        var answer = Before(Wheels().Wheel("1", Has("curve", Word("left"))).Wheel("2"), "1", "2");
        Assert.Equal(TellApartHeadline.NotToldApart, answer.Headline);
        var would = Assert.Single(answer.Inseparable).WouldSeparate;
        Assert.Equal("Curve, if it were recorded for 2: by photo.", would[0].Text);
        Assert.Equal("Width, if it were recorded for 1 and 2: by photo.", would[1].Text); // as cheap as the label
        Assert.Equal("Stamp, if it were recorded for 1 and 2: by its label.", would[2].Text);
    }

    [Fact]
    public void Values_that_are_disputed_or_retracted_separate_nothing()
    {
        var family = Wheels().Wheel("1", Has("curve", Word("left")))
            .Wheel("2", Has("curve", Word("left")), Has("curve", Word("right"), By(EvidenceGrade.MakersDocument, "other")))
            .Wheel("3", Has("curve", Word("right"), Retracted()));
        Assert.Equal(TellApartHeadline.NotToldApart, Before(family, "1", "2", "3").Headline);
    }

    // 1 and 2 of 3 features alike: to be sure of 1, the stamp (2 min) must rule out 3, the curve (1 min) 2. Each rules out one of three: 1 min first.
    [Fact]
    public void To_be_sure_of_the_first_every_check_must_come_out_as_expected()
    {
        var family = Wheels().Wheel("1", Has("curve", Word("left")), Has("stamp", Word("k1"))).Wheel("2", Has("curve", Word("right")), Has("stamp", Word("k1")))
            .Wheel("3", Has("curve", Word("left")), Has("stamp", Word("k3")));
        Assert.Equal(
            [("curve", "left", Id("2")), ("stamp", "k1", Id("3"))],
            Before(family, "1", "2", "3").Confirm.Select(one => (one.Check.Feature, one.Expect, one.RulesOut.Single())));
    }

    // 10 is taken for 10.08, and 10.08 for 10.16, not 10 for 10.16. Once 10 is ruled out, the rest of its answer is 10.08 alone.
    [Fact]
    public void Answers_further_down_a_key_speak_of_those_still_possible()
    {
        var family = Wheels().Wheel("1", Has("curve", Word("left")), Has("width", Mm(10))).Wheel("2", Has("curve", Word("right")), Has("width", Mm(10.08m)))
            .Wheel("3", Has("curve", Word("right")), Has("width", Mm(10.3m)));
        var answer = InHand(family, [Method.Caliper], "1", "2", "3");
        var second = answer.Key?.Answers.Select(one => one.Next).OfType<KeyStep>().Single();
        Assert.Equal("width", second?.Check.Feature);
        Assert.Equal(["10.08 mm", "10.3 mm"], second?.Answers.Select(one => one.Text) ?? []);
    }

    [Theory]
    [InlineData(12, KeyMethod.Exact)]
    [InlineData(13, KeyMethod.Greedy)]
    [InlineData(40, KeyMethod.Greedy)]
    public void Forty_parts_can_be_told_apart(int count, KeyMethod method)
    {
        string[] numbers = [.. Enumerable.Range(1, count).Select(index => $"{index}")];
        var family = numbers.Aggregate(Wheels(), (built, number) => built.Wheel(number, Has("width", Mm(int.Parse(number, null)))));
        var answer = InHand(family, [Method.Caliper], numbers);
        Assert.Equal((TellApartHeadline.ToldApart, method, 3m, count), (answer.Headline, answer.Method, answer.ExpectedMinutes, answer.Key?.Answers.Count));
        Assert.Throws<ArgumentOutOfRangeException>(() => InHand(family, [], [.. Enumerable.Range(1, 41).Select(index => $"{index}")]));
    }

    private static readonly Gen<(RecordedValue[] Values, int Offers)[]> _parts = Gen.Select(
            Gen.OneOf("left", "right", ""), Gen.OneOf("k1", "k2", ""), Gen.Int[0, 4], Gen.Int[0, 3],
            (curve, stamp, width, offers) => (
                new[]
                {
                    curve.Length > 0 ? Has("curve", Word(curve)) : null, stamp.Length > 0 ? Has("stamp", Word(stamp)) : null,
                    width > 0 ? Has("width", Mm(width * 0.07m)) : null,
                }.OfType<RecordedValue>().ToArray(),
                offers))
        .Array[2, 6];

    [Fact]
    public void Order_of_the_candidates_changes_their_order_and_nothing_else() => Gen.Select(_parts, Gen.Int, Gen.Enum<CheckMode>()).Sample((parts, seed, mode) =>
    {
        string[] numbers = [.. Enumerable.Range(1, parts.Length).Select(index => $"{index}")];
        var facts = Family(parts).LookAlikes(new Odds(numbers.Zip(parts).ToDictionary(one => Id(one.First), one => one.Second.Offers), []));
        var terms = new TellApartTerms(mode, [Method.Caliper], []);
        var one = Decided(PartIdentification.Decide(facts, [.. numbers.Select(Id)], terms));
        var other = Decided(PartIdentification.Decide(facts, [.. new Shuffled(seed).Of(numbers).Select(Id)], terms));
        Assert.Equal(Whole(one), Whole(other));
        Assert.Equal(Drawn(one.Key), Drawn(other.Key));
        Assert.Equal(Weights(one), Weights(other));
        Assert.Equal(Pairs(one), Pairs(other));

        static object Whole(TellApartAnswer answer) =>
            (answer.Headline, answer.HeadlineText, answer.Method, answer.ExpectedMinutes, answer.WorstMinutes, answer.Message?.Text);

        static IEnumerable<string> Weights(TellApartAnswer answer) => answer.Candidates.Select(row => $"{row.Candidate} {row.Weight}").Order(StringComparer.Ordinal);

        static IEnumerable<string> Pairs(TellApartAnswer answer) => answer.Inseparable.Select(pair => Sorted(pair.Candidates)).Order(StringComparer.Ordinal);
    });

    // Following any answer of the first check leads where the key said it would.
    [Fact]
    public void Answer_of_the_key_asked_as_seen_leaves_the_candidates_it_named() => Gen.Select(_parts, Gen.Enum<CheckMode>()).Sample((parts, mode) =>
    {
        string[] numbers = [.. Enumerable.Range(1, parts.Length).Select(index => $"{index}")];
        var facts = Family(parts).LookAlikes();
        Follow(Ask([]).Key, []);

        TellApartAnswer Ask(string[] seen) => Decided(PartIdentification.Decide(facts, [.. numbers.Select(Id)], new TellApartTerms(mode, [Method.Caliper], seen)));

        void Follow(KeyStep? step, string[] seen)
        {
            foreach (var answer in step?.Answers ?? [])
            {
                var then = Ask([.. seen, answer.Seen]);
                Assert.Equal(answer.Candidates, then.Candidates.Where(row => row.State == CandidateState.Possible).Select(row => row.Candidate));
                Assert.Equal(Drawn(answer.Next), Drawn(then.Key));
                Follow(answer.Next, [.. seen, answer.Seen]);
            }
        }
    }, iter: 50);

    private static TestFamily Three() => Wheels().Wheel("1", Has("curve", Word("left")), Has("stamp", Word("k1")))
        .Wheel("2", Has("curve", Word("right")), Has("stamp", Word("k2"))).Wheel("3", Has("curve", Word("right")), Has("stamp", Word("k3")));

    private static TestFamily Family((RecordedValue[] Values, int Offers)[] parts) =>
        parts.Select((part, index) => (part, index)).Aggregate(Wheels(), (built, one) => built.Wheel($"{one.index + 1}", one.part.Values));

    private static TellApartAnswer Before(TestFamily family, params string[] numbers) => Before(family, [], numbers);

    private static TellApartAnswer Before(TestFamily family, string[] seen, params string[] numbers) =>
        Decided(PartIdentification.Decide(family.LookAlikes(), [.. numbers.Select(Id)], new TellApartTerms(CheckMode.BeforePaying, [], seen)));

    private static TellApartAnswer InHand(TestFamily family, Method[] tools, params string[] numbers) =>
        Decided(PartIdentification.Decide(family.LookAlikes(), [.. numbers.Select(Id)], new TellApartTerms(CheckMode.InHand, tools, [])));

    private static TellApartAnswer Decided(TellApartOutcome outcome) => Assert.IsType<TellApartDecided>(outcome).Answer;

    // The key without the order of its candidates.
    private static string Drawn(KeyStep? step) => step is null
        ? "."
        : $"{step.Check.Feature}@{step.Check.Method} {step.ExpectedMinutes} ({string.Join("; ", step.Answers.Select(Drawn))})";

    private static string Drawn(StepAnswer answer) => $"{answer.Text} {answer.Seen} {Sorted(answer.Candidates)} {answer.Share}: {Drawn(answer.Next)}";

    private static string Sorted(IEnumerable<string> codes) => string.Join(' ', codes.Order(StringComparer.Ordinal));
}
