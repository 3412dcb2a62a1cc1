using PartMatch.Core.Listings;
using Xunit;

namespace PartMatch.Core.Tests.Listings;

/// <summary>CHECKS.md, section I. Source of each rule: schema.org, by the rows named.</summary>
public sealed class SchemaSnippetTests
{
    // I01: OfferItemCondition has exactly four members; full IRIs of both schemes and the bare word.
    [Theory]
    [InlineData("https://schema.org/DamagedCondition", ItemCondition.Damaged)]
    [InlineData("http://schema.org/NewCondition", ItemCondition.New)]
    [InlineData("RefurbishedCondition", ItemCondition.Refurbished)]
    [InlineData("schema:UsedCondition", ItemCondition.Used)]
    [InlineData("used", ItemCondition.Used)]
    [InlineData("https://schema.org/MintCondition", ItemCondition.NotStated)]
    public void Condition_of_schema_org_is_read(string written, ItemCondition expected) =>
        Assert.Equal(expected, ListingAssert.Offer(ListingAssert.JsonLd($$"""{"@type":"Product","name":"x","offers":{"@type":"Offer","price":"5.00","itemCondition":"{{written}}"} }""")).Condition);

    public static TheoryData<Availability> Availabilities => new(Enum.GetValues<Availability>().Except([Availability.NotStated]));

    // I02: ItemAvailability has twelve members.
    [Theory]
    [MemberData(nameof(Availabilities))]
    public void Availability_of_schema_org_is_read(Availability expected)
    {
        Assert.Equal(12, Availabilities.Count);
        foreach (var written in new[] { $"https://schema.org/{expected}", $"http://schema.org/{expected}", $"{expected}" })
        {
            Assert.Equal(expected, ListingAssert.Offer(ListingAssert.JsonLd($$"""{"@type":"Offer","name":"x","price":"5.00","availability":"{{written}}"}""")).Availability);
        }
    }

    // I03: mpn, sku and gtin may sit on the offer as well as on the product.
    [Fact]
    public void Numbers_of_an_offer_count_for_its_product()
    {
        var listing = ListingAssert.JsonLd("""{"@type":"Product","name":"x","mpn":"ZQ-1","offers":{"@type":"Offer","price":"5.00","sku":"S-9","gtin13":"6291041500213"}}""");

        var product = Assert.Single(listing.Products);
        Assert.Equal(
            [new(NumberProperty.Mpn, "ZQ-1"), new(NumberProperty.Sku, "S-9"), new StatedNumber(NumberProperty.Gtin, "6291041500213", GtinCheck.Valid)],
                product.Numbers);
        Assert.Contains(new Passage(PassagePlace.Property, "JSON-LD mpn", "ZQ-1", 0, NumberProperty.Mpn), listing.Passages);
    }

    // I04: example #eg-0010 of schema.org shows 1,000.00 and states 1000.00.
    [Fact]
    public void Stated_price_counts_before_the_shown_one()
    {
        var listing = ListingAssert.Page(
            """
            <div itemscope itemtype="https://schema.org/Product"><span itemprop="name">x</span><div itemprop="offers" itemscope itemtype="https://schema.org/Offer">
            <span itemprop="priceCurrency" content="USD">$</span><span itemprop="price" content="1000.00">1,000.00</span></div></div>
            """);

        ListingAssert.Money("1000.00", "USD", ListingAssert.Offer(listing).Price);
    }

