using AngleSharp.Dom;
using AngleSharp.Html.Dom;
using AngleSharp.Html.Parser;
using AngleSharp.Html.Parser.Tokens.Struct;

namespace PartMatch.Core.Listings;

/// <summary>Reads what a seller wrote. Nothing of it is run, loaded or followed; the same bytes always give the same reading.</summary>
/// <remarks>
/// The only file that names AngleSharp. Parsing costs the square of the nesting, and misnested formatting multiplies elements, so both are counted
/// while the tree grows, where no way of writing can deceive the count, and parsing stops at the bound.
/// </remarks>
public static class ListingReader
{
    // What any reader asks for; everything else is dropped before it takes room.
    private static readonly HashSet<string> _attributes =
    [
        "id", "itemscope", "itemtype", "itemprop", "itemref", "itemid", "vocab", "typeof", "property", "resource", "about", "prefix", "rel", "content",
            "href", "src",
        "data", "datetime", "value", "alt", "title", "type", "name", "lang", "hidden", "style", "colspan", "rowspan", "role", "http-equiv",
    ];

    /// <summary>What the document says, or why it cannot be read. Never throws, whatever the bytes are.</summary>
    public static ListingReading Read(ListingDocument document, ListingBounds bounds)
    {
        List<ListingWarning> warnings = [];
        var (page, text, isLetter, savedFrom, refused) = Open(document, bounds, warnings);
        return refused ?? (page is null ? PastedText.Read(text, bounds, warnings) : PageListing.Read(page, bounds, warnings, isLetter, savedFrom));
    }

    /// <summary>The tables of a page and nothing else of it, or why it cannot be read. Never throws, whatever the bytes are.</summary>
    public static TablesReading ReadTables(ListingDocument document, ListingBounds bounds)
    {
        List<ListingWarning> warnings = [];
        var (page, _, _, _, refused) = Open(document, bounds, warnings);
        return refused is not null ? new TablesReading.Unreadable(refused.Found, refused.Expected)
            : page is null ? new TablesReading.Read([], warnings)
            : PageTables.Read(page, warnings);
    }

    /// <summary>The page, or the text where it is none, or why neither can be had.</summary>
    private static (PageNode.Element? Page, string Text, bool IsLetter, string? SavedFrom, ListingReading.Unreadable? Refused) Open(
        ListingDocument document, ListingBounds bounds, List<ListingWarning> warnings)
    {
        const string Paste = "select the text on the page and paste it";
        var bytes = document.Bytes;
        if (bytes.Length > bounds.MaxBytes)
        {
            return (null, "", false, null, new($"{Size(bytes.Length)}", $"at most {Size(bounds.MaxBytes)}", Paste));
        }

        var format = document.Format;
        var charset = document.Charset;
        var isLetter = false;
        string? savedFrom = null;
        if (format == ListingFormat.Mhtml)
        {
            if (SavedPage.FindPage(bytes) is not { } page)
            {
                return (null, "", false, null, new("no page inside the saved file", "a web page saved as one file (.mhtml)", $"save it as .html, or {Paste}"));
            }

            (bytes, charset, format, isLetter, savedFrom) = (page.Bytes, page.Charset, ListingFormat.Html, page.IsLetter, page.SavedFrom);
        }

        if (ListingBytes.FindNotText(bytes.Span) is { } other)
        {
            return (null, "", false, null, new(other, "text, or a saved web page", Paste));
        }

        var text = ListingBytes.Decode(bytes.Span, charset, format == ListingFormat.Html, warnings);
        if (string.IsNullOrWhiteSpace(text))
        {
            return (null, "", false, null, new("nothing but white space", "a listing", Paste));
        }

        if (format == ListingFormat.Text)
        {
            return (null, text, false, null, null);
        }

        return Parse(text, bounds, out var found) is { } root
            ? (root, text, isLetter, savedFrom, null)
            : (null, "", false, null, new(found, $"at most {bounds.MaxNodes:N0} elements, attributes and pieces of text, {bounds.MaxDepth} deep", Paste));
    }

