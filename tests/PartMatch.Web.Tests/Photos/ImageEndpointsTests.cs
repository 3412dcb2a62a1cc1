using System.Net;
using System.Net.Http.Headers;
using System.Security.Cryptography;
using System.Text.Json;
using PartMatch.Core.Photos;
using PartMatch.Core.Tests.Photos;

namespace PartMatch.Web.Tests.Photos;

public sealed class ImageEndpointsTests : IAsyncLifetime
{
    private readonly PartMatchServer _server = new();
    private HttpClient _client = null!; // set before each test by InitializeAsync

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    public ValueTask InitializeAsync()
    {
        _client = _server.CreateClient();
        return ValueTask.CompletedTask;
    }

    public ValueTask DisposeAsync() => _server.DisposeAsync();

    [Fact]
    public async Task A_picture_is_stored_without_metadata_under_the_hash_of_what_is_left()
    {
        var name = Convert.ToHexStringLower(SHA256.HashData(DrawnJpeg.Plain)) + ".jpg";

        using var answer = await PostAsync(DrawnJpeg.With([.. DrawnJpeg.Exif(1), .. DrawnJpeg.Named(0xFE, "somebody")]), "image/jpeg");

        Assert.Equal(HttpStatusCode.Created, answer.StatusCode);
        Assert.Equal($"/api/images/{name}", answer.Headers.Location?.OriginalString);
        var stored = await ReadAsync(answer);
        Assert.Equal((name, $"/api/images/{name}"), (stored.Text("image"), stored.Text("permalink")));
        Assert.Equal([16, 8, DrawnJpeg.Plain.Length], new[] { "width", "height", "bytes" }.Select(member => stored.GetProperty(member).GetInt32()));
        Assert.Equal(JsonValueKind.Object, stored.GetProperty("asked").ValueKind);
        Assert.Equal(DrawnJpeg.Plain, await _client.GetByteArrayAsync(answer.Headers.Location, Cancellation));
    }

    [Fact]
    public async Task The_same_picture_again_gives_the_same_answer()
    {
        using var first = await PostAsync(DrawnPng.Plain, "image/png");
        using var second = await PostAsync(DrawnPng.Plain, "image/png");

        Assert.Equal(HttpStatusCode.Created, second.StatusCode);
        Assert.Equal((await ReadAsync(first)).GetRawText(), (await ReadAsync(second)).GetRawText());
    }

    [Fact]
    public async Task What_a_picture_is_decides_not_what_it_is_said_to_be()
    {
        using var answer = await PostAsync(DrawnPng.Plain, "image/jpeg");

        Assert.EndsWith(".png", (await ReadAsync(answer)).Text("image"), StringComparison.Ordinal);
        using var shown = await _client.GetAsync(answer.Headers.Location, Cancellation);
        Assert.Equal("image/png", shown.Content.Headers.ContentType?.ToString());
    }

    [Fact]
    public async Task A_stored_picture_is_shown_as_nothing_else_and_kept_by_whoever_asked()
    {
        using var answer = await PostAsync(DrawnJpeg.Plain, "image/jpeg");
        using var shown = await _client.GetAsync(answer.Headers.Location, Cancellation);

        Assert.Equal("image/jpeg", shown.Content.Headers.ContentType?.ToString());
        Assert.Equal("nosniff", Only(shown, "X-Content-Type-Options"));
        Assert.Equal("default-src 'none'; sandbox", Only(shown, "Content-Security-Policy"));
        Assert.Equal("same-origin", Only(shown, "Cross-Origin-Resource-Policy"));
        Assert.Equal("inline", shown.Content.Headers.ContentDisposition?.ToString());
        Assert.Equal(["immutable", "max-age=31536000", "public"], Only(shown, "Cache-Control").Split(", ").Order(StringComparer.Ordinal));

        using var request = new HttpRequestMessage(HttpMethod.Get, answer.Headers.Location);
        request.Headers.IfNoneMatch.Add(shown.Headers.ETag!); // an answer without one fails here
        using var again = await _client.SendAsync(request, Cancellation);
        Assert.Equal(HttpStatusCode.NotModified, again.StatusCode);
    }

    [Fact]
    public async Task Every_other_answer_keeps_the_policy_of_the_pages()
    {
        using var answer = await PostAsync(DrawnJpeg.Plain, "image/jpeg");
        Assert.Contains("script-src 'self'", Only(answer, "Content-Security-Policy"), StringComparison.Ordinal);

        using var absent = await _client.GetAsync(new Uri("/api/images/nothing.jpg", UriKind.Relative), Cancellation);
        Assert.Contains("script-src 'self'", Only(absent, "Content-Security-Policy"), StringComparison.Ordinal);
        Assert.Equal("no-store", Only(absent, "Cache-Control"));
    }

