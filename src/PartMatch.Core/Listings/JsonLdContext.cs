using System.Text.Json;

namespace PartMatch.Core.Listings;

/// <summary>What the names of a JSON-LD block mean: vocabulary, prefixes and terms that its context declares on the spot.</summary>
internal sealed class JsonLdContext
{
    // More names than any shop declares; each object may bring its own context, and each is a copy. Ours, no source.
    private const int MostNames = 200;

    private readonly Dictionary<string, string> _names;
    private readonly bool _other;

    private JsonLdContext(Dictionary<string, string> names, bool other) => (_names, _other) = (names, other);

    /// <summary>A block without a context is read as schema.org, because that is what its author meant.</summary>
    public static JsonLdContext None { get; } = new([], false);

    /// <summary>This context with another laid over it.</summary>
    public JsonLdContext With(JsonElement json)
    {
        switch (json.ValueKind)
        {
            case JsonValueKind.Array:
                return json.EnumerateArray().Aggregate(this, (context, item) => item.ValueKind == JsonValueKind.Array ? context : context.With(item));
            case JsonValueKind.String:
                return SchemaName.IsVocabulary(json.GetString()!) ? new(_names, false) : this; // a string is never null
            case JsonValueKind.Object:
                var names = new Dictionary<string, string>(_names, StringComparer.Ordinal);
                var other = _other;
                foreach (var entry in json.EnumerateObject())
                {
                    var meaning = entry.Value.ValueKind == JsonValueKind.String ? entry.Value.GetString()
                        : entry.Value.ValueKind == JsonValueKind.Object && entry.Value.TryGetProperty("@id", out var id)
                        && id.ValueKind == JsonValueKind.String ? id.GetString()
                        : null;
                    if (entry.NameEquals("@vocab"))
                    {
                        other = meaning is not null && !SchemaName.IsVocabulary(meaning);
                    }
                    else if (meaning is not null && names.Count < MostNames)
                    {
                        names[entry.Name] = meaning;
                    }
                }

                return new(names, other);
            default:
                return this;
        }
    }

    /// <summary>The keyword that a name stands for, or the name itself.</summary>
    public string Keyword(string name) =>
        _names.TryGetValue(name, out var keyword) && keyword.StartsWith('@') ? keyword : name;

    /// <summary>The property or type of schema.org; null for one of another vocabulary.</summary>
    public string? Find(string name)
    {
        if (_names.TryGetValue(name, out var meaning))
        {
            return SchemaName.Find(Prefixed(meaning));
        }

        return name.Contains(':', StringComparison.Ordinal) ? SchemaName.Find(Prefixed(name)) : _other ? null : SchemaName.Find(name);
    }

    private string Prefixed(string name)
    {
        var colon = name.IndexOf(':', StringComparison.Ordinal);
        return colon > 0 && _names.TryGetValue(name[..colon], out var iri) ? iri + name[(colon + 1)..] : name;
    }
}