    // I05: 8, 12, 13 or 14 digits or a Digital Link, with a valid check digit, no padding needed. 7351353 and its check digit 7: 3·7+3+3·5+1+3·3+5+3·3 = 63,
    // up to 70.
    [Theory]
    [InlineData("73513537", GtinCheck.Valid)]
    [InlineData("036000291452", GtinCheck.Valid)]
    [InlineData("40987650000223", GtinCheck.Valid)]
    [InlineData("https://id.example/01/06291041500213?x=1", GtinCheck.Valid)]
    [InlineData("https://id.example/gtin/6291041500213/lot/7", GtinCheck.Valid)]
    [InlineData("6291041500214", GtinCheck.WrongCheckDigit)]
    [InlineData("629104150021", GtinCheck.WrongCheckDigit)]
    [InlineData("62910415002", GtinCheck.NotAGtin)]
    [InlineData("629104150021X", GtinCheck.NotAGtin)]
    [InlineData("https://id.example/8004/123", GtinCheck.NotAGtin)]
    [InlineData("", GtinCheck.NotAGtin)]
    public void Gtin_is_checked(string written, GtinCheck expected) => Assert.Equal(expected, Gtin.Check(written));

    // D16 and D17: GS1 General Specifications, 7.9. Every other last digit is wrong.
    [Theory]
    [InlineData("629104150021", '3')]
    [InlineData("730001100001", '7')]
    [InlineData("890400021003", '7')]
    [InlineData("03600029145", '2')]
    [InlineData("4098765000022", '3')]
    public void Check_digit_is_the_one_of_GS1(string digits, char expected) =>
        Assert.Equal([expected], "0123456789".Where(last => Gtin.Check(digits + last) == GtinCheck.Valid));

    // I06: a bare 0 is free, an absent statement is not.
    [Fact]
    public void Shipping_is_free_only_where_it_is_said()
    {
        var free = ListingAssert.Offer(ListingAssert.JsonLd(
            """{"@type":"Offer","name":"x","price":"5.00","priceCurrency":"EUR","shippingDetails":{"@type":"OfferShippingDetails","shippingRate":"0"}}"""));
        ListingAssert.Money("0.00", "EUR", Assert.IsType<ReadShipping>(free.Shipping).Rate);

        Assert.Null(ListingAssert.Offer(ListingAssert.JsonLd("""{"@type":"Offer","name":"x","price":"5.00","priceCurrency":"EUR"}""")).Shipping);
    }

    // I07: what the thing is for is a statement about another thing.
    [Fact]
    public void Thing_it_is_for_is_no_thing_for_sale()
    {
        var listing = ListingAssert.JsonLd(
            """
            {"@context":"https://schema.org","@type":"Product","name":"Seal","mpn":"ZQ-1","isAccessoryOrSparePartFor":{"@type":"Product","name":"Pump","mpn":"ZQ-900"},
             "isSimilarTo":{"@type":"Product","mpn":"ZQ-2"},"isRelatedTo":[{"@type":"Product","mpn":"ZQ-3"}]}
            """);

        Assert.Equal([new(NumberProperty.Mpn, "ZQ-1")], Assert.Single(listing.Products).Numbers);
        Assert.Contains(new Passage(PassagePlace.Property, "JSON-LD isAccessoryOrSparePartFor", "ZQ-900", 0, NumberProperty.Fits), listing.Passages);
        Assert.DoesNotContain(listing.Passages, passage => passage.Text is "ZQ-2" or "ZQ-3");
    }

    // I08. Days: 0 + 2 and 1 + 4.
    [Fact]
    public void Single_product_of_json_ld_is_read_whole()
    {
        var listing = ListingAssert.Page(ListingSnippets.JsonLdSingle);

        var product = Assert.Single(listing.Products);
        Assert.Equal((StatementForm.JsonLd, "Throttle body gasket, variant K"), (product.From, product.Name));
        Assert.Equal(
            [new(NumberProperty.Mpn, "QX41-2075-A"), new(NumberProperty.Sku, "TB-0091"),
                new StatedNumber(NumberProperty.Gtin, "2012345678903", GtinCheck.Valid)], product.Numbers);
        var offer = Assert.Single(product.Offers);
        ListingAssert.Money("14.50", "EUR", offer.Price);
        ListingAssert.Money("6.90", "EUR", offer.Shipping?.Rate);
        Assert.Equal("DE", offer.Shipping?.To);
        Assert.Equal(new DayRange(2, 5), offer.Days);
        Assert.Equal((ItemCondition.New, Availability.InStock, 1, "https://shop-one.example/p/tb-0091"),
            (offer.Condition, offer.Availability, offer.Pieces, offer.Address));
        Assert.Equal(("Throttle body gasket K", "en"), (listing.Title, listing.Language));
        Assert.Equal("Throttle body gasket, variant K", listing.VisibleText);
        Assert.Empty(listing.Warnings);
    }

