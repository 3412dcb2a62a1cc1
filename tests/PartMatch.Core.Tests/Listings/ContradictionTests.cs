using System.Text;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Listings;
using Xunit;

namespace PartMatch.Core.Tests.Listings;

/// <summary>Whole pages, read, searched for numbers and judged: a contradiction of one thing is not held against another.</summary>
public sealed class ContradictionTests
{
    private static readonly NumberFinder _finder = new(WrittenPage.Pumps.Numbers.All);

    [Fact]
    public void New_row_of_a_list_is_not_contradicted_by_its_used_neighbours()
    {
        var answer = Read(
            "<table><tr><th>Number<th>Description<th>Condition<th>Price £<tr><td>H-26-1147-C<td>Coolant pump<td>new<td>90.00<tr><td>H-10-2000-A<td>Dowel<td>used<td>2.00</table>");
        Assert.Equal(["buy", "leave-it"], answer.Offers.Select(offer => Codes.Of(offer.Headline)));
        Assert.Empty(answer.Contradictions);
    }

    [Fact]
    public void Words_below_a_list_count_against_its_new_rows()
    {
        var answer = Read("<table><tr><th>Number<th>Condition<th>Price £<tr><td>H-26-1147-C<td>new<td>90.00</table><p>All of it removed from a running engine.");
        Assert.Equal("condition-words", Assert.Single(answer.Contradictions).Code);
        Assert.Equal(ListingHeadline.AskFirst, answer.Headline);
    }

    [Fact]
    public void Two_numbers_of_one_product_are_not_held_against_another()
    {
        const string First = """{"@type":"Product","name":"Coolant pump H-26-1147-E","mpn":"H-26-1147-C","offers":{"@type":"Offer","price":"70.00","priceCurrency":"GBP","itemCondition":"UsedCondition"}}""";
        const string Second = """{"@type":"Product","name":"Coolant pump","mpn":"H-26-1147-C","offers":{"@type":"Offer","price":"90.00","priceCurrency":"GBP","itemCondition":"UsedCondition"},"sku":"2"}""";
        var answer = Read($$"""<script type="application/ld+json">{"@context":"https://schema.org","@graph":[{{First.Replace("\"mpn\"", "\"sku\":\"1\",\"mpn\"", StringComparison.Ordinal)}},{{Second}}]}</script>""");
        Assert.Equal("two-numbers", Assert.Single(answer.Contradictions).Code);
        Assert.Equal(["ask-first", "buy"], answer.Offers.Select(offer => Codes.Of(offer.Headline)));
    }

    [Theory]
    [InlineData("The bolts are used once.", false)]
    [InlineData("It can be used on both engines.", false)]
    [InlineData("Never used, still wrapped.", false)]
    [InlineData("Used for 40 hours, then taken out. Second-hand, then.", true)]
    [InlineData("It is not yet sold.", false)]
    public void Only_words_that_say_it_count(string words, bool contradicts)
    {
        var answer = Read($"<table><tr><th>Number<th>Condition<th>Stock<th>Price £<tr><td>H-26-1147-C<td>new<td>1<td>90.00</table><p>{words}");
        Assert.Equal(contradicts, answer.Contradictions.Count > 0);
    }

    [Theory]
    [InlineData("product:price:amount", "90.00", false)]
    [InlineData("og:price:amount", "90", false)] // the same amount
    [InlineData("product:price:amount", "79.00", true)]
    public void Declared_price_counts_against_the_stated_one_where_it_differs(string property, string amount, bool contradicts)
    {
        var answer = Read($"<head><meta property={property} content={amount}><meta property=product:price:currency content=GBP></head>"
            + "<table><tr><th>Number<th>Condition<th>Price £<tr><td>H-26-1147-C<td>new<td>90.00</table>");
        Assert.Equal(contradicts ? ["declared-price"] : [], answer.Contradictions.Select(contradiction => contradiction.Code));
        Assert.Equal(contradicts ? ListingHeadline.AskFirst : ListingHeadline.Buy, answer.Headline);
        Assert.Equal("90.00", Assert.IsType<ReadPrice.Stated>(Assert.Single(answer.Offers).Offer.Price).Money.Amount);
    }

    private static ListingAnswer Read(string page)
    {
        var read = Assert.IsType<ListingReading.Read>(ListingReader.Read(new ListingDocument(ListingFormat.Html, Encoding.UTF8.GetBytes(page)), ListingBounds.Usual)).Listing;
        return ListingMatch.Decide(
            new ListingFacts(WrittenPage.Pumps, Array.Empty<ContentsRow>().ToLookup(row => row.Set)), new ListingQuestion(WrittenPage.PumpOf("wa"), null), read, _finder.Find(read.Passages));
    }
}
