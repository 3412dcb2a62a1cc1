using PartMatch.Core.Catalogue;
using PartMatch.Core.Fit;
using PartMatch.Core.Listings;
using PartMatch.Core.LookAlikes;
using PartMatch.Core.Measures;
using Xunit;

namespace PartMatch.Core.Tests.Listings;

/// <summary>The verdicts and headlines as the table of outcomes in api-docs/listings.md says them.</summary>
public sealed class ListingMatchTests
{
    private static readonly ListingQuestion _forWa = new(WrittenPage.PumpOf("wa"), null);

    private static WrittenPage Page() => new(WrittenPage.Pumps);

    [Fact]
    public void Right_number_used_and_priced_is_bought_with_the_photo_question_for_its_look_alike()
    {
        var answer = Page().With("H-26-1147-C").Against(_forWa);
        Assert.Equal((ListingHeadline.Buy, "Buy"), (answer.Headline, answer.HeadlineText));
        var number = Assert.Single(answer.Numbers);
        Assert.Equal((NumberVerdict.RightOne, Headline.Fits), (number.Verdict, number.Fit));
        Assert.Contains("H-26-1147-E (danger high", number.Text, StringComparison.Ordinal);
        Assert.NotNull(answer.Ask); // before paying: what separates it from the look-alike, sending, return
        Assert.Contains(answer.Ask.Questions, question => question.Contains("rotation", StringComparison.Ordinal));
    }

    [Fact]
    public void Look_alike_of_what_is_needed_is_left_and_nothing_is_asked()
    {
        var answer = Page().With("H-26-1147-E").Against(_forWa);
        Assert.Equal(ListingHeadline.LeaveIt, answer.Headline);
        var number = Assert.Single(answer.Numbers);
        Assert.Equal((NumberVerdict.LookAlike, DangerLevel.High, Headline.MountsButRunsDifferently), (number.Verdict, number.Danger, number.Fit));
        Assert.Null(answer.Ask);
    }

    [Fact]
    public void The_same_look_alike_is_the_right_one_for_the_other_engine() =>
        Assert.Equal(NumberVerdict.RightOne, Assert.Single(Page().With("H-26-1147-E").Against(new ListingQuestion(WrittenPage.PumpOf("wb"), null)).Numbers).Verdict);

    [Theory]
    [InlineData("H-26-1147-F", NumberVerdict.NewerNumber, ListingHeadline.Buy)]
    [InlineData("H-26-1147-B", NumberVerdict.OlderNumber, ListingHeadline.AskFirst)] // the maker does not put it in place of the newer
    [InlineData("H-10-2000-A", NumberVerdict.AnotherKnownPart, ListingHeadline.LeaveIt)] // a dowel
    [InlineData("H-26-1147-G", NumberVerdict.Unknown, ListingHeadline.AskFirst)]
    [InlineData("26-70-5", NumberVerdict.NarrowsOnly, ListingHeadline.AskFirst)] // cast on both pumps
    public void Every_other_standing_of_a_number_has_its_verdict(string number, NumberVerdict verdict, ListingHeadline headline)
    {
        var answer = Page().With(number).Against(_forWa);
        Assert.Equal((verdict, headline), (Assert.Single(answer.Numbers).Verdict, answer.Headline));
    }

    [Fact]
    public void Unlisted_number_that_only_claims_to_fit_is_asked_about()
    {
        var answer = Page().With("ZK-4471").With("H-26-1147-C", NumberRole.Fits, "text", PassagePlace.Text).Against(_forWa);
        Assert.Equal(ListingHeadline.AskFirst, answer.Headline);
        Assert.Equal(NumberVerdict.ClaimedOnly, answer.Numbers[0].Verdict);
        Assert.Contains("the seller's word and nothing else", answer.Numbers[0].Text, StringComparison.Ordinal);
    }

    [Fact]
    public void Page_that_names_no_number_of_what_it_sells_is_asked_about() =>
        Assert.Equal(ListingHeadline.AskFirst, Page().With("H-26-1147-C", NumberRole.Fits, "text", PassagePlace.Text).Against(_forWa).Headline);

    [Fact]
    public void Unknown_number_beside_a_known_one_does_not_stand_in_the_way() =>
        Assert.Equal(ListingHeadline.Buy, Page().With("H-26-1147-C").With("LAGER-77", where: "text", place: PassagePlace.Text).Against(_forWa).Headline);

