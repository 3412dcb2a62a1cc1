using System.Net;
using System.Text.Json;

namespace PartMatch.Web.Tests.Builds;

/// <summary>The small cart, finished: what is told of it goes into the book of its family.</summary>
public sealed class FinishedEndpointsTests : IAsyncLifetime
{
    private const string Told =
        """
        {"date":"2026-03-14","hours":"6.5","output":"41 kW","fuel":"petrol 95","lines":[
         {"position":"coolant-pump","part":"ardlow:12/36","mounts":"yes","runs":"same","note":"cool after an hour"},
         {"position":"injector","part":"none"},{"position":"pump-bolt","part":"ardlow:77-1","mounts":"with-work"}]}
        """;

    private readonly PartMatchServer _server = new();
    private HttpClient _client = null!; // made before the first test

    public async ValueTask InitializeAsync()
    {
        _client = _server.CreateClient();
        await _client.PostSmallBooksAsync();
        await _client.StoreAsync(SmallBuild.Cart);
    }

    public ValueTask DisposeAsync() => _server.DisposeAsync();

    [Fact]
    public async Task Sitting_is_one_change_of_one_source_and_is_found_again_in_fit_and_parts_list()
    {
        var before = await _client.AskAsync("/api/fit?family=duo-2&variant=b&position=coolant-pump&part=12/36");
        using var answer = await _client.SendAsync(HttpMethod.Post, "/api/builds/cart/findings?who=Ada", Told);
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        var stored = JsonDocument.Parse(await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken)).RootElement;

        Assert.Equal(["evidence", "sources", "findings", "findings", "findings"], stored.List("rows").Select(row => row.Text("table")));
        var evidence = stored.List("rows")[0].GetProperty("row");
        Assert.Equal(("ran-under-load", "Ada", "build cart, version 1"), (evidence.Text("grade"), evidence.Text("author"), evidence.Text("source")));
        Assert.All(stored.List("rows").Where(row => row.Text("table") == "findings"),
            row => Assert.Equal("ev-cart-1", row.GetProperty("row").Text("evidence")));
        var changed = await _client.AskAsync("/api/history?book=duo-2&table=findings");
        Assert.Single(changed.List("changes").Select(change => change.GetProperty("change").GetInt32()).Distinct());

