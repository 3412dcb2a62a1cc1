using System.Net;
using System.Text.Json;
using PartMatch.Storage.Books;
using PartMatch.Storage.Editing;
using PartMatch.Web.Http;
using PartMatch.Web.Orders;
using PartMatch.Web.Tests.Builds;

namespace PartMatch.Web.Tests.Orders;

/// <summary>Orders and goods in over HTTP: a pump set of the small book whose own pump 12/34 is damaged.</summary>
public sealed class OrderEndpointsTests : IAsyncLifetime
{
    private const string Rig = """{"code":"rig","title":"A rig","family":"duo-2","donor":{"variant":"a","states":[{"position":"coolant-pump","state":"damaged"}]},"currency":"EUR","startOn":"2026-12-01"}""";

    private const string Pump = """{"lines":[{"part":"ardlow:12/34","pieces":1,"price":"96.00","isNew":true,"for":["coolant-pump"]}],"sending":"9.00","orderedOn":"2026-11-20"}""";

    private readonly PartMatchServer _server = new();
    private HttpClient _client = null!; // made before the first test

    public async ValueTask InitializeAsync()
    {
        _client = _server.CreateClient();
        await _client.PostSmallBooksAsync();
        await _client.StoreAsync(Rig);
    }

    public ValueTask DisposeAsync() => _server.DisposeAsync();

    [Fact]
    public async Task Order_that_was_made_is_committed_and_the_plan_rests_on_it()
    {
        using var made = await _client.SendAsync(HttpMethod.Post, "/api/builds/rig/orders?who=Ada", Pump, "0");
        Assert.Equal((HttpStatusCode.Created, "/api/builds/rig/orders/1", "\"1\""), (made.StatusCode, made.Headers.Location?.ToString(), made.Headers.ETag?.Tag));

        var orders = await _client.AskAsync("/api/builds/rig/orders?on=2026-12-01");

        Assert.Equal(("0.00", "105.00", "0.00"), MoneyOf(orders)); // 96.00 and 9.00; nothing more is needed
        Assert.Equal("105.00", orders.GetProperty("money").GetProperty("whole").Text("amount"));
        var line = (await _client.AskAsync("/api/builds/rig/plan?on=2026-12-01")).List("lines").Single(one => one.Text("position") == "coolant-pump");
        Assert.Equal((1, "ordered"), (line.List("bought")[0].GetProperty("order").GetInt32(), line.List("bought")[0].Text("state")));
        Assert.True(JsonElement.DeepEquals(orders, await _client.AskAsync(orders.Text("permalink"))));
    }

    [Fact]
    public async Task What_happened_moves_the_money_and_a_stale_version_tells_what_is_there()
    {
        await MakeAsync();
        using var paid = await _client.SendAsync(HttpMethod.Post, "/api/builds/rig/orders/1", """{"act":"paid","on":"2026-11-21"}""", "1");
        Assert.Equal((HttpStatusCode.OK, "\"2\""), (paid.StatusCode, paid.Headers.ETag?.Tag));

        using var late = await _client.SendAsync(HttpMethod.Post, "/api/builds/rig/orders/1", """{"act":"arrived","on":"2026-11-22"}""", "1");
        var stale = await late.ProblemAsync(HttpStatusCode.PreconditionFailed, "stale");
        Assert.Equal(2, stale.GetProperty("presentOrder").GetProperty("version").GetInt32());
        using var unseen = await _client.SendAsync(HttpMethod.Post, "/api/builds/rig/orders/1", """{"act":"arrived","on":"2026-11-22"}""");
        await unseen.ProblemAsync(HttpStatusCode.PreconditionRequired, "version-needed");

        Assert.Equal(("105.00", "0.00"), MoneyWithoutPlan(await _client.AskAsync("/api/builds/rig/orders?plan=no")));
        Assert.Equal(("0.00", "105.00"), MoneyWithoutPlan(await _client.AskAsync("/api/builds/rig/orders?plan=no&on=2026-11-20")));
    }

