namespace PartMatch.Core.Listings;

/// <summary>A term and what is said of it.</summary>
internal sealed record Term(Label Label, string Written, string Value);

/// <summary>Definition lists, tables of two columns without heads, and lines such as "Part number: …".</summary>
internal static class DefinitionReader
{
    public static IEnumerable<Term> Lists(PageNode.Element page)
    {
        foreach (var list in PageWalk.Elements(page).Where(element => element.Name == "dl"))
        {
            string? term = null;
            foreach (var part in Parts(list))
            {
                var text = TableGrid.Text(part);
                if (part.Name == "dt")
                {
                    term = text;
                }
                else if (term is not null && Of(term, text) is { } found)
                {
                    yield return found;
                }
            }
        }
    }

    public static IEnumerable<Term> Pairs(IReadOnlyList<IReadOnlyList<string>> grid) =>
        grid.Where(row => row.Count == 2 && row[0] != row[1]).Select(row => Of(row[0], row[1])).OfType<Term>();

    /// <summary>"Part number: X", and several of them parted by a stroke or a dot in the middle.</summary>
    public static IEnumerable<Term> Line(string line)
    {
        foreach (var part in line.Split([" | ", " · ", " • ", "; ", " / "], StringSplitOptions.None).Take(20))
        {
            var colon = part.IndexOf(':', StringComparison.Ordinal);
            if (colon is > 0 and < 60 && Of(part[..colon].TrimStart('-', '*', '•', '·', ' '), part[(colon + 1)..]) is { } found)
            {
                yield return found;
            }
        }
    }

    private static Term? Of(string term, string value) =>
        LabelWords.Find(term) is { } label && PageWalk.Tidy(value) is { Length: > 0 } said ? new(label, term.Trim(' ', ':', '\u00A0'), said) : null;

    // Groups of a list may stand in div.
    private static IEnumerable<PageNode.Element> Parts(PageNode.Element list) =>
        list.Children.OfType<PageNode.Element>().SelectMany(part => part.Name == "div" ? part.Children.OfType<PageNode.Element>() : [part])
            .Where(part => part.Name is "dt" or "dd");
}
