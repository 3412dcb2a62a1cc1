using System.Net;
using System.Text;
using System.Text.Json;
using Microsoft.Extensions.DependencyInjection;
using PartMatch.Web.LookAlikes;

namespace PartMatch.Web.Tests.Offers;

/// <summary>Offers and sellers through HTTP, on a base of its own with the two small books and one seller.</summary>
public sealed class OfferEndpointsTests : IAsyncLifetime
{
    private const string Bolt = """{"offer":{"seller":"abel","numberAsWritten":"12 34","price":"84.00","currency":"GBP","pack":"1","condition":"used","seenOn":"2026-06-01"},"listing":{"text":"Pump 12 34, used","title":"Pump"}}""";

    private readonly PartMatchServer _server = new();
    private HttpClient _client = null!; // made before the first test

    public async ValueTask InitializeAsync()
    {
        _client = _server.CreateClient();
        await _client.PostSmallBooksAsync();

        using var seller = await SendAsync("/api/books/shop/sellers", """{"seller":"abel","name":"Abel","currency":"GBP","shippingFixed":"9.50","shippingPerItem":"1.20","importCharge":"4.5"}""");
        Assert.Equal(HttpStatusCode.Created, seller.StatusCode);
    }

    public ValueTask DisposeAsync() => _server.DisposeAsync();

    // 84.00 + 9.50 + 1.20 + 84.00 × 4.5 % = 98.48
    [Fact]
    public async Task One_click_stores_offer_and_words_and_the_list_shows_what_it_costs_and_how_old_it_is()
    {
        var stored = await StoredAsync(Bolt, HttpStatusCode.Created);
        Assert.Equal(("stored", "known-part", "ardlow:12/34"), (stored.Text("result"), stored.GetProperty("number").Text("verdict"),
            stored.GetProperty("offer").Text("part")));

        var list = await _client.AskAsync("/api/offers?part=12/34&on=2026-07-02");
        var offer = Assert.Single(list.List("offers"));
        Assert.Equal("98.48", offer.GetProperty("landed").GetProperty("total").Text("amount"));
        Assert.True(offer.GetProperty("age").GetProperty("old").GetBoolean()); // 31 days
        Assert.Equal((1, 1), (list.GetProperty("total").GetInt32(), list.GetProperty("old").GetInt32()));
        Assert.Equal("/api/offers?part=ardlow:12/34&pieces=1&on=2026-07-02&stale-after=30&limit=20", list.Text("permalink"));

        var one = await _client.AskAsync(offer.Text("link") + "&on=2026-06-02");
        Assert.Equal("Pump 12 34, used", one.GetProperty("offer").GetProperty("kept").Text("text"));
        Assert.Equal("seen 1 day before 2026-06-02", one.GetProperty("offer").GetProperty("age").Text("text"));
    }

    [Fact]
    public async Task Same_listing_read_twice_stores_one_offer_and_a_later_price_tells_the_earlier_one()
    {
        var first = await StoredAsync(Bolt, HttpStatusCode.Created);
        var second = await StoredAsync(Bolt, HttpStatusCode.OK);
        Assert.Equal("already-stored", second.Text("result"));
        Assert.False(second.Has("change"));
        Assert.Equal(first.GetProperty("offer").Text("link"), second.GetProperty("offer").Text("link"));

        var later = await StoredAsync(Bolt.Replace("84.00", "90.00", StringComparison.Ordinal).Replace("2026-06-01", "2026-06-20", StringComparison.Ordinal),
            HttpStatusCode.Created);
        Assert.Equal("the same seller had it for 84.00 GBP on 2026-06-01", later.GetProperty("earlier").Text("text"));

        var prices = await _client.AskAsync("/api/parts/12%2F34/prices");
        Assert.Equal(2, prices.List("points").Count);
        var range = Assert.Single(prices.List("ranges"));
        Assert.Equal(("84.00", "87.00", "90.00"), (range.GetProperty("low").Text("amount"), range.GetProperty("middle").Text("amount"),
            range.GetProperty("high").Text("amount")));
        Assert.Contains("<svg", await _client.GetStringAsyncWhateverStatus(prices.List("plots")[0].Text("link")), StringComparison.Ordinal);
        Assert.Equal(2, (await _client.AskAsync("/api/plots/prices.json?number=12/34&on=2026-07-01")).GetProperty("table").List("rows").Count);
    }

