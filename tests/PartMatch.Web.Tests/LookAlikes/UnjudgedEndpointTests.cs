using System.Net;
using System.Net.Http.Headers;
using System.Text.Json;

namespace PartMatch.Web.Tests.LookAlikes;

/// <summary>Near pairs of a book. The small books have two bolts of the number 77-1, of two makers: the one pair that is near.</summary>
public sealed class UnjudgedEndpointTests(SmallBase server) : IClassFixture<SmallBase>
{
    private static CancellationToken Cancelled => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Near_pairs_of_a_book_come_with_their_count_and_the_likeliest_first()
    {
        var answer = await AskAsync("duo-2");
        Assert.True(answer.GetProperty("complete").GetBoolean());
        Assert.Equal("/api/books/duo-2/near-pairs?limit=20", answer.GetProperty("permalink").GetString());
        var pairs = answer.GetProperty("pairs").EnumerateArray().ToList();
        Assert.Equal(answer.GetProperty("total").GetInt64(), pairs.Count);
        Assert.Equal(("ardlow:77-1", "brask:77-1", 0), (pairs[0].GetProperty("partA").GetString(), pairs[0].GetProperty("partB").GetString(), pairs[0].GetProperty("foldedEdits").GetInt32()));
        Assert.Equal(pairs.Select(pair => pair.GetProperty("cost").GetDouble()).Order(), pairs.Select(pair => pair.GetProperty("cost").GetDouble()));
    }

    [Fact]
    public async Task A_book_without_parts_has_none() => Assert.Equal(0, (await AskAsync("shop")).GetProperty("total").GetInt64());

    [Fact]
    public async Task As_lines_the_progress_comes_before_the_answer()
    {
        using var client = server.CreateClient();
        using var request = new HttpRequestMessage(HttpMethod.Get, "/api/books/duo-2/near-pairs?limit=1");
        request.Headers.Accept.Add(new MediaTypeWithQualityHeaderValue("application/jsonl"));
        using var answer = await client.SendAsync(request, Cancelled);
        Assert.Equal("application/jsonl", answer.Content.Headers.ContentType?.MediaType);
        var lines = (await answer.Content.ReadAsStringAsync(Cancelled)).Split('\n', StringSplitOptions.RemoveEmptyEntries);
        Assert.True(lines.Length >= 2);
        using var progress = JsonDocument.Parse(lines[^2]);
        Assert.Equal(progress.RootElement.GetProperty("numbers").GetInt32(), progress.RootElement.GetProperty("looked").GetInt32());
        using var last = JsonDocument.Parse(lines[^1]);
        Assert.Single(last.RootElement.GetProperty("pairs").EnumerateArray());
    }

    [Theory]
    [InlineData("/api/books/none/near-pairs", HttpStatusCode.NotFound)]
    [InlineData("/api/books/duo-2/near-pairs?limit=0", HttpStatusCode.BadRequest)]
    [InlineData("/api/books/duo-2/near-pairs?limit=201", HttpStatusCode.BadRequest)]
    public async Task A_book_that_is_not_there_and_a_bad_limit_are_refused(string address, HttpStatusCode status)
    {
        using var client = server.CreateClient();
        using var answer = await client.GetAsync(new Uri(address, UriKind.Relative), Cancelled);
        Assert.Equal(status, answer.StatusCode);
    }

    private async Task<JsonElement> AskAsync(string book)
    {
        using var client = server.CreateClient();
        using var answer = JsonDocument.Parse(await client.GetStringAsync(new Uri($"/api/books/{book}/near-pairs", UriKind.Relative), Cancelled));
        return answer.RootElement.Clone();
    }
}
