using System.Security.Cryptography;
using System.Text;

namespace PartMatch.Web.Host;

/// <summary>The settings of the server under <c>PartMatch:</c>, apart from the database (see <see cref="DatabasePath"/>).</summary>
internal sealed class ServerSettings
{
    /// <summary>Only its digest is kept, so that comparing takes the same time whatever was sent.</summary>
    private readonly byte[]? _tokenDigest;

    public ServerSettings(IConfiguration configuration)
    {
        var token = configuration["PartMatch:Token"]?.Trim();
        _tokenDigest = string.IsNullOrEmpty(token) ? null : Digest(token);
        Country = configuration["PartMatch:Country"]?.Trim() is { Length: > 0 } country ? country.ToUpperInvariant() : null;
        Hosts = [.. (configuration["PartMatch:Hosts"] ?? "").Split([';', ','], StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries)];
    }

    public bool HasToken => _tokenDigest is not null;

    /// <summary>Where the people of this base are (ISO 3166-1, two letters); null where nobody said.</summary>
    public string? Country { get; }

    /// <summary>The sentence that refuses to start, or null.</summary>
    public string? Refusal => Country is null or [>= 'A' and <= 'Z', >= 'A' and <= 'Z'] ? null
        : $"PartMatch:Country is '{Country}', expected the two letters of a country such as DE.";

    /// <summary>Names by which the server may be called besides the loopback names; <c>*.example.org</c> stands for every name under it.</summary>
    public IReadOnlyList<string> Hosts { get; }

    public bool IsToken(string sent) => _tokenDigest is not null && CryptographicOperations.FixedTimeEquals(_tokenDigest, Digest(sent));

    private static byte[] Digest(string token) => SHA256.HashData(Encoding.UTF8.GetBytes(token));
}