    [Theory]
    [InlineData(NumberReading.Broken, null, ListingHeadline.Buy)]
    [InlineData(NumberReading.ForeignLetters, null, ListingHeadline.Buy)]
    [InlineData(NumberReading.LookAlikeCharacters, null, ListingHeadline.AskFirst)]
    [InlineData(NumberReading.AsWritten, "XH-26-1147-C9", ListingHeadline.AskFirst)]
    public void How_a_number_had_to_be_read_bounds_the_headline(NumberReading read, string? within, ListingHeadline headline) =>
        Assert.Equal(headline, Page().With("H-26-1147-C", read: read, within: within).Against(_forWa).Headline);

    [Fact]
    public void Title_and_table_with_numbers_of_two_parts_contradict_each_other()
    {
        var answer = Page().With("H-26-1147-C").With("H-26-1147-E", where: "table row 2, Number", place: PassagePlace.TableCell, stated: NumberProperty.Number).Against(_forWa);
        var contradiction = Assert.Single(answer.Contradictions);
        Assert.Equal(("two-numbers", "title: H-26-1147-C", "table row 2, Number: H-26-1147-E"), (contradiction.Code, contradiction.One, contradiction.Other));
        Assert.Equal(ListingHeadline.AskFirst, answer.Headline);
        Assert.StartsWith("The title says H-26-1147-C, the table row 2, Number says H-26-1147-E.", answer.Ask?.Questions[0], StringComparison.Ordinal);
    }

    [Fact]
    public void Heading_that_names_the_right_one_and_its_look_alike_is_asked_about()
    {
        var answer = Page().With("H-26-1147-C").With("H-26-1147-E").Against(_forWa);
        Assert.Equal(ListingHeadline.AskFirst, answer.Headline);
        Assert.Contains("H-26-1147-C and H-26-1147-E", answer.Because[0], StringComparison.Ordinal);
        Assert.StartsWith("Which numbers stand on the part itself?", answer.Ask?.Questions[0], StringComparison.Ordinal);
    }

    [Fact]
    public void Heading_that_names_the_right_one_and_a_part_that_goes_with_it_is_bought() =>
        Assert.Equal(ListingHeadline.Buy, Page().With("H-26-1147-C").With("H-10-2000-A").Against(_forWa).Headline);

    // Pump E turns anticlockwise and WA turns it clockwise: the family's need says so.
    [Fact]
    public void Look_alike_is_told_with_what_is_wrong_with_it_there() =>
        Assert.Contains("clockwise", Assert.Single(Page().With("H-26-1147-E").Against(_forWa).Because), StringComparison.Ordinal);

    [Fact]
    public void Picture_named_after_another_part_contradicts_the_text() =>
        Assert.Equal("picture-number", Assert.Single(Page().With("H-26-1147-C").With("H-26-1147-E", NumberRole.Mentioned, "picture", PassagePlace.Picture).Against(_forWa).Contradictions).Code);

    [Theory]
    [InlineData(ItemCondition.New, "Gebraucht, aus Schlachtung", "condition-words")]
    [InlineData(ItemCondition.New, "new old stock, never used", null)]
    [InlineData(ItemCondition.New, "not used, as in the photo", null)]
    [InlineData(ItemCondition.Used, "for parts or repair", "condition-words")]
    [InlineData(ItemCondition.Used, "runs well, used 40 hours", null)]
    public void Words_against_the_stated_condition_are_pointed_out(ItemCondition stated, string words, string? code)
    {
        var page = Page().With("H-26-1147-C");
        page.Offer = page.Offer with { Condition = stated };
        page.Words = words;
        Assert.Equal(code, page.Against(_forWa).Contradictions.Select(one => one.Code).SingleOrDefault());
    }

    [Theory]
    [InlineData(AssemblyLevel.Complete, "Rumpfmotor, ohne Kopf", "level-words")]
    [InlineData(AssemblyLevel.HeardRunning, "a long block really", "level-words")]
    [InlineData(AssemblyLevel.Short, "Rumpfmotor, ohne Kopf", null)]
    [InlineData(AssemblyLevel.Short, "from a complete engine", null)] // where it came from is no promise
    [InlineData(AssemblyLevel.NotStated, "Rumpfmotor", null)]
    public void Words_of_less_than_the_offered_level_are_pointed_out(AssemblyLevel offered, string words, string? code)
    {
        var page = Page().With("H-26-1147-C");
        page.Offer = page.Offer with { Level = offered };
        page.Words = words;
        Assert.Equal(code, page.Against(_forWa).Contradictions.Select(one => one.Code).SingleOrDefault());
    }

