using System.Globalization;
using System.Text.Json;
using PartMatch.Storage;

namespace PartMatch.Web.Http;

/// <summary>Turns whatever went wrong, and every bare error status, into a problem document. The only place that catches everything.</summary>
internal sealed class Problems(RequestDelegate next, ILogger<Problems> logger)
{
    public async Task InvokeAsync(HttpContext context)
    {
        try
        {
            await next(context);
            if (IsBareError(context.Response))
            {
                await WriteAsync(context, OfStatus(context, context.Response.StatusCode));
            }
        }
        catch (OperationCanceledException) when (context.RequestAborted.IsCancellationRequested)
        {
            // Whoever asked has gone: there is nobody to answer.
        }
        catch (BadHttpRequestException refused) when (!context.Response.HasStarted)
        {
            await WriteAsync(context, refused.InnerException is JsonException unread ? OfBody(unread) : OfStatus(context, refused.StatusCode));
        }
        catch (DatabaseException passing) when (CodeOf(passing.Fault) is not null && !context.Response.HasStarted)
        {
            logger.LogError("{Method} {Route} failed: {Reason}", context.Request.Method, RequestLog.RouteOf(context), passing.Message);
            await WriteAsync(context, Problem.Of(CodeOf(passing.Fault)!)); // asked just now
        }
        catch (Exception fault) when (!context.Response.HasStarted)
        {
            logger.LogError(fault, "{Method} {Route} failed", context.Request.Method, RequestLog.RouteOf(context));
            await WriteAsync(context, Problem.Of("fault"));
        }
    }

    public static async Task WriteAsync(HttpContext context, Problem problem)
    {
        context.Response.StatusCode = problem.Status;
        context.Response.Headers.CacheControl = "no-store";
        await context.Response.WriteAsJsonAsync(problem, JsonRules.Options, Problem.ContentType, context.RequestAborted);
    }

    /// <summary>What the machine lacks for the moment, as the problem that says so; null where something is broken.</summary>
    private static string? CodeOf(DatabaseFault fault) => fault switch
    {
        DatabaseFault.Full => "disk-full",
        DatabaseFault.Busy => "base-busy",
        _ => null,
    };

    private static bool IsBareError(HttpResponse response) =>
        response is { HasStarted: false, StatusCode: >= 400, ContentType: null, ContentLength: null };

    private static Problem OfStatus(HttpContext context, int status)
    {
        var type = ProblemTypes.OfStatus(status);
        var problem = Problem.Of(type.Code, ErrorsOf(context, status)) with { Status = status };
        return type.Status == status ? problem : problem with { Detail = string.Create(CultureInfo.InvariantCulture, $"HTTP status {status}.") };
    }

    /// <summary>The member of a JSON body that cannot be read: <c>$.rows[2].key</c> is <c>rows[2].key</c>.</summary>
    private static Problem OfBody(JsonException unread)
    {
        var member = unread.Path?.TrimStart('$').TrimStart('.');
        var place = string.Create(CultureInfo.InvariantCulture, $"line {unread.LineNumber + 1}, byte {unread.BytePositionInLine + 1}");
        return Problem.Of("bad-request", new FieldError(
            string.IsNullOrEmpty(member) ? "body" : member, $"what cannot be read there ({place})", "JSON as the route's page describes it: every cell a text, no unknown member",
            "write numbers as texts, \"44.60\", and leave out what is not recorded"));
    }

    private static IReadOnlyList<FieldError> ErrorsOf(HttpContext context, int status) => status switch
    {
        404 => [new("path", context.Request.Path, "a page of this server, or a route of /api", "the routes are listed in api-docs/openapi.json")],
        405 => [new("method", context.Request.Method, context.Response.Headers.Allow.ToString())],
        415 => [new("Content-Type", context.Request.ContentType ?? "nothing", "the media type of the route's body",
            "a parts book is application/zip, a picture image/jpeg or image/png, a price list text/csv")],
        _ => [],
    };
}
