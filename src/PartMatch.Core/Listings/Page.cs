namespace PartMatch.Core.Listings;

/// <summary>A page as its readers see it: elements and text, and nothing that could run or load anything.</summary>
internal abstract class PageNode
{
    private PageNode()
    {
    }

    internal sealed class Words(string text) : PageNode
    {
        public string Text { get; } = text;
    }

    /// <summary>An element. Names of elements and attributes are in lower case.</summary>
    internal sealed class Element(string name, IReadOnlyDictionary<string, string> attributes, Element? parent) : PageNode
    {
        public string Name { get; } = name;

        public Element? Parent { get; } = parent;

        /// <summary>In the order of the document; filled while the page is built, read-only afterwards.</summary>
        public List<PageNode> Children { get; } = [];

        public string? Find(string attribute) => attributes.GetValueOrDefault(attribute);

        public bool Has(string attribute) => attributes.ContainsKey(attribute);
    }
}

/// <summary>Walks over a page. Recursion is no danger: a page deeper than its bound never becomes one.</summary>
internal static class PageWalk
{
    public static IEnumerable<PageNode.Element> Elements(PageNode.Element from)
    {
        var open = new Stack<PageNode.Element>([from]);
        while (open.TryPop(out var element))
        {
            yield return element;
            for (var index = element.Children.Count - 1; index >= 0; index--)
            {
                if (element.Children[index] is PageNode.Element child)
                {
                    open.Push(child);
                }
            }
        }
    }

    /// <summary>All text inside, scripts included, as it stands; cut where it is longer than <paramref name="most"/> characters.</summary>
    public static string RawText(PageNode.Element element, int most = int.MaxValue)
    {
        var text = new System.Text.StringBuilder();
        foreach (var inside in Elements(element))
        {
            foreach (var words in inside.Children.OfType<PageNode.Words>())
            {
                text.Append(words.Text, 0, Math.Min(words.Text.Length, most - text.Length));
                if (text.Length >= most)
                {
                    return text.ToString();
                }
            }
        }

        return text.ToString();
    }

    /// <summary>Text with every run of white space as one space.</summary>
    public static string Tidy(string text) => string.Join(' ', text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
}
