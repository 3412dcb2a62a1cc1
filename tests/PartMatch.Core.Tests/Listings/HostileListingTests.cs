using System.Globalization;
using System.Text;
using PartMatch.Core.Listings;
using Xunit;

namespace PartMatch.Core.Tests.Listings;

/// <summary>Pages made to choke a reader. Each has a named outcome; the time-out only catches what hangs.</summary>
public sealed class HostileListingTests
{
    private const string Depth = "elements more than 256 deep";
    private const string Nodes = "more than 200,000 elements, attributes and pieces of text";

    public static TheoryData<string, string> Refused => new()
    {
        { "100,000 nested divs", Depth },
        { "formatting elements inside one another", Depth },
        { "formatting reopened in every paragraph", Nodes },
        { "links and blocks misnested", Depth },
        { "nested tables", Depth },
        { "nested templates", Nodes },
        { "frames inside one another", Depth },
        { "definition lists inside one another", Depth },
        { "300,000 flat elements", Nodes },
        { "250,000 attributes on one element", Nodes },
        { "a million stray tags", "more than 800,000 tags" },
    };

    [Theory]
    [MemberData(nameof(Refused))]
    public async Task Page_over_a_bound_is_refused_by_what_it_is(string page, string found)
    {
        var refused = Assert.IsType<ListingReading.Unreadable>(await ListingAssert.InTime(ListingFormat.Html, Made(page)));

        Assert.Equal((found, "at most 200,000 elements, attributes and pieces of text, 256 deep", "select the text on the page and paste it"),
            (refused.Found, refused.Expected, refused.Mend));
    }

