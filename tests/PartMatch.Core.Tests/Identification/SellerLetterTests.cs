using CsCheck;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Identification;
using PartMatch.Core.Tests.Catalogue;
using Snapshooter.Xunit3;
using Xunit;
using static PartMatch.Core.Tests.Catalogue.TestFamily;

namespace PartMatch.Core.Tests.Identification;

/// <summary>Pumps with two standard photographs; the words of every value occur in no other text.</summary>
public sealed class SellerLetterTests
{
    private static readonly string[] _features = ["blade", "flange", "port", "spout"];

    private static readonly string[] _words = ["zigzag", "yonder", "quirky"];

    private static TestFamily Pumps() => new TestFamily().Variant("lark").Place("pump", pump =>
    {
        foreach (var feature in _features)
        {
            pump.Choice(feature, _words);
        }

        pump.Length("height").Check("height", Method.Caliper, 3, 0.05m)
            .Check("blade", Method.Photo, 1, how: "turn it so that the wheel faces you").Check("flange", Method.Photo, 2).Check("port", Method.Photo, 1.5m)
            .Check("spout", Method.Label, 4, how: "read the sticker")
            .Shot("face", "Mating face from above", "lay it flat, camera square on", "flange", "port").Shot("wheel", "Wheel side", null, "port");
    });

    private static RecordedValue[] Values(params int[] words) => [.. words.Select((word, index) => Has(_features[index], Word(_words[word])))];

    // flange and port differ and one photograph shows both; nothing asks for the blade, which is the same on all, or for the height, which needs the pump in hand.
    [Fact]
    public void One_photograph_is_asked_for_where_it_shows_all_that_is_needed()
    {
        var message = Letter(Pumps().Part("1", "pump", Values(0, 0, 0)).Part("2", "pump", Values(0, 1, 0)).Part("3", "pump", Values(0, 0, 1)), "1", "2", "3");
        Assert.Equal(["port", "flange"], message?.Questions.Select(question => question.Feature) ?? []);
        Assert.Equal([new AskedShot("pump", "face", "Mating face from above", "lay it flat, camera square on")], message?.Shots ?? []);
        Assert.Equal(
            """
            Hello,

            I am interested in the pump you offer. It is easily confused with others, so before I buy I have to know which one it is. Could you please send me:

            1. A photo of the mating face from above, so that one can see: port; flange. Lay it flat, camera square on.
            2. Every number on the part itself, exactly as it stands there.
            3. One photo of the part with a sheet of paper beside it on which today's date is written.

            There is no need to take anything apart. Thank you.
            """,
            message?.Text);
    }

