using PartMatch.Core.Listings;
using Xunit;

namespace PartMatch.Core.Tests.Listings;

/// <summary>Microdata, RDFa Lite, tables and definition lists. Sources: WHATWG, HTML ("Microdata", "Forming a table"); W3C, RDFa Lite 1.1.</summary>
public sealed class MarkupReaderTests
{
    [Fact]
    public void Microdata_takes_values_where_html_puts_them()
    {
        var listing = ListingAssert.Page(
            """
            <div itemscope itemtype="https://schema.org/Thing https://schema.org/Product" itemref="more"><a itemprop="url" href="/x">name</a><h2 itemprop="name">Seal</h2>
             <div itemprop="offers" itemscope itemtype="https://schema.org/Offer"><data itemprop="price" value="5.00">five</data><meta itemprop="priceCurrency" content="EUR">
              <link itemprop="itemCondition" href="https://schema.org/UsedCondition"><div itemprop="seller" itemscope itemtype="https://schema.org/Person"><i itemprop="name">A. Yard (invented)</i></div></div></div>
            <p id="more">No. <b itemprop="mpn">ZQ-1</b> <i itemprop="sku productID">S-9</i></p>
            """);

        var product = Assert.Single(listing.Products);
        Assert.Equal((StatementForm.Microdata, "Seal"), (product.From, product.Name));
        Assert.Equal([new(NumberProperty.Mpn, "ZQ-1"), new(NumberProperty.Sku, "S-9"), new StatedNumber(NumberProperty.ProductId, "S-9")], product.Numbers);
        var offer = Assert.Single(product.Offers);
        ListingAssert.Money("5.00", "EUR", offer.Price);
        Assert.Equal((ItemCondition.Used, "A. Yard (invented)", "/x"), (offer.Condition, offer.Seller, offer.Address));
        Assert.Contains(listing.Passages, passage => passage.Where == "microdata mpn");
    }

    // Where the offer itself has no price, and no words name one plainly.
    [Theory]
    [InlineData("<meta property=product:price:amount content=84.00><meta property=product:price:currency content=EUR>", "84.00")]
    [InlineData("<meta property=og:price:amount content=84.00><meta property=og:price:currency content=EUR>", "84.00")]
    [InlineData("<meta name=product:price:amount content=84.00><meta name=product:price:currency content=EUR>", "84.00")]
    [InlineData("<meta property=product:price:amount content=99.00><meta property=product:sale_price:amount content=84.00><meta property=product:price:currency content=EUR>", "84.00")]
    [InlineData("<meta property=product:price:amount content=84.00>", null)] // no currency: open
    [InlineData("<meta property=product:price:amount content=84.00><meta property=product:price:amount content=99.00><meta property=product:price:currency content=EUR>", null)]
    public void Price_declared_in_the_head_is_taken_where_nothing_else_states_one(string head, string? amount)
    {
        foreach (var body in new[]
        {
            """<div itemscope itemtype="https://schema.org/Product"><b itemprop="name">Seal</b><div itemprop="offers" itemscope itemtype="https://schema.org/Offer"><link itemprop="availability" href="https://schema.org/InStock"></div></div>""",
            "<h1>Seal ZQ-1</h1><p>Two in the drawer.</p>",
        })
        {
            var price = ListingAssert.Offer(ListingAssert.Page($"<head>{head}</head><body>{body}</body>")).Price;
            Assert.Equal(amount, (price as ReadPrice.Stated)?.Money.Amount);
            Assert.NotNull(price);
        }
    }

    [Theory]
    [InlineData("Price: 1.299 €", "1299.00", "1299.00")] // 1,299 or 1.299: the head of the page settles it
    [InlineData("Price: 1.299 €", "84.00", null)]
    [InlineData("Price: on request", "84.00", null)]
    [InlineData("Price: 79.00 €", "84.00", "79.00")]
    public void Declared_price_settles_open_words_and_overrules_none(string words, string declared, string? amount)
    {
        var listing = ListingAssert.Page(
            $"<head><meta property=product:price:amount content={declared}><meta property=product:price:currency content=EUR></head><h1>Seal ZQ-1</h1><p>{words}</p>");
        Assert.Equal(amount, (ListingAssert.Offer(listing).Price as ReadPrice.Stated)?.Money.Amount);
    }

