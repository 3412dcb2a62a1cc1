using System.Net;
using System.Net.Http.Headers;
using System.Text;
using System.Text.Json;

namespace PartMatch.Web.Tests.Editing;

public sealed class EditingTests : IAsyncLifetime
{
    private readonly PartMatchServer _server = new();
    private HttpClient _client = null!; // made before the first test

    public async ValueTask InitializeAsync()
    {
        _client = _server.CreateClient();
        await _client.PostSmallBooksAsync();
    }

    public ValueTask DisposeAsync() => _server.DisposeAsync();

    [Fact]
    public async Task Second_of_two_editors_gets_both_versions_and_loses_nothing()
    {
        const string Address = "/api/books/duo-2/variants/a";
        var seen = await _client.AskAsync(Address);
        var version = seen.Text("version");

        using var first = await SendAsync(HttpMethod.Put, Address + "?who=Ada&why=pad", """{"variant":"a","name":"A pump","builtFrom":"2014-01","evidence":"ev-1"}""", version);
        Assert.Equal(HttpStatusCode.OK, first.StatusCode);
        using var second = await SendAsync(HttpMethod.Put, Address + "?who=Bo", """{"variant":"a","name":"A set","builtFrom":"2014-02","evidence":"ev-1"}""", version);

        var problem = await second.ProblemAsync(HttpStatusCode.PreconditionFailed, "stale");
        Assert.Equal("A set", problem.GetProperty("yours").Text("name"));
        Assert.Equal("A pump", problem.GetProperty("present").GetProperty("row").Text("name"));
        Assert.Equal("Ada", problem.GetProperty("present").GetProperty("changed").Text("who"));
        Assert.Equal("A pump", (await _client.AskAsync(Address)).GetProperty("row").Text("name"));

        // With the version it was shown, the second editor gets through.
        var present = problem.GetProperty("present").Text("version");
        using var again = await SendAsync(HttpMethod.Put, Address, """{"variant":"a","name":"A set","builtFrom":"2014-02","evidence":"ev-1"}""", present);
        Assert.Equal(HttpStatusCode.OK, again.StatusCode);
        Assert.Equal(again.Headers.ETag?.Tag, $"\"{(await _client.AskAsync(Address)).Text("version")}\"");
    }

    [Fact]
    public async Task Change_without_the_version_seen_is_refused()
    {
        using var put = await SendAsync(HttpMethod.Put, "/api/books/duo-2/variants/a", """{"variant":"a","name":"A"}""", null);
        Assert.Equal("If-Match", (await put.ProblemAsync(HttpStatusCode.PreconditionRequired, "version-needed")).OnlyError().Text("field"));
        using var delete = await SendAsync(HttpMethod.Delete, "/api/books/duo-2/variants/a", null, null);
        await delete.ProblemAsync(HttpStatusCode.PreconditionRequired, "version-needed");
    }

    [Fact]
    public async Task Row_removed_meanwhile_is_told_with_who_removed_it()
    {
        using var added = await SendAsync(HttpMethod.Post, "/api/books/duo-2/evidence", """{"evidence":"ev-77","grade":"reported"}""", null);
        Assert.Equal(HttpStatusCode.Created, added.StatusCode);
        Assert.Equal("/api/books/duo-2/evidence/ev-77", added.Headers.Location?.ToString());
        using var removed = await SendAsync(HttpMethod.Delete, "/api/books/duo-2/evidence/ev-77?who=Ada", null, added.Headers.ETag?.Tag.Trim('"'));
        Assert.Equal(HttpStatusCode.OK, removed.StatusCode);

        using var late = await SendAsync(HttpMethod.Put, "/api/books/duo-2/evidence/ev-77", """{"evidence":"ev-77","grade":"measured"}""", added.Headers.ETag?.Tag.Trim('"'));
        var problem = await late.ProblemAsync(HttpStatusCode.PreconditionFailed, "stale");
        Assert.False(problem.Has("present"));
        Assert.Equal("Ada", problem.GetProperty("removed").Text("who"));
        await _client.RefuseAsync("/api/books/duo-2/evidence/ev-77", HttpStatusCode.NotFound, "not-found");
    }

