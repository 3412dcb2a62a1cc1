using System.Net;
using System.Net.Http.Headers;
using System.Text.Json;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.DependencyInjection;
using PartMatch.Storage.Books;
using PartMatch.Web.Books;

namespace PartMatch.Web.Tests.Books;

/// <summary>An import told in lines, stopped, and beside other requests.</summary>
public sealed class ImportStreamTests : IAsyncLifetime
{
    private readonly PartMatchServer _server = new();
    private HttpClient _client = null!; // set before each test by InitializeAsync

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    public ValueTask InitializeAsync()
    {
        _client = _server.CreateClient();
        return ValueTask.CompletedTask;
    }

    public ValueTask DisposeAsync() => _server.DisposeAsync();

    [Fact]
    public async Task As_lines_the_progress_comes_before_the_answer()
    {
        var (status, lines) = await PostAsync(SmallBooks.Zip(SmallBooks.Shop), "");

        Assert.Equal(HttpStatusCode.OK, status);
        Assert.True(lines.Count >= 2);
        var stages = lines.SkipLast(1).Select(line => line.Text("stage")).ToList();
        Assert.Equal("finishing", stages[^1]); // a slow reader misses lines in between, never the last ones
        Assert.All(lines.SkipLast(1), line => Assert.InRange(line.GetProperty("rows").GetInt32(), 0, line.GetProperty("total").GetInt32()));
        Assert.Equal(("added", "shop"), (lines[^1].Text("outcome"), lines[^1].Text("book")));
    }

    [Fact]
    public async Task As_lines_a_faulty_book_ends_with_its_problem()
    {
        var bad = SmallBooks.Shop.With("kinds.csv", SmallBooks.Shop["kinds.csv"].Replace("can-alter,yes,hot-parts", "can-alter,perhaps,hot-parts", StringComparison.Ordinal));
        var (status, lines) = await PostAsync(SmallBooks.Zip(bad), "");

        Assert.Equal(HttpStatusCode.OK, status);
        Assert.Equal(("/problems/bad-book", 400), (lines[^1].Text("type"), lines[^1].GetProperty("status").GetInt32()));
        Assert.Equal("kinds.csv", Assert.Single(lines[^1].List("errors")).Text("file"));
    }

    [Fact]
    public async Task As_lines_what_is_no_zip_is_refused_before_the_first_line()
    {
        using var request = Request([1, 2, 3], "");
        using var answer = await _client.SendAsync(request, Cancellation);
        Assert.Equal((HttpStatusCode.BadRequest, "application/problem+json"), (answer.StatusCode, answer.Content.Headers.ContentType?.MediaType));
    }

    // The gate is the report of the stage in which all rows are written and none is committed.
    [Fact]
    public async Task Other_requests_are_answered_while_an_import_runs()
    {
        using (var added = await _client.PostBookAsync(SmallBooks.Zip(SmallBooks.Shop)))
        {
            Assert.Equal(HttpStatusCode.Created, added.StatusCode);
        }

        var (inside, open) = (new TaskCompletionSource(), new TaskCompletionSource());
        using var zip = new MemoryStream(SmallBooks.Zip(SmallBooks.Duo));
        var files = Assert.IsType<BookRead>(BookZip.Read(zip, new BookZipLimits())).Files;
        var importing = Task.Run(
            () => _server.Services.GetRequiredService<BookStore>().Import(files, ImportMode.Add, dryRun: false, CancellationToken.None, tell: progress =>
            {
                if (progress.Stage == ImportStage.Recording)
                {
                    inside.TrySetResult();
                    open.Task.Wait();
                }
            }),
            Cancellation);
        await inside.Task.WaitAsync(Cancellation);

        Assert.Equal(["shop"], (await _client.AskAsync("/api/books")).List("books").Select(book => book.Text("book")));
        Assert.False(importing.IsCompleted);

        open.SetResult();
        Assert.IsType<ImportOutcome.Imported>(await importing);
        Assert.Equal(["duo-2", "shop"], (await _client.AskAsync("/api/books")).List("books").Select(book => book.Text("book")));
    }

    [Fact]
    public async Task Reader_who_goes_away_stops_the_import()
    {
        using var gone = new CancellationTokenSource();
        var stopped = false;
        var context = new DefaultHttpContext { RequestAborted = gone.Token };
        context.Request.Headers.Accept = "application/jsonl";
        var stream = new ImportStream((tell, stop) =>
        {
            tell?.Invoke(new ImportProgress(ImportStage.Reading, 0, 1));
            gone.Cancel();
            stopped = stop.IsCancellationRequested;
            stop.ThrowIfCancellationRequested();
            return TypedResults.Ok();
        });

        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => stream.ExecuteAsync(context));
        Assert.True(stopped);
    }

    [Fact]
    public async Task Book_beyond_the_setting_is_refused_and_one_within_it_is_not()
    {
        await using var small = new PartMatchServer { Settings = { ["PartMatch:LargestBook"] = "1" } };
        using var client = small.CreateClient();

        // 1 MiB of notes, beside the rows, is more than 1 MiB.
        var large = SmallBooks.Shop.With("makers.csv", "maker,name\nlong," + string.Concat(Enumerable.Range(0, 1 << 17).Select(number => $"{number % 10_000_000:0000000} ")) + "\n");
        using var refused = await client.PostBookAsync(SmallBooks.Zip(large));
        var error = (await refused.ProblemAsync(HttpStatusCode.BadRequest, "bad-book")).OnlyError();
        Assert.Equal("more than 1048576 bytes unpacked", error.Text("reason"));
        Assert.Contains("PartMatch:LargestBook", error.Text("mend"), StringComparison.Ordinal);

        using var added = await client.PostBookAsync(SmallBooks.Zip(SmallBooks.Shop));
        Assert.Equal(HttpStatusCode.Created, added.StatusCode);
    }

    private async Task<(HttpStatusCode Status, List<JsonElement> Lines)> PostAsync(byte[] zip, string query)
    {
        using var request = Request(zip, query);
        using var answer = await _client.SendAsync(request, Cancellation);
        Assert.Equal("application/jsonl", answer.Content.Headers.ContentType?.MediaType);
        var text = await answer.Content.ReadAsStringAsync(Cancellation);
        return (answer.StatusCode, [.. text.Split('\n', StringSplitOptions.RemoveEmptyEntries).Select(line => JsonDocument.Parse(line).RootElement.Clone())]);
    }

    private static HttpRequestMessage Request(byte[] zip, string query)
    {
        var request = new HttpRequestMessage(HttpMethod.Post, "/api/books" + query) { Content = new ByteArrayContent(zip) };
        request.Content.Headers.ContentType = new MediaTypeHeaderValue("application/zip");
        request.Headers.Accept.Add(new MediaTypeWithQualityHeaderValue("application/jsonl"));
        return request;
    }
}
