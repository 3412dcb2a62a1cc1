using System.Net.Http.Headers;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Mvc.Testing;
using PartMatch.Storage;

namespace PartMatch.Web.Tests;

/// <summary>A server of its own over a temporary database, which is empty unless books are imported.</summary>
public class PartMatchServer : WebApplicationFactory<Program>
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("partmatch-web-");

    /// <summary>Further settings; set before the first client is made.</summary>
    public Dictionary<string, string> Settings { get; } = [];

    public string DatabasePath => Path.Combine(_folder.FullName, "test.db");

    protected override void ConfigureWebHost(IWebHostBuilder builder)
    {
        // A database that exists already gets no demo books.
        Database.Open(DatabasePath).Dispose();
        builder.UseSetting("PartMatch:Database", DatabasePath);
        builder.UseSetting("Logging:LogLevel:Default", "Warning");

        // The in-memory server cannot bound bodies and says so at every request; the bounds are tested over a real socket.
        builder.UseSetting("Logging:LogLevel:Microsoft.AspNetCore.Routing", "Error");
        foreach (var (name, value) in Settings)
        {
            builder.UseSetting(name, value);
        }
    }

    /// <summary>Listens on a real loopback socket. Given a port, the factory changes the list of addresses while the program is starting, so the address is a setting.</summary>
    public void ListenOnSocket()
    {
        Settings["urls"] = "http://127.0.0.1:0";
        UseKestrel();
        StartServer();
    }

    public override async ValueTask DisposeAsync()
    {
        await base.DisposeAsync();
        _folder.Delete(recursive: true);
        GC.SuppressFinalize(this);
    }
}

/// <summary>One server for all tests that only read: the two small books are in it.</summary>
public sealed class SmallBase : PartMatchServer, IAsyncLifetime
{
    public async ValueTask InitializeAsync()
    {
        using var client = CreateClient();
        await client.PostSmallBooksAsync();
    }
}

internal static class Clients
{
    /// <summary>The two small books that most tests ask.</summary>
    public static async Task PostSmallBooksAsync(this HttpClient client)
    {
        foreach (var book in new[] { SmallBooks.Shop, SmallBooks.Duo })
        {
            using var answer = await client.PostBookAsync(SmallBooks.Zip(book));
            Assert.True(answer.IsSuccessStatusCode, await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken));
        }
    }

    public static async Task<HttpResponseMessage> PostBookAsync(this HttpClient client, byte[] zip, string query = "")
    {
        using var body = new ByteArrayContent(zip);
        body.Headers.ContentType = new MediaTypeHeaderValue("application/zip");
        return await client.PostAsync(new Uri("/api/books" + query, UriKind.Relative), body, TestContext.Current.CancellationToken);
    }
}
