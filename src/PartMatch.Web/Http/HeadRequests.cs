namespace PartMatch.Web.Http;

/// <summary>Every route that answers GET also answers HEAD (RFC 9110, section 9.3.2): the same headers, without the body.</summary>
internal sealed class HeadRequests(RequestDelegate next)
{
    public async Task InvokeAsync(HttpContext context)
    {
        if (!HttpMethods.IsHead(context.Request.Method))
        {
            await next(context);
            return;
        }

        var body = context.Response.Body;
        context.Request.Method = HttpMethods.Get;
        context.Response.Body = Stream.Null;
        try
        {
            await next(context);
        }
        finally
        {
            context.Request.Method = HttpMethods.Head;
            context.Response.Body = body;
        }
    }
}
