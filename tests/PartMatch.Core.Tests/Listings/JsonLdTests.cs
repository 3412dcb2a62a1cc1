using PartMatch.Core.Listings;
using Xunit;

namespace PartMatch.Core.Tests.Listings;

/// <summary>JSON-LD as shops write it. Source of the forms: W3C, JSON-LD 1.1; of types and properties: schema.org.</summary>
public sealed class JsonLdTests
{
    [Theory]
    [InlineData("""{"@context":"http://schema.org","@type":"Product","mpn":"ZQ-1"}""")]
    [InlineData("""{"@context":"https://schema.org/","@type":["IndividualProduct","Thing"],"mpn":"ZQ-1"}""")]
    [InlineData("""{"@context":{"@vocab":"http://schema.org/"},"@type":"Product","mpn":"ZQ-1"}""")]
    [InlineData("""{"@context":{"s":"https://schema.org/"},"@type":"s:Product","s:mpn":"ZQ-1"}""")]
    [InlineData("""{"@type":"schema:Product","schema:mpn":"ZQ-1"}""")]
    [InlineData("""{"@type":"https://schema.org/Product","http://schema.org/mpn":{"@value":"ZQ-1"}}""")]
    [InlineData("""{"@context":["https://schema.org",{"number":"https://schema.org/mpn","kind":"@type"}],"kind":"Product","number":"ZQ-1"}""")]
    [InlineData("""[{"@graph":[{"@type":"Product","mpn":["ZQ-1"]}]}]""")]
    [InlineData("""{"@type":"WebPage","mainEntity":{"@type":"Product","mpn":"ZQ-1"}}""")]
    [InlineData("""{"@type":"ItemList","itemListElement":[{"@type":"ListItem","item":{"@type":"Product","mpn":"ZQ-1"}}]}""")]
    [InlineData("""{"@type":"Product","mpn":"ZQ&#45;1"}""")]
    public void Way_of_saying_product_is_understood(string json)
    {
        var listing = ListingAssert.JsonLd(json);

        Assert.Equal([new(NumberProperty.Mpn, "ZQ-1")], Assert.Single(listing.Products).Numbers);
        Assert.Empty(listing.Warnings);
    }

    [Fact]
    public void Product_of_another_vocabulary_is_none()
    {
        var listing = ListingAssert.JsonLd("""{"@context":{"@vocab":"https://other.example/"},"@type":"Product","mpn":"ZQ-1"}""");

        Assert.NotEqual(StatementForm.JsonLd, Assert.Single(listing.Products).From);
    }

    [Theory]
    [InlineData("<!-- {\"@type\":\"Product\",\"mpn\":\"ZQ-1\"} -->")]
    [InlineData("//<![CDATA[\n{\"@type\":\"Product\",\"mpn\":\"ZQ-1\"}\n//]]>")]
    [InlineData("/*<![CDATA[*/{\"@type\":\"Product\",\"mpn\":\"ZQ-1\"}/*]]>*/")]
    [InlineData("{\"@type\":\"Product\",\"mpn\":\"ZQ-1\",}")]
    [InlineData("{\"@type\":\"Product\", /* ours */ \"mpn\":\"ZQ-1\"}")]
    [InlineData("{\"@type\":\"Product\",\"description\":\"two\nlines\",\"mpn\":\"ZQ-1\"}")]
    [InlineData("{&quot;@type&quot;:&quot;Product&quot;,&quot;mpn&quot;:&quot;ZQ-1&quot;}")]
    [InlineData("{\"@type\":\"Product\",\"mpn\":\"ZQ-1\"};")]
    public void Blemish_is_mended_and_told(string script)
    {
        var listing = ListingAssert.JsonLd(script);

        Assert.Equal([new(NumberProperty.Mpn, "ZQ-1")], Assert.Single(listing.Products).Numbers);
        Assert.Contains(listing.Warnings, warning => warning.Code == "json-ld-mended");
    }

    [Fact]
    public void Broken_block_is_left_out_and_the_next_one_read()
    {
        var listing = ListingAssert.Page(
            """<script type="application/ld+json">{"@type":"Product","mpn":</script><script type="application/ld+json; charset=utf-8">{"@type":"Product","mpn":"ZQ-2"}</script>""");

        Assert.Equal([new(NumberProperty.Mpn, "ZQ-2")], Assert.Single(listing.Products).Numbers);
        Assert.Equal("json-ld-unreadable", Assert.Single(listing.Warnings).Code);
    }