    [Fact]
    public void What_no_standard_photograph_shows_is_asked_for_by_itself()
    {
        var message = Letter(Pumps().Part("1", "pump", Values(0, 0, 0)).Part("2", "pump", Values(1, 0, 0)), "1", "2");
        Assert.Empty(message?.Shots ?? []);
        Assert.Equal("A photo that shows: blade. Turn it so that the wheel faces you.", Assert.Single(message?.Questions ?? []).Text);
        Assert.Contains("1. A photo that shows: blade. Turn it so that the wheel faces you.\n2. Every number", message?.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void Label_is_asked_for_in_words_or_as_a_photo()
    {
        var message = Letter(Pumps().Part("1", "pump", Values(0, 0, 0, 0)).Part("2", "pump", Values(0, 0, 0, 1)), "1", "2");
        Assert.Contains("1. What its label or print says of the spout, or a sharp photo of it. Read the sticker.\n", message?.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void Engine_is_asked_about_by_its_positions()
    {
        var family = Pumps().Variant("swift").Access("pump", 0).Part("1", "pump", Values(0, 0, 0)).Part("2", "pump", Values(0, 0, 1))
            .Fitted("lark", "pump", "1").Fitted("swift", "pump", "2");
        var outcome = VariantIdentification.Decide(family.Facts(), ["lark", "swift"], new TellApartTerms(CheckMode.BeforePaying, [], []));
        Assert.Equal(
            """
            Hello,

            I am interested in the engine you offer. There are several versions of it, so before I buy I have to know which one it is. Could you please send me:

            1. A photo of the pump: mating face from above, so that one can see: port. Lay it flat, camera square on.
            2. The engine's code and serial number as they stand on it, and a photo of the place.
            3. One photo of the engine with a sheet of paper beside it on which today's date is written.

            There is no need to take anything apart. Thank you.
            """,
            Assert.IsType<TellApartDecided>(outcome).Answer.Message?.Text);
    }

    private static readonly Gen<int[][]> _pumps = Gen.Int[0, 2].Array[0, 4].Array[2, 5];

    private static readonly decimal[] _minutes = [1, 2, 1.5m, 4];

    // Every choice of the four features gone through: none of those that separate as much costs less, or as much with fewer questions.
    [Fact]
    public void Message_asks_a_cheapest_choice_of_questions_and_says_what_each_splits() => _pumps.Sample(pumps =>
    {
        string[] numbers = [.. Enumerable.Range(1, pumps.Length).Select(index => $"{index}")];
        int[] every = [.. Enumerable.Range(0, pumps.Length)];
        (int One, int Other)[] pairs = [.. every.SelectMany(one => every[(one + 1)..], (one, other) => (one, other))];
        var message = Letter(Family(pumps), numbers);
        int[] asked = [.. (message?.Questions ?? []).Select(question => Array.IndexOf(_features, question.Feature))];
        var most = Split(Enumerable.Range(0, 4));
        Assert.Equal(most, Split(asked));
        var least = Enumerable.Range(0, 16).Select(choice => Enumerable.Range(0, 4).Where(feature => (choice >> feature & 1) == 1).ToArray())
            .Where(choice => Split(choice).SequenceEqual(most)).Min(choice => (choice.Sum(feature => _minutes[feature]), choice.Length));
        Assert.Equal(least, (asked.Sum(feature => _minutes[feature]), asked.Length));
        Assert.All(message?.Questions ?? [], question => Assert.Equal(
            Split([Array.IndexOf(_features, question.Feature)]).Select(pair => $"{Id(numbers[pair.One])} {Id(numbers[pair.Other])}"),
            question.Splits.Select(pair => string.Join(' ', pair))));

        (int One, int Other)[] Split(IEnumerable<int> features) => [.. pairs.Where(pair => features.Any(feature => Differ(pumps[pair.One], pumps[pair.Other], feature)))];

        static bool Differ(int[] one, int[] other, int feature) => feature < one.Length && feature < other.Length && one[feature] != other[feature];
    });

    [Fact]
    public void Message_never_says_which_answer_is_hoped_for_and_always_asks_for_numbers_and_the_date() => _pumps.Sample(pumps =>
    {
        var message = Letter(Family(pumps), [.. Enumerable.Range(1, pumps.Length).Select(index => $"{index}")]);
        var everything = string.Join('\n', message?.Questions.Select(question => question.Text).Prepend(message.Text) ?? []);
        Assert.DoesNotContain(_words, word => everything.Contains(word, StringComparison.OrdinalIgnoreCase));
        Assert.DoesNotContain("alder", everything, StringComparison.OrdinalIgnoreCase); // nor any number hoped for
        string[] always = message is null ? [] : ["today's date", "Every number on the part itself"];
        Assert.All(always, words => Assert.Contains(words, everything, StringComparison.Ordinal));
        Assert.All(message?.Shots ?? [], shot => Assert.Equal("pump", shot.Kind));
    });

    // Three pumps that a seller's pictures can tell apart but for two, one of them replaced by a fourth.
    [Fact]
    public void Whole_answer_as_JSON_shows_it()
    {
        var family = Pumps()
            .Part("26-1147-A", "pump", [.. Values(0, 0, 0), Has("height", Mm(40))]).Part("26-1147-C", "pump", [.. Values(0, 1, 0), Has("height", Mm(40))])
            .Part("26-1147-E", "pump", [.. Values(0, 1, 0), Has("height", Mm(44))]).Part("26-1147-F", "pump", [.. Values(0, 1), Has("height", Mm(44))])
            .Replaced("26-1147-E", "26-1147-F", span: Serials(41206, null));
        string[] parts = [Id("26-1147-A"), Id("26-1147-C"), Id("26-1147-E"), Id("26-1147-F")];
        var outcome = PartIdentification.Decide(family.LookAlikes(), parts, new TellApartTerms(CheckMode.BeforePaying, [], ["blade@photo:zigzag"]));
        Snapshot.Match(AsJson.Of(Assert.IsType<TellApartDecided>(outcome).Answer));
    }

    private static TestFamily Family(int[][] pumps) => pumps.Select((words, index) => (words, index))
        .Aggregate(Pumps(), (family, pump) => family.Part($"{pump.index + 1}", "pump", Values(pump.words)));

    private static SellerMessage? Letter(TestFamily family, params string[] numbers) => Assert.IsType<TellApartDecided>(
        PartIdentification.Decide(family.LookAlikes(), [.. numbers.Select(Id)], new TellApartTerms(CheckMode.BeforePaying, [], []))).Answer.Message;
}
