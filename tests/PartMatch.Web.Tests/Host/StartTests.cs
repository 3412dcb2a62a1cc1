using System.Net;
using System.Net.Http.Json;
using System.Net.Sockets;
using System.Text.Json;
using PartMatch.Storage;

namespace PartMatch.Web.Tests.Host;

/// <summary>Starting and stopping, with the built server as a process of its own.</summary>
public sealed class StartTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("partmatch-start-").FullName;

    private string DatabasePath => Path.Combine(_folder, "base.db");

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    /// <summary>Every way in which an address can be given, each with one that other machines could reach.</summary>
    public static TheoryData<string, string, string> OpenAddresses => new()
    {
        { "", "--urls http://0.0.0.0:5080", "urls" },
        { "", "--urls http://127.0.0.1:0;http://[::]:0", "urls" },
        { "", "--urls http://*:0", "urls" },
        { "", "--urls http://+:0", "urls" },
        { "", "--urls http://workshop:0", "urls" },
        { "", "--urls http://192.0.2.7:0", "urls" },
        { "ASPNETCORE_URLS=http://0.0.0.0:0", "", "urls" },
        { "DOTNET_URLS=http://0.0.0.0:0", "", "urls" },
        { "URLS=http://0.0.0.0:0", "", "urls" },
        { "ASPNETCORE_HTTP_PORTS=8080", "", "http_ports" },
        { "DOTNET_HTTP_PORTS=8080", "", "http_ports" },
        { "HTTP_PORTS=8080", "", "http_ports" },
        { "ASPNETCORE_HTTPS_PORTS=8443", "", "https_ports" },
        { "", "--http_ports 8080", "http_ports" },
        { "Kestrel__Endpoints__Open__Url=http://0.0.0.0:0", "", "Kestrel:Endpoints:Open:Url" },
        { "ASPNETCORE_Kestrel__Endpoints__Open__Url=http://0.0.0.0:0", "", "Kestrel:Endpoints:Open:Url" },
        { "", "--Kestrel:Endpoints:Open:Url http://*:0", "Kestrel:Endpoints:Open:Url" },
        { "Kestrel__Endpoints__Open__Url=http://0.0.0.0:0", "--urls http://127.0.0.1:0", "Kestrel:Endpoints:Open:Url" },
        { "appsettings.json={\"urls\":\"http://0.0.0.0:0\"}", "", "urls" },
        { "appsettings.json={\"Kestrel\":{\"Endpoints\":{\"Open\":{\"Url\":\"http://0.0.0.0:0\"}}}}", "", "Kestrel:Endpoints:Open:Url" },
    };

    [Theory]
    [MemberData(nameof(OpenAddresses))]
    public async Task Without_a_token_an_address_beyond_loopback_is_refused_before_anything_is_opened(string variable, string arguments, string setting)
    {
        var environment = Environment();
        List<string> given = [.. arguments.Split(' ', StringSplitOptions.RemoveEmptyEntries)];
        if (variable.Split('=', 2) is ["appsettings.json", var settings])
        {
            await File.WriteAllTextAsync(Path.Combine(_folder, "appsettings.json"), settings, Cancellation);
            given.AddRange(["--contentRoot", _folder]);
        }
        else if (variable.Split('=', 2) is [var name, var value])
        {
            environment[name] = value;
        }

        await using var server = ServerProcess.Start(environment, given);

        Assert.Equal(1, await server.ExitCodeAsync());
        var sentence = Assert.Single(server.Errors);
        Assert.StartsWith($"PartMatch did not start: {setting} gives the address", sentence, StringComparison.Ordinal);
        Assert.Contains("PartMatch:Token", sentence, StringComparison.Ordinal);
        Assert.Empty(server.Output);
        Assert.False(File.Exists(DatabasePath));
    }

    [Fact]
    public async Task An_address_that_is_none_is_refused_in_one_sentence()
    {
        await using var server = ServerProcess.Start(Environment(), ["--urls", "5080"]);

        Assert.Equal(1, await server.ExitCodeAsync());
        Assert.Contains("urls gives the address '5080', which cannot be read", Assert.Single(server.Errors), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_busy_port_is_said_in_one_line_and_no_database_is_harmed()
    {
        Database.Open(DatabasePath).Dispose();
        using var other = new TcpListener(IPAddress.Loopback, 0);
        other.Start();
        var address = $"http://127.0.0.1:{((IPEndPoint)other.LocalEndpoint).Port}";

        await using var server = ServerProcess.Start(Environment(), ["--urls", address]);

        Assert.Equal(1, await server.ExitCodeAsync());
        var sentence = Assert.Single(server.Errors);
        Assert.Contains(address, sentence, StringComparison.Ordinal);
        Assert.Contains("another program listens there already", sentence, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("")]
    [InlineData("HOME=")]
    [InlineData("HOME=/no/such/folder")]
    [InlineData("HOME=relative")]
    [InlineData("XDG_DATA_HOME=/no/such/folder")]
    public async Task Without_a_data_folder_one_sentence_names_the_setting(string variable)
    {
        var environment = new Dictionary<string, string>();
        if (variable.Split('=') is [var name, var value])
        {
            environment[name] = value;
        }

        await using var server = ServerProcess.Start(environment, ["--urls", "http://127.0.0.1:0"]);

        Assert.Equal(1, await server.ExitCodeAsync());
        Assert.Contains("PartMatch:Database", Assert.Single(server.Errors), StringComparison.Ordinal);
        Assert.False(Directory.Exists("/no/such/folder"));
    }

    [Theory]
    [InlineData("no/such/folder/base.db")]
    [InlineData("")]
    public async Task A_database_in_no_folder_or_that_is_a_folder_is_refused(string path)
    {
        await using var server = ServerProcess.Start(new Dictionary<string, string> { ["PartMatch__Database"] = Path.Combine(_folder, path) }, ["--urls", "http://127.0.0.1:0"]);

        Assert.Equal(1, await server.ExitCodeAsync());
        Assert.Contains("PartMatch:Database", Assert.Single(server.Errors), StringComparison.Ordinal);
        Assert.Empty(Directory.EnumerateFileSystemEntries(_folder));
    }

    [Fact]
    public async Task A_country_that_is_none_is_refused()
    {
        await using var server = ServerProcess.Start(Environment(), ["--urls", "http://127.0.0.1:0", "--PartMatch:Country=Germany"]);

        Assert.Equal(1, await server.ExitCodeAsync());
        Assert.Contains("PartMatch:Country is 'GERMANY', expected the two letters of a country", Assert.Single(server.Errors), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_file_that_is_no_database_is_left_alone()
    {
        await File.WriteAllTextAsync(DatabasePath, "my shopping list, not a database; long enough to be read as one, were it one", Cancellation);

        await using var server = ServerProcess.Start(Environment(), ["--urls", "http://127.0.0.1:0"]);

        Assert.Equal(1, await server.ExitCodeAsync());
        Assert.Contains("is not a database", Assert.Single(server.Errors), StringComparison.Ordinal);
        Assert.StartsWith("my shopping list", await File.ReadAllTextAsync(DatabasePath, Cancellation), StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_first_start_loads_the_demo_books_prints_its_address_and_stops_in_order()
    {
        // No .local/share yet: the default place is made.
        await using (var server = ServerProcess.Start(new Dictionary<string, string> { ["HOME"] = _folder }, ["--urls", "http://127.0.0.1:0"]))
        {
            using var client = new HttpClient { BaseAddress = await server.AddressAsync() };
            var families = await client.GetFromJsonAsync<JsonElement>("/api/families", Cancellation);
            Assert.Contains("tern-16", families.List("families").Select(family => family.Text("family")));
            var builds = await client.GetFromJsonAsync<JsonElement>("/api/builds", Cancellation);
            Assert.Contains("hill-climb", builds.List("builds").Select(build => build.Text("build")));
            await server.TerminateAsync();
            Assert.Equal(0, await server.ExitCodeAsync());
            Assert.Single(server.Output);
            Assert.DoesNotContain(server.Errors, line => line.Contains("fail:", StringComparison.Ordinal));
        }

        var folder = Path.Combine(_folder, ".local", "share", "partmatch");
        Assert.Equal(["partmatch.db"], Directory.EnumerateFileSystemEntries(folder).Select(Path.GetFileName));
    }

    [Fact]
    public async Task A_database_that_exists_gets_no_demo_books_and_queries_stay_out_of_the_log()
    {
        Database.Open(DatabasePath).Dispose();
        await using var server = ServerProcess.Start(Environment(), ["--urls", "http://127.0.0.1:0"]);
        using var client = new HttpClient { BaseAddress = await server.AddressAsync() };

        Assert.Empty((await client.GetFromJsonAsync<JsonElement>("/api/families", Cancellation)).List("families"));
        Assert.Empty((await client.GetFromJsonAsync<JsonElement>("/api/parts?q=SECRET-7", Cancellation)).List("parts"));
        Assert.Empty((await client.GetFromJsonAsync<JsonElement>("/api/parts/SECRET-8", Cancellation)).List("parts"));
        await server.TerminateAsync();
        Assert.Equal(0, await server.ExitCodeAsync());

        var log = string.Join('\n', server.Errors);
        Assert.Contains("GET /api/parts answered 200", log, StringComparison.Ordinal);
        Assert.DoesNotContain("SECRET", log, StringComparison.Ordinal);
        Assert.DoesNotContain("127.0.0.1", log, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_demo_book_with_a_bad_row_stops_the_start_names_the_row_and_leaves_no_database()
    {
        var copy = CopyServer();
        var seeds = Directory.CreateDirectory(Path.Combine(copy, "data-seed", "shop"));
        foreach (var (name, text) in SmallBooks.Shop.With("features.csv", SmallBooks.Shop["features.csv"].Replace("mm", "furlong", StringComparison.Ordinal)))
        {
            await File.WriteAllTextAsync(Path.Combine(seeds.FullName, name), text, Cancellation);
        }

        await using (var server = ServerProcess.Start(Environment(), ["--urls", "http://127.0.0.1:0"], copy))
        {
            Assert.Equal(1, await server.ExitCodeAsync());
            var sentence = Assert.Single(server.Errors);
            Assert.Contains("data-seed/shop has 2 faults, the first in features.csv line 2 column unit: found 'furlong'", sentence, StringComparison.Ordinal);
            Assert.Empty(Directory.EnumerateFiles(_folder));
        }

        // Once mended, the next start loads it.
        await File.WriteAllTextAsync(Path.Combine(seeds.FullName, "features.csv"), SmallBooks.Shop["features.csv"], Cancellation);
        await using var mended = ServerProcess.Start(Environment(), ["--urls", "http://127.0.0.1:0"], copy);
        using var client = new HttpClient { BaseAddress = await mended.AddressAsync() };
        Assert.Equal("shop", Assert.Single((await client.GetFromJsonAsync<JsonElement>("/api/books", Cancellation)).List("books")).Text("book"));
    }

    private Dictionary<string, string> Environment() => new() { ["HOME"] = _folder, ["PartMatch__Database"] = DatabasePath };

    /// <summary>A copy of the server without its demo books: the program itself is copied, what it needs is linked.</summary>
    private string CopyServer()
    {
        var copy = Directory.CreateDirectory(Path.Combine(_folder, "server")).FullName;
        foreach (var file in Directory.EnumerateFiles(AppContext.BaseDirectory))
        {
            var name = Path.GetFileName(file);
            if (name.StartsWith("PartMatch.Web.", StringComparison.Ordinal))
            {
                File.Copy(file, Path.Combine(copy, name));
            }
            else
            {
                File.CreateSymbolicLink(Path.Combine(copy, name), file);
            }
        }

        foreach (var folder in Directory.EnumerateDirectories(AppContext.BaseDirectory).Where(folder => Path.GetFileName(folder) != "data-seed"))
        {
            Directory.CreateSymbolicLink(Path.Combine(copy, Path.GetFileName(folder)), folder);
        }

        return copy;
    }
}