    private static PageNode.Element? Parse(string text, ListingBounds bounds, out string found)
    {
        var growth = new Growth(bounds);
        var options = new HtmlParserOptions
        {
            IsScripting = false,
            DisableElementPositionTracking = true,
            SkipComments = true,
            // The parser's own limit would move elements about instead of stopping.
            MaximumDepth = int.MaxValue,
            OnCreated = (element, _) => growth.Created(element),
            ShouldEmitAttribute = growth.Keeps,
        };
        found = "";
        // Tags that build nothing (comments, stray ends) cost time as well.
        if (text.AsSpan().Count('<') > 4 * bounds.MaxNodes)
        {
            found = $"more than {4 * bounds.MaxNodes:N0} tags";
            return null;
        }

        try
        {
            using var parsed = new HtmlParser(options).ParseDocument(text);
            growth.Check(parsed);
            return Convert(parsed.DocumentElement, growth, bounds.MaxDepth);
        }
        catch (OverBoundException over)
        {
            found = over.Message;
            return null;
        }
    }

    /// <summary>Depth first with a stack of our own.</summary>
    private static PageNode.Element Convert(IElement from, Growth growth, int maxDepth)
    {
        var root = Bare(from, null);
        var open = new Stack<(INode From, PageNode.Element To, int Depth)>([(from, root, 1)]);
        while (open.TryPop(out var next))
        {
            if (next.Depth > maxDepth)
            {
                throw OverBoundException.Deep(maxDepth);
            }

            foreach (var child in next.From.ChildNodes)
            {
                if (child is IText words)
                {
                    growth.Count();
                    next.To.Children.Add(new PageNode.Words(words.Data));
                }
                else if (child is IElement element)
                {
                    var bare = Bare(element, next.To);
                    next.To.Children.Add(bare);
                    open.Push((element, bare, next.Depth + 1));
                }
            }
        }

        return root;
    }

    private static PageNode.Element Bare(IElement element, PageNode.Element? parent) =>
        new(element.LocalName.ToLowerInvariant(), element.Attributes.Length == 0 ? _none : Attributes(element), parent);

    private static readonly Dictionary<string, string> _none = [];

    private static Dictionary<string, string> Attributes(IElement element)
    {
        var attributes = new Dictionary<string, string>(element.Attributes.Length, StringComparer.Ordinal);
        foreach (var attribute in element.Attributes)
        {
            attributes.TryAdd(attribute.LocalName, attribute.Value);
        }

        return attributes;
    }

    private static string Size(int bytes) => bytes < 1 << 20 ? FormattableString.Invariant($"{bytes:N0} bytes")
        : FormattableString.Invariant($"{bytes / 1048576.0:0.#} MB");

    /// <summary>Counts a tree while it grows.</summary>
    private sealed class Growth(ListingBounds bounds)
    {
        private static readonly HashSet<string>.AlternateLookup<ReadOnlySpan<char>> _kept = _attributes.GetAlternateLookup<ReadOnlySpan<char>>();

        private readonly HashSet<IElement> _seen = new(ReferenceEqualityComparer.Instance);
        private readonly IElement?[] _path = new IElement?[bounds.MaxDepth + 1];
        private int _count;

        public void Count()
        {
            if (++_count > bounds.MaxNodes)
            {
                throw new OverBoundException(FormattableString.Invariant($"more than {bounds.MaxNodes:N0} elements, attributes and pieces of text"));
            }
        }

        public bool Keeps(ref StructHtmlToken tag, ReadOnlyMemory<char> name)
        {
            Count();
            // An embedded page must not even be prepared.
            return _kept.Contains(name.Span) && !tag.Name.Memory.Span.SequenceEqual("iframe");
        }

        public void Created(IElement element)
        {
            See(element);
            Check(element.Owner);
        }

        /// <summary>
        /// Follows the way to the newest place of the tree. Elements that the parser copied to repair misnesting are not reported to anybody; here they show.
        /// </summary>
        public void Check(IDocument? document)
        {
            var depth = 0;
            for (INode? node = document?.DocumentElement; node is not null; node = node is IHtmlTemplateElement template ? template.Content.LastChild
                : node.LastChild)
            {
                if (node is not IElement element)
                {
                    continue;
                }

                if (depth == bounds.MaxDepth)
                {
                    throw OverBoundException.Deep(bounds.MaxDepth);
                }

                if (!ReferenceEquals(_path[depth], element))
                {
                    _path[depth] = element;
                    See(element);
                }

                depth++;
            }

            _path[depth] = null;
        }

        private void See(IElement element)
        {
            if (_seen.Add(element))
            {
                Count();
            }
        }
    }

    /// <summary>The only way to stop the parser; never leaves this file.</summary>
#pragma warning disable CA1032, CA1064 // thrown and caught here
    private sealed class OverBoundException(string found) : Exception(found)
    {
        public static OverBoundException Deep(int maxDepth) => new(FormattableString.Invariant($"elements more than {maxDepth} deep"));
    }
#pragma warning restore CA1032, CA1064
}
