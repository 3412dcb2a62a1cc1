using PartMatch.Core.Listings;
using Xunit;

namespace PartMatch.Core.Tests.Listings;

/// <summary>
/// Written forms of money. Grouping and decimal marks by country: Unicode CLDR, numbers, "symbols" (de, en, fr, sv, de-CH, es, en-IN); strokes for no decimals
/// (84.–, 1299:-): common practice, no source.
/// </summary>
public sealed class PriceTextTests
{
    [Theory]
    [InlineData("1.299,00 €", null, "1299.00", "EUR", "de, es: point parts thousands, comma decimals")]
    [InlineData("$1,299.00", "USD", "1299.00", "USD", "en: comma parts thousands; the page settles which dollar")]
    [InlineData("1 299,00 kr", "SEK", "1299.00", "SEK", "sv: space parts thousands; the page settles which crown")]
    [InlineData("1\u00A0299,00\u00A0€", null, "1299.00", "EUR", "fr: with spaces that do not break")]
    [InlineData("1\u202F299 €", null, "1299.00", "EUR", "fr: with narrow spaces, no decimals")]
    [InlineData("CHF 1'299.00", null, "1299.00", "CHF", "de-CH: apostrophe")]
    [InlineData("CHF 1’299.-", null, "1299.00", "CHF", "de-CH: typographic apostrophe, a stroke for no decimals")]
    [InlineData("Fr. 84.–", null, "84.00", "CHF", "de-CH: the franc by its word")]
    [InlineData("12,50", "EUR", "12.50", "EUR", "two digits after a mark are decimals")]
    [InlineData("12.5", "EUR", "12.50", "EUR", "so is one")]
    [InlineData("EUR 84", null, "84.00", "EUR", "code before")]
    [InlineData("84 EUR", null, "84.00", "EUR", "code after")]
    [InlineData("84 Euro", null, "84.00", "EUR", "word")]
    [InlineData("£84.-", null, "84.00", "GBP", "sign and stroke")]
    [InlineData("£1,299", null, "1299.00", "GBP", "the comma is never decimal where the pound is at home")]
    [InlineData("US$1,299", null, "1299.00", "USD", "nor where the dollar is")]
    [InlineData("1299:-", "SEK", "1299.00", "SEK", "sv: colon and stroke")]
    [InlineData("1.299:-", "ISK", "1299", "ISK", "a currency without decimals leaves no other reading")]
    [InlineData("¥1,299", "JPY", "1299", "JPY", "the same")]
    [InlineData("₹12,34,567.00", null, "1234567.00", "INR", "en-IN: twos before the last three")]
    [InlineData("1.234.567 €", null, "1234567.00", "EUR", "a mark that stands twice parts thousands")]
    [InlineData("1,234,567.8 USD", null, "1234567.80", "USD", "the same in English")]
    [InlineData("0.125 EUR", "EUR", null, null, "a nought leads decimals only, and there is no such coin")]
    [InlineData("Price: 84,00 € incl.", null, "84.00", "EUR", "words around it")]
    public void Written_form_is_read(string written, string? declared, string? amount, string? currency, string reason)
    {
        var price = PriceText.Read(written, declared);

        if (amount is null)
        {
            Assert.True(price is ReadPrice.Ambiguous { Readings.Count: 1 }, reason);
            return;
        }

        ListingAssert.Money(amount, currency!, price);
        Assert.Equal(PageTidy(written), price.Written);
    }

    [Theory]
    [InlineData("1.299 €", null, new[] { "1299.00 EUR", "1.299 EUR" }, "three digits after a single mark")]
    [InlineData("1,299 €", null, new[] { "1299.00 EUR", "1.299 EUR" }, "the euro is at home where the comma is decimal, and where it is not")]
    [InlineData("KWD 1.299", null, new[] { "1299.000 KWD", "1.299 KWD" }, "a currency of three digits has both")]
    [InlineData("$40", null, new[] { "40.00 USD", "40.00 CAD", "40.00 AUD", "40.00 NZD" }, "of which country")]
    [InlineData("40 kr", null, new[] { "40.00 SEK", "40.00 NOK", "40.00 DKK", "40 ISK" }, "of which country")]
    [InlineData("¥900", null, new[] { "900 JPY", "900.00 CNY" }, "yen or yuan")]
    [InlineData("12,50", null, new[] { "12.50" }, "no currency")]
    [InlineData("1299:-", null, new[] { "1299.00" }, "no currency by that stroke alone")]
    [InlineData("$40", "EUR", new[] { "40.00 USD", "40.00 CAD", "40.00 AUD", "40.00 NZD", "40.00 EUR" }, "sign and declaration disagree")]
    [InlineData("40 € 44 €", null, new[] { "40.00 EUR", "44.00 EUR" }, "no word says which")]
    public void What_can_be_read_in_two_ways_is_given_in_both(string written, string? declared, string[] readings, string reason)
    {
        var price = PriceText.Read(written, declared);

        Assert.Equal(readings, ListingAssert.Readings(price));
        Assert.True(Assert.IsType<ReadPrice.Ambiguous>(price).Why.Length > 0, reason);
    }

    [Theory]
    [InlineData("ask", "no amount in it")]
    [InlineData("auf Anfrage", "no amount in it")]
    [InlineData("", "no amount in it")]
    [InlineData("from 20 €", "a lowest price, not the price")]
    [InlineData("ab 20 €", "a lowest price, not the price")]
    [InlineData("à partir de 20 €", "a lowest price, not the price")]
    [InlineData("20–30 €", "a range, not a price")]
    [InlineData("20 € - 30 €", "a range, not a price")]
    [InlineData("20 to 30 EUR", "a range, not a price")]
    [InlineData("20 € per month", "a price by month, not the price")]
    [InlineData("20 €/mo", "a price by month, not the price")]
    [InlineData("20 € monatlich", "a price by month, not the price")]
    [InlineData("0,00 €", "nothing is asked, or less than nothing: a placeholder, not a price")]
    [InlineData("-5 €", "nothing is asked, or less than nothing: a placeholder, not a price")]
    [InlineData("RB-6PK-1500", "no amount in it")]
    [InlineData("M8x1.25", "no amount in it")]
    [InlineData("99999999999999 €", "no amount in it")]
    public void What_is_no_price_says_why(string written, string why) => Assert.Equal(why, Assert.IsType<ReadPrice.Unread>(PriceText.Read(written, null)).Why);

    // schema.org, price: a decimal point and nothing else. Shops write otherwise; what has one reading is taken, what has two stays open.
    [Theory]
    [InlineData("1299", "1299.00")]
    [InlineData("1299.9", "1299.90")]
    [InlineData("14.5000", "14.50")]
    [InlineData("1,299.00", "1299.00")]
    [InlineData("14,50", "14.50")]
    public void Stated_price_is_read(string written, string amount) => ListingAssert.Money(amount, "EUR", PriceText.Stated(written, "EUR"));

    [Fact]
    public void Stated_price_with_three_decimals_is_open() =>
        Assert.Equal(["1299.00 EUR", "1.299 EUR"], ListingAssert.Readings(PriceText.Stated("1.299", "EUR")));

    private static string PageTidy(string text) => string.Join(' ', text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
}