    [Fact]
    public async Task New_seller_and_unknown_number_go_in_with_the_offer_and_come_out_as_one_change()
    {
        var stored = await StoredAsync(
            """{"offer":{"numberAsWritten":"QZ-9000","price":"5","currency":"EUR"},"newSeller":{"seller":"bo","name":"Bo","currency":"EUR"},"listing":{"text":"QZ-9000, 5 euros"}}""", HttpStatusCode.Created);
        Assert.False(stored.GetProperty("offer").Has("part"));
        Assert.Equal("unknown", stored.GetProperty("number").Text("verdict"));
        Assert.Equal(["sending", "import charge"], stored.GetProperty("offer").GetProperty("landed").Texts("notKnown"));
        Assert.Equal(1, (await _client.AskAsync("/api/sellers/bo")).GetProperty("seller").GetProperty("offers").GetInt32());
        Assert.Equal("nothing counted yet", (await _client.AskAsync("/api/sellers/bo")).GetProperty("seller").Text("deliveriesText"));

        using var undone = await SendAsync($"/api/history/{stored.GetProperty("change").GetInt64()}/undo", null);
        Assert.True(undone.IsSuccessStatusCode);
        Assert.Equal(0, (await _client.AskAsync("/api/offers?part=QZ-9000")).GetProperty("total").GetInt32());
        await _client.RefuseAsync("/api/sellers/bo", HttpStatusCode.NotFound, "not-found");
    }

    [Fact]
    public async Task Dry_run_judges_and_stores_nothing()
    {
        var judged = await StoredAsync(Bolt, HttpStatusCode.OK, "&dry-run=true");
        Assert.Equal("would-store", judged.Text("result"));
        Assert.Equal(0, (await _client.AskAsync("/api/offers?seller=abel")).GetProperty("total").GetInt32());
    }

    [Theory]
    [InlineData("""{"offer":{"seller":"abel","numberAsWritten":"A-1","price":"9.505","currency":"GBP"}}""", "bad-row", "offer.price")]
    [InlineData("""{"offer":{"seller":"nobody","numberAsWritten":"A-1","price":"9.50","currency":"GBP"}}""", "bad-row", "offer.seller")]
    [InlineData("""{"offer":{"seller":"abel","price":"9.50","currency":"GBP"}}""", "bad-row", "offer.numberAsWritten")]
    [InlineData("""{"offer":{"seller":"abel","numberAsWritten":"A-1","price":"9.50","currency":"GBP","colour":"red"}}""", "bad-row", "offer.colour")]
    [InlineData("""{"offer":{"seller":"abel","numberAsWritten":"A-1","price":"9.50","currency":"GBP","listing":"x"}}""", "bad-row", "offer.listing")]
    [InlineData("""{"offer":{"numberAsWritten":"A-1","price":"9.50","currency":"GBP"},"newSeller":{"seller":"bo"}}""", "bad-row", "newSeller.name")]
    [InlineData("""{"offer":{"seller":"abel","numberAsWritten":"A-1","price":9.5,"currency":"GBP"}}""", "bad-request", "offer.price")] // a number as a number
    [InlineData("""{"offer":{},"extra":1}""", "bad-request", "extra")]
    public async Task Fault_is_told_at_its_member_and_nothing_is_stored(string body, string type, string field)
    {
        using var answer = await SendAsync("/api/offers?book=duo-2", body);
        Assert.Contains(field, (await answer.ProblemAsync(HttpStatusCode.BadRequest, type)).List("errors").Select(error => error.Text("field")));
        Assert.Equal(0, (await _client.AskAsync("/api/offers?seller=abel")).GetProperty("total").GetInt32());
    }

