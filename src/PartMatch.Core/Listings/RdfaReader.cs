namespace PartMatch.Core.Listings;

/// <summary>Things stated in RDFa Lite: vocab, typeof, property, resource and prefix.</summary>
/// <remarks>Source: W3C, RDFa Lite 1.1.</remarks>
internal sealed class RdfaReader
{
    // Of all values: elements inside one another state the same text each. Ours, no source.
    private const int MostCharacters = 8 << 20;

    private readonly List<ListingWarning> _warnings;
    private readonly List<StatedThing> _roots = [];
    private readonly Dictionary<string, StatedThing> _byResource = new(StringComparer.Ordinal);
    private int _characters;

    private RdfaReader(List<ListingWarning> warnings) => _warnings = warnings;

    /// <summary>Things that are no property of another, in the order of the document.</summary>
    public static IReadOnlyList<StatedThing> Read(PageNode.Element page, List<ListingWarning> warnings)
    {
        if (!PageWalk.Elements(page).Any(element => element.Has("typeof")))
        {
            return [];
        }

        var reader = new RdfaReader(warnings);
        reader.Walk(page, new(null, true, new(StringComparer.OrdinalIgnoreCase) { ["schema"] = "https://schema.org/" }));
        if (reader._characters >= MostCharacters)
        {
            warnings.Add(StatedElement.Multiplied("RDFa"));
        }

        return [.. reader._roots.Distinct().Where(thing => !thing.IsEmpty)];
    }

    private void Walk(PageNode.Element element, Scope outer)
    {
        var scope = outer with
        {
            IsSchema = element.Find("vocab") is { } vocab ? SchemaName.IsVocabulary(vocab) : outer.IsSchema,
            Prefixes = element.Find("prefix") is { } prefix ? Prefixes(prefix, outer.Prefixes) : outer.Prefixes,
        };
        var types = Names(element.Find("typeof"), scope);
        var properties = Names(element.Find("property"), scope);
        if (element.Has("typeof"))
        {
            var thing = Thing(element.Find("resource") ?? element.Find("about"));
            thing.Types.UnionWith(types);
            if (properties.Count > 0 && scope.Thing is { } owner)
            {
                properties.ForEach(name => owner.Add(name, new(null, thing)));
            }
            else
            {
                _roots.Add(thing);
            }

            scope = scope with { Thing = thing };
        }
        else if (properties.Count > 0 && scope.Thing is { } owner && _characters < MostCharacters)
        {
            var value = element.Find("content") is null && element.Find("resource") is { } resource ? new StatedValue(resource, Thing(resource))
                : StatedElement.Value(element, $"RDFa {properties[0]}", _warnings);
            properties.ForEach(name => owner.Add(name, value));
            _characters += (value.Shown ?? value.Text)?.Length ?? 0;
        }

        foreach (var child in element.Children.OfType<PageNode.Element>())
        {
            Walk(child, scope);
        }
    }

    private StatedThing Thing(string? resource)
    {
        if (resource is null)
        {
            return new(StatementForm.Rdfa, null);
        }

        if (!_byResource.TryGetValue(resource, out var thing))
        {
            _byResource.Add(resource, thing = new(StatementForm.Rdfa, resource));
        }

        return thing;
    }

    private static List<string> Names(string? list, Scope scope) =>
        [.. Split(list).Select(name => Find(name, scope)).OfType<string>()];

    private static string? Find(string name, Scope scope)
    {
        var colon = name.IndexOf(':', StringComparison.Ordinal);
        return colon < 0 ? scope.IsSchema ? SchemaName.Find(name) : null
            : scope.Prefixes.TryGetValue(name[..colon], out var iri) ? SchemaName.Find(iri + name[(colon + 1)..])
            : SchemaName.Find(name);
    }

    // "schema: https://schema.org/ gr: http://…"
    private static Dictionary<string, string> Prefixes(string list, Dictionary<string, string> outer)
    {
        var prefixes = new Dictionary<string, string>(outer, StringComparer.OrdinalIgnoreCase);
        foreach (var pair in Split(list).Chunk(2).Where(pair => pair.Length == 2))
        {
            prefixes[pair[0].TrimEnd(':')] = pair[1];
        }

        return prefixes;
    }

    private static string[] Split(string? list) => list?.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries) ?? [];

    /// <param name="Thing">What properties belong to; null outside any thing.</param>
    private sealed record Scope(StatedThing? Thing, bool IsSchema, Dictionary<string, string> Prefixes);
}
