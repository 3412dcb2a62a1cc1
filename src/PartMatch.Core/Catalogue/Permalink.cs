using System.Globalization;
using System.Text;

namespace PartMatch.Core.Catalogue;

/// <summary>The address that asks a question again. Parameters that are not given are left out.</summary>
public sealed class Permalink(string path)
{
    private readonly StringBuilder _address = new(path);
    private char _joiner = '?';

    /// <summary>A path of given parts, each percent-encoded.</summary>
    public static Permalink To(string first, params IEnumerable<string> parts) =>
        new(first + string.Concat(parts.Select(part => "/" + Uri.EscapeDataString(part))));

    public Permalink With(string name, string? value)
    {
        if (value is not null)
        {
            // A colon, a comma and a slash mean nothing in a query (RFC 3986, 3.4) and are part of every part id, list and speed.
            _address.Append(_joiner).Append(name).Append('=')
                .Append(Uri.EscapeDataString(value).Replace("%3A", ":", StringComparison.Ordinal).Replace("%2C", ",", StringComparison.Ordinal)
                .Replace("%2F", "/", StringComparison.Ordinal));
            _joiner = '&';
        }

        return this;
    }

    public Permalink With(string name, long? value) => With(name, value?.ToString(CultureInfo.InvariantCulture));

    public Permalink WithEach(string name, IEnumerable<string> values) => values.Aggregate(this, (link, value) => link.With(name, value));

    public override string ToString() => _address.ToString();
}
