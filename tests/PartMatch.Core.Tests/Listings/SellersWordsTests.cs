using PartMatch.Core.Catalogue;
using PartMatch.Core.Listings;
using Xunit;

namespace PartMatch.Core.Tests.Listings;

/// <summary>Pasted words read, searched for numbers and judged: WA needs pump H-26-1147-C, H-26-1147-E is its look-alike. Everything is invented.</summary>
public sealed class SellersWordsTests
{
    private const string Pump = "Coolant pump\nPart number: H-26-1147-C\nused, £40";

    private static readonly NumberFinder _finder = new(WrittenPage.Pumps.Numbers.All);

    [Theory]
    [InlineData("untested")]
    [InlineData("not tested")]
    [InlineData("has not been tested")]
    [InlineData("we can't test it")]
    [InlineData("ungetestet")]
    [InlineData("non testé")]
    [InlineData("non testée")]
    [InlineData("otestad")]
    [InlineData("sin probar")]
    public void Part_that_nobody_has_tried_is_asked_about_first(string words)
    {
        Assert.Equal(ListingHeadline.Buy, Read(Pump).Headline);
        var answer = Read($"{Pump}, {words}");
        Assert.Equal(ListingHeadline.AskFirst, answer.Headline);
        Assert.Contains("ask whether it works", answer.Because[0], StringComparison.Ordinal);
        Assert.Equal(ItemCondition.Used, Assert.Single(answer.Offers).Offer.Condition);
        Assert.Contains(answer.Ask?.Questions ?? [], question => question.StartsWith("Why has it not been tested", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("tested, works")]
    [InlineData("getestet")]
    [InlineData("testé")]
    [InlineData("probado")]
    public void Part_that_somebody_has_tried_is_bought(string words) => Assert.Equal(ListingHeadline.Buy, Read($"{Pump}, {words}").Headline);

    [Theory]
    [InlineData("wrong! it is really H-26-1147-E")]
    [InlineData("wrong! it is H-26-1147-E really")]
    [InlineData("Sorry, it's actually H-26-1147-E.")]
    [InlineData("Correct number is H-26-1147-E")]
    [InlineData("falsch! es ist in Wirklichkeit H-26-1147-E")]
    public void Words_that_name_another_number_contradict_the_labelled_one(string words)
    {
        var answer = Read($"{Pump}\n{words}");
        Assert.Equal(ListingHeadline.AskFirst, answer.Headline);
        Assert.Equal("two-numbers", Assert.Single(answer.Contradictions).Code);
    }

    [Theory]
    [InlineData("check whether it is H-26-1147-E before you order")]
    [InlineData("it is not H-26-1147-E")]
    [InlineData("it is for H-26-1147-E")]
    public void Words_that_do_not_say_what_is_sold_contradict_nothing(string words) => Assert.Empty(Read($"{Pump}\n{words}").Contradictions);

    // Each number with the price that stands beside it; the cheap one is the wrong one.
    [Theory]
    [InlineData("I have a pump H-26-1147-C for £60 and a pump H-26-1147-E for £25, both used", "used used")]
    [InlineData("H-26-1147-C £60, used, H-26-1147-E £25", "")] // used is of which?
    [InlineData("H-26-1147-C used £60. H-26-1147-E new £25", "used new")]
    [InlineData("£60 H-26-1147-C used; £25 H-26-1147-E used", "used used")]
    public void Two_numbers_with_a_price_each_in_one_sentence_are_two_offers(string words, string conditions)
    {
        var answer = Read(words);
        if (conditions.Length == 0)
        {
            Assert.Equal(ListingHeadline.AskFirst, answer.Headline);
            Assert.Single(answer.Offers);
            return;
        }

        Assert.Equal(
            [("H261147C", "60.00"), ("H261147E", "25.00")],
            answer.Offers.Select(offer => (Assert.Single(offer.Numbers), Assert.IsType<ReadPrice.Stated>(offer.Offer.Price).Money.Amount)));
        Assert.Equal(["buy", "leave-it"], answer.Offers.Select(offer => Codes.Of(offer.Headline)));
        Assert.Equal(conditions, string.Join(' ', answer.Offers.Select(offer => Codes.Of(offer.Offer.Condition))));
    }

    [Theory]
    [InlineData("H-26-1147-C £60, post £5")] // one number
    [InlineData("H-26-1147-C or H-26-1147-E, £60 or £25")] // not in turn
    [InlineData("H-26-1147-C £60 H-26-1147-E £25")] // nothing parts them
    public void Other_sentences_stay_one_thing(string words) => Assert.Single(ListingAssert.Text(words).Products);

    [Theory]
    [InlineData("pump with its seal new € 84 plus post", ItemCondition.New)]
    [InlineData("eine Pumpe neu € 84 abzugeben", ItemCondition.New)]
    [InlineData("a new number of this pump € 84", ItemCondition.NotStated)]
    [InlineData("it cost new € 120 then", ItemCondition.NotStated)]
    [InlineData("kostet neu € 120", ItemCondition.NotStated)]
    public void New_right_before_a_price_is_a_condition(string words, ItemCondition expected) => Assert.Equal(expected, ConditionWords.Find(words));

    private static ListingAnswer Read(string text)
    {
        var read = ListingAssert.Text(text);
        return ListingMatch.Decide(
            new ListingFacts(WrittenPage.Pumps, Array.Empty<ContentsRow>().ToLookup(row => row.Set)), new ListingQuestion(WrittenPage.PumpOf("wa"), null),
            read, _finder.Find(read.Passages));
    }
}