    [Theory]
    [InlineData("0000000000000000000000000000000000000000000000000000000000000000.jpg")]
    [InlineData("nothing")]
    [InlineData("..%2Fbase.db")]
    public async Task An_unknown_picture_is_404(string image)
    {
        var problem = await _client.RefuseAsync($"/api/images/{image}", HttpStatusCode.NotFound, "not-found");

        Assert.Equal("image", problem.OnlyError().Text("field"));
    }

    [Fact]
    public async Task Another_format_is_refused_by_name_with_what_to_do()
    {
        using var refused = await PostAsync([0, 0, 0, 24, .. "ftypheic"u8, 0, 0, 0, 0], "image/jpeg");

        var error = (await refused.ProblemAsync(HttpStatusCode.BadRequest, "bad-image")).OnlyError();
        Assert.Equal(
            ("image", "a HEIC picture", "a picture as JPEG or PNG", "save it as JPEG or PNG"),
            (error.Text("field"), error.Text("found"), error.Text("expected"), error.Text("mend")));
    }

    [Fact]
    public async Task An_empty_body_is_refused()
    {
        using var refused = await PostAsync([], "image/png");

        Assert.Equal("nothing", (await refused.ProblemAsync(HttpStatusCode.BadRequest, "bad-image")).OnlyError().Text("found"));
    }

    [Theory]
    [InlineData("image/heic")]
    [InlineData("application/octet-stream")]
    public async Task A_body_declared_as_something_else_is_415(string type)
    {
        using var refused = await PostAsync(DrawnPng.Plain, type);

        var problem = await refused.ProblemAsync(HttpStatusCode.UnsupportedMediaType, "wrong-media-type");
        Assert.Contains("image/jpeg or image/png", problem.OnlyError().Text("mend"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Without_the_token_nothing_is_stored()
    {
        await using var closed = new PartMatchServer { Settings = { ["PartMatch:Token"] = "a token" } };
        using var client = closed.CreateClient();
        using var refused = await client.PostAsync(new Uri("/api/images", UriKind.Relative), Body(DrawnPng.Plain, "image/png"), Cancellation);
        await refused.ProblemAsync(HttpStatusCode.Unauthorized, "token-needed");

        client.DefaultRequestHeaders.Authorization = new AuthenticationHeaderValue("Bearer", "a token");
        using var taken = await client.PostAsync(new Uri("/api/images", UriKind.Relative), Body(DrawnPng.Plain, "image/png"), Cancellation);
        Assert.Equal(HttpStatusCode.Created, taken.StatusCode);
    }

    [Fact]
    public async Task Five_mebibytes_are_the_most_and_far_more_is_not_even_read()
    {
        await using var server = new PartMatchServer();
        server.ListenOnSocket();
        using var client = new HttpClient { BaseAddress = server.ClientOptions.BaseAddress };

        // Asks before it sends: a refusal is not lost in a connection that closes while the body is on its way.
        client.DefaultRequestHeaders.ExpectContinue = true;
        foreach (var (length, status, type) in new[]
        {
            (PhotoReader.MaxBytes, HttpStatusCode.Created, ""),
            (PhotoReader.MaxBytes + 1, HttpStatusCode.BadRequest, "bad-image"),
            (PhotoReader.MaxBytes + (1 << 20), HttpStatusCode.RequestEntityTooLarge, "too-large"),
        })
        {
            var padded = new byte[length];
            DrawnPng.Plain.CopyTo(padded, 0);
            using var answer = await client.PostAsync(new Uri("/api/images", UriKind.Relative), Body(padded, "image/png"), Cancellation);
            Assert.Equal(status, answer.StatusCode);
            if (type.Length > 0)
            {
                await answer.ProblemAsync(status, type);
            }
        }
    }

    private Task<HttpResponseMessage> PostAsync(byte[] picture, string type) =>
        _client.PostAsync(new Uri("/api/images", UriKind.Relative), Body(picture, type), Cancellation);

    private static ByteArrayContent Body(byte[] picture, string type) => new(picture) { Headers = { ContentType = new MediaTypeHeaderValue(type) } };

    private static string Only(HttpResponseMessage answer, string header) => Assert.Single(answer.Headers.GetValues(header));

    private static async Task<JsonElement> ReadAsync(HttpResponseMessage answer) =>
        JsonDocument.Parse(await answer.Content.ReadAsStringAsync(Cancellation)).RootElement;
}
