using System.Text.Json;
using Microsoft.Extensions.DependencyInjection;
using PartMatch.Web.LookAlikes;

namespace PartMatch.Web.Tests.LookAlikes;

public sealed class NumberSourceTests : IAsyncLifetime
{
    private readonly PartMatchServer _server = new();
    private HttpClient _client = new();

    private static CancellationToken Cancelled => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync()
    {
        _client.Dispose();
        _client = _server.CreateClient();
        await _client.PostSmallBooksAsync();
    }

    public async ValueTask DisposeAsync()
    {
        _client.Dispose();
        await _server.DisposeAsync();
    }

    private NumberSource Source => _server.Services.GetRequiredService<NumberSource>();

    [Fact]
    public async Task An_answer_is_the_same_before_the_index_is_built_and_after()
    {
        // A source of its own that nobody has asked to build.
        using var unbuilt = ActivatorUtilities.CreateInstance<NumberSource>(_server.Services);
        Assert.Null(unbuilt.Find());
        var scanned = unbuilt.Near("771").Find("771").Select(near => near.Number);
        Assert.Equal(Source.Get().Find("771").Select(near => near.Number), scanned);
        Assert.Contains("ardlow:77-1", await NearAsync("77-1x"));
    }

    [Fact]
    public async Task A_write_shows_in_the_next_search_and_taking_it_back_too()
    {
        var changed = Source.Get().Changed;
        Assert.DoesNotContain("ardlow:9-8765432", await NearAsync("9-8765423"));

        await ChangeAsync("""{"rows":[{"table":"parts","row":{"part":"ardlow:9-8765432","kind":"bolt","name":"Pump bolt"}}]}""");
        Assert.Contains("ardlow:9-8765432", await NearAsync("9-8765423"));
        Assert.Equal(changed + 2, Source.Get().Changed); // the part and its number: nothing was built anew
    }

    [Fact]
    public async Task A_search_keeps_the_index_it_began_with()
    {
        var before = Source.Get();
        await ChangeAsync("""{"rows":[{"table":"parts","row":{"part":"ardlow:9-8765432","kind":"bolt","name":"Pump bolt"}}]}""");
        Assert.Single(Source.Get().Find("98765432"));
        Assert.Empty(before.Find("98765432"));
    }

    [Fact]
    public async Task A_change_of_something_else_leaves_the_index_as_it_is()
    {
        var before = Source.Get();
        await ChangeAsync("""{"rows":[{"table":"sellers","row":{"seller":"abel","name":"Abel"}}]}""");
        Assert.Same(before, Source.Get());
    }

    // Every writer adds numbers that differ in the last figure; whoever has written one finds it, and never fewer than before.
    [Fact]
    public async Task Readers_beside_writers_never_see_a_number_go()
    {
        using var done = new CancellationTokenSource();
        var reading = Task.Run(
            () =>
            {
                var most = 0;
                while (!done.IsCancellationRequested)
                {
                    var found = Source.Near("98765430").Find("98765430").Count;
                    Assert.True(found >= most, $"{found} found, {most} were there before");
                    most = found;
                }
            },
            Cancelled);
        for (var figure = 0; figure < 10; figure++)
        {
            await ChangeAsync($$$"""{"rows":[{"table":"parts","row":{"part":"ardlow:9-876543{{{figure}}}","kind":"bolt","name":"Pump bolt"}}]}""");
            Assert.Equal(figure + 1, Source.Near("98765430").Find("98765430").Count);
            if (figure % 3 == 0)
            {
                await Source.BuildInBackground();
            }
        }

        await done.CancelAsync();
        await reading;
    }

    private async Task<List<string>> NearAsync(string number)
    {
        using var answer = JsonDocument.Parse(await _client.GetStringAsync(new Uri($"/api/numbers/{number}/near", UriKind.Relative), Cancelled));
        return [.. answer.RootElement.GetProperty("numbers").EnumerateArray().Select(row => row.GetProperty("part").GetString() ?? "")];
    }

    private async Task ChangeAsync(string rows)
    {
        using var body = new StringContent(rows, System.Text.Encoding.UTF8, "application/json");
        using var answer = await _client.PostAsync(new Uri("/api/books/duo-2/changes", UriKind.Relative), body, Cancelled);
        Assert.True(answer.IsSuccessStatusCode, await answer.Content.ReadAsStringAsync(Cancelled));
    }
}
