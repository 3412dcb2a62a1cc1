using System.Net;
using System.Net.Http.Headers;
using System.Net.Sockets;
using System.Text;

namespace PartMatch.Web.Tests.Http;

/// <summary>Two servers on real sockets: one as it comes, one with a token and names of its own. No test stores anything in them.</summary>
public sealed class SocketServers : IAsyncLifetime
{
    public const string Token = "a token for the tests only";

    public PartMatchServer Open { get; } = new();

    public PartMatchServer Guarded { get; } = new() { Settings = { ["PartMatch:Token"] = Token, ["PartMatch:Hosts"] = "workshop.example;*.garage.example" } };

    public ValueTask InitializeAsync()
    {
        foreach (var server in new[] { Open, Guarded })
        {
            server.ListenOnSocket();
        }

        return ValueTask.CompletedTask;
    }

    public async ValueTask DisposeAsync()
    {
        await Open.DisposeAsync();
        await Guarded.DisposeAsync();
    }
}

/// <summary>Host, Origin, token, headers and bounds, over a real socket.</summary>
public sealed class SecurityTests(SocketServers servers) : IClassFixture<SocketServers>
{
    private const int LargestBook = 64 << 20;

    private readonly PartMatchServer _open = servers.Open;
    private readonly PartMatchServer _guarded = servers.Guarded;

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    [Theory]
    [InlineData("/")]
    [InlineData("/api/families")]
    [InlineData("/api/families/unknown")]
    [InlineData("/nowhere")]
    public async Task Every_answer_carries_the_security_headers(string path)
    {
        using var client = _open.CreateClient();
        using var answer = await client.GetAsync(new Uri(path, UriKind.Relative), Cancellation);

        var policy = Assert.Single(answer.Headers.GetValues("Content-Security-Policy"));
        foreach (var part in new[] { "default-src 'none'", "script-src 'self'", "style-src 'self'", "connect-src 'self'", "form-action 'self'", "base-uri 'none'", "frame-ancestors 'none'" })
        {
            Assert.Contains(part, policy, StringComparison.Ordinal);
        }

        Assert.DoesNotContain("unsafe", policy, StringComparison.Ordinal);
        Assert.Equal("nosniff", Assert.Single(answer.Headers.GetValues("X-Content-Type-Options")));
        Assert.Equal("no-referrer", Assert.Single(answer.Headers.GetValues("Referrer-Policy")));
        Assert.Equal("same-origin", Assert.Single(answer.Headers.GetValues("Cross-Origin-Opener-Policy")));
        Assert.Equal("same-origin", Assert.Single(answer.Headers.GetValues("Cross-Origin-Resource-Policy")));
        Assert.True(answer.Headers.CacheControl?.NoCache == true || answer.Headers.CacheControl?.NoStore == true);
        Assert.False(answer.Headers.Contains("Server"));
    }

    [Fact]
    public async Task A_page_has_an_entity_tag_that_saves_sending_it_again()
    {
        using var client = _open.CreateClient();
        using var page = await client.GetAsync(new Uri("/", UriKind.Relative), Cancellation);
        using var request = new HttpRequestMessage(HttpMethod.Get, "/");
        request.Headers.IfNoneMatch.Add(page.Headers.ETag!); // a page without one fails here
        using var again = await client.SendAsync(request, Cancellation);

        Assert.Equal(HttpStatusCode.OK, page.StatusCode);
        Assert.Equal(HttpStatusCode.NotModified, again.StatusCode);
    }

    [Theory]
    [InlineData("localhost", true)]
    [InlineData("localhost:5080", true)]
    [InlineData("127.0.0.1:1", true)]
    [InlineData("[::1]:5080", true)]
    [InlineData("workshop.example", true)]
    [InlineData("WORKSHOP.example:8080", true)]
    [InlineData("east.garage.example", true)]
    [InlineData("garage.example", false)]
    [InlineData("workshop.example.evil.example", false)]
    [InlineData("evil.example", false)]
    [InlineData("localhost.evil.example", false)]
    [InlineData("127.0.0.1.evil.example", false)]
    [InlineData("192.0.2.7", false)]
    [InlineData("0.0.0.0", false)]
    public async Task Only_the_servers_own_names_are_answered(string host, bool allowed)
    {
        using var client = _guarded.CreateClient();
        using var request = new HttpRequestMessage(HttpMethod.Get, "/api/families");
        request.Headers.Host = host;
        using var answer = await client.SendAsync(request, Cancellation);

        if (allowed)
        {
            Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        }
        else
        {
            var problem = await answer.ProblemAsync(HttpStatusCode.BadRequest, "host-not-allowed");
            Assert.Equal("Host", problem.OnlyError().Text("field"));
        }
    }