    [Fact]
    public async Task Row_that_never_was_is_not_told_to_be_removed()
    {
        using var put = await SendAsync(HttpMethod.Put, "/api/books/duo-2/evidence/ev-77", """{"evidence":"ev-77","grade":"measured"}""", "\"0\"");
        var error = (await put.ProblemAsync(HttpStatusCode.PreconditionFailed, "stale")).OnlyError();
        Assert.Contains("the history tells of none", error.Text("mend"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Row_with_a_slash_and_a_comma_in_its_key_has_an_address()
    {
        using var added = await SendAsync(HttpMethod.Post, "/api/books/duo-2/parts", """{"part":"ardlow:Z-1/2,B 5%","kind":"bolt","name":"Bolt"}""", null);
        Assert.Equal(HttpStatusCode.Created, added.StatusCode);

        var row = await _client.AskAsync(added.Headers.Location?.ToString() ?? "");
        Assert.Equal("ardlow:Z-1/2%2CB 5%25", row.Text("key"));
        Assert.Equal("ardlow:Z-1/2,B 5%", row.GetProperty("row").Text("part"));
    }

    [Theory]
    [InlineData("""{"evidence":5}""", "evidence")]
    [InlineData("""{"evidence":"ev-9","grade":""", "grade")]
    [InlineData("[]", "body")]
    public async Task Body_that_is_no_row_names_the_member(string body, string field)
    {
        using var answer = await SendAsync(HttpMethod.Post, "/api/books/duo-2/evidence", body, null);
        Assert.Equal(field, (await answer.ProblemAsync(HttpStatusCode.BadRequest, "bad-request")).OnlyError().Text("field"));
    }

    [Theory]
    [InlineData("""{"evidence":"ev-9","grade":null}""", "grade")]
    [InlineData("""{"evidence":"ev-9","grade":"mesured"}""", "grade")]
    [InlineData("""{"evidence":"ev-9","grade":"measured","colour":"red"}""", "colour")]
    public async Task Row_with_a_fault_names_the_cell(string body, string field)
    {
        using var answer = await SendAsync(HttpMethod.Post, "/api/books/duo-2/evidence", body, null);
        var error = (await answer.ProblemAsync(HttpStatusCode.BadRequest, "bad-row")).OnlyError();
        Assert.Equal(field, error.Text("field"));
        Assert.NotEmpty(error.Text("expected"));
    }

    [Fact]
    public async Task Unknown_names_are_not_found_and_the_nearest_is_named()
    {
        var problem = await _client.RefuseAsync("/api/books/duo-2/fitment", HttpStatusCode.NotFound, "not-found");
        Assert.Equal("did you mean fitments?", problem.OnlyError().Text("mend"));
        await _client.RefuseAsync("/api/books/solo/fitments", HttpStatusCode.NotFound, "not-found");
        using var answer = await SendAsync(HttpMethod.Post, "/api/books/solo/evidence", """{"evidence":"ev-9","grade":"measured"}""", null);
        await answer.ProblemAsync(HttpStatusCode.NotFound, "not-found");
        await _client.RefuseAsync("/api/books/duo-2/fitments?where=variannt:a", HttpStatusCode.BadRequest, "bad-question");
    }

    [Fact]
    public async Task Fault_among_several_rows_names_its_row_and_nothing_is_stored()
    {
        using var answer = await SendAsync(
            HttpMethod.Post, "/api/books/duo-2/changes?who=Ada",
            """{"rows":[{"table":"evidence","row":{"evidence":"ev-90","grade":"trial-fitted"}},{"table":"findings","row":{"finding":"fi-1","part":"none","variant":"a","position":"coolant-pump","axis":"mounts","outcome":"same","evidence":"ev-90"}}]}""", null);

        var error = (await answer.ProblemAsync(HttpStatusCode.BadRequest, "bad-row")).OnlyError();
        Assert.Equal(("rows[1].outcome", "one of: no, with-work, yes"), (error.Text("field"), error.Text("expected")));
        await _client.RefuseAsync("/api/books/duo-2/evidence/ev-90", HttpStatusCode.NotFound, "not-found");
    }

    [Theory]
    [InlineData("""{"rows":[{"table":"evidence","row":{"evidence":"ev-90","grade":"measured"}},null]}""", "rows[1]")]
    [InlineData("""{"rows":[]}""", "rows")]
    public async Task Change_without_a_row_names_the_place(string body, string field)
    {
        using var answer = await SendAsync(HttpMethod.Post, "/api/books/duo-2/changes", body, null);
        Assert.Equal(field, (await answer.ProblemAsync(HttpStatusCode.BadRequest, "bad-row")).OnlyError().Text("field"));
    }

    [Fact]
    public async Task Pages_of_a_table_follow_each_other()
    {
        var keys = new List<string>();
        string? cursor = null;
        do
        {
            var page = await _client.AskAsync($"/api/books/duo-2/parts?limit=2{(cursor is null ? "" : $"&cursor={cursor}")}");
            keys.AddRange(page.List("rows").Select(row => row.Text("key")));
            cursor = page.Has("cursor") ? page.Text("cursor") : null;
        }
        while (cursor is not null && keys.Count < 100);

        var all = (await _client.AskAsync("/api/books/duo-2/parts")).List("rows").Select(row => row.Text("key"));
        Assert.Equal(all, keys);
        Assert.True(keys.Count > 4);
    }

    [Fact]
    public async Task Page_of_another_site_changes_nothing()
    {
        using var request = new HttpRequestMessage(HttpMethod.Delete, "/api/books/duo-2/variants/a");
        request.Headers.Add("Origin", "https://example.org");
        request.Headers.TryAddWithoutValidation("If-Match", "*");
        using var answer = await _client.SendAsync(request, TestContext.Current.CancellationToken);
        await answer.ProblemAsync(HttpStatusCode.Forbidden, "foreign-origin");
    }

    [Fact]
    public async Task Undo_that_cannot_be_names_what_stands_against_it()
    {
        using var added = await SendAsync(HttpMethod.Post, "/api/books/duo-2/evidence", """{"evidence":"ev-77","grade":"reported"}""", null);
        var change = JsonDocument.Parse(await added.Content.ReadAsStringAsync(TestContext.Current.CancellationToken)).RootElement.GetProperty("change").GetInt64();
        using var cited = await SendAsync(HttpMethod.Put, "/api/books/duo-2/variants/b", """{"variant":"b","name":"B cart","evidence":"ev-77"}""", "*");
        Assert.Equal(HttpStatusCode.OK, cited.StatusCode);

        using var undo = await SendAsync(HttpMethod.Post, $"/api/history/{change}/undo", null, null);
        var error = (await undo.ProblemAsync(HttpStatusCode.Conflict, "cannot-undo")).OnlyError();
        Assert.Equal("/api/books/duo-2/variants/b", error.Text("row"));
        using var none = await SendAsync(HttpMethod.Post, "/api/history/9999/undo", null, null);
        await none.ProblemAsync(HttpStatusCode.NotFound, "not-found");
    }

    private async Task<HttpResponseMessage> SendAsync(HttpMethod method, string address, string? body, string? version)
    {
        using var request = new HttpRequestMessage(method, address);
        if (body is not null)
        {
            request.Content = new StringContent(body, Encoding.UTF8, new MediaTypeHeaderValue("application/json"));
        }

        if (version is not null)
        {
            request.Headers.TryAddWithoutValidation("If-Match", version == "*" ? "*" : $"\"{version}\"");
        }

        return await _client.SendAsync(request, TestContext.Current.CancellationToken);
    }
}
