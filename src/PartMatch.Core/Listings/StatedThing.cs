namespace PartMatch.Core.Listings;

/// <summary>A thing as a page states it in JSON-LD, microdata or RDFa: types and properties of schema.org by their bare names.</summary>
/// <param name="id">Null where it has none; things of one id are one thing.</param>
internal sealed class StatedThing(StatementForm form, string? id)
{
    private readonly Dictionary<string, List<StatedValue>> _properties = new(StringComparer.Ordinal);

    public StatementForm Form { get; } = form;

    public string? Id { get; } = id;

    public HashSet<string> Types { get; } = new(StringComparer.Ordinal);

    public bool IsEmpty => Types.Count == 0 && _properties.Count == 0;

    public IEnumerable<KeyValuePair<string, List<StatedValue>>> Properties => _properties;

    public void Add(string property, StatedValue value)
    {
        if (!_properties.TryGetValue(property, out var values))
        {
            _properties.Add(property, values = []);
        }

        values.Add(value);
    }

    public bool Is(params ReadOnlySpan<string> types)
    {
        foreach (var type in types)
        {
            if (Types.Contains(type))
            {
                return true;
            }
        }

        return false;
    }

    public IReadOnlyList<StatedValue> All(string property) => _properties.GetValueOrDefault(property) ?? [];

    public IEnumerable<StatedThing> Things(string property) => All(property).Select(value => value.Thing).OfType<StatedThing>().Where(thing => !thing.IsEmpty);

    /// <summary>Texts, and what is only referred to by its id ("https://schema.org/InStock").</summary>
    public IEnumerable<string> Texts(string property) => All(property)
        .Select(value => value.Text ?? (value.Thing is { IsEmpty: true } thing ? thing.Id : null)).OfType<string>();

    public string? FindText(string property) => Texts(property).FirstOrDefault(text => text.Length > 0);
}

/// <summary>One value: a text or a thing.</summary>
/// <param name="Shown">Where <paramref name="Text"/> came from an attribute: what stands there for people; else null.</param>
internal sealed record StatedValue(string? Text, StatedThing? Thing, string? Shown = null);

/// <summary>Names of schema.org, however they are written.</summary>
internal static class SchemaName
{
    /// <summary>The bare name of an IRI or prefixed name of schema.org; null for one of another vocabulary.</summary>
    public static string? Find(string written)
    {
        var name = written.Trim();
        foreach (var start in (ReadOnlySpan<string>)["https://schema.org/", "http://schema.org/", "https://www.schema.org/", "http://www.schema.org/",
            "schema:"])
        {
            if (name.StartsWith(start, StringComparison.OrdinalIgnoreCase))
            {
                return name[start.Length..].Trim('/', '#');
            }
        }

        return name.Contains(':', StringComparison.Ordinal) || name.Contains('/', StringComparison.Ordinal) ? null : name;
    }

    /// <summary>Is it the vocabulary itself, as a context or a vocab names it?</summary>
    public static bool IsVocabulary(string written) =>
        written.Trim().TrimEnd('/', '#').ToLowerInvariant() is "http://schema.org" or "https://schema.org" or "http://www.schema.org" or "https://www.schema.org";
}