    [Fact]
    public async Task Book_that_is_not_there_is_404()
    {
        using var answer = await SendAsync("/api/offers?book=nothing", Bolt);
        await answer.ProblemAsync(HttpStatusCode.NotFound, "not-found");
    }

    [Theory]
    [InlineData("/api/offers?part=77-1", "ambiguous-number")]
    [InlineData("/api/offers?position=coolant-pump", "bad-question")]
    [InlineData("/api/offers?on=2026-06", "bad-question")]
    [InlineData("/api/offers?pieces=0", "bad-question")]
    [InlineData("/api/offers?currency=EUX", "bad-question")]
    [InlineData("/api/offers?condition=broken", "bad-question")]
    [InlineData("/api/offers?cursor=x", "bad-question")]
    [InlineData("/api/offers?colour=red", "bad-question")]
    public async Task Question_that_cannot_be_asked_is_refused(string address, string type) => await _client.RefuseAsync(address, HttpStatusCode.BadRequest,
        type);

    [Fact]
    public async Task Family_and_position_narrow_to_the_kind_that_sits_there()
    {
        await StoredAsync(Bolt, HttpStatusCode.Created);
        await StoredAsync(Bolt.Replace("12 34", "I-1", StringComparison.Ordinal), HttpStatusCode.Created);
        Assert.Equal(2, (await _client.AskAsync("/api/offers?family=duo-2")).GetProperty("total").GetInt32());
        Assert.Equal(["I-1"], (await _client.AskAsync("/api/offers?family=duo-2&position=injector")).List("offers").Select(offer => offer.Text("number")));
    }

    // 84.00 + 9.50 + 1.20: the seller is where the base is, so there is no border.
    [Fact]
    public async Task Seller_of_the_country_of_the_base_charges_no_import()
    {
        await using var server = new PartMatchServer { Settings = { ["PartMatch:Country"] = "gb" } };
        using var client = server.CreateClient();
        await client.PostSmallBooksAsync();

        using var body = new StringContent(
            Bolt[..^1].Replace("abel", "beth", StringComparison.Ordinal)
                + ""","newSeller":{"seller":"beth","name":"Beth","country":"GB","currency":"GBP","shippingFixed":"9.50","shippingPerItem":"1.20"}}""", Encoding.UTF8, "application/json");
        using var stored = await client.PostAsync(new Uri("/api/offers?book=duo-2", UriKind.Relative), body, TestContext.Current.CancellationToken);
        Assert.True(stored.IsSuccessStatusCode, await stored.Content.ReadAsStringAsync(TestContext.Current.CancellationToken));
        var landed = Assert.Single((await client.AskAsync("/api/offers?part=12/34")).List("offers")).GetProperty("landed");
        Assert.Equal("94.70", landed.GetProperty("total").Text("amount"));
        Assert.Contains("no import charge (the seller is in GB as well)", landed.Text("text"), StringComparison.Ordinal);
    }

    // The facts are dear, the counts change with every offer: the one stays, the other is new.
    [Fact]
    public async Task Offers_raise_a_look_alike_among_its_equals_without_ranking_anew()
    {
        var source = _server.Services.GetRequiredService<LookAlikeSource>();
        var before = source.Get();
        Assert.Equal(0, before.Odds.OffersOf("ardlow:12/35"));
        await StoredAsync(Bolt.Replace("12 34", "12/35", StringComparison.Ordinal), HttpStatusCode.Created);

        Assert.Same(before.Numbers, source.Get().Numbers);
        Assert.Equal(1, source.Get().Odds.OffersOf("ardlow:12/35"));
        var twin = (await _client.AskAsync("/api/numbers/12%2F34/look-alikes")).List("lookAlikes").Single(other => other.Text("part") == "ardlow:12/35");
        Assert.Equal(1, twin.GetProperty("offers").GetInt32());
    }

