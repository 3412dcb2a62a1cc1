using Microsoft.Net.Http.Headers;
using PartMatch.Web.Host;
using PartMatch.Web.Listings;

namespace PartMatch.Web.Http;

/// <summary>Stands before everything that is posted: no page of another site; and before what changes the base, the edit token where one is set.</summary>
internal sealed class WriteCheck(RequestDelegate next, ServerSettings settings)
{
    private const string Scheme = "Bearer ";

    public Task InvokeAsync(HttpContext context)
    {
        var method = context.Request.Method;
        if (HttpMethods.IsGet(method) || HttpMethods.IsHead(method) || HttpMethods.IsOptions(method))
        {
            return next(context);
        }

        if (FindForeign(context.Request) is { } foreign)
        {
            return Problems.WriteAsync(context, Problem.Of("foreign-origin", foreign));
        }

        return settings.HasToken && !IsQuestion(context.Request) && !HasToken(context.Request) ? AskForToken(context) : next(context);
    }

    /// <summary>Sent as a POST only because the question is a document; it stores nothing.</summary>
    private static bool IsQuestion(HttpRequest request) => request.Path.Equals(ListingEndpoints.Address, StringComparison.OrdinalIgnoreCase);

    /// <summary>The header that shows that a page of another site sent this; null when there is none, as with programs that are no browsers.</summary>
    private static FieldError? FindForeign(HttpRequest request)
    {
        var site = request.Headers["Sec-Fetch-Site"];
        if (site.Count > 0 && site is not ["same-origin"] and not ["none"])
        {
            return new FieldError("Sec-Fetch-Site", site.ToString(), "same-origin");
        }

        var origin = request.Headers.Origin;
        return origin.Count > 0 && !IsOwn(origin.ToString(), request.Host)
            ? new FieldError("Origin", origin.ToString(), $"{request.Scheme}://{request.Host}")
            : null;
    }

    // The scheme is left out: behind a proxy that ends TLS the page is https while this request is http.
    private static bool IsOwn(string origin, HostString host) =>
        Uri.TryCreate(origin, UriKind.Absolute, out var uri)
        && uri.Scheme is "http" or "https"
        && string.Equals(uri.IdnHost, host.Host.Trim('[', ']'), StringComparison.OrdinalIgnoreCase)
        && uri.Port == (host.Port ?? (uri.Scheme == "https" ? 443 : 80));

    private bool HasToken(HttpRequest request) =>
        request.Headers.Authorization is [{ } sent]
        && sent.StartsWith(Scheme, StringComparison.OrdinalIgnoreCase)
        && settings.IsToken(sent[Scheme.Length..].Trim());

    private static Task AskForToken(HttpContext context)
    {
        var sent = context.Request.Headers.Authorization.Count > 0;
        context.Response.Headers[HeaderNames.WWWAuthenticate] = sent ? "Bearer realm=\"PartMatch\", error=\"invalid_token\"" : "Bearer realm=\"PartMatch\"";
        return Problems.WriteAsync(context, Problem.Of(
            "token-needed", new FieldError("Authorization", sent ? "another token" : "nothing", "Bearer and the edit token", "the token is the setting PartMatch:Token")));
    }
}