    [Fact]
    public void Things_of_several_blocks_are_joined_by_their_id()
    {
        var listing = ListingAssert.Page(
            """
            <script type="application/ld+json">{"@type":"Product","@id":"#p","mpn":"ZQ-1","offers":{"@id":"#o"}}</script>
            <script type="application/ld+json">[{"@type":"Offer","@id":"#o","price":"5.00","priceCurrency":"EUR","seller":{"@id":"#s"}},{"@id":"#s","@type":"Organization","name":"Yard (example)"}]</script>
            """);

        var offer = ListingAssert.Offer(listing);
        ListingAssert.Money("5.00", "EUR", offer.Price);
        Assert.Equal("Yard (example)", offer.Seller);
    }

    [Fact]
    public void Variants_stand_for_their_group()
    {
        var listing = ListingAssert.JsonLd(
            """
            {"@type":"ProductGroup","name":"Seal","brand":"Ours (invented)","hasVariant":[{"@type":"Product","mpn":"ZQ-1","offers":{"@type":"Offer","price":"5"}},
             {"@type":"Product","name":"Seal, thick","mpn":"ZQ-2"}]}
            """);

        Assert.Equal(["Seal", "Seal, thick"], listing.Products.Select(product => product.Name));
        Assert.All(listing.Products, product => Assert.Equal("Ours (invented)", product.Brand));
    }

    [Fact]
    public void Offer_of_another_thing_is_a_product_of_its_own()
    {
        var listing = ListingAssert.JsonLd(
            """
            {"@type":"Product","name":"Seal","mpn":"ZQ-1","offers":[{"@type":"Offer","price":"5","priceCurrency":"EUR"},{"@type":"Offer","price":"6","priceCurrency":"EUR","mpn":"ZQ-2"},
             {"@type":"Offer","price":"7","priceCurrency":"EUR","itemOffered":{"@type":"Product","mpn":"ZQ-3"}}]}
            """);

        Assert.Equal([("ZQ-1", "5.00"), ("ZQ-2", "6.00"), ("ZQ-3", "7.00")],
            listing.Products.Select(product => (product.Numbers[0].Value, PriceText.Readings(product.Offers[0].Price!).Single().Amount)));
    }

    [Fact]
    public void Offer_by_itself_is_of_the_thing_it_names()
    {
        var listing = ListingAssert.JsonLd("""{"@type":"Offer","price":"5.00","priceCurrency":"EUR","itemOffered":{"@type":"Product","name":"Seal","mpn":"ZQ-1"}}""");

        Assert.Equal("Seal", Assert.Single(listing.Products).Name);
        ListingAssert.Money("5.00", "EUR", ListingAssert.Offer(listing).Price);
    }

    // Hand calculation: handling one week, transit 2 to 4 days: 9 to 11. To the island: 1 and 10 to 12: 11 to 13. Together 9 to 13.
    [Fact]
    public void Several_destinations_leave_the_rate_open_and_widen_the_days()
    {
        var offer = ListingAssert.Offer(ListingAssert.JsonLd(
            """
            {"@type":"Offer","name":"x","price":"5.00","priceCurrency":"EUR","shippingDetails":[
             {"shippingRate":{"value":6.9,"currency":"EUR"},"shippingDestination":{"addressCountry":{"@type":"Country","name":"DE"}},
              "deliveryTime":{"@type":"ShippingDeliveryTime","handlingTime":{"value":1,"unitCode":"WEE"},"transitTime":{"minValue":2,"maxValue":4}}},
             {"shippingRate":{"value":"12.90","currency":"EUR"},"shippingDestination":{"addressCountry":"IS"},
              "deliveryTime":{"@type":"ShippingDeliveryTime","handlingTime":{"value":1},"transitTime":{"minValue":10,"maxValue":12,"unitCode":"DAY"}}}]}
            """));

        Assert.Equal(["6.90 EUR", "12.90 EUR"], ListingAssert.Readings(offer.Shipping?.Rate));
        Assert.Equal(("DE, IS", new DayRange(9, 13)), (offer.Shipping?.To, offer.Days));
    }

    [Fact]
    public void Half_a_delivery_time_is_no_time()
    {
        var offer = ListingAssert.Offer(ListingAssert.JsonLd(
            """{"@type":"Offer","name":"x","price":"5","shippingDetails":{"shippingRate":"0","deliveryTime":{"@type":"ShippingDeliveryTime","transitTime":{"minValue":2}}}}"""));

        Assert.Null(offer.Days);
    }