    // I10. The website beside it is no product, the similar one is not for sale here.
    [Fact]
    public void Array_of_offers_is_three_offers_one_of_them_for_four_pieces()
    {
        var product = Assert.Single(ListingAssert.Page(ListingSnippets.JsonLdOfferArray).Products);

        Assert.Equal([new StatedNumber(NumberProperty.Sku, "INJ-440")], product.Numbers);
        Assert.Equal(3, product.Offers.Count);
        ListingAssert.Money("38.00", "GBP", product.Offers[0].Price);
        ListingAssert.Money("21.50", "GBP", product.Offers[1].Price);
        ListingAssert.Money("144.00", "GBP", product.Offers[2].Price);
        Assert.Equal([1, 1, 4], product.Offers.Select(offer => offer.Pieces));
        Assert.Equal([ItemCondition.New, ItemCondition.Refurbished, ItemCondition.New], product.Offers.Select(offer => offer.Condition));
        Assert.Equal([Availability.InStock, Availability.SoldOut, Availability.InStock], product.Offers.Select(offer => offer.Availability));
    }

    // I11
    [Fact]
    public void Range_of_an_aggregate_is_said_and_is_no_offer()
    {
        var product = Assert.Single(ListingAssert.Page(ListingSnippets.JsonLdAggregate).Products);

        Assert.Equal([new StatedNumber(NumberProperty.Gtin, "2000000000015", GtinCheck.Valid)], product.Numbers);
        var said = Assert.IsType<OfferRange>(product.Said);
        ListingAssert.Money("19.90", "USD", said.Low);
        ListingAssert.Money("47.00", "USD", said.High);
        Assert.Equal(5, said.Offers);
        var offer = Assert.Single(product.Offers);
        ListingAssert.Money("19.90", "USD", offer.Price);
        Assert.Equal((ItemCondition.Damaged, "Seller Four-A (example)"), (offer.Condition, offer.Seller));
    }

    // I13
    [Fact]
    public void Rdfa_lite_is_read_with_its_prefixed_number()
    {
        var listing = ListingAssert.Page(ListingSnippets.RdfaLite);

        var product = Assert.Single(listing.Products);
        Assert.Equal(StatementForm.Rdfa, product.From);
        Assert.Equal([new StatedNumber(NumberProperty.Mpn, "RB-6PK-1500")], product.Numbers);
        var offer = Assert.Single(product.Offers);
        ListingAssert.Money("17.95", "EUR", offer.Price);
        Assert.Equal((ItemCondition.New, Availability.OutOfStock), (offer.Condition, offer.Availability));
        Assert.Single(listing.Passages, passage => passage.Stated == NumberProperty.Fits
            && passage.Text == "Engine family QX, all variants with alternator left");
    }

    // I14: content counts on any element, and before what is shown.
    [Theory]
    [InlineData("span")]
    [InlineData("b")]
    [InlineData("p")]
    [InlineData("data")]
    public void Content_counts_on_any_element(string name)
    {
        var listing = ListingAssert.Page(
            $"""
            <div itemscope itemtype="http://schema.org/Offer"><b itemprop="name">x</b><meta itemprop="priceCurrency" content="EUR">
            <{name} itemprop="price" content="12.34" value="99">only 1.299 today</{name}></div>
            """);

        ListingAssert.Money("12.34", "EUR", ListingAssert.Offer(listing).Price);
    }
}