    [Fact]
    public void Stated_price_outranks_the_declared_one()
    {
        var listing = ListingAssert.Page(
            """
            <head><meta property="product:price:amount" content="79.00"><meta property="product:price:currency" content="EUR"></head>
            <div itemscope itemtype="https://schema.org/Product"><b itemprop="name">Seal</b><div itemprop="offers" itemscope itemtype="https://schema.org/Offer"><b itemprop="price">84.00</b></div></div>
            """);
        ListingAssert.Money("84.00", "EUR", ListingAssert.Offer(listing).Price);
        ListingAssert.Money("79.00", "EUR", listing.DeclaredPrice);
    }

    // 4,000 characters are read of one value; the words themselves stay words of the page.
    [Theory]
    [InlineData("itemscope itemtype=https://schema.org/Product", "itemprop", "microdata", 4_000, false)]
    [InlineData("itemscope itemtype=https://schema.org/Product", "itemprop", "microdata", 4_001, true)]
    [InlineData("vocab=https://schema.org/ typeof=Product", "property", "RDFa", 4_000, false)]
    [InlineData("vocab=https://schema.org/ typeof=Product", "property", "RDFa", 4_001, true)]
    public void Value_that_is_cut_is_told(string thing, string property, string form, int length, bool isCut)
    {
        var listing = ListingAssert.Page($"<div {thing}><b {property}=name>Seal</b><p {property}=description>{new string('x', length)}</p></div>");
        Assert.Equal(
            isCut ? [$"{form} description is longer than 4,000 characters; what follows is read as words of the page alone"] : [],
            listing.Warnings.Where(warning => warning.Code == "value-cut").Select(warning => warning.Text));
    }

    [Fact]
    public void Rdfa_follows_prefix_and_resource()
    {
        var listing = ListingAssert.Page(
            """
            <html prefix="s: http://schema.org/ og: https://ogp.example/"><body><div typeof="s:Product" resource="#p"><b property="s:name">Seal</b><b property="og:title">no</b>
            <a property="s:offers" resource="#o" href="#o">offer</a></div><div typeof="s:Offer" resource="#o"><b property="s:price" content="5.00">5</b><b property="s:priceCurrency">EUR</b></div>
            """);

        Assert.Equal("Seal", Assert.Single(listing.Products).Name);
        ListingAssert.Money("5.00", "EUR", ListingAssert.Offer(listing).Price);
    }

    [Fact]
    public void Same_thing_in_three_forms_is_one_offer()
    {
        var listing = ListingAssert.Page(
            """
            <title>Seal ZQ-1</title><script type="application/ld+json">{"@type":"Product","name":"Seal","mpn":"ZQ-1","offers":{"@type":"Offer","price":"5.00","priceCurrency":"EUR"}}</script>
            <div itemscope itemtype="https://schema.org/Product"><b itemprop="name">Seal for pump</b><b itemprop="mpn">zq 1</b>
            <div itemprop="offers" itemscope itemtype="https://schema.org/Offer"><b itemprop="price">5.00</b></div></div>
            <table><tr><th>Part no<th>Price<tr><td>ZQ1<td>5,00 €</table><p>Price: 5,00 €</p><p>Condition: used</p><p>Postage 6,90 €. No returns.</p>
            """);

        var product = Assert.Single(listing.Products);
        Assert.Equal(StatementForm.JsonLd, product.From);
        var offer = Assert.Single(product.Offers);
        ListingAssert.Money("5.00", "EUR", offer.Price);

        // What only the text says fills what is left open.
        Assert.Equal((ItemCondition.Used, Returnable.No), (offer.Condition, offer.Terms.Returnable));
        ListingAssert.Money("6.90", "EUR", offer.Shipping?.Rate);
    }

