using Microsoft.Extensions.DependencyInjection;
using PartMatch.Storage.Parts;
using PartMatch.Web.Parts;
using PartMatch.Web.Tests.Builds;

namespace PartMatch.Web.Tests.Parts;

public sealed class PartIndexSourceTests : IAsyncLifetime
{
    private readonly PartMatchServer _server = new();
    private HttpClient _client = null!; // made before the first test

    private static CancellationToken Cancelled => TestContext.Current.CancellationToken;

    private PartIndexSource Source => _server.Services.GetRequiredService<PartIndexSource>();

    public async ValueTask InitializeAsync()
    {
        _client = _server.CreateClient();
        await _client.PostSmallBooksAsync();
        await Source.BuildInBackground();
    }

    public async ValueTask DisposeAsync()
    {
        _client.Dispose();
        await _server.DisposeAsync();
    }

    [Fact]
    public async Task A_write_shows_in_the_next_search_and_nothing_is_built_anew()
    {
        var changed = (await ReadyAsync()).Changed;
        await AddPartAsync("9-8765431");

        Assert.Equal(["ardlow:9-8765431"], Found(Source.Find()));
        Assert.Equal(changed + 1, (await ReadyAsync()).Changed);
    }

    [Fact]
    public async Task A_change_of_something_else_leaves_the_index_as_it_is()
    {
        var before = await ReadyAsync();
        await ChangeAsync("""{"rows":[{"table":"sellers","row":{"seller":"abel","name":"Abel"}}]}""");
        Assert.Same(before, Source.Find());
    }

    private async Task<PartIndex> ReadyAsync()
    {
        if (Source.Find() is null)
        {
            await Source.BuildInBackground();
        }

        return Source.Find() ?? throw new InvalidOperationException("It was built just now, and nobody wrote.");
    }

    /// <summary>The parts that one of the numbers of these tests finds, by this index or, while there is none, by every row.</summary>
    private IEnumerable<string> Found(PartIndex? index) =>
        _server.Services.GetRequiredService<PartStore>().Search("9-876543", 100, null, index).Parts.Select(part => part.Part);

    private Task AddPartAsync(string number) =>
        ChangeAsync($$$"""{"rows":[{"table":"parts","row":{"part":"ardlow:{{{number}}}","kind":"bolt","name":"Pump bolt"}}]}""");

    private async Task ChangeAsync(string rows)
    {
        using var answer = await _client.SendAsync(HttpMethod.Post, "/api/books/duo-2/changes", rows);
        Assert.True(answer.IsSuccessStatusCode, await answer.Content.ReadAsStringAsync(Cancelled));
    }
}
