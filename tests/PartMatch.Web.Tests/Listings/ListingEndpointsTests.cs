using System.Net;
using System.Net.Http.Headers;
using System.Text;
using System.Text.Json;
using PartMatch.Web.Tests.Seed;

namespace PartMatch.Web.Tests.Listings;

public sealed class ListingEndpointsTests(SeedServer server)
{
    private const string Pump = "family=tern-16&variant=ts&position=coolant-pump";

    private const string Words = "Water pump, used. Part number: P-26-1147-E. £62.00";

    private readonly HttpClient _client = server.CreateClient();

    [Theory]
    [InlineData("text/plain", Words)]
    [InlineData("text/html", "<title>Water pump</title><p>Condition: used</p><p>Part number: P-26-1147-E</p><p>£62.00</p>")]
    [InlineData("application/json", "{\"text\": \"" + Words + "\"}")]
    [InlineData("application/json", "{\"html\": \"<p>Condition: used</p><p>Part number: P-26-1147-E</p><p>£62.00</p>\"}")]
    [InlineData("message/rfc822", "MIME-Version: 1.0\r\nContent-Type: text/html; charset=utf-8\r\n\r\n<p>Condition: used</p><p>Part number: P-26-1147-E</p><p>£62.00</p>")]
    public async Task The_right_pump_is_bought_however_it_is_sent(string type, string body)
    {
        var answer = await ReadAsync(Pump, type, body);
        Assert.Equal(("buy", "/api/listings/read?" + Pump), (answer.Text("headline"), answer.Text("permalink")));
        Assert.Equal("right-one", answer.List("numbers")[0].Text("verdict"));
        Assert.Equal(64, answer.GetProperty("asked").Text("sha256").Length);
    }

    [Fact]
    public async Task Without_an_engine_it_only_says_what_the_number_is()
    {
        var answer = await ReadAsync("", "text/plain", Words);
        Assert.Equal(("ask-first", "another-known-part"), (answer.Text("headline"), answer.List("numbers")[0].Text("verdict")));
    }

    [Theory]
    [InlineData("family=tern-16&variant=ts", "text/plain", Words, HttpStatusCode.BadRequest, "position")]
    [InlineData("variant=ts", "text/plain", Words, HttpStatusCode.BadRequest, "family")]
    [InlineData("family=tern-61&variant=ts&position=coolant-pump", "text/plain", Words, HttpStatusCode.NotFound, "family")]
    [InlineData("family=tern-16&variant=tx&position=coolant-pump", "text/plain", Words, HttpStatusCode.NotFound, "variant")]
    [InlineData("family=tern-16&variant=ts&position=pump", "text/plain", Words, HttpStatusCode.NotFound, "position")]
    [InlineData(Pump + "&level=half", "text/plain", Words, HttpStatusCode.BadRequest, "level")]
    [InlineData(Pump + "&built=17", "text/plain", Words, HttpStatusCode.BadRequest, "built")]
    [InlineData(Pump, "application/json", "{\"words\": \"x\"}", HttpStatusCode.BadRequest, "$.words")]
    [InlineData(Pump, "application/json", "{\"text\": \"x\", \"html\": \"y\"}", HttpStatusCode.BadRequest, "text")]
    [InlineData(Pump, "application/json", "{\"text\"", HttpStatusCode.BadRequest, "$")]
    [InlineData(Pump, "text/plain", "\u0089PNG\r\n\u001a\n", HttpStatusCode.BadRequest, "listing")]
    [InlineData(Pump, "text/csv", Words, HttpStatusCode.UnsupportedMediaType, "Content-Type")]
    public async Task What_cannot_be_read_is_refused_at_its_field(string query, string type, string body, HttpStatusCode status, string field)
    {
        using var sent = await SendAsync(query, type, body);
        Assert.Equal(status, sent.StatusCode);
        var problem = JsonDocument.Parse(await sent.Content.ReadAsStringAsync(TestContext.Current.CancellationToken)).RootElement;
        Assert.Equal(field, problem.List("errors")[0].Text("field"));
    }

    [Fact]
    public async Task More_than_four_megabytes_are_refused()
    {
        await using var own = new PartMatchServer(); // over a real socket: in memory bodies have no bound
        own.ListenOnSocket();
        using var handler = new SocketsHttpHandler { Expect100ContinueTimeout = TimeSpan.FromSeconds(30) };
        using var client = new HttpClient(handler) { BaseAddress = own.ClientOptions.BaseAddress };
        client.DefaultRequestHeaders.ExpectContinue = true; // asks before it sends: a refusal is not lost in a connection that closes while the body is on its way
        using var sent = await client.PostAsync(new Uri("/api/listings/read", UriKind.Relative), new StringContent(new string('a', (4 << 20) + 1)), TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.RequestEntityTooLarge, sent.StatusCode);
    }

    [Fact]
    public async Task The_edit_token_is_not_asked_for_because_nothing_is_stored()
    {
        await using var guarded = new PartMatchServer { Settings = { ["PartMatch:Token"] = "a token for this test" } };
        using var client = guarded.CreateClient();
        using var sent = await client.PostAsync(new Uri("/api/listings/read", UriKind.Relative), new StringContent(Words), TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.OK, sent.StatusCode);
    }

    private async Task<JsonElement> ReadAsync(string query, string type, string body)
    {
        using var sent = await SendAsync(query, type, body);
        var text = await sent.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);
        Assert.True(sent.IsSuccessStatusCode, text);
        return JsonDocument.Parse(text).RootElement;
    }

    private async Task<HttpResponseMessage> SendAsync(string query, string type, string body)
    {
        // Bytes of Latin 1 for what is no text at all: the signature of a picture is not valid UTF-8.
        var bytes = body[0] == '\u0089' ? Encoding.Latin1.GetBytes(body) : Encoding.UTF8.GetBytes(body);
        using var content = new ByteArrayContent(bytes) { Headers = { ContentType = new MediaTypeHeaderValue(type) } };
        return await _client.PostAsync(new Uri("/api/listings/read" + (query.Length == 0 ? "" : "?" + query), UriKind.Relative), content, TestContext.Current.CancellationToken);
    }
}
