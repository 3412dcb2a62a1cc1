using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using PartMatch.Web.Host;

namespace PartMatch.Web.Http;

/// <summary>
/// Answers only under the server's own names. A page elsewhere that points its name at this address (DNS rebinding) is refused, because the
/// browser still sends that page's name.
/// </summary>
internal sealed class HostCheck(RequestDelegate next, ServerSettings settings, IServer server)
{
    public Task InvokeAsync(HttpContext context)
    {
        var host = context.Request.Host.Host;
        return IsOurs(host)
            ? next(context)
            : Problems.WriteAsync(context, Problem.Of(
                "host-not-allowed",
                new FieldError("Host", host.Length == 0 ? "nothing" : host, "localhost, an address the server listens on, or a name in PartMatch:Hosts", "add the name to the setting PartMatch:Hosts")));
    }

    private bool IsOurs(string host) =>
        host.Length > 0
        && (ListeningAddresses.IsLoopback(host)
            || HostString.MatchesAny(host, [.. settings.Hosts.Select(name => new Microsoft.Extensions.Primitives.StringSegment(name))])
            || IsListenedOn(host));

    private bool IsListenedOn(string host) =>
        server.Features.Get<IServerAddressesFeature>()?.Addresses.Any(address => string.Equals(ListeningAddresses.FindHost(address), host, StringComparison.OrdinalIgnoreCase)) is true;
}
