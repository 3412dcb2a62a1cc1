using System.Text;
using System.Text.Json;
using Microsoft.Net.Http.Headers;
using PartMatch.Core.Listings;
using PartMatch.Web.Http;

namespace PartMatch.Web.Listings;

/// <summary>The listing as it was sent: bare, with its type, or as text inside JSON.</summary>
internal static class ListingBody
{
    public const string Json = "application/json";

    /// <summary>Types of a page.</summary>
    public static readonly string[] PageTypes = ["text/html", "multipart/related", "message/rfc822", "application/x-mimearchive", "application/xhtml+xml"];

    /// <summary>Types that are taken; the saved page of one file has three names.</summary>
    public static readonly string[] Types = ["text/plain", .. PageTypes, Json];

    /// <summary>The document, or why it is none.</summary>
    public static async Task<(ListingDocument? Document, Problem? Problem)> ReadAsync(HttpRequest request, CancellationToken cancellation)
    {
        using var sent = new MemoryStream();
        await request.Body.CopyToAsync(sent, cancellation);
        var bytes = sent.ToArray();
        var type = MediaTypeHeaderValue.TryParse(request.ContentType, out var parsed) ? parsed : null;
        var charset = type?.Charset.Value?.Trim('"');
        return type?.MediaType.Value?.ToLowerInvariant() switch
        {
            Json => FromJson(bytes),
            "text/plain" => (new ListingDocument(ListingFormat.Text, bytes, charset), null),
            _ when FindPage(request.ContentType, bytes) is { } page => (page, null),
            var other => (null, Problem.Of("wrong-media-type", new FieldError(
                "Content-Type", string.IsNullOrEmpty(other) ? "nothing" : other, string.Join(", ", Types), "send pasted words as text/plain, a saved page as text/html or message/rfc822"))),
        };
    }

    /// <summary>The page by the type it was sent with; null where that is none of a page.</summary>
    public static ListingDocument? FindPage(string? contentType, byte[] bytes)
    {
        var type = MediaTypeHeaderValue.TryParse(contentType, out var parsed) ? parsed : null;
        var charset = type?.Charset.Value?.Trim('"');
        return type?.MediaType.Value?.ToLowerInvariant() switch
        {
            "text/html" or "application/xhtml+xml" => new ListingDocument(ListingFormat.Html, bytes, charset),
            "multipart/related" => new ListingDocument(ListingFormat.Mhtml, WithHeader(contentType, bytes), charset),
            "message/rfc822" or "application/x-mimearchive" => new ListingDocument(ListingFormat.Mhtml, bytes, charset),
            _ => null,
        };
    }

    // A bare multipart body says only in the header of the request where its parts end.
    private static byte[] WithHeader(string? contentType, byte[] body) => [.. Encoding.Latin1.GetBytes($"MIME-Version: 1.0\r\nContent-Type: {contentType}\r\n\r\n"), .. body];

    private static (ListingDocument? Document, Problem? Problem) FromJson(byte[] bytes)
    {
        try
        {
            var pasted = JsonSerializer.Deserialize<PastedListing>(bytes, JsonRules.Options);
            return pasted switch
            {
                { Text: { } text, Html: null } => (new ListingDocument(ListingFormat.Text, Encoding.UTF8.GetBytes(text), "utf-8"), null),
                { Html: { } html, Text: null } => (new ListingDocument(ListingFormat.Html, Encoding.UTF8.GetBytes(html), "utf-8"), null),
                _ => (null, Problem.Of("bad-request", new FieldError("text", pasted?.Text is null ? "nothing" : "text and html", "one of text and html", "send what was pasted as text, or the source of the page as html"))),
            };
        }
        catch (JsonException fault)
        {
            return (null, Problem.Of("bad-request", new FieldError(fault.Path ?? "$", "JSON that cannot be read", "{\"text\": \"…\"} or {\"html\": \"…\"}", "or send the words bare, as text/plain")));
        }
    }
}

/// <summary>What was pasted: one of the two.</summary>
public sealed record PastedListing(string? Text = null, string? Html = null);
