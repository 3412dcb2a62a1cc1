using System.Net;
using System.Text.Json;

namespace PartMatch.Core.Listings;

/// <summary>Blocks of JSON-LD, as far as a shop's page uses it: no remote context is ever asked for.</summary>
/// <remarks>Source: W3C, JSON-LD 1.1; https://schema.org/docs/jsonldcontext.json is taken as known.</remarks>
internal sealed class JsonLd(ListingBounds bounds, List<ListingWarning> warnings)
{
    private readonly Dictionary<string, StatedThing> _byId = new(StringComparer.Ordinal);
    private readonly List<StatedThing> _roots = [];
    private int _values;

    /// <summary>Things that stand by themselves, in the order of the document. A reference to a thing of any block is that thing.</summary>
    public IReadOnlyList<StatedThing> Roots => [.. _roots.Distinct().Where(thing => !thing.IsEmpty)];

    public void Read(string script)
    {
        if (JsonLdText.Parse(script, bounds.MaxJsonDepth, warnings) is not { } block)
        {
            return;
        }

        using (block)
        {
            ReadRoot(block.RootElement, JsonLdContext.None);
        }
    }

    private void ReadRoot(JsonElement json, JsonLdContext context)
    {
        if (json.ValueKind == JsonValueKind.Array)
        {
            foreach (var item in json.EnumerateArray())
            {
                ReadRoot(item, context);
            }
        }
        else if (json.ValueKind == JsonValueKind.Object)
        {
            // Takes the members of @graph in as roots itself.
            if (ReadThing(json, context) is { } thing)
            {
                _roots.Add(thing);
            }
        }
    }

    private StatedThing? ReadThing(JsonElement json, JsonLdContext outer)
    {
        if (!Counts())
        {
            return null;
        }

        var context = outer;
        string? id = null;
        foreach (var property in json.EnumerateObject())
        {
            if (property.NameEquals("@context"))
            {
                context = context.With(property.Value);
            }
        }

        foreach (var property in json.EnumerateObject())
        {
            id = context.Keyword(property.Name) == "@id" && property.Value.ValueKind == JsonValueKind.String ? property.Value.GetString() : id;
        }

        var thing = id is null ? new(StatementForm.JsonLd, null) : Known(id);
        HashSet<string> names = [];
        foreach (var property in json.EnumerateObject())
        {
            if (!names.Add(property.Name))
            {
                Once("json-ld-duplicate-key", $"the JSON-LD says {Short(property.Name)} twice of one thing; both are read");
            }

            ReadProperty(thing, property, context);
        }

        return thing;
    }

    private void ReadProperty(StatedThing thing, JsonProperty property, JsonLdContext context)
    {
        switch (context.Keyword(property.Name))
        {
            case "@type":
                thing.Types.UnionWith(Strings(property.Value).Select(context.Find).OfType<string>());
                break;
            case "@graph" or "@included":
                ReadRoot(property.Value, context);
                break;
            case { } keyword when keyword.StartsWith('@'):
                break;
            case var name when context.Find(name) is { } term:
                foreach (var value in Values(property.Value, context))
                {
                    thing.Add(term, value);
                }

                break;
        }
    }

    private IEnumerable<StatedValue> Values(JsonElement json, JsonLdContext context)
    {
        if (!Counts())
        {
            return [];
        }

        return json.ValueKind switch
        {
            JsonValueKind.Array => json.EnumerateArray().SelectMany(item => Values(item, context)),
            JsonValueKind.Object when json.TryGetProperty("@value", out var value) => Values(value, context),
            JsonValueKind.Object when json.TryGetProperty("@list", out var list) || json.TryGetProperty("@set", out list) => Values(list, context),
            JsonValueKind.Object => ReadThing(json, context) is { } thing ? [new(null, thing)] : [],
            JsonValueKind.String => [new(Plain(json.GetString()!), null)], // a string is never null
            JsonValueKind.Number => [new(json.GetRawText(), null)],
            JsonValueKind.True or JsonValueKind.False => [new(json.GetRawText(), null)],
            _ => [],
        };
    }

    private bool Counts()
    {
        if (++_values <= bounds.MaxNodes)
        {
            return true;
        }

        Once("json-ld-too-much", $"more than {bounds.MaxNodes} values in JSON-LD; the rest is left out");
        return false;
    }

    private StatedThing Known(string id)
    {
        if (!_byId.TryGetValue(id, out var thing))
        {
            _byId.Add(id, thing = new(StatementForm.JsonLd, id));
        }

        return thing;
    }

    private void Once(string code, string text)
    {
        if (!warnings.Exists(warning => warning.Code == code))
        {
            warnings.Add(new(code, text));
        }
    }

    private static IEnumerable<string> Strings(JsonElement json) =>
        json.ValueKind == JsonValueKind.String ? [json.GetString()!] // a string is never null
        : json.ValueKind == JsonValueKind.Array ? json.EnumerateArray().Where(item => item.ValueKind == JsonValueKind.String).Select(item => item.GetString()!)
        : [];

    // Entities mean nothing in JSON, but shops put them there.
    private static string Plain(string text) =>
        ListingBytes.WholeCharacters((text.Contains('&', StringComparison.Ordinal) ? WebUtility.HtmlDecode(text) : text)).Trim();

    private static string Short(string text) => text.Length > 40 ? text[..40] : text;
}
