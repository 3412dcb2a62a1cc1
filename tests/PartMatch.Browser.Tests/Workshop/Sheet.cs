using System.Globalization;
using Microsoft.Playwright;

namespace PartMatch.Browser.Tests.Workshop;

/// <summary>A page in the browser, and everything that it complained of.</summary>
public sealed class Sheet : IAsyncDisposable
{
    private const int QuietMoments = 3;

    private static readonly TimeSpan _moment = TimeSpan.FromMilliseconds(40);
    private static readonly TimeSpan _patience = TimeSpan.FromSeconds(30);

    private readonly List<string> _complaints = [];
    private readonly HashSet<int> _expected = [];
    private long _bytes;
    private int _underWay;

    public Sheet(IPage page)
    {
        Page = page;
        page.SetDefaultTimeout(20_000);
        page.Console += (_, message) => Hear(message);
        page.PageError += (_, fault) => Complain($"script fault: {fault}");
        page.Request += (_, _) => Interlocked.Increment(ref _underWay);
        page.RequestFinished += (_, _) => Interlocked.Decrement(ref _underWay);
        page.RequestFailed += (_, request) => HearOfFailure(request);
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
        await Page.GotoAsync(address);
        await SettleAsync();
    }

    /// <summary>Shows the page as it stands in another window, medium and colours.</summary>
    public async Task TakeAsync(Look look)
    {
        await Page.SetViewportSizeAsync(look.Width, look.Height);
        await Page.EmulateMediaAsync(new PageEmulateMediaOptions { Media = look.Medium, ColorScheme = look.Colours });
    }

    /// <summary>The browser reports a refused question as an error of the console; this one is what the test is about.</summary>
    public Sheet Expecting(int status)
    {
        _expected.Add(status);
        return this;
    }

    /// <summary>Waits until nothing has been under way for a moment and no answer is awaited.</summary>
    public async Task SettleAsync()
    {
        var until = DateTime.UtcNow + _patience;
        for (var quiet = 0; quiet < QuietMoments; quiet++)
        {
            await Task.Delay(_moment);
            if (Volatile.Read(ref _underWay) > 0 || await Page.Locator("[aria-busy=true]").CountAsync() > 0)
            {
                quiet = -1;
                Assert.True(DateTime.UtcNow < until, $"{Page.Url} still waits for an answer after {_patience.TotalSeconds} s");
            }
        }
    }

    /// <summary>No script fault, no failed request, no breach of the content policy, nothing in the console.</summary>
    public void AssertQuiet() => Assert.Empty(Complaints);

    public async Task<string> TextAsync(string selector = "main") => await Page.Locator(selector).First.InnerTextAsync();

    public async ValueTask DisposeAsync() => await Page.Context.CloseAsync();

    private void Hear(IConsoleMessage message)
    {
        if (message.Type is "error" or "warning" && !_expected.Any(status => message.Text.Contains(string.Create(CultureInfo.InvariantCulture, $"status of {status}"), StringComparison.Ordinal)))
        {
            Complain($"{message.Type}: {message.Text}");
        }
    }

    // A question that a later one has overtaken is aborted on purpose.
    private void HearOfFailure(IRequest request)
    {
        Interlocked.Decrement(ref _underWay);
        if (request.Failure != "net::ERR_ABORTED")
        {
            Complain($"request failed: {request.Url} {request.Failure}");
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
