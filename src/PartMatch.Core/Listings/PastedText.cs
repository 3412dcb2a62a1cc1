using System.Text.RegularExpressions;

namespace PartMatch.Core.Listings;

/// <summary>A listing pasted as words: a table parted by tabs or strokes, lines with a colon, and sentences.</summary>
internal static class PastedText
{
    // "P-26-" and "1147-E": mail and telephones break lines behind a dash. The first piece has a letter, so that "84-" is none.
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

        var currency = PriceCurrency.FindOfAll(raw);
        List<ListedProduct> rows = [];
        List<Term> terms = [];
        List<VisibleLine> lines = [];
        var answers = Array.Exists(raw, line => line.Length > 0 && !IsQuoted(line));
        var below = Array.FindIndex(raw, line => _earlier.IsMatch(line)) is > 0 and var found ? found : raw.Length;
        for (var at = 0; at < raw.Length;)
        {
            var grid = Table(raw, at);
            var products = grid.Count > 1 ? TableReader.Products(grid, currency) : [];
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
                    var quoted = at > below || (answers && IsQuoted(line));
                    lines.Add(quoted ? new(PassagePlace.Quoted, "quoted words", line, "", null) : new(PassagePlace.Text, "text", line, line, null));
                    terms.AddRange(grid.Count == 0 && !quoted ? DefinitionReader.Line(line) : []);
                }
            }
        }

        rows = rows.Count > 0 ? rows : [.. ItemLines.Products([.. lines.Where(line => line.Place == PassagePlace.Text).Select(line => line.Text)], currency)];
        return new ListingReading.Read(ListingAssembly.Make(null, null, [], rows, terms, lines, currency, null, warnings));
    }

    // What is answered to, in a letter (RFC 3676, 4.5). Words that are all so marked are a letter passed on.
    private static bool IsQuoted(string line) => line.StartsWith('>');

    // What mail programs put above the letter that is answered. A letter passed on is the letter itself. Trade usage, from memory.
    private static readonly Regex _earlier = new(
        @"^\s*-{2,}\s*(?:original message|ursprüngliche nachricht|message d['’]origine|ursprungligt meddelande|mensaje original)\s*-{2,}\s*$",
        RegexOptions.NonBacktracking | RegexOptions.IgnoreCase | RegexOptions.CultureInvariant);

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
