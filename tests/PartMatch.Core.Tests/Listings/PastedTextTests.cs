using PartMatch.Core.Listings;
using Xunit;

namespace PartMatch.Core.Tests.Listings;

/// <summary>Words as sellers write them, in five languages. Trade usage, from memory; everything in them is invented.</summary>
public sealed class PastedTextTests
{
    [Theory]
    [InlineData("Number\tPrice\tCondition\nZQ-1\t84 €\tused\nZQ-2\t12,50 €\tnew")]
    [InlineData("| Number | Price | Condition |\n|---|:-:|---|\n| ZQ-1 | 84 € | used |\n| ZQ-2 | 12,50 € | new |")]
    [InlineData("Our parts:\n\nNumber|Price|Condition\nZQ-1|84 €|used\nZQ-2|12,50 €|new\n\nGreetings")]
    public void Pasted_table_is_a_table(string text)
    {
        var listing = ListingAssert.Text(text);

        Assert.Equal([("ZQ-1", "84.00", ItemCondition.Used), ("ZQ-2", "12.50", ItemCondition.New)],
            listing.Products.Select(product => (product.Numbers[0].Value, PriceText.Readings(product.Offers[0].Price!).Single().Amount, product.Condition)));
    }

    [Fact]
    public void Letter_of_a_yard_is_one_offer()
    {
        var listing = ListingAssert.Text(
            """
            Coolant pump, used
            Part number: ZQ-1147-C
            Fits: Tern 16 engines
            84 EUR plus postage 6,90 EUR. Core deposit 25 EUR against return of the old pump with its pulley.
            Delivery 3-5 working days. 14 days return, 15 % restocking fee, buyer pays return postage. Only 2 left.
            """);

        var product = Assert.Single(listing.Products);
        Assert.Equal(("Coolant pump, used", ItemCondition.Used), (product.Name, product.Condition));
        Assert.Equal([new(NumberProperty.Number, "ZQ-1147-C")], product.Numbers);
        var offer = Assert.Single(product.Offers);
        ListingAssert.Money("84.00", "EUR", offer.Price);
        ListingAssert.Money("6.90", "EUR", offer.Shipping?.Rate);
        ListingAssert.Money("25.00", "EUR", offer.Terms.CoreDeposit);
        Assert.Equal(new OfferTerms(offer.Terms.CoreDeposit, "the old pump with its pulley", Returnable.Yes, 14, 15, FreightBack.Buyer), offer.Terms);
        Assert.Equal((new DayRange(3, 5), 2, Availability.LimitedAvailability), (offer.Days, offer.Stock, offer.Availability));
    }

    [Theory]
    [InlineData("84 €, free shipping", "0.00")]
    [InlineData("84 € free shipping", "0.00")]
    [InlineData("84 € versandkostenfrei", "0.00")]
    [InlineData("84 €, versandkostenfrei", "0.00")]
    [InlineData("84 €, frais de port offerts", "0.00")]
    [InlineData("84 €, fri frakt", "0.00")]
    [InlineData("84 €, envío gratis", "0.00")]
    [InlineData("84 €, postage 6.90", "6.90")]
    [InlineData("84 € zzgl. Versand 6,90 €", "6.90")]
    [InlineData("84 € + 6,90 € de frais de port", "6.90")]
    [InlineData("84 € + 6,90 € shipping", "6.90")]
    [InlineData("84 €, shipping: 6,90 €", "6.90")]
    [InlineData("84 €, free shipping over 100 €", null)]
    [InlineData("84 €, collection only", null)]
    [InlineData("84 €", null)]
    public void Sending_is_read_from_words_and_else_not_known(string text, string? rate)
    {
        var offer = ListingAssert.Offer(ListingAssert.Text("Seal ZQ-1\n" + text));

        ListingAssert.Money("84.00", "EUR", offer.Price);
        Assert.Equal(rate, offer.Shipping is null ? null : Assert.IsType<ReadPrice.Stated>(offer.Shipping.Rate).Money.Amount);
    }