    [Fact]
    public void Rows_of_a_headed_table_are_products_with_offers()
    {
        var listing = ListingAssert.Page(
            """
            <table><caption>Parts</caption><tr><th>Part no.<th>Description<th>Price (EUR)<th>Qty<th>Condition<th>Shipping<th>Fits
            <tr><td>ZQ-1<td>Seal<td><del>9,00</del> 5,00<td>3<td>new<td>free<td>Pump ZQ-900
            <tr><td>ZQ-2<td>Set of 4 bolts<td>1.299,00 €<td>0<td>used<td>6,90<td>
            <tr><td>ZQ-3<td>Pump<td>ask<td><td>for parts only<td><td></table>
            """);

        Assert.Equal(["ZQ-1", "ZQ-2", "ZQ-3"], listing.Products.Select(product => product.Numbers[0].Value));
        Assert.All(listing.Products, product => Assert.Equal(StatementForm.Table, product.From));
        var offers = listing.Products.Select(product => Assert.Single(product.Offers)).ToList();
        ListingAssert.Money("5.00", "EUR", offers[0].Price);
        ListingAssert.Money("1299.00", "EUR", offers[1].Price);
        Assert.IsType<ReadPrice.Unread>(offers[2].Price);
        Assert.Equal([ItemCondition.New, ItemCondition.Used, ItemCondition.Damaged], offers.Select(offer => offer.Condition));
        Assert.Equal([3, 0, null], offers.Select(offer => offer.Stock));
        Assert.Equal([Availability.InStock, Availability.OutOfStock, Availability.NotStated], offers.Select(offer => offer.Availability));
        Assert.Equal([1, 4, 1], offers.Select(offer => offer.Pieces));
        ListingAssert.Money("0.00", "EUR", offers[0].Shipping?.Rate);
        ListingAssert.Money("6.90", "EUR", offers[1].Shipping?.Rate);
        Assert.Null(offers[2].Shipping);
        Assert.Contains(new Passage(PassagePlace.TableCell, "table row 1, Fits", "Pump ZQ-900", 0, NumberProperty.Fits), listing.Passages);
    }

    [Theory]
    [InlineData("Teilenummer", "Bezeichnung", "Preis", "Zustand")]
    [InlineData("Référence", "Désignation", "Prix", "État")]
    [InlineData("Artikelnr", "Benämning", "Pris", "Skick")]
    [InlineData("Referencia", "Descripción", "Precio", "Estado")]
    public void Heads_are_known_in_five_languages(string number, string name, string price, string condition)
    {
        var listing = ListingAssert.Page($"<table><tr><td>{number}<td>{name}<td>{price}<td>{condition}<tr><td>ZQ-1<td>x<td>5,00 €<td>defekt</table>");

        var product = Assert.Single(listing.Products);
        Assert.Equal(("ZQ-1", "x"), (product.Numbers[0].Value, product.Name));
        ListingAssert.Money("5.00", "EUR", product.Offers[0].Price);
    }

    [Fact]
    public void Cell_that_spans_rows_stands_in_each()
    {
        var listing = ListingAssert.Page("<table><tr><th>Description<th>Number<th>Price<tr><td rowspan=2>Seal<td>ZQ-1<td>5 €<tr><td>ZQ-2<td>6 €<tr><td>Pump<td>ZQ-3<td>7 €</table>");

        Assert.Equal([("Seal", "ZQ-1"), ("Seal", "ZQ-2"), ("Pump", "ZQ-3")], listing.Products.Select(product => (product.Name!, product.Numbers[0].Value)));
    }

