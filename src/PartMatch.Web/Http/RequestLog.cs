using System.Diagnostics;

namespace PartMatch.Web.Http;

/// <summary>One line for each request: method, route, status, time. No query, no path values, no address: what was asked is nobody's business.</summary>
internal sealed class RequestLog(RequestDelegate next, ILogger<RequestLog> logger)
{
    public async Task InvokeAsync(HttpContext context)
    {
        var started = Stopwatch.GetTimestamp();
        await next(context);
        logger.LogInformation(
            "{Method} {Route} answered {Status} in {Milliseconds} ms",
            KnownMethod(context.Request.Method), RouteOf(context), context.Response.StatusCode, (long)Stopwatch.GetElapsedTime(started).TotalMilliseconds);
    }

    /// <summary>The pattern of the route, never the path itself.</summary>
    public static string RouteOf(HttpContext context) => (context.GetEndpoint() as RouteEndpoint)?.RoutePattern.RawText ?? "a page, or a path without a route";

    // A method is free text of the client; only the known ones go into the log.
    private static string KnownMethod(string method) => HttpMethods.GetCanonicalizedValue(method) switch
    {
        "GET" or "HEAD" or "POST" or "PUT" or "DELETE" or "PATCH" or "OPTIONS" => method,
        _ => "another method",
    };
}
