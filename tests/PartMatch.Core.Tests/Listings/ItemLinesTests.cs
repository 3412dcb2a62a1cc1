using PartMatch.Core.Listings;
using Xunit;

namespace PartMatch.Core.Tests.Listings;

/// <summary>Several things in one message, quoted letters and numbers that a telephone breaks. Everything in them is invented.</summary>
public sealed class ItemLinesTests
{
    [Theory]
    [InlineData("1) pump ZQ-11-1 40 EUR\n2) seal ZQ-11-2 5 EUR", 2)] // two that are counted
    [InlineData("1) pump ZQ-11-1 40 EUR\nwas ZQ-11-2 before", 1)] // one: just below
    [InlineData("pump ZQ-11-1 40 EUR\nseal ZQ-11-2 5 EUR\nbelt ZQ-11-3 7 EUR", 3)] // three that are not
    [InlineData("pump ZQ-11-1 40 EUR\nseal ZQ-11-2 5 EUR", 1)] // two: just below
    public void Lines_with_a_number_and_a_price_are_things_of_their_own(string text, int products) =>
        Assert.Equal(products, ListingAssert.Text(text).Products.Count);

    [Fact]
    public void Line_keeps_its_own_condition_and_whether_it_is_gone()
    {
        var listing = ListingAssert.Text("All of it used.\n- pump ZQ-11-1, 40 EUR\n- seal ZQ-11-2, new, 5 EUR\n- belt ZQ-11-3, 7 EUR - SOLD\n- hose ZQ-11-4, 8 EUR, sold as seen");

        Assert.Equal(
            [
                (ItemCondition.Used, Availability.NotStated), (ItemCondition.New, Availability.NotStated),
                (ItemCondition.Used, Availability.SoldOut), (ItemCondition.Used, Availability.NotStated),
            ],
            listing.Products.Select(product => (product.Condition, product.Offers[0].Availability)));
    }

    [Theory]
    [InlineData("Pump ZQ-11-1, new, 48 EUR\n> I have a ZQ-11-2, used, 30 EUR")]
    [InlineData("Pump ZQ-11-1, new, 48 EUR\n-----Original Message-----\nI have a ZQ-11-2, used, 30 EUR")]
    public void Earlier_letter_brings_neither_price_nor_condition(string text)
    {
        var offer = Assert.Single(Assert.Single(ListingAssert.Text(text).Products).Offers);

        Assert.Equal(("48.00", ItemCondition.New), (PriceText.Readings(offer.Price!).Single().Amount, offer.Condition));
    }

    [Fact]
    public void Letter_that_is_all_quoted_is_the_offer_itself() =>
        Assert.Equal("30.00", PriceText.Readings(ListingAssert.Text("> pump ZQ-11-2, used\n> 30 EUR").Products[0].Offers[0].Price!).Single().Amount);

    [Theory]
    [InlineData("number is ZQ-11-\n2204-A, 40 EUR", true)]
    [InlineData("number is ZQ-11 -\n2204 pieces, 40 EUR", false)] // a dash between blanks parts
    [InlineData("came with the pump-\n12 EUR", false)] // no figure before the stroke
    public void Number_broken_behind_its_stroke_is_joined(string text, bool joined) =>
        Assert.Equal(joined, ListingAssert.Text(text).Passages.Any(passage => passage.Text.Contains("ZQ-11-2204-A", StringComparison.Ordinal)));

    [Theory]
    [InlineData("Free shipping over 60 €", false)]
    [InlineData("Orders over 60 € go post free", false)]
    [InlineData("Pump 60 €, post free", true)]
    public void Free_from_a_sum_on_is_not_free(string text, bool free) =>
        Assert.Equal(free, ListingAssert.Text($"Pump ZQ-11-1\n{text}").Products[0].Offers.Any(offer => offer.Shipping is not null));
}