    [Fact]
    public async Task A_request_without_a_host_is_refused()
    {
        var answer = await SendRawAsync(_open, "GET /api/families HTTP/1.0\r\n\r\n");

        Assert.StartsWith("HTTP/1.1 400", answer, StringComparison.Ordinal);
        Assert.Contains("/problems/host-not-allowed", answer, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(null, null, HttpStatusCode.OK)]
    [InlineData("self", null, HttpStatusCode.OK)]
    [InlineData("self", "same-origin", HttpStatusCode.OK)]
    [InlineData(null, "none", HttpStatusCode.OK)]
    [InlineData("http://evil.example", null, HttpStatusCode.Forbidden)]
    [InlineData("null", null, HttpStatusCode.Forbidden)]
    [InlineData("http://127.0.0.1:1", null, HttpStatusCode.Forbidden)]
    [InlineData("self", "cross-site", HttpStatusCode.Forbidden)]
    [InlineData("self", "same-site", HttpStatusCode.Forbidden)]
    [InlineData(null, "cross-site", HttpStatusCode.Forbidden)]
    [InlineData("http://evil.example", "same-origin", HttpStatusCode.Forbidden)]
    public async Task A_write_from_a_page_of_another_origin_is_refused(string? origin, string? site, HttpStatusCode expected)
    {
        using var client = _open.CreateClient();
        using var request = ImportRequest(SmallBooks.Zip(SmallBooks.Shop), dryRun: expected == HttpStatusCode.OK);
        if (origin is not null)
        {
            request.Headers.Add("Origin", origin == "self" ? client.BaseAddress?.GetLeftPart(UriPartial.Authority) : origin);
        }

        if (site is not null)
        {
            request.Headers.Add("Sec-Fetch-Site", site);
        }

        using var answer = await client.SendAsync(request, Cancellation);

        Assert.Equal(expected, answer.StatusCode);
        if (expected == HttpStatusCode.Forbidden)
        {
            await answer.ProblemAsync(HttpStatusCode.Forbidden, "foreign-origin");
            Assert.Empty((await client.AskAsync("/api/books")).List("books"));
        }
    }

    [Fact]
    public async Task Reads_are_open_to_other_origins_without_being_readable_by_their_pages()
    {
        using var client = _open.CreateClient();
        using var request = new HttpRequestMessage(HttpMethod.Get, "/api/families");
        request.Headers.Add("Origin", "http://evil.example");
        request.Headers.Add("Sec-Fetch-Site", "cross-site");
        using var answer = await client.SendAsync(request, Cancellation);

        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.False(answer.Headers.Contains("Access-Control-Allow-Origin"));
    }

    [Theory]
    [InlineData(null)]
    [InlineData("Bearer")]
    [InlineData("Bearer wrong")]
    [InlineData("Bearer a token for the tests onl")]
    [InlineData("Basic a token for the tests only")]
    public async Task A_write_without_the_token_is_401_and_says_how(string? authorization)
    {
        using var client = _guarded.CreateClient();
        using var request = ImportRequest(SmallBooks.Zip(SmallBooks.Shop), dryRun: false);
        if (authorization is not null)
        {
            request.Headers.TryAddWithoutValidation("Authorization", authorization);
        }

        using var answer = await client.SendAsync(request, Cancellation);

        await answer.ProblemAsync(HttpStatusCode.Unauthorized, "token-needed");
        Assert.Equal("Bearer", Assert.Single(answer.Headers.WwwAuthenticate).Scheme);
        Assert.Empty((await client.AskAsync("/api/books")).List("books"));
    }

    [Fact]
    public async Task A_write_with_the_token_passes_and_a_read_needs_none()
    {
        using var client = _guarded.CreateClient();
        using var request = ImportRequest(SmallBooks.Zip(SmallBooks.Shop), dryRun: true);
        request.Headers.Authorization = new AuthenticationHeaderValue("Bearer", SocketServers.Token);
        using var answer = await client.SendAsync(request, Cancellation);

        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.Empty((await client.AskAsync("/api/books")).List("books"));
    }

    [Fact]
    public async Task The_token_guards_paths_without_a_route_as_well()
    {
        using var client = _guarded.CreateClient();
        using var answer = await client.DeleteAsync(new Uri("/api/books/shop", UriKind.Relative), Cancellation);

        await answer.ProblemAsync(HttpStatusCode.Unauthorized, "token-needed");
    }

    [Theory]
    [InlineData("GET", "/api/nowhere", HttpStatusCode.NotFound, "not-found")]
    [InlineData("GET", "/nowhere.html", HttpStatusCode.NotFound, "not-found")]
    [InlineData("DELETE", "/api/families", HttpStatusCode.MethodNotAllowed, "method-not-allowed")]
    [InlineData("PUT", "/api/fit", HttpStatusCode.MethodNotAllowed, "method-not-allowed")]
    public async Task What_the_router_refuses_is_a_problem_too(string method, string path, HttpStatusCode status, string type)
    {
        using var client = _open.CreateClient();
        using var request = new HttpRequestMessage(new HttpMethod(method), path);
        using var answer = await client.SendAsync(request, Cancellation);

        await answer.ProblemAsync(status, type);
    }

    [Fact]
    public async Task Head_answers_as_get_does_without_a_body()
    {
        using var client = _open.CreateClient();
        using var request = new HttpRequestMessage(HttpMethod.Head, "/api/families");
        using var answer = await client.SendAsync(request, Cancellation);

        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.Equal("application/json", answer.Content.Headers.ContentType?.MediaType);
        Assert.Empty(await answer.Content.ReadAsByteArrayAsync(Cancellation));
    }

    [Fact]
    public async Task A_book_larger_than_the_bound_is_413_before_it_is_sent()
    {
        var answer = await SendRawAsync(_open, $"POST /api/books HTTP/1.1\r\nHost: localhost\r\nContent-Type: application/zip\r\nContent-Length: {LargestBook + 1}\r\n\r\n");

        Assert.StartsWith("HTTP/1.1 413", answer, StringComparison.Ordinal);
        Assert.Contains("/problems/too-large", answer, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_body_of_unknown_length_is_bounded_as_well()
    {
        var answer = await SendRawAsync(
            _open, $"POST /api/books HTTP/1.1\r\nHost: localhost\r\nContent-Type: application/zip\r\nTransfer-Encoding: chunked\r\n\r\n{LargestBook + 1:X}\r\n",
            new byte[LargestBook + 1]);

        Assert.StartsWith("HTTP/1.1 413", answer, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Headers_and_addresses_are_bounded()
    {
        var long16 = new string('x', 20_000);
        var host = "Host: localhost\r\n";

        Assert.StartsWith("HTTP/1.1 431", await SendRawAsync(_open, $"GET / HTTP/1.1\r\n{host}X-Long: {long16}\r\n\r\n"), StringComparison.Ordinal);
        Assert.StartsWith("HTTP/1.1 414", await SendRawAsync(_open, $"GET /{long16} HTTP/1.1\r\n{host}\r\n"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_percent_encoded_slash_reaches_the_number_over_a_real_socket()
    {
        await using var server = new PartMatchServer();
        server.ListenOnSocket();
        using var client = server.CreateClient();
        await client.PostSmallBooksAsync();

        var answer = await client.AskAsync("/api/parts/12%2F34");
        Assert.Equal("ardlow:12/34", Assert.Single(answer.List("parts")).Text("part"));
    }

    private static HttpRequestMessage ImportRequest(byte[] zip, bool dryRun)
    {
        var body = new ByteArrayContent(zip);
        body.Headers.ContentType = new MediaTypeHeaderValue("application/zip");
        return new HttpRequestMessage(HttpMethod.Post, dryRun ? "/api/books?dry-run=true" : "/api/books") { Content = body };
    }

    private static async Task<string> SendRawAsync(PartMatchServer server, string head, byte[]? body = null)
    {
        var address = server.ClientOptions.BaseAddress;
        using var socket = new TcpClient(address.Host, address.Port);
        await using var stream = socket.GetStream();
        await stream.WriteAsync(Encoding.ASCII.GetBytes(head), Cancellation);
        // Read while sending: a server that has answered and closed before all was sent resets the connection, and what was not read by then is gone.
        var answer = ReadAnswerAsync(stream);
        try
        {
            await stream.WriteAsync(body ?? [], Cancellation);
        }
        catch (IOException)
        {
            // Closed before all was sent: expected of a refusal.
        }

        return await answer;
    }

    private static async Task<string> ReadAnswerAsync(NetworkStream stream)
    {
        var buffer = new byte[4096];
        var length = 0;
        while (length < buffer.Length && !IsWhole(buffer.AsSpan(0, length)))
        {
            var read = await stream.ReadAsync(buffer.AsMemory(length), Cancellation).AsTask().WaitAsync(TimeSpan.FromSeconds(60), Cancellation);
            if (read == 0)
            {
                break;
            }

            length += read;
        }

        return Encoding.ASCII.GetString(buffer, 0, length);
    }

    // Refusals either close the connection after an empty body or end the last chunk of a short one.
    private static bool IsWhole(ReadOnlySpan<byte> answer)
    {
        var text = Encoding.ASCII.GetString(answer);
        return text.EndsWith("0\r\n\r\n", StringComparison.Ordinal) || text.Contains("Content-Length: 0", StringComparison.Ordinal);
    }
}
