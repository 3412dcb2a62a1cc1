using Microsoft.Playwright;

namespace PartMatch.Browser.Tests.Workshop;

/// <summary>One browser, and one server that every test only reads from.</summary>
public sealed class Bench : IAsyncLifetime
{
    private static readonly string[] _arguments =
        ["--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking", "--disable-component-update", "--disable-sync"];

    private readonly DemoServer _server = new();
    private IPlaywright? _playwright;
    private IBrowser? _browser;
    private Uri? _address;

    public async ValueTask InitializeAsync()
    {
        if (Chromium.Path is not { } program)
        {
            return;
        }

        Assertions.SetDefaultExpectTimeout(Sheet.PatienceMs);
        _address = _server.Start();
        _playwright = await Playwright.CreateAsync();
        _browser = await _playwright.Chromium.LaunchAsync(new BrowserTypeLaunchOptions { ExecutablePath = program, Args = _arguments });
    }

    public async ValueTask DisposeAsync()
    {
        if (_browser is not null)
        {
            await _browser.CloseAsync();
        }

        _playwright?.Dispose();
        await _server.DisposeAsync();
    }

    /// <summary>Opens a page of the demo server in a fresh browser context.</summary>
    /// <param name="address">Relative to the server, with its query.</param>
    public Task<Sheet> OpenAsync(string address, Look? look = null, bool script = true)
    {
        Chromium.MustBeThere();
        return OpenAsync(Started(_address), address, look ?? Look.Light, script);
    }

    /// <summary>Opens a page of a server that the test has started itself, because it changes its base.</summary>
    public async Task<Sheet> OpenAsync(Uri server, string address, Look look, bool script = true)
    {
        Chromium.MustBeThere();
        var context = await Started(_browser).NewContextAsync(new BrowserNewContextOptions
        {
            BaseURL = server.ToString(),
            JavaScriptEnabled = script,
            Locale = "en-GB",
            ReducedMotion = ReducedMotion.Reduce,
        });
        var sheet = new Sheet(await context.NewPageAsync()) { RunsScripts = script };
        await sheet.TakeAsync(look);
        await sheet.GoAsync(address);
        return sheet;
    }

    /// <summary>Asks the demo server past the pages, so that what takes long the first time is reckoned before a page waits for it.</summary>
    public async Task ReckonAsync(string address)
    {
        if (_address is not null)
        {
            using var client = _server.CreateClient();
            await client.GetStringAsync(new Uri(address, UriKind.Relative), TestContext.Current.CancellationToken);
        }
    }

    private static T Started<T>(T? thing)
        where T : class => thing ?? throw new InvalidOperationException("The bench is set up only where there is a browser.");
}