    [Fact]
    public void Old_prices_and_freight_beside_a_price_are_not_it()
    {
        var offer = ListingAssert.Offer(ListingAssert.JsonLd(
            """
            {"@type":"Offer","name":"x","priceSpecification":[{"@type":"UnitPriceSpecification","priceType":"https://schema.org/StrikethroughPrice","price":"99","priceCurrency":"EUR"},
             {"@type":"UnitPriceSpecification","price":"84","priceCurrency":"EUR"},{"@type":"DeliveryChargeSpecification","price":"6.90","priceCurrency":"EUR"}]}
            """));

        ListingAssert.Money("84.00", "EUR", offer.Price);
        ListingAssert.Money("6.90", "EUR", offer.Shipping?.Rate);
    }

    [Fact]
    public void Deposit_in_a_compound_price_is_told_apart()
    {
        var offer = ListingAssert.Offer(ListingAssert.JsonLd(
            """
            {"@type":"Offer","name":"x","priceSpecification":{"@type":"CompoundPriceSpecification","priceComponent":[{"@type":"UnitPriceSpecification","name":"Part","price":"184","priceCurrency":"EUR"},
             {"@type":"UnitPriceSpecification","name":"Core deposit","price":"60","priceCurrency":"EUR"}]}}
            """));

        ListingAssert.Money("184.00", "EUR", offer.Price);
        ListingAssert.Money("60.00", "EUR", offer.Terms.CoreDeposit);
    }

    [Theory]
    [InlineData("""{"returnPolicyCategory":"https://schema.org/MerchantReturnNotPermitted","merchantReturnDays":14}""", Returnable.No, null, null, FreightBack.NotStated)]
    [InlineData(
        """{"returnPolicyCategory":"MerchantReturnFiniteReturnWindow","merchantReturnDays":"30","restockingFee":15,"returnFees":"https://schema.org/ReturnFeesCustomerResponsibility"}""",
        Returnable.Yes, 30, 15, FreightBack.Buyer)]
    [InlineData("""{"merchantReturnDays":14,"returnFees":"https://schema.org/FreeReturn"}""", Returnable.Yes, 14, null, FreightBack.Seller)]
    [InlineData("""{"name":"our policy"}""", Returnable.NotStated, null, null, FreightBack.NotStated)]
    public void Return_policy_is_read(string policy, Returnable returnable, int? days, int? percent, FreightBack back)
    {
        var offer = ListingAssert.Offer(ListingAssert.JsonLd("{\"@type\":\"Offer\",\"name\":\"x\",\"price\":\"5\",\"hasMerchantReturnPolicy\":" + policy + "}"));

        Assert.Equal(new OfferTerms(null, null, returnable, days, percent, back), offer.Terms);
    }

    [Fact]
    public void Small_statements_of_an_offer_are_read()
    {
        var listing = ListingAssert.JsonLd(
            """
            {"@type":"Product","name":"x","productID":"gtin:6291041500213","additionalProperty":{"@type":"PropertyValue","name":"OE number","value":"ZQ-7"},
             "offers":{"@type":"Offer","price":"5","priceCurrency":"EUR","availability":{"@id":"https://schema.org/InStock"},"inventoryLevel":{"value":3},"priceValidUntil":"2020-01-01",
              "eligibleQuantity":{"minValue":2},"url":"https://yard.example/7"}}
            """);

        var offer = ListingAssert.Offer(listing);
        Assert.Equal((Availability.InStock, 3, "https://yard.example/7"), (offer.Availability, offer.Stock, offer.Address));
        Assert.Equal([new(NumberProperty.Gtin, "6291041500213", GtinCheck.Valid), new StatedNumber(NumberProperty.Number, "ZQ-7")],
            listing.Products[0].Numbers);
        Assert.Equal(["price-valid-until", "least-quantity"], listing.Warnings.Select(warning => warning.Code));
    }

    [Fact]
    public void Price_without_any_currency_stays_open() =>
        Assert.Equal(["5.00"], ListingAssert.Readings(ListingAssert.Offer(ListingAssert.JsonLd("""{"@type":"Offer","name":"x","price":"5.00"}""")).Price));

    [Fact]
    public void Currency_that_the_page_declares_settles_it()
    {
        var listing = ListingAssert.Page("""<meta property="product:price:currency" content="SEK"><script type="application/ld+json">{"@type":"Offer","name":"x","price":"5.00"}</script>""");

        ListingAssert.Money("5.00", "SEK", ListingAssert.Offer(listing).Price);
    }
}
