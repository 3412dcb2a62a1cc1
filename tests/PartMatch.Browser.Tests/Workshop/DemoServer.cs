using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Mvc.Testing;

namespace PartMatch.Browser.Tests.Workshop;

/// <summary>The real server on a free loopback port, over a temporary database into which it loads the demo books.</summary>
public sealed class DemoServer : WebApplicationFactory<Program>
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("partmatch-browser-");

    /// <summary>Further settings; set before the start.</summary>
    public Dictionary<string, string> Settings { get; } = [];

    /// <returns>Where it listens.</returns>
    public Uri Start()
    {
        // Given a port, the factory changes the list of addresses while the program is starting; so the address is a setting.
        Settings["urls"] = "http://127.0.0.1:0";
        UseKestrel();
        StartServer();
        return ClientOptions.BaseAddress;
    }

    protected override void ConfigureWebHost(IWebHostBuilder builder)
    {
        builder.UseSetting("PartMatch:Database", Path.Combine(_folder.FullName, "demo.db"));
        builder.UseSetting("Logging:LogLevel:Default", "Warning");
        foreach (var (name, value) in Settings)
        {
            builder.UseSetting(name, value);
        }
    }

    public override async ValueTask DisposeAsync()
    {
        await base.DisposeAsync();
        _folder.Delete(recursive: true);
        GC.SuppressFinalize(this);
    }
}