    [Theory]
    [InlineData(Availability.SoldOut, ListingHeadline.LeaveIt, "It is sold out.")]
    [InlineData(Availability.OutOfStock, ListingHeadline.LeaveIt, "It is out of stock.")]
    [InlineData(Availability.Reserved, ListingHeadline.AskFirst, "It is reserved for somebody else.")]
    [InlineData(Availability.NotStated, ListingHeadline.Buy, null)]
    public void What_is_gone_is_left(Availability availability, ListingHeadline headline, string? whyNot)
    {
        var page = Page().With("H-26-1147-C");
        page.Offer = page.Offer with { Availability = availability };
        var answer = page.Against(_forWa);
        Assert.Equal((headline, whyNot), (answer.Headline, Assert.Single(answer.Offers).WhyNot));
    }

    [Fact]
    public void Price_that_can_be_read_in_two_ways_is_asked_about()
    {
        var page = Page().With("H-26-1147-C");
        page.Offer = page.Offer with { Price = new ReadPrice.Ambiguous("1.299 €", [new Money("1299", "EUR"), new Money("1.299", "EUR")], "1299 or 1.299.") };
        var answer = page.Against(_forWa);
        Assert.Equal(ListingHeadline.AskFirst, answer.Headline);
        Assert.Contains("What does it cost, in which currency, and for how many pieces?", answer.Ask?.Questions ?? []);
    }

    [Fact]
    public void Condition_that_is_not_stated_is_asked_for()
    {
        var page = Page().With("H-26-1147-C");
        page.Offer = page.Offer with { Condition = ItemCondition.NotStated };
        Assert.Equal(ListingHeadline.AskFirst, page.Against(_forWa).Headline);
    }

    [Fact]
    public void Page_without_an_offer_is_never_bought()
    {
        var page = Page().With("H-26-1147-C");
        page.HasOffer = false;
        Assert.Equal(ListingHeadline.AskFirst, page.Against(_forWa).Headline);
    }

    [Fact]
    public void Set_of_four_shows_its_price_each()
    {
        var page = Page().With("H-26-1147-C");
        page.Offer = page.Offer with { Price = new ReadPrice.Stated("144.00", new Money("144.00", "GBP")), Pieces = 4 };
        Assert.Equal(new Money("36.00", "GBP"), Assert.Single(page.Against(_forWa).Offers).UnitPrice); // 144.00 / 4
    }

    [Theory]
    [InlineData(AssemblyLevel.Short, ListingHeadline.AskFirst, 2)] // head and valve gear; what is bolted on
    [InlineData(AssemblyLevel.Complete, ListingHeadline.Buy, 0)]
    [InlineData(AssemblyLevel.HeardRunning, ListingHeadline.Buy, 0)]
    [InlineData(AssemblyLevel.NotStated, ListingHeadline.AskFirst, 0)]
    public void Level_below_the_one_needed_lists_what_is_missing(AssemblyLevel sold, ListingHeadline headline, int missing)
    {
        var page = Page().With("H-26-1147-C");
        page.Offer = page.Offer with { Level = sold };
        var answer = page.Against(_forWa with { Level = AssemblyLevel.Complete });
        Assert.Equal((headline, missing), (answer.Headline, answer.Missing.Count));
    }

    [Theory]
    [InlineData(Certainty.Certain, ListingHeadline.Buy)]
    [InlineData(Certainty.Possible, ListingHeadline.AskFirst)]
    public void Kit_opens_into_its_contents(Certainty certainty, ListingHeadline headline)
    {
        ContentsRow[] rows = [new("harl:H-90-0001-A", LookAlikes.WrenFamily.PumpC, 1, certainty, null), new("harl:H-90-0001-A", "harl:H-10-2000-A", 2, Certainty.Certain, null)];
        var answer = Page().With("H-90-0001-A").Against(_forWa, rows.ToLookup(row => row.Set));
        Assert.Equal(headline, answer.Headline);
        Assert.Equal([NumberVerdict.RightOne, NumberVerdict.AnotherKnownPart], Assert.Single(answer.Numbers).Holds.Select(held => held.Verdict));
    }

    [Fact]
    public void Without_an_engine_a_number_is_only_named_and_the_page_is_asked_about()
    {
        var answer = Page().With("H-26-1147-C").Against(new ListingQuestion(null, null));
        Assert.Equal((ListingHeadline.AskFirst, NumberVerdict.AnotherKnownPart), (answer.Headline, Assert.Single(answer.Numbers).Verdict));
        Assert.StartsWith("H-26-1147-C is Coolant pump (harl).", answer.Numbers[0].Text, StringComparison.Ordinal);
    }
}
