namespace PartMatch.Core.Listings;

/// <summary>The cells of a table as people see them: a cell that spans several stands in each.</summary>
/// <remarks>Source: WHATWG, HTML, "Forming a table"; the bounds are ours.</remarks>
internal static class TableGrid
{
    // Wider or longer than any price list on a page; spans can ask for a thousand million cells.
    private const int MostColumns = 60;
    private const int MostRows = 5_000;

    public static IReadOnlyList<IReadOnlyList<string>> Of(PageNode.Element table) => [.. Rows(table, MostRows).Select(row => row.Cells)];

    /// <summary>Row by row, so that whoever asks can stop.</summary>
    public static IEnumerable<PageRow> Rows(PageNode.Element table, int most)
    {
        var down = new Dictionary<int, (int Rows, string Text)>();
        foreach (var (index, row) in Rows(table).Take(most).Index())
        {
            List<string> cells = [];
            PageNode.Element[] own = [.. row.Children.OfType<PageNode.Element>().Where(cell => cell.Name is "td" or "th" && !VisibleText.IsHidden(cell))];
            var isOne = own.Length == 1 && down.Count == 0;
            foreach (var cell in own)
            {
                Carry(cells, down);
                var text = Text(cell);
                var rows = Span(cell.Find("rowspan"), most);
                for (var column = Span(cell.Find("colspan"), MostColumns); column > 0 && cells.Count < MostColumns; column--)
                {
                    if (rows > 1)
                    {
                        down[cells.Count] = (rows - 1, text);
                    }

                    cells.Add(text);
                }
            }

            Carry(cells, down);
            if (cells.Count > 0)
            {
                yield return new(index + 1, cells, isOne, row.Parent?.Name == "thead" || Array.TrueForAll(own, cell => cell.Name == "th"),
                    row.Parent?.Name == "tfoot");
            }
        }
    }

    // Cells from above that reach down to where the next one would stand.
    private static void Carry(List<string> cells, Dictionary<int, (int Rows, string Text)> down)
    {
        while (down.Remove(cells.Count, out var above))
        {
            if (above.Rows > 1)
            {
                down[cells.Count] = (above.Rows - 1, above.Text);
            }

            cells.Add(above.Text);
        }
    }

    private static IEnumerable<PageNode.Element> Rows(PageNode.Element table) =>
        table.Children.OfType<PageNode.Element>().SelectMany(part => part.Name == "tr" ? [part]
            : part.Name is "thead" or "tbody" or "tfoot" ? part.Children.OfType<PageNode.Element>().Where(row => row.Name == "tr")
            : []);

    private static int Span(string? written, int most) => int.TryParse(written, out var span) && span > 1 ? Math.Min(span, most) : 1;

    /// <summary>What a cell or a term says; nothing where it holds a table or a list of terms itself, because then it lays out the page.</summary>
    public static string Text(PageNode.Element cell) =>
        PageWalk.Elements(cell).Any(inside => inside != cell && inside.Name is "table" or "dl") ? ""
        : PageWalk.Tidy(string.Join(' ', VisibleText.Read(cell, isLetter: false).Where(line => line.Place != PassagePlace.Picture).Select(line => line.Asked)));
}
