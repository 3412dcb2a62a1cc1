using Microsoft.Net.Http.Headers;
using PartMatch.Storage.Orders;
using PartMatch.Web.Builds;
using PartMatch.Web.Http;

namespace PartMatch.Web.Orders;

/// <summary>A document of orders as it was sent, read strictly.</summary>
internal static class OrderBody
{
    /// <summary>The document, or why it is none.</summary>
    public static async Task<(T? Document, Problem? Problem)> ReadAsync<T>(HttpRequest request, CancellationToken cancellation)
        where T : class
    {
        var type = MediaTypeHeaderValue.TryParse(request.ContentType, out var parsed) ? parsed.MediaType.Value : null;
        if (!string.Equals(type, BuildBody.Json, StringComparison.OrdinalIgnoreCase))
        {
            return (null, Problem.Of(
                "wrong-media-type", new FieldError("Content-Type", string.IsNullOrEmpty(type) ? "nothing" : type, BuildBody.Json, "it is one JSON document")));
        }

        using var sent = new MemoryStream();
        await request.Body.CopyToAsync(sent, cancellation);
        return Read<T>(sent.ToArray());
    }

    public static (T? Document, Problem? Problem) Read<T>(ReadOnlyMemory<byte> document)
        where T : class => OrderDocument.Read<T>(document) switch
        {
            OrderReading<T>.Read read => (read.Document, null),
            OrderReading<T>.Faulty faulty => (null, Problem.Of(
                "bad-order", [.. faulty.Faults.Select(fault => new FieldError(fault.Field == "build" ? "body" : fault.Field, fault.Found, fault.Expected, fault.Mend))])),
            OrderReading<T>.NoJson none => (null, Problem.Of("bad-request", new FieldError("body", "what cannot be read", "one JSON document", none.Reason))),
            var other => throw new InvalidOperationException($"A document was read as {other.GetType().Name}, which no answer names."),
        };
}
