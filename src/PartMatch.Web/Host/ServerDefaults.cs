using Microsoft.Extensions.Configuration.Memory;
using Microsoft.Extensions.Logging.Console;

namespace PartMatch.Web.Host;

/// <summary>What holds where no setting says otherwise: logging and the bounds of the web server.</summary>
internal static class ServerDefaults
{
    /// <summary>Largest body of a request, unless its route says otherwise.</summary>
    public const int MaxBodyBytes = 64 << 10;

    private const int MaxHeaderBytes = 16 << 10;

    // The framework's own request lines carry query strings and client addresses: only its warnings are kept.
    private static readonly Dictionary<string, string?> _settings = new()
    {
        ["Logging:LogLevel:Default"] = "Information",
        ["Logging:LogLevel:Microsoft"] = "Warning",
        ["Logging:LogLevel:System"] = "Warning",
        ["Logging:Console:LogToStandardErrorThreshold"] = "Trace",
        ["Logging:Console:FormatterName"] = ConsoleFormatterNames.Simple,
        ["Logging:Console:FormatterOptions:SingleLine"] = "true",
        ["Logging:Console:FormatterOptions:TimestampFormat"] = "yyyy-MM-dd HH:mm:ss ",
    };

    /// <summary>The folder with the pages and appsettings.json: beside a published server; where the build has not put pages, the working folder.</summary>
    public static string? FindContentRoot() =>
        Directory.Exists(Path.Combine(AppContext.BaseDirectory, "wwwroot")) ? AppContext.BaseDirectory : null;

    public static void AddServerDefaults(this WebApplicationBuilder builder)
    {
        // In front of all other sources, so that a file, a variable or an argument overrides it.
        builder.Configuration.Sources.Insert(0, new MemoryConfigurationSource { InitialData = _settings });
        QuietStart(builder.Logging);
        builder.Services.AddSingleton<ServerSettings>();
        builder.Services.AddSingleton<PlanSettings>();
        builder.Services.AddSingleton<BookSettings>();
        builder.Services.AddResponseCompression(); // a comparison of variants is ten times smaller for it

        // Thrown, so that Problems can name the member of a body that cannot be read.
        builder.Services.Configure<RouteHandlerOptions>(options => options.ThrowOnBadRequest = true);
        builder.Services.Configure<HostOptions>(options => options.ShutdownTimeout = TimeSpan.FromSeconds(10));

        // The build leaves the pages in the source folder and a list of them beside the server; a published server has its own.
        builder.WebHost.UseStaticWebAssets();
        builder.WebHost.ConfigureKestrel(server =>
        {
            server.AddServerHeader = false;
            server.Limits.MaxRequestBodySize = MaxBodyBytes;
            server.Limits.MaxRequestHeadersTotalSize = MaxHeaderBytes;
            server.Limits.MaxRequestHeaderCount = 60;
            server.Limits.RequestHeadersTimeout = TimeSpan.FromSeconds(15);
            server.Limits.KeepAliveTimeout = TimeSpan.FromMinutes(1);
            server.Limits.MaxConcurrentConnections = 500;
        });
    }

    // A start that fails is told in one sentence by Server; the stack traces of the same failure would bury it.
    private static void QuietStart(ILoggingBuilder logging) => logging
        .AddFilter("Microsoft.Extensions.Hosting.Internal.Host", LogLevel.None)
        .AddFilter("Microsoft.AspNetCore.Server.Kestrel", level => Server.IsListening && level >= LogLevel.Warning);
}
