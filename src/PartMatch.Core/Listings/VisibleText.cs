using System.Text;

namespace PartMatch.Core.Listings;

/// <summary>A line that a reader of the page sees.</summary>
/// <param name="Asked">The text without what is crossed out: an old price is no price.</param>
/// <param name="Table">The table it stands in; null outside any.</param>
internal sealed record VisibleLine(PassagePlace Place, string Where, string Text, string Asked, PageNode.Element? Table);

/// <summary>What is to be seen on a page, line by line in the order of the document, and the words that belong to its pictures.</summary>
internal sealed class VisibleText
{
    private static readonly HashSet<string> _never =
        ["script", "style", "template", "noscript", "head", "iframe", "object", "svg", "math", "canvas", "audio", "video", "datalist", "input", "textarea",
            "select"];

    private static readonly HashSet<string> _blocks =
    [
        "address", "article", "aside", "blockquote", "body", "br", "caption", "center", "dd", "details", "dialog", "div", "dl", "dt", "fieldset",
            "figcaption", "figure", "footer", "form",
        "h1", "h2", "h3", "h4", "h5", "h6", "header", "hr", "html", "legend", "li", "main", "nav", "ol", "option", "p", "pre", "section", "summary", "table",
            "tbody", "td", "tfoot", "th",
        "thead", "tr", "ul",
    ];

    private readonly List<VisibleLine> _lines = [];
    private readonly StringBuilder _text = new();
    private readonly StringBuilder _asked = new();
    private readonly bool _isLetter;
    private bool _seam;

    private VisibleText(bool isLetter) => _isLetter = isLetter;

    /// <param name="isLetter">Then what is set in is quoted; on a page it is only set in.</param>
    public static IReadOnlyList<VisibleLine> Read(PageNode.Element page, bool isLetter)
    {
        var reader = new VisibleText(isLetter);
        reader.Walk(page, new(PassagePlace.Text, "text", null, false));
        reader.Break(new(PassagePlace.Text, "text", null, false));
        return reader._lines;
    }

    public static bool IsHidden(PageNode.Element element) =>
        _never.Contains(element.Name) || element.Has("hidden")
        || (element.Find("style") is { } style && style.Replace(" ", "", StringComparison.Ordinal) is var bare
            && (bare.Contains("display:none", StringComparison.OrdinalIgnoreCase) || bare.Contains("visibility:hidden", StringComparison.OrdinalIgnoreCase)));

    private void Walk(PageNode.Element element, Place outer)
    {
        if (IsHidden(element))
        {
            return;
        }

        var place = outer with { Struck = outer.Struck || element.Name is "del" or "s" or "strike" };
        place = element.Name switch
        {
            "h1" or "h2" or "h3" or "h4" or "h5" or "h6" => place with { Is = PassagePlace.Heading, Where = "heading" },
            "dd" => place with { Is = PassagePlace.Definition, Where = "definition" },
            "figcaption" => place with { Is = PassagePlace.Picture, Where = "caption of a picture" },
            "blockquote" when _isLetter => place with { Is = PassagePlace.Quoted, Where = "quoted words", Struck = true },
            "table" => place with { Table = element },
            "td" or "th" => place with { Is = PassagePlace.TableCell, Where = "table" },
            _ => place,
        };
        var block = _blocks.Contains(element.Name);
        if (block)
        {
            Break(outer);
        }

        foreach (var child in element.Children)
        {
            if (child is PageNode.Element inner)
            {
                PartFromNext(inner.Name);
                Walk(inner, place);
                PartFromNext(inner.Name);
            }
            else if (child is PageNode.Words words && words.Text.Length > 0)
            {
                Part(words.Text[0]);
                _text.Append(words.Text);
                _asked.Append(place.Struck ? " " : words.Text);
            }
        }

        if (element.Name is "img" or "area")
        {
            AddPicture(element, place);
        }

        if (block)
        {
            Break(place);
        }
    }

    // Two pieces in line that only a style sheet parts ("<b>Part no</b>P-26"): a word ends where a small letter meets a capital or a figure. Ours, no source.
    private void PartFromNext(string name) => _seam |= name is not ("sub" or "sup");

    private void Part(char next)
    {
        if (_seam && _text.Length > 0 && char.IsLower(_text[^1]) && (char.IsUpper(next) || char.IsAsciiDigit(next)))
        {
            _text.Append(' ');
            _asked.Append(' ');
        }

        _seam = false;
    }

    private void AddPicture(PageNode.Element picture, Place place)
    {
        if (picture.Find("alt") is { } alt && PageWalk.Tidy(alt) is { Length: > 0 } words)
        {
            _lines.Add(new(PassagePlace.Picture, "alternative text of a picture", words, "", place.Table));
        }

        // The file's name is often the seller's own words; the address before it and what comes after a question mark is not.
        if (picture.Find("src") is { } source && !source.StartsWith("data:", StringComparison.OrdinalIgnoreCase))
        {
            var file = Uri.UnescapeDataString(source.Split('?', '#')[0].Split('/', '\\')[^1]);
            if (PageWalk.Tidy(ListingBytes.WholeCharacters(file)) is { Length: > 0 } name)
            {
                _lines.Add(new(PassagePlace.Picture, "file name of a picture", name, "", place.Table));
            }
        }
    }

    private void Break(Place place)
    {
        if (_text.Length > 0 && PageWalk.Tidy(_text.ToString()) is { Length: > 0 } text)
        {
            _lines.Add(new(place.Is, place.Where, text, PageWalk.Tidy(_asked.ToString()), place.Table));
        }

        _text.Clear();
        _asked.Clear();
    }

    private sealed record Place(PassagePlace Is, string Where, PageNode.Element? Table, bool Struck);
}
