using System.Text.RegularExpressions;

namespace PartMatch.Core.Listings;

/// <summary>A listing pasted as words: a table parted by tabs or strokes, lines with a colon, and sentences.</summary>
internal static class PastedText
{
    // "P-26-" and "1147-E": mail breaks lines behind a dash. The first piece has a dash or letter as well, so that "84-" is none.
    private static readonly Regex _brokenNumber = new(
        @"(\b[0-9]{0,6}[A-Z]{1,4}[0-9]{0,6}[-–‑/](?:[0-9A-Z]{1,8}[-–‑/]){0,4})[ \t]*(?:\r\n|\n|\r)[ \t]*([0-9A-Z]{1,12}(?:[-–‑/ ]|\b))",
        RegexOptions.NonBacktracking | RegexOptions.CultureInvariant);

    public static ListingReading Read(string text, ListingBounds bounds, List<ListingWarning> warnings)
    {
        var raw = _brokenNumber.Replace(text, "$1$2").Split(["\r\n", "\n", "\r", "\u2028", "\u2029"], StringSplitOptions.None);
        if (raw.Length > bounds.MaxNodes)
        {
            return new ListingReading.Unreadable($"{raw.Length} lines", $"at most {bounds.MaxNodes} lines",
                "paste only the part that describes what is for sale");
        }

        List<ListedProduct> rows = [];
        List<Term> terms = [];
        List<string> lines = [];
        for (var at = 0; at < raw.Length;)
        {
            var grid = Table(raw, at);
            var products = grid.Count > 1 ? TableReader.Products(grid, null) : [];
            if (products.Count > 0)
            {
                rows.AddRange(products.Take(StatedProducts.Most - rows.Count));
            }
            else if (grid.Count > 0)
            {
                terms.AddRange(DefinitionReader.Pairs(grid));
            }

            var until = at + Math.Max(1, grid.Count);
            for (; at < until; at++)
            {
                if (PageWalk.Tidy(raw[at]) is { Length: > 0 } line)
                {
                    lines.Add(line);
                    terms.AddRange(grid.Count == 0 ? DefinitionReader.Line(line) : []);
                }
            }
        }

        var visible = lines.Select(line => new VisibleLine(PassagePlace.Text, "text", line, line, null)).ToList();
        return new ListingReading.Read(ListingAssembly.Make(null, null, [], rows, terms, visible, null, warnings));
    }

    // Lines from here on with as many tabs, or as many strokes, as the first.
    private static List<IReadOnlyList<string>> Table(string[] lines, int from)
    {
        var mark = lines[from].Contains('\t', StringComparison.Ordinal) ? '\t' : '|';
        var columns = lines[from].Count(letter => letter == mark);
        List<IReadOnlyList<string>> grid = [];
        for (var at = from; columns > 0 && columns < 60 && at < lines.Length && lines[at].Count(letter => letter == mark) == columns; at++)
        {
            var line = mark == '|' ? lines[at].Trim().Trim('|') : lines[at];
            grid.Add(line.All(letter => letter is '-' or ':' or '|' or ' ') ? [] : [.. line.Split(mark).Select(PageWalk.Tidy)]);
        }

        return grid;
    }
}
