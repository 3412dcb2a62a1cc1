namespace PartMatch.Core.Listings;

/// <summary>Things stated in microdata.</summary>
/// <remarks>
/// Source: WHATWG, HTML, "Microdata" (items, itemref, values). One difference on purpose: <c>content</c> counts on any element, because schema.org's own
/// examples
/// write it on span.
/// </remarks>
internal sealed class MicrodataReader
{
    private readonly Dictionary<string, PageNode.Element> _byId = new(StringComparer.Ordinal);
    private readonly Dictionary<PageNode.Element, StatedThing> _things = [];
    private readonly Dictionary<PageNode.Element, StatedValue> _values = [];
    private readonly int _mostSteps;
    private readonly List<ListingWarning> _warnings;
    private int _steps;

    private MicrodataReader(PageNode.Element page, int mostSteps, List<ListingWarning> warnings)
    {
        (_mostSteps, _warnings) = (mostSteps, warnings);
        foreach (var element in PageWalk.Elements(page))
        {
            if (element.Find("id") is { Length: > 0 } id)
            {
                _byId.TryAdd(id, element);
            }
        }
    }

    /// <summary>Items that are no property of another, in the order of the document.</summary>
    public static IReadOnlyList<StatedThing> Read(PageNode.Element page, ListingBounds bounds, List<ListingWarning> warnings)
    {
        var items = PageWalk.Elements(page).Where(element => element.Has("itemscope")).ToList();
        if (items.Count == 0)
        {
            return [];
        }

        var reader = new MicrodataReader(page, 4 * bounds.MaxNodes, warnings);
        List<StatedThing> things = [.. items.Where(item => !item.Has("itemprop")).Select(reader.Thing).Where(thing => !thing.IsEmpty)];
        if (reader._steps > reader._mostSteps)
        {
            warnings.Add(StatedElement.Multiplied("microdata"));
        }

        return things;
    }

    private StatedThing Thing(PageNode.Element item)
    {
        if (_things.TryGetValue(item, out var known))
        {
            return known;
        }

        var thing = new StatedThing(StatementForm.Microdata, item.Find("itemid"));
        _things.Add(item, thing);
        thing.Types.UnionWith(Words(item.Find("itemtype")).Select(SchemaName.Find).OfType<string>());
        var roots = item.Children.OfType<PageNode.Element>()
            .Concat(Words(item.Find("itemref")).Distinct().Select(id => _byId.GetValueOrDefault(id)).OfType<PageNode.Element>());
        HashSet<PageNode.Element> crawled = [item];
        foreach (var root in roots)
        {
            Crawl(thing, root, crawled);
        }

        return thing;
    }

    // An element counts once for an item however often it is reached; items that refer to one another in a circle end at the one that is already being read.
    private void Crawl(StatedThing thing, PageNode.Element from, HashSet<PageNode.Element> crawled)
    {
        var open = new Stack<PageNode.Element>([from]);
        while (open.TryPop(out var element) && ++_steps <= _mostSteps)
        {
            if (!crawled.Add(element))
            {
                continue;
            }

            foreach (var name in Words(element.Find("itemprop")).Select(SchemaName.Find).OfType<string>())
            {
                thing.Add(name, element.Has("itemscope") ? new(null, Thing(element)) : Value(element, name));
            }

            if (!element.Has("itemscope"))
            {
                for (var index = element.Children.Count - 1; index >= 0; index--)
                {
                    if (element.Children[index] is PageNode.Element child)
                    {
                        open.Push(child);
                    }
                }
            }
        }
    }

    // An element that several items refer to is read once; its text counts as steps, because nesting repeats it.
    private StatedValue Value(PageNode.Element element, string name)
    {
        if (!_values.TryGetValue(element, out var value))
        {
            _values.Add(element, value = StatedElement.Value(element, $"microdata {name}", _warnings));
            _steps += (value.Shown ?? value.Text)?.Length / 8 ?? 0;
        }

        return value;
    }

    private static string[] Words(string? list) => list?.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries) ?? [];
}

/// <summary>The value that an element states.</summary>
internal static class StatedElement
{
    // Elements inside one another state the same text each: longer than any property that is read. Ours, no source.
    private const int MostCharacters = 4_000;

    /// <remarks>Source: WHATWG, HTML, "Microdata", "Values"; content first on any element, see <see cref="MicrodataReader"/>.</remarks>
    /// <param name="what">The property, for the warning where its text is cut.</param>
    public static StatedValue Value(PageNode.Element element, string what, List<ListingWarning> warnings)
    {
        var raw = PageWalk.RawText(element, MostCharacters + 1);
        var shown = PageWalk.Tidy(raw.Length > MostCharacters ? raw[..MostCharacters] : raw);
        var stated = element.Find("content") ?? element.Name switch
        {
            "a" or "area" or "link" => element.Find("href"),
            "audio" or "embed" or "iframe" or "img" or "source" or "track" or "video" => element.Find("src"),
            "object" => element.Find("data"),
            "data" or "meter" => element.Find("value"),
            "time" => element.Find("datetime"),
            _ => null,
        };
        var cut = new ListingWarning("value-cut",
            FormattableString.Invariant($"{what} is longer than {MostCharacters:N0} characters; what follows is read as words of the page alone"));
        if (stated is null && raw.Length > MostCharacters && !warnings.Contains(cut))
        {
            warnings.Add(cut);
        }

        return new(stated?.Trim() ?? shown, null, stated is null ? null : shown);
    }

    /// <summary>Elements inside one another, or referred to again and again, state more than is read.</summary>
    public static ListingWarning Multiplied(string form) => new("too-many-values", $"the page repeats its {form} without end; the rest of it is left out");
}
