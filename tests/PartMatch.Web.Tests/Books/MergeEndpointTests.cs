using System.Net;
using System.Net.Http.Headers;
using System.Text;
using System.Text.Json;

namespace PartMatch.Web.Tests.Books;

public sealed class MergeEndpointTests : IAsyncLifetime
{
    private readonly PartMatchServer _server = new();
    private HttpClient _client = null!; // made before the first test

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    /// <summary>Another name for a variant, and a bolt more.</summary>
    private static byte[] Theirs => SmallBooks.Zip(SmallBooks.Duo
        .With("variants.csv", SmallBooks.Duo["variants.csv"].Replace("A pump set", "A pump", StringComparison.Ordinal))
        .With("parts.csv", SmallBooks.Duo["parts.csv"] + "ardlow:77-2,bolt,Pump bolt,,ev-1\n"));

    public async ValueTask InitializeAsync()
    {
        _client = _server.CreateClient();
        await _client.PostSmallBooksAsync();
    }

    public ValueTask DisposeAsync() => _server.DisposeAsync();

    [Fact]
    public async Task Conflicts_come_as_a_table_that_decides_when_it_is_sent_back_filled_in()
    {
        using var refused = await _client.PostAsync(Address(), Zip(Theirs), Cancellation);
        var error = (await refused.ProblemAsync(HttpStatusCode.Conflict, "merge-conflicts")).OnlyError();
        Assert.Equal(("name", "variants.csv", "a"), (error.Text("field"), error.Text("file"), error.Text("key")));

        using var request = new HttpRequestMessage(HttpMethod.Post, Address()) { Content = Zip(Theirs) };
        request.Headers.Accept.Add(new MediaTypeWithQualityHeaderValue("text/csv"));
        using var table = await _client.SendAsync(request, Cancellation);
        Assert.Equal((HttpStatusCode.Conflict, "text/csv"), (table.StatusCode, table.Content.Headers.ContentType?.MediaType));
        var csv = await table.Content.ReadAsStringAsync(Cancellation);
        Assert.Equal("file,key,column,here,there,take\nvariants.csv,a,name,A pump set,A pump,\n", csv);

        using var merged = await _client.PostAsync(Address("?who=Ada"), Form(Theirs, csv.Replace("A pump,\n", "A pump,there\n", StringComparison.Ordinal)), Cancellation);
        var text = await merged.Content.ReadAsStringAsync(Cancellation);
        Assert.True(merged.IsSuccessStatusCode, text);
        var counts = JsonDocument.Parse(text).RootElement.GetProperty("counts");
        Assert.Equal((1, 1), (counts.GetProperty("added").GetInt32(), counts.GetProperty("changed").GetInt32()));
        Assert.Equal("A pump", (await _client.AskAsync("/api/books/duo-2/variants/a")).GetProperty("row").Text("name"));
    }

    [Fact]
    public async Task Form_without_the_book_says_what_it_expects()
    {
        using var form = new MultipartFormDataContent { { new StringContent("x"), "decisions", "c.csv" } };
        using var answer = await _client.PostAsync(Address(), form, Cancellation);
        Assert.Equal("book", (await answer.ProblemAsync(HttpStatusCode.BadRequest, "bad-request")).OnlyError().Text("field"));
    }

    [Fact]
    public async Task Dry_run_of_a_decided_merge_stores_nothing()
    {
        using var merged = await _client.PostAsync(
            Address("?dry-run=true"), Form(Theirs, "file,key,column,here,there,take\nvariants.csv,a,name,A pump set,A pump,there\n"), Cancellation);
        var answer = JsonDocument.Parse(await merged.Content.ReadAsStringAsync(Cancellation)).RootElement;
        Assert.Equal("would-merge", answer.Text("outcome"));
        Assert.Equal(["parts.csv", "variants.csv"], answer.List("files").Select(file => file.Text("file")));
        var bolt = Assert.Single(answer.List("files")[0].List("rows"));
        Assert.Equal(("ardlow:77-2", "Pump bolt", false), (bolt.Text("key"), bolt.GetProperty("after").Text("name"), bolt.TryGetProperty("before", out _)));
        Assert.Equal("A pump set", (await _client.AskAsync("/api/books/duo-2/variants/a")).GetProperty("row").Text("name"));
    }

    private static Uri Address(string query = "") => new("/api/books/duo-2/merge" + query, UriKind.Relative);

    private static ByteArrayContent Zip(byte[] zip) => new(zip) { Headers = { ContentType = new MediaTypeHeaderValue("application/zip") } };

    private static MultipartFormDataContent Form(byte[] zip, string csv) =>
        new() { { Zip(zip), "book", "theirs.zip" }, { new ByteArrayContent(Encoding.UTF8.GetBytes(csv)), "decisions", "conflicts.csv" } };
}