    [Theory]
    [InlineData("was 120 €, now 84 €")]
    [InlineData("UVP 120 €. Preis 84 €")]
    [InlineData("84 € statt 120 €")]
    [InlineData("Price: 84 €\nyou save 36 €")]
    [InlineData("84 €, or 9 € per month")]
    [InlineData("84 € VB, Pfand 30 €")]
    [InlineData("84 €, was new 120 €")]
    [InlineData("84 €, worth about 120 €")]
    [InlineData("84 €, you can have two from 150 €")]
    public void Other_amounts_are_not_the_price(string text) =>
        ListingAssert.Money("84.00", "EUR", ListingAssert.Offer(ListingAssert.Text("Seal ZQ-1\n" + text)).Price);

    // A word that can speak of another amount speaks of the part here.
    [Theory]
    [InlineData("off my van, used, 84 €")]
    [InlineData("from a running engine, 84 €")]
    [InlineData("was on my van until June, 84 €")]
    [InlineData("left over from a build, 84 €")]
    [InlineData("ab Lager, sofort, 84 €")]
    [InlineData("great value, as good as new: 84 €")]
    public void Words_of_every_day_do_not_take_the_price_away(string text) =>
        ListingAssert.Money("84.00", "EUR", ListingAssert.Offer(ListingAssert.Text("Seal ZQ-1, " + text)).Price);

    [Fact]
    public void Two_prices_without_a_word_stay_open() =>
        Assert.Equal(["84.00 EUR", "96.00 EUR"], ListingAssert.Readings(ListingAssert.Offer(ListingAssert.Text("Seal ZQ-1 84 €\nSeal 96 €")).Price));

    [Theory]
    [InlineData("SOLD £40 used", true)]
    [InlineData("Seal, used, sold.", true)]
    [InlineData("VERKAUFT Seal 84 €", true)]
    [InlineData("Seal 84 €, sold as seen", false)]
    [InlineData("SOLD AS SPARES", false)]
    [InlineData("Not sold yet", false)]
    [InlineData("Sold by Millrace", false)]
    [InlineData("we sold 200 of these", false)]
    public void Sold_is_read_where_it_stands_as_a_statement(string text, bool isSold) => Assert.Equal(isSold, StockWords.SaysSold(text));

    [Theory]
    [InlineData("Seal ZQ-1, used\nSOLD 84 €", Availability.SoldOut)]
    [InlineData("Seal ZQ-1, used, 84 €\n\n1\n2\n3\n4\n5\n6\n7\nOther seals: ZQ-2 SOLD", Availability.NotStated)]
    public void Sold_further_down_is_of_other_things(string text, Availability expected) => Assert.Equal(expected, ListingAssert.Offer(ListingAssert.Text(text)).Availability);

    [Fact]
    public void Least_bid_is_not_the_price() => Assert.Null(ListingAssert.Text("Seal ZQ-1\nused, starting bid 10 €").Products[0].Offers.SingleOrDefault()?.Price);

    [Theory]
    [InlineData("1299:-", "no currency is named: ask which")]
    [InlineData("$1,299.00", "the currency can be USD or CAD or AUD or NZD: ask which")]
    public void Price_that_stays_open_says_what_is_missing(string written, string why) =>
        Assert.Equal(why, Assert.IsType<ReadPrice.Ambiguous>(ListingAssert.Offer(ListingAssert.Text($"Seal ZQ-1\nused {written}")).Price).Why);

