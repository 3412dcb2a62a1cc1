using System.Text;
using System.Text.Json;

namespace PartMatch.Browser.Tests.Workshop;

/// <summary>A server for a class of tests that change its base: each of them works on rows of its own.</summary>
public sealed class WritingServer : IAsyncLifetime
{
    private readonly DemoServer _server = new();
    private Uri? _address;

    public Uri Address => _address ?? throw new InvalidOperationException("The server is started only where there is a browser.");

    public ValueTask InitializeAsync()
    {
        _address = Chromium.Path is null ? null : _server.Start();
        return ValueTask.CompletedTask;
    }

    public ValueTask DisposeAsync() => _server.DisposeAsync();

    /// <summary>Asks a question past the pages, so that what takes long the first time is reckoned before a page waits for it.</summary>
    public Task ReckonAsync(string address) => ReadAsync(address);

    /// <summary>Rows added past the pages, as one change.</summary>
    public async Task AddRowsAsync(string book, string rows)
    {
        using var client = _server.CreateClient();
        using var body = new StringContent($$"""{"rows":[{{rows}}]}""", Encoding.UTF8, "application/json");
        using var answer = await client.PostAsync(new Uri($"/api/books/{book}/changes", UriKind.Relative), body, TestContext.Current.CancellationToken);
        Assert.True(answer.IsSuccessStatusCode, await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken));
    }

    /// <summary>A build as another one states it, under a code of its own, past the pages.</summary>
    public async Task CopyBuildAsync(string from, string code)
    {
        using var client = _server.CreateClient();
        var document = await client.GetStringAsync(new Uri($"/api/builds/{from}/file", UriKind.Relative), TestContext.Current.CancellationToken);
        using var body = new StringContent(document.Replace($"\"code\": \"{from}\"", $"\"code\": \"{code}\"", StringComparison.Ordinal), Encoding.UTF8, "application/json");
        using var answer = await client.PostAsync(new Uri("/api/builds", UriKind.Relative), body, TestContext.Current.CancellationToken);
        Assert.True(answer.IsSuccessStatusCode, await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken));
    }

    /// <summary>A copy of a build, with an order of one offer.</summary>
    public async Task CopyOrderedAsync(string from, string code, string offer)
    {
        await CopyBuildAsync(from, code);
        await OrderAsync(code, offer);
    }

    /// <summary>One offer ordered past the pages, whatever was ordered before.</summary>
    public async Task OrderAsync(string build, string offer)
    {
        using var client = _server.CreateClient();
        using var request = new HttpRequestMessage(HttpMethod.Post, new Uri($"/api/builds/{build}/orders", UriKind.Relative))
        {
            Content = new StringContent($$"""{"lines":[{"offer":"{{offer}}"}]}""", Encoding.UTF8, "application/json"),
        };
        request.Headers.IfMatch.Add(System.Net.Http.Headers.EntityTagHeaderValue.Any);
        using var answer = await client.SendAsync(request, TestContext.Current.CancellationToken);
        Assert.True(answer.IsSuccessStatusCode, await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken));
    }

    /// <summary>A build of one version, deleted past the pages.</summary>
    public async Task DeleteBuildAsync(string code, string who)
    {
        using var client = _server.CreateClient();
        using var request = new HttpRequestMessage(HttpMethod.Delete, new Uri($"/api/builds/{code}?who={who}", UriKind.Relative));
        request.Headers.IfMatch.Add(new("\"1\""));
        using var answer = await client.SendAsync(request, TestContext.Current.CancellationToken);
        Assert.True(answer.IsSuccessStatusCode, await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken));
    }

    /// <summary>The JSON of an address, past the pages.</summary>
    public async Task<JsonElement> ReadAsync(string address)
    {
        using var client = _server.CreateClient();
        return JsonDocument.Parse(await client.GetStringAsync(new Uri(address, UriKind.Relative), TestContext.Current.CancellationToken)).RootElement;
    }

    /// <summary>A row as JSON, past the pages.</summary>
    public async Task<string> ReadRowAsync(string book, string table, string key)
    {
        using var client = _server.CreateClient();
        return await client.GetStringAsync(new Uri($"/api/books/{book}/{table}/{Uri.EscapeDataString(key)}", UriKind.Relative), TestContext.Current.CancellationToken);
    }
}
