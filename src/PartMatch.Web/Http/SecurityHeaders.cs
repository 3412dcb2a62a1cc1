namespace PartMatch.Web.Http;

/// <summary>The headers that keep a browser from doing with our answers what they are not for.</summary>
internal sealed class SecurityHeaders(RequestDelegate next)
{
    // Own scripts, styles and data only; plots are drawn in the page, so images may also be data: URLs.
    private const string Policy =
        "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:; connect-src 'self'; font-src 'self'; manifest-src 'self'; "
        + "form-action 'self'; base-uri 'none'; frame-ancestors 'none'";

    public Task InvokeAsync(HttpContext context)
    {
        context.Response.OnStarting(Add, context.Response.Headers);
        return next(context);
    }

    private static Task Add(object state)
    {
        var headers = (IHeaderDictionary)state;
        if (headers.ContentSecurityPolicy.Count == 0)
        {
            headers.ContentSecurityPolicy = Policy;
        }

        headers.XContentTypeOptions = "nosniff";
        headers["Referrer-Policy"] = "no-referrer";
        headers["Cross-Origin-Opener-Policy"] = "same-origin";
        headers["Cross-Origin-Resource-Policy"] = "same-origin";
        headers["Permissions-Policy"] = "camera=(), geolocation=(), microphone=(), payment=(), usb=()";
        if (headers.CacheControl.Count == 0)
        {
            // Answers change with the base, pages with the server: ask again each time, by ETag where there is one.
            headers.CacheControl = "no-cache";
        }

        return Task.CompletedTask;
    }
}