    [Fact]
    public async Task Price_list_is_judged_row_by_row_and_stored_as_a_whole()
    {
        const string List = "Teilenummer;Preis;Bestand\n12-34;61,50;3\n12/3S;9,00;\nQZ-9000;12,00;1\n77-1;2,00;40\n";
        var judged = await ListAsync(List, "&currency=EUR&seen-on=2026-06-01&dry-run=true");
        Assert.Equal(["known-part", "look-alike-characters", "unknown", "narrows-only"], judged.List("rows").Select(row => row.Text("verdict")));
        Assert.Equal(["number", "price", "quantity"], judged.GetProperty("mapping").List("columns").Select(column => column.Text("holds")));
        Assert.Equal(("would-store", "comma", 4), (judged.Text("result"), judged.Text("decimalMark"),
            judged.GetProperty("counts").GetProperty("new").GetInt32()));
        Assert.Equal(0, (await _client.AskAsync("/api/offers?seller=abel")).GetProperty("total").GetInt32());

        var stored = await ListAsync(List, "&currency=EUR&seen-on=2026-06-01");
        Assert.Equal(("stored", 4), (stored.Text("result"), (await _client.AskAsync("/api/offers?seller=abel")).GetProperty("total").GetInt32()));
        Assert.Equal("already-stored", (await ListAsync(List, "&currency=EUR&seen-on=2026-06-01")).Text("result"));
    }

    [Fact]
    public async Task One_faulty_row_keeps_the_whole_list_out_and_says_where_and_how_to_mend_it()
    {
        const string List = "number,price\n12-34,61.50\nQZ-1,on request\n";
        using var answer = await PostListAsync(List, "");
        var problem = await answer.ProblemAsync(HttpStatusCode.BadRequest, "bad-row");
        Assert.Equal((3, "price", "on request"), (problem.OnlyError().GetProperty("line").GetInt32(), problem.OnlyError().Text("column"),
            problem.OnlyError().Text("found")));
        Assert.Equal(0, (await _client.AskAsync("/api/offers?seller=abel")).GetProperty("total").GetInt32());
        Assert.Contains("leave-out=without-price", problem.Text("detail"), StringComparison.Ordinal);
        var counts = (await ListAsync(List, "&dry-run=true")).GetProperty("counts");
        Assert.Equal((1, 0), (counts.GetProperty("withoutPrice").GetInt32(), counts.GetProperty("faulty").GetInt32()));
    }

    // Exactly the rows with words or nothing where the price should stand; a price that can mean two things is a fault all the same.
    [Fact]
    public async Task Rows_without_a_price_are_left_out_where_the_question_says_so_and_no_others()
    {
        const string List = "number,price,condition\n12-34,61.50,used\nQZ-1,on request,grade B\nQZ-2,,\n";
        var stored = await ListAsync(List, "&leave-out=without-price");
        Assert.Equal(
            ["known-part: stored", "unknown: without-price", "unknown: without-price"],
            stored.List("rows").Select(row => $"{row.Text("verdict")}: {(row.TryGetProperty("notStored", out var why) ? why.GetString() : "stored")}"));
        Assert.Equal((1, "without-price"), (stored.GetProperty("counts").GetProperty("new").GetInt32(), stored.GetProperty("asked").Text("leaveOut")));
        Assert.Equal(1, (await _client.AskAsync("/api/offers?seller=abel")).GetProperty("total").GetInt32());

        using var other = await PostListAsync("number,price\n12-35,9.50\nQZ-1,on request\nQZ-3,84.005\n", "&leave-out=without-price");
        Assert.Equal("84.005", (await other.ProblemAsync(HttpStatusCode.BadRequest, "bad-row")).OnlyError().Text("found"));
        using var none = await PostListAsync("number,price\nQZ-1,on request\n", "&leave-out=without-price");
        Assert.Equal("on request", (await none.ProblemAsync(HttpStatusCode.BadRequest, "bad-row")).OnlyError().Text("found"));
        using var unknown = await PostListAsync(List, "&leave-out=faulty");
        Assert.Equal("leave-out", (await unknown.ProblemAsync(HttpStatusCode.BadRequest, "bad-question")).OnlyError().Text("field"));
        Assert.Equal(1, (await _client.AskAsync("/api/offers?seller=abel")).GetProperty("total").GetInt32());
    }