        var after = await _client.AskAsync("/api/fit?family=duo-2&variant=b&position=coolant-pump&part=12/36");
        Assert.NotEqual("proven", before.Text("sureness"));
        Assert.Equal(("fits", "proven"), (after.Text("headline"), after.Text("sureness")));
        var list = await _client.AskAsync("/api/builds/cart/parts-list?on=2026-11-26");
        Assert.Equal(["coolant-pump", "pump-bolt"], list.List("learned").Select(line => line.Text("position")));
        Assert.Equal("ardlow:12/36", Assert.Single(list.List("parts"), part => part.Text("position") == "coolant-pump").List("oneOf").Single().GetString());
    }

    [Fact]
    public async Task Second_sitting_is_another_source()
    {
        foreach (var code in new[] { "ev-cart-1", "ev-cart-2" })
        {
            using var answer = await _client.SendAsync(HttpMethod.Post, "/api/builds/cart/findings", Told);
            Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
            Assert.Equal(code, (await _client.AskAsync($"/api/books/duo-2/evidence/{code}")).Text("key"));
        }
    }

    [Theory]
    [InlineData("\"2026-03-14\"", "\"in March\"", "date")]
    [InlineData("2026-03-14", "2126-03-14", "date")]
    [InlineData("2026-03-14", "2126-03", "date")]
    [InlineData("\"6.5\"", "\"six\"", "hours")]
    [InlineData(",\"runs\":\"same\"", "", "hours")]
    [InlineData("\"41 kW\"", "\"41\"", "output")]
    [InlineData("\"position\":\"injector\"", "\"position\":\"injectr\"", "lines[1].position")]
    [InlineData("ardlow:77-1", "ardlow:77-9", "lines[2].part")]
    [InlineData("ardlow:77-1", "ardlow:12/34", "lines[2].part")]
    [InlineData("\"runs\":\"same\"", "\"runs\":\"yes\"", "lines[0].runs")]
    [InlineData("\"mounts\":\"yes\"", "\"mounts\":\"differently\"", "lines[0].mounts")]
    [InlineData("\"position\":\"pump-bolt\"", "\"position\":\"coolant-pump\"", "lines[0]")]
    public async Task Sitting_that_cannot_be_is_refused_with_its_place_and_nothing_is_stored(string was, string becomes, string field)
    {
        Assert.Contains(was, Told, StringComparison.Ordinal);
        using var answer = await _client.SendAsync(HttpMethod.Post, "/api/builds/cart/findings", Told.Replace(was, becomes, StringComparison.Ordinal));

        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        var problem = JsonDocument.Parse(await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken)).RootElement;
        Assert.StartsWith(field, problem.List("errors")[0].Text("field"), StringComparison.Ordinal);
        Assert.Empty((await _client.AskAsync("/api/books/duo-2/findings")).List("rows"));
    }

    // The pump of the pump set is damaged, and the one that is to come in its place is on the way.
    [Fact]
    public async Task What_is_not_here_is_not_found_to_fit_unless_somebody_says_that_it_stands()
    {
        await _client.StoreAsync("""{"code":"rig","title":"A rig","family":"duo-2","donor":{"variant":"a","states":[{"position":"coolant-pump","state":"damaged"}]},"currency":"EUR"}""");
        using var made = await _client.SendAsync(
            HttpMethod.Post, "/api/builds/rig/orders", """{"lines":[{"part":"ardlow:12/34","pieces":1,"price":"96.00","isNew":true}],"sending":"9.00","orderedOn":"2026-11-20"}""", "*");
        Assert.Equal(HttpStatusCode.Created, made.StatusCode);
        const string Told = """{"date":"2026-11-25","lines":[{"position":"injector","part":"none"},{"position":"coolant-pump","part":"ardlow:12/34","mounts":"yes"MORE}]}""";

        using var refused = await _client.SendAsync(HttpMethod.Post, "/api/builds/rig/findings", Told.Replace("MORE", "", StringComparison.Ordinal));
        var error = (await refused.ProblemAsync(HttpStatusCode.BadRequest, "bad-row")).OnlyError();
        Assert.Equal(("lines[1].stands", "on the way (order 1, line 1)"), (error.Text("field"), error.Text("found")));
        Assert.Empty((await _client.AskAsync("/api/books/duo-2/findings")).List("rows"));

        using var stands = await _client.SendAsync(HttpMethod.Post, "/api/builds/rig/findings", Told.Replace("MORE", ",\"stands\":true", StringComparison.Ordinal));
        Assert.Equal(HttpStatusCode.OK, stands.StatusCode);
    }

    // No money buys the bolts and the rest that is wanted new: there is no plan. What was ordered is on the way all the same.
    [Fact]
    public async Task What_is_on_the_way_is_not_found_to_fit_where_there_is_no_plan_either()
    {
        await _client.StoreAsync(Rig("\"budget\":\"1.00\","));
        await OrderPumpAsync();
        Assert.Equal("infeasible", (await _client.AskAsync("/api/builds/rig/plan?on=2026-11-25")).Text("status"));

        using var refused = await _client.SendAsync(HttpMethod.Post, "/api/builds/rig/findings", PumpFits);
        var error = (await refused.ProblemAsync(HttpStatusCode.BadRequest, "bad-row")).OnlyError();
        Assert.Equal(("lines[1].stands", "on the way (order 1, line 1)"), (error.Text("field"), error.Text("found")));
        Assert.Empty((await _client.AskAsync("/api/books/duo-2/findings")).List("rows"));
    }

    // The currency of the build was changed under its order: no plan can be asked for, and what the order says is known.
    [Fact]
    public async Task What_is_on_the_way_is_not_found_to_fit_where_no_plan_can_be_asked_for()
    {
        await _client.StoreAsync(Rig());
        await OrderPumpAsync();
        using var changed = await _client.SendAsync(HttpMethod.Put, "/api/builds/rig", Rig().Replace("EUR", "CHF", StringComparison.Ordinal), "1");
        Assert.Equal(HttpStatusCode.OK, changed.StatusCode);
        await _client.RefuseAsync("/api/builds/rig/plan", HttpStatusCode.Conflict, "build-outdated");

        using var refused = await _client.SendAsync(HttpMethod.Post, "/api/builds/rig/findings", PumpFits);
        Assert.Equal("lines[1].stands", (await refused.ProblemAsync(HttpStatusCode.BadRequest, "bad-row")).OnlyError().Text("field"));

        using var stands = await _client.SendAsync(
            HttpMethod.Post, "/api/builds/rig/findings", PumpFits.Replace("\"yes\"", "\"yes\",\"stands\":true", StringComparison.Ordinal));
        Assert.Equal(HttpStatusCode.OK, stands.StatusCode);
    }

    [Fact]
    public async Task Sitting_that_says_nothing_of_any_line_is_refused()
    {
        using var answer = await _client.SendAsync(HttpMethod.Post, "/api/builds/cart/findings",
            """{"date":"2026-03","lines":[{"position":"injector","part":"none"}]}""");
        var error = (await answer.ProblemAsync(HttpStatusCode.BadRequest, "bad-row")).OnlyError();
        Assert.Equal(("lines", "nothing"), (error.Text("field"), error.Text("found")));
    }

    [Fact]
    public async Task Lists_of_a_build_that_is_not_there_are_not_found_and_nothing_is_recorded_of_it()
    {
        await _client.RefuseAsync("/api/builds/solo/parts-list", HttpStatusCode.NotFound, "not-found");
        await _client.RefuseAsync("/api/builds/solo/yard-list", HttpStatusCode.NotFound, "not-found");
        using var answer = await _client.SendAsync(HttpMethod.Post, "/api/builds/solo/findings", Told);
        await answer.ProblemAsync(HttpStatusCode.NotFound, "not-found");
    }

    [Fact]
    public async Task Yard_list_where_there_is_no_plan_is_empty_and_says_so()
    {
        var list = await _client.AskAsync("/api/builds/cart/yard-list?on=2026-11-26");

        Assert.Equal("/api/builds/cart/yard-list?objective=cheapest&version=1&on=2026-11-26", list.Text("permalink"));
        Assert.Equal(list.Text("status") == "infeasible", list.List("parts").Count == 0);
    }

    private const string PumpFits =
        """{"date":"2026-11-25","lines":[{"position":"injector","part":"none"},{"position":"coolant-pump","part":"ardlow:12/34","mounts":"yes"}]}""";

    private static string Rig(string more = "") =>
        "{\"code\":\"rig\",\"title\":\"A rig\",\"family\":\"duo-2\"," + more
            + "\"donor\":{\"variant\":\"a\",\"states\":[{\"position\":\"coolant-pump\",\"state\":\"damaged\"}]},\"currency\":\"EUR\"}";

    private async Task OrderPumpAsync()
    {
        using var made = await _client.SendAsync(
            HttpMethod.Post, "/api/builds/rig/orders",
            """{"lines":[{"part":"ardlow:12/34","pieces":1,"price":"96.00","isNew":true}],"sending":"9.00","orderedOn":"2026-11-20"}""", "*");
        Assert.Equal(HttpStatusCode.Created, made.StatusCode);
    }
}
