using System.Globalization;
using System.Text.RegularExpressions;
using Microsoft.Playwright;

namespace PartMatch.Browser.Tests.Workshop;

/// <summary>A page in the browser, and everything that it complained of.</summary>
public sealed class Sheet : IAsyncDisposable
{
    /// <summary>How long anything may take; generous, because a build server does other things as well.</summary>
    public const int PatienceMs = 30_000;

    private readonly List<string> _complaints = [];
    private readonly HashSet<int> _expected = [];
    private long _bytes;

    public Sheet(IPage page)
    {
        Page = page;
        page.SetDefaultTimeout(PatienceMs);
        page.Console += (_, message) => Hear(message);
        page.PageError += (_, fault) => Complain($"script fault: {fault}");
        page.RequestFinished += (_, request) => Weigh(request);
        page.RequestFailed += (_, request) => HearOfFailure(request);
    }

    public IPage Page { get; }

    /// <summary>False where the browser is told to run none.</summary>
    public bool RunsScripts { get; init; } = true;

    /// <summary>Bytes of every body as it travelled: documents, styles, scripts, pictures and data, since the page was made.</summary>
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
        if (RunsScripts)
        {
            // A busy machine can be idle on the network before the page's own module has begun.
            await Page.WaitForFunctionAsync("() => !document.querySelector('header.strip') || document.querySelector('header.strip nav')");
        }

        await SettleAsync();
    }

    /// <summary>Waits until a followed link, or a sent form, has led to that address and the page there has settled.</summary>
    /// <param name="beginning">How the address goes on after the server's own part.</param>
    public async Task ArriveAtAsync(string beginning)
    {
        await Assertions.Expect(Page).ToHaveURLAsync(new Regex($"^http://[^/]+/{Regex.Escape(beginning)}"));
        await Page.WaitForLoadStateAsync(LoadState.NetworkIdle);
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

    /// <summary>Waits until no answer is awaited.</summary>
    public Task SettleAsync() => Assertions.Expect(Page.Locator("[aria-busy=true]")).ToHaveCountAsync(0);

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

    private async void Weigh(IRequest request)
    {
        try
        {
            Interlocked.Add(ref _bytes, (await request.SizesAsync()).ResponseBodySize);
        }
        catch (PlaywrightException)
        {
            // The page was closed meanwhile: nobody will ask for the weight.
        }
    }
}