    [Fact]
    public async Task Columns_that_nothing_names_are_shown_with_their_cells_and_taken_as_the_question_says()
    {
        const string List = "foo,bar\nword,nine\nthing,\n";
        using var answer = await PostListAsync(List, "&dry-run=true");
        var problem = await answer.ProblemAsync(HttpStatusCode.BadRequest, "bad-question");
        Assert.Equal(
            ["1 foo: word thing", "2 bar: nine"],
            problem.List("columns").Select(column =>
                $"{column.GetProperty("column").GetInt32()} {column.Text("head")}: {string.Join(' ', column.List("cells").Select(cell => cell.GetString()))}"));

        var judged = await ListAsync("foo,bar\n12-34,9.50\n", "&number=1&price=2&dry-run=true");
        Assert.Equal(
            ["number you said so", "price you said so"],
            judged.GetProperty("mapping").List("columns").Select(column => $"{column.Text("holds")} {column.Text("because")}"));
        Assert.Equal(["foo", "bar"], judged.List("columns").Select(column => column.Text("head")));
    }

    [Theory]
    [InlineData("&number=Nummer", "number,price\nA-1,9.50\n", "bad-question", "number")] // no such column
    [InlineData("", "a,b\nword,word\n", "bad-question", "number")] // nothing that looks like a number
    [InlineData("", "", "bad-request", "body")]
    public async Task List_that_cannot_be_read_says_what_to_give(string query, string list, string type, string field)
    {
        using var answer = await PostListAsync(list, query);
        Assert.Contains(field, (await answer.ProblemAsync(HttpStatusCode.BadRequest, type)).List("errors").Select(error => error.Text("field")));
    }

    [Fact]
    public async Task Table_of_a_page_is_judged_and_stored_as_a_list_is()
    {
        const string Page = "<p>Millrace</p><table><tr><td>open<td>9 to 5<td>Monday<td>Friday</table>"
            + "<table><caption>Spring</caption><tr><th>Number<th>Price<tr><td colspan=2>Pumps<tr><td>12-34<td>61.50<tr><td>QZ-9000<td>12.00</table>";
        var judged = await PageAsync(Page, "&dry-run=true");
        Assert.Equal(["known-part", "unknown"], judged.List("rows").Select(row => row.Text("verdict")));
        var tables = judged.GetProperty("tables");
        Assert.Equal((2, "1 row across the whole table left out: Pumps"), (tables.GetProperty("taken").GetInt32(), tables.List("notes").Single().GetString()));
        var stored = await PageAsync(Page, "&table=2");
        Assert.Equal(("stored", 2), (stored.Text("result"), stored.GetProperty("counts").GetProperty("new").GetInt32()));
    }

    [Theory]
    [InlineData("text/html", "<p>no table</p>", "", "bad-request", "body")]
    [InlineData("text/html", "<table><tr><th>Number<th>Price<tr><td>A-1<td>9.50</table>", "&table=4", "bad-question", "table")]
    [InlineData("text/html", "<table><tr><th>Number<th>Price<tr><td>A-1<td>9.50</table>", "&table=0", "bad-question", "table")]
    [InlineData("text/csv", "number,price\nA-1,9.50\n", "&table=1", "bad-question", "table")]
    [InlineData("text/csv", "number,price\nA-1,1.299\nA-2,2.450\n", "", "bad-question", "decimal")] // nothing of the column settles it
    public async Task List_that_leaves_something_open_is_asked_for_it(string type, string list, string query, string problem, string field)
    {
        using var answer = await PostListAsync(list, query + "&dry-run=true", type);
        Assert.Equal(field, (await answer.ProblemAsync(HttpStatusCode.BadRequest, problem)).OnlyError().Text("field"));
    }