    [Fact]
    public void Rows_of_one_name_and_other_numbers_are_other_products()
    {
        var listing = ListingAssert.Page(
            """
            <script type="application/ld+json">{"@type":"Product","name":"Seal","mpn":"ZQ-1","offers":{"@type":"Offer","price":"5.00","priceCurrency":"EUR"}}</script>
            <table><tr><th>Number<th>Description<th>Price<tr><td>ZQ 1<td>Seal<td>5 €<tr><td>ZQ-2<td>Seal<td>6 €</table>
            """);

        Assert.Equal([("ZQ-1", "5.00"), ("ZQ-2", "6.00")],
            listing.Products.Select(product => (product.Numbers[0].Value, PriceText.Readings(Assert.Single(product.Offers).Price!).Single().Amount)));
    }

    [Fact]
    public void Table_that_lays_out_a_page_offers_nothing()
    {
        var listing = ListingAssert.Page("<table><tr><td>Home<td>Contact<tr><td>Menu<td><table><tr><td>Price: 5 €<tr><td>Part no: ZQ-1</table></table>");

        var product = Assert.Single(listing.Products);
        Assert.NotEqual(StatementForm.Table, product.From);
        ListingAssert.Money("5.00", "EUR", Assert.Single(product.Offers).Price);
    }

    [Theory]
    [InlineData("<dl><dt>Part number<dd>ZQ-1<dt>Condition<dd>used<dt>Price<dd>5,00 €<dt>Fits<dd>ZQ-900</dl>")]
    [InlineData("<dl><div><dt>Part number<dd>ZQ-1</div><div><dt>Condition<dd>used</div><div><dt>Price:<dd>5,00 €</div><div><dt>Fits<dd>ZQ-900</div></dl>")]
    [InlineData("<table><tr><th>Part number<td>ZQ-1<tr><th>Condition:<td>used<tr><th>Price<td>5,00 €<tr><th>Fits<td>ZQ-900</table>")]
    [InlineData("<p>Part number: ZQ-1<br>Condition: used<br><b>Price</b>: 5,00 €<br>Fits: ZQ-900")]
    [InlineData("<ul><li>Part number: ZQ-1<li>Condition: used | Price: 5,00 €<li>Fits: ZQ-900</ul>")]
    public void Terms_state_one_product(string html)
    {
        var listing = ListingAssert.Page("<title>Seal</title>" + html);

        var product = Assert.Single(listing.Products);
        Assert.Equal([new(NumberProperty.Number, "ZQ-1")], product.Numbers);
        Assert.Equal((StatementForm.DefinitionList, ItemCondition.Used), (product.From, product.Condition));
        ListingAssert.Money("5.00", "EUR", Assert.Single(product.Offers).Price);
        Assert.Contains(listing.Passages, passage => passage is { Stated: NumberProperty.Fits, Text: "ZQ-900" });
    }

    [Fact]
    public void What_is_not_seen_is_not_read_and_pictures_speak()
    {
        var listing = ListingAssert.Page(
            """
            <h1>Seal</h1><p hidden>AA-1</p><p style="DISPLAY : none">AA-2</p><style>AA-3</style><template>AA-4</template><script>AA-5</script><noscript>AA-6</noscript><!-- AA-7 -->
            <figure><img src="https://cdn.example/p/ZQ%2D1_front.jpg?w=3" alt="Seal  ZQ-2"><figcaption>stamped ZQ-3</figcaption></figure><p>one <b>t</b>wo<br>three
            """);

        Assert.Equal("Seal\nstamped ZQ-3\none two\nthree", listing.VisibleText);
        Assert.DoesNotContain(listing.Passages, passage => passage.Text.Contains("AA-", StringComparison.Ordinal));
        Assert.Equal(["Seal ZQ-2", "ZQ-1_front.jpg", "stamped ZQ-3"],
            listing.Passages.Where(passage => passage.Place == PassagePlace.Picture).Select(passage => passage.Text));
        Assert.Contains(new Passage(PassagePlace.Heading, "heading", "Seal"), listing.Passages);
    }
}
