using System.Diagnostics;
using System.Globalization;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Mvc.Testing;
using Microsoft.Extensions.DependencyInjection;
using PartMatch.Web.Http;
using PartMatch.Web.LookAlikes;

namespace PartMatch.Benchmarks.Numbers;

/// <summary>
/// Near numbers over HTTP beside a route that answers <c>{"hello":"world"}</c> to a request of the same shape behind the same middleware, routing and checks,
/// both asked by the same client over loopback: <c>http dense large.db</c>, the base as <c>import list.zip large.db</c> has made it.
/// </summary>
internal static class NearOverHttp
{
    private const int Connections = 8;
    private static readonly TimeSpan _round = TimeSpan.FromSeconds(5);

    public static async Task ShowAsync(string name, string path)
    {
        var set = KeySet.Of(name);
        await using var server = new BaseServer(path);
        server.UseKestrel();
        server.StartServer();
        using var client = server.CreateClient();
        var watch = Stopwatch.StartNew();
        string[] near = [.. set.Asked.Where(asked => asked.Length > 0).Select(asked => $"/api/numbers/{asked}/near?limit=20")];
        string[] hellos = [.. near.Select(address => address.Replace("/near?", "/hello?", StringComparison.Ordinal))];
        var first = await client.GetByteArrayAsync(new Uri(near[0], UriKind.Relative));
        Say($"first answer, before the index is built: {watch.ElapsedMilliseconds} ms, {first.Length} bytes");
        while (server.Services.GetRequiredService<IndexProbe>().IsWaiting(client, near[1]) && watch.Elapsed < TimeSpan.FromMinutes(1))
        {
        }

        Say($"answering from the index after {watch.Elapsed.TotalSeconds:0.0} s");
        await RoundAsync(client, hellos, "warm-up, hello");
        await RoundAsync(client, near, "warm-up, near");
        for (var round = 0; round < 5; round++)
        {
            var hello = await RoundAsync(client, hellos, "hello");
            var found = await RoundAsync(client, near, "near");
            var (byRate, byTime) = (found.Rate / hello.Rate, hello.Microseconds / found.Microseconds);
            Say($"  near at {byRate:0.00} of the rate of hello; by processor time, client included, at {byTime:0.00}");
        }
    }

    private static async Task<(double Rate, double Microseconds)> RoundAsync(HttpClient client, string[] addresses, string what)
    {
        var (asked, bytes) = (0, 0L);
        using var process = Process.GetCurrentProcess();
        var before = process.TotalProcessorTime;
        var watch = Stopwatch.StartNew();
        await Task.WhenAll(Enumerable.Range(0, Connections).Select(async _ =>
        {
            while (watch.Elapsed < _round)
            {
                var address = addresses[Interlocked.Increment(ref asked) % addresses.Length];
                Interlocked.Add(ref bytes, (await client.GetByteArrayAsync(new Uri(address, UriKind.Relative))).Length);
            }
        }));
        var rate = asked / watch.Elapsed.TotalSeconds;
        process.Refresh();
        var microseconds = (process.TotalProcessorTime - before).TotalMicroseconds / asked; // says something on a busy machine as well
        Say($"{what}: {rate:N0} requests a second over {Connections} connections, {microseconds:0} µs of processor time each, {bytes / asked} bytes a body");
        return (rate, microseconds);
    }

    private static void Say(FormattableString line) => Console.WriteLine(line.ToString(CultureInfo.InvariantCulture));

    /// <summary>Until the index is there an answer takes as long as reading the base.</summary>
    private sealed class IndexProbe
    {
        private static readonly TimeSpan _scan = TimeSpan.FromMilliseconds(50);

        public bool IsWaiting(HttpClient client, string address)
        {
            var watch = Stopwatch.StartNew();
            client.GetByteArrayAsync(new Uri(address, UriKind.Relative)).GetAwaiter().GetResult();
            return watch.Elapsed > _scan;
        }
    }

    // Any public type of the server program tells the factory which program it is.
    private sealed class BaseServer(string path) : WebApplicationFactory<NearRequest>
    {
        protected override void ConfigureWebHost(IWebHostBuilder builder)
        {
            builder.UseEnvironment("Production"); // what a test server adds for developers costs hello as much as near
            builder.UseContentRoot(AppContext.BaseDirectory); // no page is asked for
            builder.UseSetting("PartMatch:Database", Path.GetFullPath(path));
            builder.UseSetting("urls", "http://127.0.0.1:0");
            builder.UseSetting("Logging:LogLevel:Default", "Warning");
            builder.ConfigureServices(services =>
            {
                services.AddSingleton<IndexProbe>();
                services.AddSingleton<IStartupFilter, Hello>();
            });
        }
    }

    /// <summary>
    /// Behind the product's middleware and routes: routing of its own, checks of a request of the same shape, and the same way of writing JSON. The product's
    /// own routing finds nothing first, so it is routed twice; nobody outside the program can add to its routes.
    /// </summary>
    private sealed class Hello : IStartupFilter
    {
        public Action<IApplicationBuilder> Configure(Action<IApplicationBuilder> next) => app =>
        {
            next(app);
            app.UseRouting();
            app.UseEndpoints(routes => routes.MapGroup("/api").CheckRequests().MapGet(
                "/numbers/{number}/hello", ([AsParameters] NearRequest request) => TypedResults.Ok(new HelloAnswer(request.Limit is null ? "nobody" : "world"))));
        };
    }

    private sealed record HelloAnswer(string Hello);
}