    // The known part has the danger that its look-alikes are listed with; 12/3S is in no book and reads like 12/35: ease 2 × harm not known 3 = 6, medium.
    [Fact]
    public async Task Row_says_with_which_danger_its_number_is_taken_for_another()
    {
        var listed = (await _client.AskAsync("/api/numbers/12%2F34/look-alikes")).List("lookAlikes").Single(other => other.Text("part") == "ardlow:12/35");
        var rows = (await ListAsync("number,price\n12-34,61.50\n12/3S,9.00\nQZ-9000,12.00\n", "&dry-run=true")).List("rows").ToList();
        Assert.Equal(
            [$"ardlow:12/35 {listed.Text("danger")}", "ardlow:12/35 medium", ""],
            rows.Select(row => string.Join(", ", row.List("dangers").Select(one => $"{one.Text("part")} {one.Text("danger")}"))));
        Assert.Contains($"taken for it: ardlow:12/35 (danger {listed.Text("danger")}", rows[0].Text("text"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Seller_who_is_not_recorded_is_404_with_the_nearest()
    {
        using var body = new StringContent("number,price\nA-1,9.50\n", Encoding.UTF8, "text/csv");
        using var answer = await _client.PostAsync(new Uri("/api/offers/price-list?book=duo-2&seller=abell", UriKind.Relative), body,
            TestContext.Current.CancellationToken);
        Assert.Contains("abel", (await answer.ProblemAsync(HttpStatusCode.NotFound, "not-found")).OnlyError().Text("mend"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Ten_thousand_rows_are_stored_with_their_progress_told_and_the_answer_last()
    {
        var list = "number,price\n" + string.Concat(Enumerable.Range(1, 10_000).Select(row => string.Create(System.Globalization.CultureInfo.InvariantCulture,
            $"ZK-{row:00000},9.50\n")));
        using var request = new HttpRequestMessage(HttpMethod.Post, "/api/offers/price-list?book=duo-2&seller=abel&seen-on=2026-06-01")
        {
            Content = new StringContent(list, Encoding.UTF8, "text/csv"),
        };
        request.Headers.Accept.ParseAdd("application/x-ndjson");
        using var answer = await _client.SendAsync(request, TestContext.Current.CancellationToken);
        Assert.Equal("application/x-ndjson", answer.Content.Headers.ContentType?.MediaType);

        var lines = (await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken)).Split('\n', StringSplitOptions.RemoveEmptyEntries);
        Assert.Equal("""{"rows":250,"of":10000}""", lines[0]);
        Assert.Equal("""{"rows":10000,"of":10000}""", lines[^2]);
        var last = JsonDocument.Parse(lines[^1]).RootElement;
        Assert.Equal(("stored", 10_000), (last.Text("result"), last.GetProperty("counts").GetProperty("new").GetInt32()));
        Assert.Equal(10_000, (await _client.AskAsync("/api/offers?seller=abel")).GetProperty("total").GetInt32());
    }

    private async Task<JsonElement> StoredAsync(string body, HttpStatusCode status, string query = "")
    {
        using var answer = await SendAsync("/api/offers?book=duo-2" + query, body);
        var text = await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);
        Assert.True(answer.StatusCode == status, $"answered {(int)answer.StatusCode}: {text}");
        return JsonDocument.Parse(text).RootElement;
    }

    private async Task<HttpResponseMessage> SendAsync(string address, string? body)
    {
        using var content = body is null ? null : new StringContent(body, Encoding.UTF8, "application/json");
        return await _client.PostAsync(new Uri(address, UriKind.Relative), content, TestContext.Current.CancellationToken);
    }

    private Task<JsonElement> ListAsync(string list, string query) => JudgedAsync(list, query, "text/csv");

    private Task<JsonElement> PageAsync(string page, string query) => JudgedAsync(page, query, "text/html");

    private async Task<JsonElement> JudgedAsync(string list, string query, string type)
    {
        using var answer = await PostListAsync(list, query, type);
        var text = await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);
        Assert.True(answer.IsSuccessStatusCode, text);
        return JsonDocument.Parse(text).RootElement;
    }

    private async Task<HttpResponseMessage> PostListAsync(string list, string query, string type = "text/csv")
    {
        using var body = new StringContent(list, Encoding.UTF8, type);
        return await _client.PostAsync(new Uri("/api/offers/price-list?book=duo-2&seller=abel" + query, UriKind.Relative), body,
            TestContext.Current.CancellationToken);
    }
}
