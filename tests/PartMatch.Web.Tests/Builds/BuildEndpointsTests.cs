using System.Net;
using System.Text.Json;

namespace PartMatch.Web.Tests.Builds;

public sealed class BuildEndpointsTests : IAsyncLifetime
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
    public async Task Stored_build_is_shown_listed_and_named()
    {
        using var stored = await _client.SendAsync(HttpMethod.Post, "/api/builds?who=Ada&why=a+start", SmallBuild.Cart);

        Assert.Equal(HttpStatusCode.Created, stored.StatusCode);
        Assert.Equal("/api/builds/cart", stored.Headers.Location?.ToString());
        Assert.Equal("\"1\"", stored.Headers.ETag?.Tag);
        var shown = await _client.AskAsync("/api/builds/cart");
        Assert.Equal((1, "/api/builds/cart"), (shown.GetProperty("version").GetInt32(), shown.Text("permalink")));
        var saved = shown.GetProperty("saved");
        Assert.Equal(("create", "Ada", "a start"), (saved.Text("act"), saved.Text("who"), saved.Text("why")));
        Assert.Equal("40 kW", shown.GetProperty("document").GetProperty("goal").Text("power"));
        Assert.Equal(["b"], shown.GetProperty("document").List("wishes")[1].Texts("like"));
        var listed = Assert.Single((await _client.AskAsync("/api/builds")).List("builds"));
        Assert.Equal(
            ("cart", "duo-2", "a", "b", "/api/builds/cart"),
            (listed.Text("build"), listed.Text("family"), listed.Text("donor"), listed.Text("target"), listed.Text("link")));
    }

    [Fact]
    public async Task File_of_a_build_is_taken_in_by_another_server_and_comes_out_the_same()
    {
        using var stored = await _client.SendAsync(HttpMethod.Post, "/api/builds", SmallBuild.Cart);
        using var file = await _client.GetAsync(new Uri("/api/builds/cart/file", UriKind.Relative), TestContext.Current.CancellationToken);
        var bytes = await file.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);
        Assert.Equal(("cart.build.json", "application/json"), (file.Content.Headers.ContentDisposition?.FileName, file.Content.Headers.ContentType?.MediaType));

        using var deleted = await _client.SendAsync(HttpMethod.Delete, "/api/builds/cart", version: "*");
        Assert.Equal(HttpStatusCode.OK, deleted.StatusCode);
        using var taken = await _client.SendAsync(HttpMethod.Post, "/api/builds", bytes);
        Assert.Equal(HttpStatusCode.Created, taken.StatusCode);

        Assert.Equal(bytes, await _client.GetStringAsync(new Uri("/api/builds/cart/file", UriKind.Relative), TestContext.Current.CancellationToken));
    }

    [Fact]
    public async Task Code_of_another_build_is_a_conflict()
    {
        using var stored = await _client.SendAsync(HttpMethod.Post, "/api/builds", SmallBuild.Cart);
        using var again = await _client.SendAsync(HttpMethod.Post, "/api/builds", SmallBuild.With("A cart from", "Another from"));

        var error = (await again.ProblemAsync(HttpStatusCode.Conflict, "conflict")).OnlyError();
        Assert.Equal(("code", "cart"), (error.Text("field"), error.Text("found")));
        Assert.Contains("PUT /api/builds/cart with If-Match \"1\"", error.Text("mend"), StringComparison.Ordinal);
        Assert.Equal("A cart from a pump set", (await _client.AskAsync("/api/builds/cart")).GetProperty("document").Text("title"));
    }

    [Fact]
    public async Task Second_of_two_editors_gets_both_documents_and_loses_nothing()
    {
        using var stored = await _client.SendAsync(HttpMethod.Post, "/api/builds", SmallBuild.Cart);
        using var first = await _client.SendAsync(HttpMethod.Put, "/api/builds/cart?who=Ada", SmallBuild.With("\"400.00\"", "\"450.00\""), "1");
        Assert.Equal((HttpStatusCode.OK, "\"2\""), (first.StatusCode, first.Headers.ETag?.Tag));

        using var second = await _client.SendAsync(HttpMethod.Put, "/api/builds/cart?who=Bo", SmallBuild.With("\"400.00\"", "\"300.00\""), "1");

        var problem = await second.ProblemAsync(HttpStatusCode.PreconditionFailed, "stale");
        Assert.Equal("300.00", problem.GetProperty("yourBuild").Text("budget"));
        Assert.Equal("450.00", problem.GetProperty("presentBuild").GetProperty("document").Text("budget"));
        Assert.Equal("Ada", problem.GetProperty("presentBuild").GetProperty("saved").Text("who"));
        using var through = await _client.SendAsync(HttpMethod.Put, "/api/builds/cart?who=Bo", SmallBuild.With("\"400.00\"", "\"300.00\""), "2");
        Assert.Equal(HttpStatusCode.OK, through.StatusCode);
        Assert.Equal("400.00", (await _client.AskAsync("/api/builds/cart?version=1")).GetProperty("document").Text("budget"));
    }

    [Fact]
    public async Task Change_without_the_version_seen_is_refused()
    {
        using var stored = await _client.SendAsync(HttpMethod.Post, "/api/builds", SmallBuild.Cart);
        foreach (var (method, address, body) in new[]
        {
            (HttpMethod.Put, "/api/builds/cart", SmallBuild.Cart), (HttpMethod.Delete, "/api/builds/cart", null),
            (HttpMethod.Post, "/api/builds/cart/versions/1/restore", null),
        })
        {
            using var answer = await _client.SendAsync(method, address, body);
            Assert.Equal("If-Match", (await answer.ProblemAsync(HttpStatusCode.PreconditionRequired, "version-needed")).OnlyError().Text("field"));
        }
    }

    [Fact]
    public async Task Deleted_build_tells_who_deleted_it_and_can_be_had_again()
    {
        using var stored = await _client.SendAsync(HttpMethod.Post, "/api/builds", SmallBuild.Cart);
        using var deleted = await _client.SendAsync(HttpMethod.Delete, "/api/builds/cart?who=Ada&why=sold", version: "1");
        Assert.Equal("\"2\"", deleted.Headers.ETag?.Tag);

        var gone = await _client.RefuseAsync("/api/builds/cart", HttpStatusCode.NotFound, "not-found");
        Assert.Contains("by Ada", gone.OnlyError().Text("found"), StringComparison.Ordinal);
        Assert.Empty((await _client.AskAsync("/api/builds")).List("builds"));
        Assert.True(Assert.Single((await _client.AskAsync("/api/builds?deleted=true")).List("builds")).GetProperty("deleted").GetBoolean());
        var versions = (await _client.AskAsync("/api/builds/cart/versions")).List("versions");
        Assert.Equal(["delete", "create"], versions.Select(version => version.GetProperty("saved").Text("act")));
        Assert.Equal("/api/builds/cart?version=1", versions[1].Text("link"));
        using var late = await _client.SendAsync(HttpMethod.Put, "/api/builds/cart", SmallBuild.Cart, "1");
        Assert.Contains("deleted it", (await late.ProblemAsync(HttpStatusCode.PreconditionFailed, "stale")).OnlyError().Text("mend"), StringComparison.Ordinal);

        using var back = await _client.SendAsync(HttpMethod.Post, "/api/builds/cart/versions/1/restore?who=Bo", version: "2");
        Assert.Equal(HttpStatusCode.OK, back.StatusCode);
        var shown = await _client.AskAsync("/api/builds/cart");
        Assert.Equal((3, 1), (shown.GetProperty("version").GetInt32(), shown.GetProperty("saved").GetProperty("restores").GetInt32()));
    }

    [Fact]
    public async Task Builds_and_versions_that_are_not_there_are_not_found()
    {
        using var stored = await _client.SendAsync(HttpMethod.Post, "/api/builds", SmallBuild.Cart);

        Assert.Equal("did you mean cart?", (await _client.RefuseAsync("/api/builds/carts", HttpStatusCode.NotFound, "not-found")).OnlyError().Text("mend"));
        await _client.RefuseAsync("/api/builds/solo/file", HttpStatusCode.NotFound, "not-found");
        await _client.RefuseAsync("/api/builds/solo/versions", HttpStatusCode.NotFound, "not-found");
        Assert.Equal("version", (await _client.RefuseAsync("/api/builds/cart?version=2", HttpStatusCode.NotFound, "not-found")).OnlyError().Text("field"));
        await _client.RefuseAsync("/api/builds/cart?version=0", HttpStatusCode.BadRequest, "bad-question");
        await _client.RefuseAsync("/api/builds/cart?versoin=1", HttpStatusCode.BadRequest, "bad-question");
        using var put = await _client.SendAsync(HttpMethod.Put, "/api/builds/solo", SmallBuild.Named("solo"), "*");
        await put.ProblemAsync(HttpStatusCode.NotFound, "not-found");
        using var restored = await _client.SendAsync(HttpMethod.Post, "/api/builds/cart/versions/7/restore", version: "*");
        Assert.Equal("version", (await restored.ProblemAsync(HttpStatusCode.NotFound, "not-found")).OnlyError().Text("field"));
    }

    [Fact]
    public async Task Document_under_the_address_of_another_build_is_refused()
    {
        using var stored = await _client.SendAsync(HttpMethod.Post, "/api/builds", SmallBuild.Cart);
        using var answer = await _client.SendAsync(HttpMethod.Put, "/api/builds/cart", SmallBuild.Named("barrow"), "1");

        Assert.Equal("code", (await answer.ProblemAsync(HttpStatusCode.BadRequest, "bad-build")).OnlyError().Text("field"));
    }

    [Fact]
    public async Task Document_of_another_type_is_refused()
    {
        using var body = new StringContent(SmallBuild.Cart, System.Text.Encoding.UTF8, "text/plain");
        using var answer = await _client.PostAsync(new Uri("/api/builds", UriKind.Relative), body, TestContext.Current.CancellationToken);

        await answer.ProblemAsync(HttpStatusCode.UnsupportedMediaType, "wrong-media-type");
    }

    [Fact]
    public async Task Build_is_not_written_from_another_site_nor_without_the_token()
    {
        await using var own = new PartMatchServer { Settings = { ["PartMatch:Token"] = "let me in" } };
        using var client = own.CreateClient();
        using var without = await client.SendAsync(HttpMethod.Post, "/api/builds", SmallBuild.Cart);
        await without.ProblemAsync(HttpStatusCode.Unauthorized, "token-needed");
        using var foreign = new HttpRequestMessage(HttpMethod.Delete, "/api/builds/cart")
        {
            Headers = { { "Origin", "http://elsewhere.test" }, { "If-Match", "*" } },
        };
        using var refused = await client.SendAsync(foreign, TestContext.Current.CancellationToken);
        await refused.ProblemAsync(HttpStatusCode.Forbidden, "foreign-origin");
    }

    [Fact]
    public async Task Several_faults_are_told_at_once()
    {
        using var answer = await _client.SendAsync(HttpMethod.Post, "/api/builds", SmallBuild.With("\"position\":\"pump-bolt\"", "\"position\":\"pump-blot\"")
            .Replace("\"target\":\"b\"", "\"target\":\"c\"", StringComparison.Ordinal));

        var problem = await answer.ProblemAsync(HttpStatusCode.BadRequest, "bad-build");
        Assert.Equal(["target", "wishes[0].position"], problem.List("errors").Select(error => error.Text("field")));
        Assert.Equal("did you mean pump-bolt?", problem.List("errors")[1].Text("mend"));
        Assert.Equal(JsonValueKind.Array, (await _client.AskAsync("/api/builds")).GetProperty("builds").ValueKind);
        Assert.Empty((await _client.AskAsync("/api/builds")).List("builds"));
    }
}
