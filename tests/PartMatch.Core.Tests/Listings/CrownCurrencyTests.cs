using System.Text;
using PartMatch.Core.Listings;
using PartMatch.Core.Measures;
using Xunit;

namespace PartMatch.Core.Tests.Listings;

public sealed class CrownCurrencyTests
{
    [Theory]
    [InlineData("sv", "SEK")]
    [InlineData("sv-SE", "SEK")]
    [InlineData("da", "DKK")]
    [InlineData("nb-NO", "NOK")]
    public void Crowns_are_those_of_the_language_that_the_page_declares(string language, string currency) =>
        Assert.Equal(new Money("299.00", currency), Assert.IsType<ReadPrice.Stated>(Price(language)).Money);

    [Theory]
    [InlineData("en")]
    [InlineData("de-DE")]
    [InlineData("")]
    public void Crowns_of_any_other_page_stay_open(string language) => Assert.IsType<ReadPrice.Ambiguous>(Price(language));

    private static ReadPrice? Price(string language)
    {
        var page = $"<!doctype html><html lang=\"{language}\"><title>Givare</title><body><h1>Givare, begagnad</h1><p>299 kr</p></body></html>";
        var read = Assert.IsType<ListingReading.Read>(ListingReader.Read(new ListingDocument(ListingFormat.Html, Encoding.UTF8.GetBytes(page)), ListingBounds.Usual));
        return Assert.Single(Assert.Single(read.Listing.Products).Offers).Price;
    }
}
