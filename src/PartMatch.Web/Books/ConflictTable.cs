using System.Net.Mime;
using Microsoft.Net.Http.Headers;

namespace PartMatch.Web.Books;

/// <summary>409: the cells that differ, as a CSV to fill in and send back. Nothing was stored.</summary>
public sealed class ConflictTable(string name, byte[] csv) : IResult, IStatusCodeHttpResult
{
    public int? StatusCode => StatusCodes.Status409Conflict;

    public async Task ExecuteAsync(HttpContext httpContext)
    {
        httpContext.Response.StatusCode = StatusCodes.Status409Conflict;
        httpContext.Response.ContentType = MediaTypeNames.Text.Csv + "; charset=utf-8";
        httpContext.Response.Headers[HeaderNames.ContentDisposition] = $"attachment; filename=\"{name}\"";
        await httpContext.Response.Body.WriteAsync(csv, httpContext.RequestAborted);
    }
}
