using System.Globalization;
using Microsoft.Playwright;

namespace PartMatch.Browser.Tests.Workshop;

/// <summary>A page in the browser, and everything that it complained of.</summary>
public sealed class Sheet : IAsyncDisposable
{
    private readonly List<string> _complaints = [];
    private readonly HashSet<int> _expected = [];
    private long _bytes;

    public Sheet(IPage page)
    {
        Page = page;
        page.SetDefaultTimeout(20_000);
        page.Console += (_, message) => Hear(message);
        page.PageError += (_, fault) => Complain($"script fault: {fault}");
        page.RequestFailed += (_, request) => Complain($"request failed: {request.Url} {request.Failure}");
        page.Response += (_, response) => Weigh(response);
    }

    public IPage Page { get; }

    /// <summary>Bytes of every body since the page was made: documents, styles, scripts, pictures and data, as the server stated or sent them.</summary>
    public long Bytes => Interlocked.Read(ref _bytes);

    public IReadOnlyList<string> Complaints
    {
        get
        {
            lock (_complaints)
            {
                return [.. _complaints];
            }
        }
    }

    public async Task GoAsync(string address)
    {
        await Page.GotoAsync(address, new PageGotoOptions { WaitUntil = WaitUntilState.NetworkIdle });
        await SettleAsync();
    }

    /// <summary>The browser reports a refused question as an error of the console; this one is what the test is about.</summary>
    public Sheet Expecting(int status)
    {
        _expected.Add(status);
        return this;
    }

    /// <summary>Waits until no answer is awaited any more.</summary>
    public async Task SettleAsync()
    {
        await Page.WaitForLoadStateAsync(LoadState.NetworkIdle);
        await Assertions.Expect(Page.Locator("[aria-busy=true]")).ToHaveCountAsync(0);
    }

    /// <summary>No script fault, no failed request, no breach of the content policy, nothing in the console.</summary>
    public void AssertQuiet() => Assert.Empty(Complaints);

    public async Task<string> TextAsync(string selector = "main") => await Page.Locator(selector).InnerTextAsync();

    public async ValueTask DisposeAsync() => await Page.Context.CloseAsync();

    private void Hear(IConsoleMessage message)
    {
        if (message.Type is "error" or "warning" && !_expected.Any(status => message.Text.Contains(string.Create(CultureInfo.InvariantCulture, $"status of {status}"), StringComparison.Ordinal)))
        {
            Complain($"{message.Type}: {message.Text}");
        }
    }

    private void Complain(string text)
    {
        lock (_complaints)
        {
            _complaints.Add(text);
        }
    }

    private async void Weigh(IResponse response)
    {
        try
        {
            Interlocked.Add(ref _bytes, (await response.BodyAsync()).Length);
        }
        catch (PlaywrightException)
        {
            // A redirect or an aborted request has no body to weigh; an aborted one is heard of as a failed request.
        }
    }
}
