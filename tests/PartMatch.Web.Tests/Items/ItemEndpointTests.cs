using System.Net;
using System.Text;
using System.Text.Json;

namespace PartMatch.Web.Tests.Items;

public sealed class ItemEndpointTests : IAsyncLifetime
{
    // The bolt is 26.0 ± 0.2 long; its limit is 25.5 to 26.5.
    private const string Rows = """
        {"rows":[
          {"table":"items","row":{"item":"it-1","part":"ardlow:77-1","origin":"yard-pull","condition":"rust under the head"}},
          {"table":"readings","row":{"item":"it-1","feature":"length","value":"25.4 mm","uncertainty":"0.05 mm","instrument":"caliper","readOn":"2026-11-20"}},
          {"table":"limits","row":{"kind":"bolt","feature":"length","min":"25.5","max":"26.5","unit":"mm","consequence":"injury"}}]}
        """;

    private readonly PartMatchServer _server = new();
    private HttpClient _client = null!; // made before the first test

    public async ValueTask InitializeAsync()
    {
        _client = _server.CreateClient();
        await _client.PostSmallBooksAsync();

        using var added = await PostAsync("/api/books/duo-2/changes", Rows);
        Assert.True(added.IsSuccessStatusCode, await added.Content.ReadAsStringAsync(TestContext.Current.CancellationToken));
    }

    public ValueTask DisposeAsync() => _server.DisposeAsync();

    [Fact]
    public async Task Item_is_held_against_the_limits_of_its_kind()
    {
        var item = Assert.Single((await _client.AskAsync("/api/items?family=duo-2")).List("items"));
        Assert.Equal(("it-1", "beyond-limits", "yard-pull"), (item.Text("item"), item.Text("condition"), item.Text("origin")));

        var shown = await _client.AskAsync(item.Text("link"));
        var limit = Assert.Single(shown.GetProperty("check").List("limits"));
        Assert.Equal(("length", "beyond-limits", "injury"), (limit.Text("feature"), limit.Text("condition"), limit.Text("consequence")));
        Assert.False(limit.TryGetProperty("part", out _));
        Assert.Contains("25.4", Assert.Single(shown.GetProperty("check").List("readings")).GetProperty("reading").Text("text"), StringComparison.Ordinal);
    }

    // 25.4 ± 0.05 is beyond the 25.5 of the kind and within the 25.0 of this bolt, which is shorter when new.
    [Fact]
    public async Task Limit_of_the_number_outranks_that_of_its_kind()
    {
        using var added = await PostAsync(
            "/api/books/duo-2/changes",
            """{"rows":[{"table":"limits","row":{"kind":"bolt","feature":"length","part":"ardlow:77-1","min":"25 mm","consequence":"injury"}}]}""");
        Assert.True(added.IsSuccessStatusCode, await added.Content.ReadAsStringAsync(TestContext.Current.CancellationToken));

        var limit = Assert.Single((await _client.AskAsync("/api/items/duo-2/it-1")).GetProperty("check").List("limits"));
        Assert.Equal(("ardlow:77-1", "within-limits"), (limit.Text("part"), limit.Text("condition")));
        Assert.Equal("Length under the head: read 25.4 mm (known to ± 0.05), within the limit of at least 25 mm for ardlow:77-1.", limit.Text("text"));
    }

    [Fact]
    public async Task Worn_example_of_a_number_that_fits_is_told_in_the_headline()
    {
        var answer = await _client.AskAsync("/api/fit?family=duo-2&variant=a&position=pump-bolt&item=it-1");
        Assert.Equal("duo-2/it-1", answer.GetProperty("asked").Text("item"));
        Assert.Contains("this example is beyond its limit", answer.Text("headlineText"), StringComparison.Ordinal);
        Assert.Equal("injury", answer.Text("consequence"));
        Assert.Equal(answer.Text("permalink"), (await _client.AskAsync(answer.Text("permalink"))).Text("permalink"));
    }

    [Theory]
    [InlineData("/api/fit?family=duo-2&variant=a&position=pump-bolt&item=it-9", HttpStatusCode.NotFound, "not-found")]
    [InlineData("/api/fit?family=duo-2&variant=a&position=pump-bolt&item=it-1&part=77-1", HttpStatusCode.BadRequest, "bad-question")]
    [InlineData("/api/items/duo-2/it-9", HttpStatusCode.NotFound, "not-found")]
    [InlineData("/api/items/solo/it-1", HttpStatusCode.NotFound, "not-found")]
    [InlineData("/api/items", HttpStatusCode.BadRequest, "bad-question")]
    public async Task What_is_not_there_is_said(string address, HttpStatusCode status, string type) => await _client.RefuseAsync(address, status, type);

    [Fact]
    public async Task Promoted_reading_counts_for_the_number_and_can_be_taken_back()
    {
        using var promoted = await PostAsync("/api/items/duo-2/it-1/promote?feature=length&who=Ada", null);
        var answer = JsonDocument.Parse(await promoted.Content.ReadAsStringAsync(TestContext.Current.CancellationToken)).RootElement;
        Assert.Equal(["evidence", "sources", "values"], answer.List("rows").Select(row => row.Text("table")));

        using var again = await PostAsync("/api/items/duo-2/it-1/promote?feature=length", null);
        await again.ProblemAsync(HttpStatusCode.BadRequest, "bad-row");
        using var none = await PostAsync("/api/items/duo-2/it-1/promote?feature=width", null);
        await none.ProblemAsync(HttpStatusCode.NotFound, "not-found");
        using var undone = await PostAsync($"/api/history/{answer.GetProperty("change").GetInt64()}/undo", null);
        Assert.Equal(HttpStatusCode.OK, undone.StatusCode);
    }

    private Task<HttpResponseMessage> PostAsync(string address, string? body) => _client.PostAsync(
        new Uri(address, UriKind.Relative), body is null ? null : new StringContent(body, Encoding.UTF8, "application/json"), TestContext.Current.CancellationToken);
}
