using System.Net;

namespace PartMatch.Web.Host;

/// <summary>An address the server was told to listen on, and the setting that told it.</summary>
internal sealed record GivenAddress(string Setting, string Address);

/// <summary>Where the server listens, read from every setting that can say so, and whether that reaches beyond this machine.</summary>
internal static class ListeningAddresses
{
    public const string Default = "http://127.0.0.1:5080";

    private static readonly char[] _listSeparators = [';', ','];

    /// <summary>Every address the settings give, in the order the server will look at them; empty when none is given.</summary>
    public static IReadOnlyList<GivenAddress> Read(IConfiguration configuration)
    {
        // The server ignores the port settings once urls is set, so an inherited ASPNETCORE_HTTP_PORTS is no danger then.
        List<GivenAddress> given = [.. Listed(configuration, "urls", address => address)];
        if (given.Count == 0)
        {
            given.AddRange(Listed(configuration, "http_ports", port => $"http://*:{port}"));
            given.AddRange(Listed(configuration, "https_ports", port => $"https://*:{port}"));
        }

        given.AddRange(configuration.GetSection("Kestrel:Endpoints").GetChildren()
            .Select(endpoint => new GivenAddress($"{endpoint.Path}:Url", endpoint["Url"] ?? "")));
        return given;
    }

    /// <summary>The sentence that refuses to start, or null when these addresses may be used.</summary>
    public static string? Refusal(IEnumerable<GivenAddress> addresses, bool hasToken)
    {
        foreach (var (setting, address) in addresses)
        {
            if (FindHost(address) is not { } host)
            {
                return $"{setting} gives the address '{address}', which cannot be read; expected something like {Default}.";
            }

            if (!hasToken && !IsLoopback(host))
            {
                return $"{setting} gives the address '{address}', which other machines can reach, and no edit token is set; "
                    + $"set PartMatch:Token, or listen on {Default}.";
            }
        }

        return null;
    }

    /// <summary>The host part as the server will read it, or null when the address is no address.</summary>
    public static string? FindHost(string address)
    {
        try
        {
            // What the framework cannot divide into host and port it takes for one long name, and listens everywhere.
            var host = BindingAddress.Parse(address).Host;
            return host is "*" or "+" || IsUnixSocket(host) || Uri.CheckHostName(host) != UriHostNameType.Unknown ? host : null;
        }
        catch (FormatException)
        {
            return null;
        }
    }

    /// <summary>Can only this machine reach it? A name other than localhost cannot be told from a wildcard: the server binds it to every interface.</summary>
    public static bool IsLoopback(string host) =>
        host.Equals("localhost", StringComparison.OrdinalIgnoreCase)
        || IsUnixSocket(host)
        || (IPAddress.TryParse(host.Trim('[', ']'), out var ip) && IPAddress.IsLoopback(ip));

    private static bool IsUnixSocket(string host) => host.StartsWith("unix:/", StringComparison.OrdinalIgnoreCase);

    private static IEnumerable<GivenAddress> Listed(IConfiguration configuration, string setting, Func<string, string> toAddress) =>
        (configuration[setting] ?? "")
            .Split(setting == "urls" ? [';'] : _listSeparators, StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries)
            .Select(value => new GivenAddress(setting, toAddress(value)));
}
