using PartMatch.Core.Catalogue;
using PartMatch.Core.Listings;
using PartMatch.Core.LookAlikes;
using Xunit;

namespace PartMatch.Core.Tests.Listings;

/// <summary>A few pasted words, from the words to the headline. Engine WA takes pump C; E is its look-alike.</summary>
public sealed class OnlyNumberTests
{
    private static readonly LookAlikeFacts _facts = WrittenPage.Pumps;

    [Theory]
    [InlineData("Water pump H-26-1147-C, used, £40", ListingHeadline.Buy)]
    [InlineData("Hi, still have it.\nIt is the H-26-1147-C, used.\n£40", ListingHeadline.Buy)]
    [InlineData("Water pump H-26-1147-C, used, £40, ring 0151 4455667", ListingHeadline.Buy)]
    [InlineData("Water pump H-26-1147-E, used, £40", ListingHeadline.LeaveIt)]
    [InlineData("Water pump H-26-1147-C or H-26-1147-E, not sure which, used, £40", ListingHeadline.AskFirst)]
    [InlineData("Water pump, used, £40, similar to H-26-1147-C", ListingHeadline.AskFirst)]
    [InlineData("Wanted: water pump H-26-1147-C, used, £40 paid", ListingHeadline.LeaveIt)]
    [InlineData("Water pump, used, £40, not H-26-1147-C", ListingHeadline.AskFirst)]
    [InlineData("Water pump, used, £40, fits H-26-1147-C", ListingHeadline.AskFirst)]
    public void Only_number_of_a_few_words_is_what_is_sold(string words, ListingHeadline headline) => Assert.Equal(headline, Read(words).Headline);

    [Fact]
    public void Numbers_that_are_only_mentioned_are_named_in_the_reason()
    {
        var because = Assert.Single(Read("Water pump H-26-1147-C or H-26-1147-E, not sure which, used, £40").Because);
        Assert.StartsWith("The listing mentions H-26-1147-C, H-26-1147-E, but does not say which number stands on what is sold", because, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("H-26-\n1147-C")]
    [InlineData("H-26-1147-\r\nC")]
    [InlineData("H-\n  26-1147-C")]
    public void Number_that_a_line_end_breaks_is_read(string written) => Assert.Equal("H261147C", Assert.Single(Read($"Water pump {written}, used, £40").Numbers).NumberKey);

    [Theory]
    [InlineData("Water pump, used, £40 -\n2 days to you")]
    [InlineData("Water pump, used, 40,-\n5 for the post")]
    public void Dash_behind_a_price_breaks_no_number(string words) => Assert.Empty(Read(words).Numbers);

    private static ListingAnswer Read(string words)
    {
        var listing = ListingAssert.Text(words);
        return ListingMatch.Decide(
            new ListingFacts(_facts, Array.Empty<ContentsRow>().ToLookup(row => row.Set)), new ListingQuestion(WrittenPage.PumpOf("wa"), null), listing,
            new NumberFinder(_facts.Numbers.All).Find(listing.Passages));
    }
}