    [Theory]
    [InlineData("used", ItemCondition.Used)]
    [InlineData("used, new seals", ItemCondition.Used)]
    [InlineData("gebraucht", ItemCondition.Used)]
    [InlineData("d'occasion", ItemCondition.Used)]
    [InlineData("begagnad", ItemCondition.Used)]
    [InlineData("segunda mano", ItemCondition.Used)]
    [InlineData("like new", ItemCondition.Used)]
    [InlineData("brand new", ItemCondition.New)]
    [InlineData("Seal, neu", ItemCondition.New)]
    [InlineData("New € 84,00", ItemCondition.New)]
    [InlineData("unused old stock", ItemCondition.New)]
    [InlineData("the new number of this part", ItemCondition.NotStated)]
    [InlineData("renewed interest", ItemCondition.NotStated)]
    [InlineData("rebuilt", ItemCondition.Refurbished)]
    [InlineData("generalüberholt", ItemCondition.Refurbished)]
    [InlineData("échange standard", ItemCondition.Refurbished)]
    [InlineData("for parts only", ItemCondition.Damaged)]
    [InlineData("defekt, für Bastler", ItemCondition.Damaged)]
    [InlineData("hors service", ItemCondition.Damaged)]
    [InlineData("used, not damaged", ItemCondition.Used)]
    [InlineData("gebraucht, unbeschädigt", ItemCondition.Used)]
    [InlineData("used, no cracks", ItemCondition.Used)]
    [InlineData("Seal", ItemCondition.NotStated)]
    public void Condition_is_the_worst_that_is_said(string text, ItemCondition expected) => Assert.Equal(expected, ConditionWords.Find(text));

    [Theory]
    [InlineData("bare block", AssemblyLevel.Bare)]
    [InlineData("Rumpfmotor", AssemblyLevel.Short)]
    [InlineData("long block", AssemblyLevel.Long)]
    [InlineData("complete engine", AssemblyLevel.Complete)]
    [InlineData("complete engine, heard running", AssemblyLevel.HeardRunning)]
    [InlineData("complete engine, not heard running", AssemblyLevel.Complete)]
    [InlineData("Komplettmotor, läuft einwandfrei", AssemblyLevel.HeardRunning)]
    [InlineData("short block or long block", AssemblyLevel.NotStated)]
    [InlineData("heard running", AssemblyLevel.NotStated)]
    [InlineData("pump", AssemblyLevel.NotStated)]
    public void Level_is_what_the_words_name(string text, AssemblyLevel expected) => Assert.Equal(expected, LevelWords.Find(text));

    [Theory]
    [InlineData("Seal set of 4, 84 €", 4)]
    [InlineData("4 pcs seals 84 €", 4)]
    [InlineData("4x seal 84 €", 4)]
    [InlineData("4er-Satz Dichtungen 84 €", 4)]
    [InlineData("pair of seals 84 €", 2)]
    [InlineData("4x seal, 84 € each", 1)]
    [InlineData("4x Dichtung, 84 € pro Stück", 1)]
    [InlineData("repair kit 84 €", 1)]
    [InlineData("Seal M8x1.25 84 €", 1)]
    public void Pieces_are_counted_by_words(string text, int pieces)
    {
        var offer = ListingAssert.Offer(ListingAssert.Text(text));

        ListingAssert.Money("84.00", "EUR", offer.Price);
        Assert.Equal(pieces, offer.Pieces);
    }

    [Theory]
    [InlineData("no returns", Returnable.No, null)]
    [InlineData("Keine Rücknahme", Returnable.No, null)]
    [InlineData("ni repris ni échangé", Returnable.No, null)]
    [InlineData("14 days return", Returnable.Yes, 14)]
    [InlineData("returns within 30 days", Returnable.Yes, 30)]
    [InlineData("14 Tage Rückgaberecht", Returnable.Yes, 14)]
    [InlineData("retour sous 14 jours", Returnable.Yes, 14)]
    [InlineData("14 dagars returrätt", Returnable.Yes, 14)]
    [InlineData("delivery in 14 days", Returnable.NotStated, null)]
    public void Returns_are_read_from_words(string text, Returnable returnable, int? days)
    {
        var offer = ListingAssert.Offer(ListingAssert.Text("Seal 84 €\n" + text));

        Assert.Equal((returnable, days), (offer.Terms.Returnable, offer.Terms.ReturnDays));
    }

    [Fact]
    public void Words_that_sell_nothing_are_a_product_without_an_offer()
    {
        var listing = ListingAssert.Text("Is ZQ-1147-C the right one?");

        Assert.Empty(Assert.Single(listing.Products).Offers);
        Assert.Contains(new Passage(PassagePlace.Text, "text", "Is ZQ-1147-C the right one?"), listing.Passages);
    }
}
