using System.Net.Sockets;
using System.Reflection;
using Microsoft.AspNetCore.Connections;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using PartMatch.Web.LookAlikes;
using PartMatch.Web.Parts;

namespace PartMatch.Web.Host;

/// <summary>Starts the server, or says in one sentence why not; then runs until it is told to stop.</summary>
internal static class Server
{
    /// <summary>Is the program only loaded by the build, to write the API document? Then no database is touched.</summary>
    public static bool IsDocumentBuild { get; } = Assembly.GetEntryAssembly()?.GetName().Name == "GetDocument.Insider";

    /// <summary>Has a server of this process been started with success?</summary>
    public static bool IsListening { get; private set; }

    /// <returns>The exit code: 0 after an orderly stop, 1 when the start was refused.</returns>
    public static async Task<int> RunAsync(WebApplication app)
    {
        if (IsDocumentBuild)
        {
            await app.RunAsync();
            return 0;
        }

        if ((Prepare(app) ?? await StartAsync(app)) is { } refusal)
        {
            await Console.Error.WriteLineAsync($"PartMatch did not start: {refusal}");
            return 1;
        }

        await app.WaitForShutdownAsync();
        return 0;
    }

    /// <summary>All that can be refused before a socket is opened; the sentence, or null.</summary>
    private static string? Prepare(WebApplication app)
    {
        var given = ListeningAddresses.Read(app.Configuration);
        var settings = app.Services.GetRequiredService<ServerSettings>();
        if ((settings.Refusal ?? ListeningAddresses.Refusal(given, settings.HasToken)) is { } refusal)
        {
            return refusal;
        }

        if (given.Count == 0 && AddressesOf(app) is { Count: 0 } addresses)
        {
            addresses.Add(ListeningAddresses.Default);
        }

        return app.Services.GetRequiredService<PlanSettings>().Refusal ?? app.Services.GetRequiredService<BookSettings>().Refusal
            ?? app.Services.GetRequiredService<OpenedBase>().Open();
    }

    private static async Task<string?> StartAsync(WebApplication app)
    {
        try
        {
            await app.StartAsync();
        }
        catch (IOException busy) when (busy.InnerException is AddressInUseException)
        {
            return $"another program listens there already ({busy.Message.TrimEnd('.')}); choose another port, for example --urls http://127.0.0.1:5081.";
        }
        catch (SocketException refused)
        {
            return $"this machine does not let it listen there ({refused.Message.TrimEnd('.')}); choose another address, for example --urls {ListeningAddresses.Default}.";
        }

        return await CheckBoundAsync(app);
    }

    /// <summary>Looks again once bound, because code can add addresses that no setting names.</summary>
    private static async Task<string?> CheckBoundAsync(WebApplication app)
    {
        var bound = AddressesOf(app) ?? [];
        var refusal = ListeningAddresses.Refusal(bound.Select(address => new GivenAddress("the server", address)), app.Services.GetRequiredService<ServerSettings>().HasToken);
        if (refusal is not null)
        {
            await app.StopAsync();
            return refusal;
        }

        IsListening = true;
        _ = app.Services.GetRequiredService<NumberSource>().BuildInBackground();
        _ = app.Services.GetRequiredService<PartIndexSource>().BuildInBackground();
        await Console.Out.WriteLineAsync($"PartMatch listens on {string.Join(" and ", bound)}");
        return null;
    }

    /// <summary>The server's own list; null for a server without addresses, as in tests.</summary>
    private static ICollection<string>? AddressesOf(WebApplication app) =>
        app.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()?.Addresses;
}