    [Fact]
    public async Task Wrong_pump_is_told_apart_raises_the_danger_and_no_longer_counts()
    {
        await MakeAsync();
        var before = await PairAsync();
        var arrival = Assert.Single((await _client.AskAsync("/api/builds/rig/goods-in")).List("arrivals"));
        Assert.Equal(["hot-parts"], arrival.List("cautions").Select(caution => caution.Text("code")));
        Assert.Contains("rotation", arrival.GetProperty("key").GetProperty("key").GetProperty("check").Text("feature"), StringComparison.Ordinal);

        using var answer = await _client.SendAsync(
            HttpMethod.Post, "/api/builds/rig/goods-in", """{"order":1,"line":1,"isRight":false,"fault":"other-part","sent":"ardlow:12/35","seen":["rotation@photo:anticlockwise"],"on":"2026-11-23"}""", "1");
        Assert.True(answer.StatusCode == HttpStatusCode.OK, await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken));

        var after = await PairAsync();
        Assert.Equal(before.GetProperty("ease").GetInt32() + 1, after.GetProperty("ease").GetInt32());
        Assert.Equal((1, 1), (after.GetProperty("wrong").GetProperty("deliveries").GetInt32(), after.GetProperty("wrong").GetProperty("wrong").GetInt32()));
        Assert.Equal("wrong", (await _client.AskAsync("/api/builds/rig/orders/1")).GetProperty("order").List("lines")[0].Text("state"));
        Assert.Equal("infeasible", (await _client.AskAsync("/api/builds/rig/plan?on=2026-12-01")).Text("status")); // nobody sells another
    }

    [Fact]
    public async Task Told_by_mistake_and_withdrawn_counts_for_nothing()
    {
        await MakeAsync();
        var before = await PairAsync();
        using var wrong = await _client.SendAsync(
            HttpMethod.Post, "/api/builds/rig/goods-in", """{"order":1,"line":1,"isRight":false,"fault":"other-part","sent":"ardlow:12/35"}""", "1");
        using var taken = await _client.SendAsync(HttpMethod.Post, "/api/builds/rig/orders/1", """{"act":"withdrawn","on":"2026-11-28","withdraws":2}""", "2");
        Assert.Equal(HttpStatusCode.OK, taken.StatusCode);

        Assert.True(JsonElement.DeepEquals(before, await PairAsync()));
        Assert.Equal("ordered", (await _client.AskAsync("/api/builds/rig/orders/1")).GetProperty("order").List("lines")[0].Text("state"));
    }

    [Fact]
    public async Task What_was_read_is_kept_as_an_item_of_the_family()
    {
        await MakeAsync("""{"lines":[{"part":"ardlow:77-1","pieces":3,"price":"6.00"}],"sending":"0.00","orderedOn":"2026-11-20"}""");
        await ArriveAsync();
        using var answer = await _client.SendAsync(
            HttpMethod.Post, "/api/builds/rig/goods-in",
            """{"order":1,"line":1,"isRight":true,"withoutCheck":true,"readings":[{"feature":"length","value":"26.1","unit":"mm","uncertainty":"0.05","instrument":"caliper"}],"on":"2026-11-23"}""", "2");
        var text = await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);
        Assert.True(answer.StatusCode == HttpStatusCode.OK, text);

        var recorded = JsonDocument.Parse(text).RootElement;
        Assert.Equal("duo-2/it-0001", recorded.Text("item"));
        var item = await _client.AskAsync("/api/items/duo-2/it-0001");
        Assert.Equal(("arrival", "ardlow:77-1"), (item.Text("origin"), item.Text("part")));
    }

    // Two tabs, one basket: the second does not know of the first.
    [Fact]
    public async Task Order_from_a_page_that_saw_fewer_orders_is_refused_and_tells_what_was_ordered()
    {
        using var first = await _client.GetAsync(new Uri("/api/builds/rig/orders?plan=no", UriKind.Relative), TestContext.Current.CancellationToken);
        Assert.Equal("\"0\"", first.Headers.ETag?.Tag);
        using var made = await _client.SendAsync(HttpMethod.Post, "/api/builds/rig/orders", Pump, "0");
        Assert.Equal(HttpStatusCode.Created, made.StatusCode);

        using var again = await _client.SendAsync(HttpMethod.Post, "/api/builds/rig/orders", Pump, "0");
        var stale = await again.ProblemAsync(HttpStatusCode.PreconditionFailed, "stale");
        Assert.Equal([1], stale.List("orderedMeanwhile").Select(order => order.GetProperty("number").GetInt32()));
        Assert.Contains("order 1 was made: 1 × Coolant pump", stale.OnlyError().Text("mend"), StringComparison.Ordinal);

        foreach (var unknown in new[] { "2", "-1", "soon" })
        {
            using var other = await _client.SendAsync(HttpMethod.Post, "/api/builds/rig/orders", Pump, unknown);
            await other.ProblemAsync(HttpStatusCode.PreconditionFailed, "stale");
        }

        using var unseen = await _client.SendAsync(HttpMethod.Post, "/api/builds/rig/orders", Pump);
        await unseen.ProblemAsync(HttpStatusCode.PreconditionRequired, "version-needed");
        var orders = await _client.AskAsync("/api/builds/rig/orders?plan=no");
        Assert.Single(orders.List("orders"));
        Assert.Equal(1, orders.GetProperty("version").GetInt32());

        using var wanted = await _client.SendAsync(HttpMethod.Post, "/api/builds/rig/orders", Pump, "1");
        Assert.Equal(HttpStatusCode.Created, wanted.StatusCode);
    }

    // 105.00 are owed.
    [Theory]
    [InlineData("""{"act":"paid","on":"2026-11-21","amount":"100.00"}""", "amount")]
    [InlineData("""{"act":"paid","on":"2026-11-21","amount":"1050.00"}""", "amount")]
    [InlineData("""{"act":"arrived","on":"2126-11-21"}""", "on")]
    public async Task Slip_of_a_figure_is_refused(string body, string field)
    {
        await MakeAsync();
        using var answer = await _client.SendAsync(HttpMethod.Post, "/api/builds/rig/orders/1", body, "1");

        Assert.Equal(field, (await answer.ProblemAsync(HttpStatusCode.BadRequest, "bad-order")).OnlyError().Text("field"));
        Assert.Equal(("0.00", "105.00"), MoneyWithoutPlan(await _client.AskAsync("/api/builds/rig/orders?plan=no")));
    }

    [Fact]
    public async Task Part_that_is_paid_leaves_the_rest_to_be_paid()
    {
        await MakeAsync();
        using var answer = await _client.SendAsync(HttpMethod.Post, "/api/builds/rig/orders/1", """{"act":"paid","on":"2026-11-21","amount":"100.00","inPart":true}""", "1");

        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.Equal(("100.00", "5.00"), MoneyWithoutPlan(await _client.AskAsync("/api/builds/rig/orders?plan=no")));
    }

    [Fact]
    public async Task Right_is_what_came_and_was_looked_at()
    {
        await MakeAsync();
        async Task<string> RefusalAsync(string members, string version)
        {
            using var answer = await _client.SendAsync(HttpMethod.Post, "/api/builds/rig/goods-in", $$"""{"order":1,"line":1,"isRight":true{{members}}}""", version);
            return (await answer.ProblemAsync(HttpStatusCode.BadRequest, "bad-order")).OnlyError().Text("field");
        }

        Assert.Equal("isRight", await RefusalAsync(""","withoutCheck":true""", "1")); // nobody said that it came
        await ArriveAsync();
        Assert.Equal("seen", await RefusalAsync("", "2"));
        Assert.Equal("withoutCheck", await RefusalAsync(""","withoutCheck":true,"seen":["rotation@photo:clockwise"]""", "2"));
        Assert.Equal("on", await RefusalAsync(""","withoutCheck":true,"on":"2126-11-23" """, "2"));

        using var seen = await _client.SendAsync(HttpMethod.Post, "/api/builds/rig/goods-in", """{"order":1,"line":1,"isRight":true,"seen":["rotation@photo:clockwise"]}""", "2");
        Assert.Equal(HttpStatusCode.OK, seen.StatusCode);
        var told = (await _client.AskAsync("/api/builds/rig/orders/1")).GetProperty("order").List("events")[^1].GetProperty("did");
        Assert.Equal(("checked", "rotation@photo:clockwise"), (told.Text("act"), told.Texts("seen").Single()));
    }

    [Fact]
    public async Task What_was_looked_at_without_a_check_says_so()
    {
        await MakeAsync();
        await ArriveAsync();
        using var told = await _client.SendAsync(HttpMethod.Post, "/api/builds/rig/goods-in", """{"order":1,"line":1,"isRight":true,"withoutCheck":true}""", "2");

        Assert.Equal(HttpStatusCode.OK, told.StatusCode);
        Assert.True((await _client.AskAsync("/api/builds/rig/orders/1")).GetProperty("order").List("events")[^1].GetProperty("did").GetProperty("withoutCheck").GetBoolean());
    }

    // The order route asks the same as the page of goods in.
    [Fact]
    public async Task Checked_over_the_order_route_is_what_came_and_was_looked_at()
    {
        await MakeAsync();
        async Task<string> RefusalAsync(string members, string version)
        {
            using var answer = await _client.SendAsync(HttpMethod.Post, "/api/builds/rig/orders/1", $$"""{"act":"checked","on":"2026-11-23"{{members}}}""", version);
            return (await answer.ProblemAsync(HttpStatusCode.BadRequest, "bad-order")).OnlyError().Text("field");
        }

        Assert.Equal("act", await RefusalAsync(""","withoutCheck":true""", "1")); // nobody said that it came
        await ArriveAsync();
        Assert.Equal("seen", await RefusalAsync("", "2"));
        Assert.Equal("seen", await RefusalAsync(""","line":1""", "*"));
        Assert.Equal("withoutCheck", await RefusalAsync(""","withoutCheck":true,"seen":["rotation@photo:clockwise"]""", "2"));
        using var stale = await _client.SendAsync(HttpMethod.Post, "/api/builds/rig/orders/1", """{"act":"checked","on":"2026-11-23"}""", "1");
        await stale.ProblemAsync(HttpStatusCode.PreconditionFailed, "stale");

        using var told = await _client.SendAsync(HttpMethod.Post, "/api/builds/rig/orders/1", """{"act":"checked","on":"2026-11-23","withoutCheck":true}""", "2");
        Assert.Equal(HttpStatusCode.OK, told.StatusCode);
        Assert.Equal("checked", (await _client.AskAsync("/api/builds/rig/orders/1")).GetProperty("order").List("lines")[0].Text("state"));
    }

    [Theory]
    [InlineData("""{"lines":[]}""", "lines")]
    [InlineData("""{"lines":[{"part":"ardlow:99","pieces":1,"price":"1.00"}],"sending":"0.00"}""", "lines[0].part")]
    [InlineData("""{"lines":[{"offer":"duo-2/of-1"}],"sending":"0.00"}""", "lines[0].offer")]
    [InlineData("""{"lines":[{"part":"ardlow:12/34","pieces":1}],"sending":"0.00"}""", "lines[0].price")]
    [InlineData("""{"lines":[{"part":"ardlow:12/34","pieces":0,"price":"1.00"}],"sending":"0.00"}""", "lines[0].pieces")]
    [InlineData("""{"lines":[{"part":"ardlow:12/34","pieces":1,"price":"1.005"}],"sending":"0.00"}""", "lines[0].price")]
    [InlineData("""{"lines":[{"part":"ardlow:12/34","pieces":1,"price":"1.00"}]}""", "sending")]
    [InlineData("""{"lines":[{"part":"ardlow:12/34","pieces":1,"price":"1.00"}],"sending":"0.00","orderedOn":"soon"}""", "orderedOn")]
    [InlineData("""{"lines":[{"part":"ardlow:12/34","pieces":1,"price":"1.00"}],"sending":"0.00","color":"red"}""", "color")]
    public async Task Order_that_cannot_be_made_names_its_member(string body, string field)
    {
        using var answer = await _client.SendAsync(HttpMethod.Post, "/api/builds/rig/orders", body, "*");

        Assert.Contains(field, (await answer.ProblemAsync(HttpStatusCode.BadRequest, "bad-order")).List("errors").Select(error => error.Text("field")));
        Assert.Empty((await _client.AskAsync("/api/builds/rig/orders?plan=no")).List("orders"));
    }

    [Fact]
    public async Task Orders_of_a_build_that_is_not_there_are_not_found()
    {
        await _client.RefuseAsync("/api/builds/solo/orders?plan=no", HttpStatusCode.NotFound, "not-found");
        await _client.RefuseAsync("/api/builds/solo/goods-in", HttpStatusCode.NotFound, "not-found");
        await _client.RefuseAsync("/api/builds/rig/orders/1", HttpStatusCode.NotFound, "not-found");
        using var added = await _client.SendAsync(HttpMethod.Post, "/api/builds/solo/orders", Pump, "*");
        await added.ProblemAsync(HttpStatusCode.NotFound, "not-found");
    }

    [Fact]
    public async Task Shopping_list_is_a_table()
    {
        await MakeAsync();
        using var answer = await _client.GetAsync(new Uri("/api/builds/rig/orders.csv?on=2026-12-01", UriKind.Relative), TestContext.Current.CancellationToken);

        Assert.Equal("text/csv", answer.Content.Headers.ContentType?.MediaType);
        var lines = (await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken)).Split("\r\n");
        Assert.StartsWith("seller,state,order,", lines[0], StringComparison.Ordinal);
        Assert.StartsWith(",ordered,1,,ardlow:12/34,,Coolant pump,,1,", lines[1], StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("=1+1", "'=1+1")]
    [InlineData("+1", "'+1")]
    [InlineData("-1", "'-1")]
    [InlineData("@x", "'@x")]
    [InlineData("\tx", "'\tx")]
    [InlineData("=\"a\",b", "\"'=\"\"a\"\",b\"")]
    [InlineData("a=1", "a=1")]
    [InlineData("", "")]
    public void Cell_that_a_spreadsheet_would_run_is_guarded(string text, string cell) => Assert.Equal(cell, ShoppingList.Cell(text));

    [Fact]
    public async Task Pairs_that_endanger_the_build_are_told_worst_first()
    {
        await MakeAsync();

        var answer = await _client.AskAsync("/api/builds/rig/look-alikes?danger=low&on=2026-12-01");

        var pair = answer.List("pairs")[0];
        Assert.Equal(("ardlow:12/34", "ardlow:12/35"), (pair.Text("part"), pair.Text("other")));
        Assert.Equal(["order 1, line 1: ordered"], pair.Texts("orders"));
    }

    // The pair of two bolts that differ in a number is the worst of none here: what came in this build stands before every other pair, and says so.
    [Fact]
    public async Task Pair_that_came_wrong_stands_first_and_says_why()
    {
        await MakeAsync("""{"lines":[{"part":"ardlow:12/34","pieces":2,"price":"192.00","isNew":true},{"part":"ardlow:77-1","pieces":4,"price":"6.00"}],"sending":"0.00","orderedOn":"2026-11-20"}""");
        var before = (await _client.AskAsync("/api/builds/rig/look-alikes?danger=low&on=2026-12-01")).List("pairs");
        var last = before[^1];
        Assert.True(before.Count > 1, "there is a pair to come before");
        using var told = await _client.SendAsync(
            HttpMethod.Post, "/api/builds/rig/goods-in",
            $$"""{"order":1,"line":{{(last.Text("part") == "ardlow:77-1" ? 2 : 1)}},"pieces":1,"isRight":false,"fault":"other-part","sent":"{{last.Text("other")}}","on":"2026-11-23"}""", "1");
        Assert.Equal(HttpStatusCode.OK, told.StatusCode);

        foreach (var danger in new[] { "low", "high" })
        {
            var answer = await _client.AskAsync($"/api/builds/rig/look-alikes?danger={danger}&on=2026-12-01");
            var first = answer.List("pairs")[0];
            Assert.Equal((last.Text("part"), last.Text("other")), (first.Text("part"), first.Text("other")));
            Assert.StartsWith($"{last.Text("other")} came for {last.Text("part")} in this build: order 1, line ", first.Texts("cameWrong").Single(), StringComparison.Ordinal);
            Assert.All(answer.List("pairs").Skip(1), pair => Assert.Empty(pair.List("cameWrong")));
            Assert.Contains("what came wrong first", answer.Text("headlineText"), StringComparison.Ordinal);
        }
    }

    // What stands on the thing is typed as it is read: 12-35 and 12/35 are one number.
    [Fact]
    public async Task Pair_that_came_wrong_stands_first_however_the_number_was_written()
    {
        await MakeAsync();
        using var told = await _client.SendAsync(
            HttpMethod.Post, "/api/builds/rig/goods-in", """{"order":1,"line":1,"isRight":false,"fault":"other-part","sent":"ardlow:12-35"}""", "1");
        Assert.Equal(HttpStatusCode.OK, told.StatusCode);
        await MakeAsync(); // the next one is on the way

        var pairs = (await _client.AskAsync("/api/builds/rig/look-alikes?danger=low&on=2026-12-01")).List("pairs");
        Assert.Equal(("ardlow:12/34", "ardlow:12/35"), (pairs[0].Text("part"), pairs[0].Text("other")));
        Assert.StartsWith("ardlow:12-35 came for ardlow:12/34 in this build: order 1, line 1", pairs[0].Texts("cameWrong").Single(), StringComparison.Ordinal);
    }

    [Fact]
    public void Readings_that_could_not_be_kept_are_refused_for_what_stood_in_their_way()
    {
        var user = new BookUser("duo-2", "evidence.csv", "ev-2", "", "retracted_on: empty, but a reason for retracting it is given");

        Assert.Equal("in-use", GoodsInRecording.Refusal(new EditOutcome.InUse([user], 1), "duo-2").Problem.Type.Split('/')[^1]);
        Assert.IsType<Absent>(GoodsInRecording.Refusal(new EditOutcome.NoBook("duo-2"), "duo-2"));
        Assert.IsType<Refused>(GoodsInRecording.Refusal(new EditOutcome.Faulty([]), "duo-2"));
        Assert.Throws<InvalidOperationException>(() => GoodsInRecording.Refusal(new EditOutcome.Same([]), "duo-2")); // an item that is new changes the book
    }

    private async Task MakeAsync(string body = Pump)
    {
        using var made = await _client.SendAsync(HttpMethod.Post, "/api/builds/rig/orders", body, "*");
        Assert.True(made.StatusCode == HttpStatusCode.Created, await made.Content.ReadAsStringAsync(TestContext.Current.CancellationToken));
    }

    private async Task ArriveAsync()
    {
        using var arrived = await _client.SendAsync(HttpMethod.Post, "/api/builds/rig/orders/1", """{"act":"arrived","on":"2026-11-22"}""", "1");
        Assert.Equal(HttpStatusCode.OK, arrived.StatusCode);
    }

    private async Task<JsonElement> PairAsync() => (await _client.AskAsync("/api/look-alikes?family=duo-2")).List("pairs")
        .Single(pair => pair.GetProperty("a").Text("part") == "ardlow:12/34" && pair.GetProperty("b").Text("part") == "ardlow:12/35");

    private static (string Spent, string Committed, string ToGo) MoneyOf(JsonElement orders) =>
        (Amount(orders, "spent"), Amount(orders, "committed"), Amount(orders, "toGo"));

    private static (string Spent, string Committed) MoneyWithoutPlan(JsonElement orders)
    {
        Assert.False(orders.GetProperty("money").Has("toGo"));
        return (Amount(orders, "spent"), Amount(orders, "committed"));
    }

    private static string Amount(JsonElement orders, string member) => orders.GetProperty("money").GetProperty(member).Text("amount");
}