    [Theory]
    [InlineData("1 MB attribute")]
    [InlineData("100,000 attributes")]
    [InlineData("entities")]
    [InlineData("unclosed comment")]
    [InlineData("unclosed script")]
    [InlineData("spans of a thousand million cells")]
    [InlineData("wide and long table")]
    [InlineData("text beside cells")]
    [InlineData("1 MB number")]
    [InlineData("1 MB of digits and marks")]
    [InlineData("4 MB of words")]
    [InlineData("properties inside one another")]
    [InlineData("items referring to one big element")]
    [InlineData("a million empty objects")]
    [InlineData("ten thousand broken blocks")]
    public async Task Page_within_the_bounds_is_read_with_its_sentence(string page)
    {
        var read = Assert.IsType<ListingReading.Read>(await ListingAssert.InTime(ListingFormat.Html, "<p>Seal ZQ-1, used</p>" + Made(page)));

        Assert.StartsWith("Seal ZQ-1, used", read.Listing.VisibleText, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("[", "]")]
    [InlineData("{\"a\":", "}")]
    public async Task Deep_json_is_left_out_with_a_warning(string open, string close)
    {
        foreach (var (depth, unreadable) in new[] { (62, false), (66, true), (100_000, true) })
        {
            var json = Repeat(open, depth) + "1" + Repeat(close, depth);
            var read = Assert.IsType<ListingReading.Read>(await ListingAssert.InTime(ListingFormat.Html,
                $"<script type=application/ld+json>{json}</script><p>Seal ZQ-1"));

            Assert.Equal(unreadable, read.Listing.Warnings.Any(warning => warning.Code == "json-ld-unreadable"));
        }
    }

    [Fact]
    public async Task Offers_multiplied_by_reference_end_at_a_bound()
    {
        // 3,000 products that each refer to the same 3,000 offers.
        var offers = Numbered("{\"@id\":\"o#\",\"@type\":\"Offer\",\"price\":\"5.00\"}", 3_000);
        var references = Numbered("{\"@id\":\"o#\"}", 3_000);
        var products = Numbered("{\"@id\":\"p#\",\"@type\":\"Product\",\"mpn\":\"Z-#\",\"offers\":{\"@id\":\"all\"}}", 3_000);
        var json = $$"""{"@graph":[{{offers}},{"@id":"all","@type":"AggregateOffer","offers":[{{references}}]},{{products}}]}""";

        var read = Assert.IsType<ListingReading.Read>(await ListingAssert.InTime(ListingFormat.Html, $"<script type=application/ld+json>{json}</script>"));

        Assert.True(read.Listing.Products.Sum(product => product.Offers.Count) <= 2 * 2_000);
        Assert.Contains(read.Listing.Warnings, warning => warning.Code == "too-many-products");
    }

    [Fact]
    public void Key_said_twice_leaves_its_price_open()
    {
        var listing = ListingAssert.JsonLd("""{"@type":"Offer","name":"x","price":"5.00","price":"50.00","priceCurrency":"EUR"}""");

        Assert.Equal(["5.00 EUR", "50.00 EUR"], ListingAssert.Readings(ListingAssert.Offer(listing).Price));
        Assert.Contains(listing.Warnings, warning => warning.Code == "json-ld-duplicate-key");
    }

    [Fact]
    public void Half_a_surrogate_pair_is_replaced()
    {
        var json = ListingAssert.JsonLd("""{"@type":"Product","name":"Seal \ud83d ZQ-1 \udd27 \ud83d\udd27"}""");
        Assert.Equal("Seal \uFFFD ZQ-1 \uFFFD \U0001F527", Assert.Single(json.Products).Name);

        var page = ListingAssert.Page("<p>Seal &#xD83D; ZQ-1");
        Assert.Equal("Seal \uFFFD ZQ-1", page.VisibleText);

        // The three bytes of a surrogate in CESU-8 are no UTF-8.
        var bytes = ListingAssert.Read(ListingFormat.Text, [.. "große Pumpe für die Türe, ZQ-1 "u8, 0xED, 0xA0, 0xBD]);
        Assert.StartsWith("große Pumpe für die Türe, ZQ-1 \uFFFD", bytes.VisibleText, StringComparison.Ordinal);
        Assert.Contains(bytes.Warnings, warning => warning.Code == "invalid-characters");
    }

    [Fact]
    public async Task Items_that_refer_to_one_another_end()
    {
        const string Circle =
            """
            <div itemscope itemtype="https://schema.org/Product" itemref="a b"><b itemprop="mpn">ZQ-1</b></div>
            <div id="a" itemprop="isRelatedTo" itemscope itemtype="https://schema.org/Product" itemref="b"></div>
            <div id="b"><i itemprop="isRelatedTo" itemscope itemtype="https://schema.org/Product" itemref="a b"></i></div>
            """;
        var read = Assert.IsType<ListingReading.Read>(await ListingAssert.InTime(ListingFormat.Html, Circle));
        Assert.Equal([new(NumberProperty.Mpn, "ZQ-1")], Assert.Single(read.Listing.Products).Numbers);

        const string Graph =
            """
            {"@graph":[{"@id":"1","@type":"Product","mpn":"ZQ-1","offers":{"@id":"2"},"hasVariant":{"@id":"1"}},
              {"@id":"2","@type":"AggregateOffer","offers":[{"@id":"2"},{"@id":"3"}]},{"@id":"3","@type":"Offer","price":"5.00","itemOffered":{"@id":"1"}}]}
            """;
        var graph = Assert.IsType<ListingReading.Read>(await ListingAssert.InTime(ListingFormat.Html, $"<script type=application/ld+json>{Graph}</script>"));
        Assert.Equal("5.00", Assert.Single(Assert.Single(graph.Listing.Products).Offers).Price?.Written);
    }

    [Theory]
    [InlineData("\t\n", 1_000_000, false)]
    [InlineData("a|b\n", 150_000, true)]
    [InlineData("Price: 5 €\n", 150_000, true)]
    [InlineData("Number\tPrice\nZQ-1\t5 €\n", 70_000, true)]
    [InlineData("Price: ", 500_000, true)]
    [InlineData("|", 3_000_000, true)]
    [InlineData("shipping 5 € ", 250_000, true)]
    public async Task Words_without_end_are_read_or_refused_in_time(string piece, int times, bool read) =>
        Assert.Equal(read, await ListingAssert.InTime(ListingFormat.Text, Repeat(piece, times)) is ListingReading.Read);

    [Fact]
    public void Document_over_its_size_is_refused_and_one_at_it_is_read()
    {
        var bounds = ListingBounds.Usual with { MaxBytes = 1_000 };
        Assert.IsType<ListingReading.Read>(ListingReader.Read(new(ListingFormat.Text, Encoding.UTF8.GetBytes("Seal ".PadRight(1_000, '.'))), bounds));

        var refused = ListingAssert.Refused(ListingFormat.Text, Encoding.UTF8.GetBytes("Seal ".PadRight(1_001, '.')), bounds);
        Assert.Equal(("1,001 bytes", "at most 1,000 bytes"), (refused.Found, refused.Expected));
    }

    [Fact]
    public void Depth_at_its_bound_is_read_and_one_deeper_is_not()
    {
        // html and body are two of them.
        var bounds = ListingBounds.Usual with { MaxDepth = 10 };
        Assert.IsType<ListingReading.Read>(ListingReader.Read(new(ListingFormat.Html, Encoding.UTF8.GetBytes(Repeat("<div>", 8) + "x")), bounds));
        Assert.Equal("elements more than 10 deep", ListingAssert.Refused(ListingFormat.Html, Encoding.UTF8.GetBytes(Repeat("<div>", 9) + "x"), bounds).Found);
    }

    private static string Made(string page) => page switch
    {
        "100,000 nested divs" => Repeat("<div>", 100_000),
        "formatting elements inside one another" => Numbered("<b id=\"#\">", 1_000),
        "formatting reopened in every paragraph" => "<p>" + Numbered("<b id=\"#\">", 200) + Repeat("</p><p>x", 50_000),
        "links and blocks misnested" => Repeat("<a><div>x", 50_000),
        "nested tables" => Repeat("<table><tr><td>", 30_000),
        "nested templates" => Repeat("<template>", 250_000),
        "frames inside one another" => Repeat("<frameset>", 50_000),
        "definition lists inside one another" => Repeat("<dl><dd>", 50_000),
        "300,000 flat elements" => Repeat("<i>x</i>", 300_000),
        "250,000 attributes on one element" => "<p " + Numbered("a#=1 ", 250_000) + ">",
        "a million stray tags" => Repeat("</p", 1_000_000),
        "1 MB attribute" => $"<p title=\"{new string('x', 1_000_000)}\">",
        "100,000 attributes" => "<p " + Numbered("a#=1 ", 100_000) + ">",
        "entities" => Repeat("&CounterClockwiseContourIntegral", 30_000) + Repeat("&amp;&#1;&#x110000;", 100_000),
        "unclosed comment" => "<!--" + Repeat("- -", 500_000),
        "unclosed script" => "<script><!--" + Repeat("<script", 100_000),
        "spans of a thousand million cells" => "<table>" + Repeat("<tr><td colspan=999999999 rowspan=999999999>ZQ-1", 10_000),
        "wide and long table" => "<table><tr><th>Number<th>Price<tr>" + Repeat("<td>ZQ-1<td>5 €<tr>", 30_000),
        "text beside cells" => "<table>" + Repeat("x<tr>", 150_000),
        "1 MB number" => new string('9', 1_000_000),
        "1 MB of digits and marks" => Repeat("1.", 500_000) + " €",
        "4 MB of words" => Repeat("used shipping core deposit 5 € ", 120_000),
        "properties inside one another" =>
            Repeat("<div itemscope itemtype=https://schema.org/Product>" + Repeat("<span itemprop=description>", 200) + new string('x',
                10_000) + Repeat("</span>", 200) + "</div>", 200),
        "items referring to one big element" =>
            "<div id=a>" + Repeat("<i itemprop=mpn>ZQ-1</i>",
                20_000) + "</div>" + Repeat("<div itemscope itemtype=https://schema.org/Product itemref=a></div>", 20_000),
        "a million empty objects" => "<script type=application/ld+json>[" + Repeat("{},", 1_000_000) + "{}]</script>",
        "ten thousand broken blocks" => Repeat("<script type=application/ld+json>{</script>", 10_000),
        _ => throw new ArgumentOutOfRangeException(nameof(page), page, null),
    };

    private static string Repeat(string text, int times) => new StringBuilder(text.Length * times).Insert(0, text, times).ToString();

    private static string Numbered(string text, int times) =>
        string.Join(text.StartsWith('{') ? "," : "", Enumerable.Range(0, times)
            .Select(number => text.Replace("#", number.ToString(CultureInfo.InvariantCulture), StringComparison.Ordinal)));
}
