using PartMatch.Core.Listings;

namespace PartMatch.Core.Buying;

/// <summary>Finds the price list among the tables of a web page.</summary>
public static class PriceListPage
{
    private const string AsCsv = "copy the table into a spreadsheet and save it as CSV";

    /// <summary>As large as a list may be; a row of it is a dozen elements, attributes and texts. Ours, no source.</summary>
    public static ListingBounds Bounds { get; } = new(MaxBytes: 8 << 20, MaxNodes: 800_000);

    /// <param name="isKnown">Is it a number of the base?</param>
    /// <param name="chosen">Which table, from 1; null: the widest with a column of numbers, one that has prices as well before others.</param>
    public static PriceListReading Of(ListingDocument document, Func<string, bool> isKnown, int? chosen)
    {
        switch (ListingReader.ReadTables(document, Bounds))
        {
            case TablesReading.Read read:
                Candidate[] candidates = [.. read.Tables.Select((table, index) => Candidate.Find(index + 1, table)).OfType<Candidate>()];
                return candidates.Length == 0
                    ? new PriceListReading.Unreadable(
                        read.Tables.Count == 0 ? "no table" : "no table with several columns and rows", "a page with the price list as a table",
                        $"save the page as your browser shows it, or {AsCsv}")
                    : Choose(candidates, isKnown, chosen, read.Warnings);
            case TablesReading.Unreadable unreadable:
                return new PriceListReading.Unreadable(unreadable.Found, unreadable.Expected, AsCsv);
            default:
                throw new InvalidOperationException("A page was read as something that no outcome names.");
        }
    }

    private static PriceListReading Choose(Candidate[] candidates, Func<string, bool> isKnown, int? chosen, IReadOnlyList<ListingWarning> warnings)
    {
        var (taken, because) = chosen is { } place ? (Array.Find(candidates, one => one.Place == place), "you said so") : Propose(candidates, isKnown);
        if (taken is null)
        {
            var offered = string.Join("; ", candidates.Take(5).Select(one => $"{one.Place}: {string.Join(", ", one.Table.Headers.Take(8))}"));
            return new PriceListReading.Unreadable(
                chosen is { } asked ? FormattableString.Invariant($"table {asked}") : $"{candidates.Length} tables, none with a column of part numbers",
                "the place of a table that could be a price list", $"name it with table=…; the tables are {offered}", "table");
        }

        return taken.Table.Rows.Count > PriceListTable.MostRows
            ? new PriceListReading.Unreadable($"more than {PriceListTable.MostRows} rows", $"at most {PriceListTable.MostRows} rows",
                "cut the list into several files")
            : new PriceListReading.Read(taken.Table, new PriceListTables(
                taken.Place, because, [.. candidates.Select(one => new OfferedTable(one.Place, one.Caption, one.Table.Headers, one.Table.Rows.Count))],
                [.. taken.Notes, .. warnings.Select(warning => warning.Text)]));
    }

    private static (Candidate? Taken, string Because) Propose(Candidate[] candidates, Func<string, bool> isKnown)
    {
        if (candidates is [var only])
        {
            return (only, "the only one");
        }

        var best = candidates.Select(one => (one, mapping: PriceListMapping.Propose(one.Table, isKnown, new Dictionary<PriceColumn, int?>())))
            .Where(pair => pair.mapping.Find(PriceColumn.Number) is not null)
            .OrderByDescending(pair => pair.mapping.Find(PriceColumn.Price) is not null)
            .ThenByDescending(pair => pair.one.Table.Headers.Count).ThenByDescending(pair => pair.one.Table.Rows.Count).ThenBy(pair => pair.one.Place)
            .FirstOrDefault();
        return (best.one, best.mapping?.Find(PriceColumn.Price) is null ? "the widest with a column of part numbers"
            : "the widest with columns of part numbers and prices");
    }

    /// <summary>A table that could be a price list.</summary>
    private sealed record Candidate(int Place, string? Caption, PriceListTable Table, IReadOnlyList<string> Notes)
    {
        // The row of heads stands first, or under a row or two of something else. Ours, no source.
        private const int HeadsWithin = 4;

        // Of the last row: what it adds up is nothing for sale. Common practice, no source.
        private static readonly HashSet<string> _sums = new(StringComparer.OrdinalIgnoreCase)
        {
            "total", "sum", "subtotal", "summe", "gesamt", "zwischensumme", "somme", "sous-total", "summa", "totalt", "suma",
        };

        public static Candidate? Find(int place, PageTable page)
        {
            PageRow[] filled = [.. page.Rows.Where(row => row.Cells.Any(cell => cell.Length > 0))];
            if (filled.Length == 0 || filled.Max(row => row.Cells.Count) < 2)
            {
                return null;
            }

            var notes = new List<string>();
            List<PageRow> rows = [.. filled.Where(row => !row.IsOneCell && !row.IsFoot)];
            Note(notes, "across the whole table", [.. filled.Where(row => row.IsOneCell && !row.IsFoot)]);
            Note(notes, "in the foot of the table", [.. filled.Where(row => row.IsFoot)]);
            var sums = rows.Count - rows.FindLastIndex(row => !row.Cells.Any(IsSum)) - 1;
            Note(notes, "of sums", [.. rows.TakeLast(sums)]);
            rows.RemoveRange(rows.Count - sums, sums);

            var heads = rows.TakeWhile(row => row.IsHead && !row.Cells.Any(PriceCell.LooksLikeAmount)).ToList();
            if (heads.Count == 0 && rows.Take(HeadsWithin).FirstOrDefault(HasHeads) is { } found)
            {
                heads = [found];
                Note(notes, "above the heads", [.. rows.TakeWhile(row => row != found)]);
                rows.RemoveRange(0, rows.IndexOf(found));
            }

            if (heads.Count > 0)
            {
                var again = rows.Skip(heads.Count).Where(row => heads.Exists(head => head.Cells.SequenceEqual(row.Cells))).ToHashSet();
                Note(notes, "of heads again", [.. again]);
                rows = [.. rows.Where(row => !again.Contains(row))];
            }

            var list = rows.Select(row => new PriceListRow(row.Place, row.Cells));
            var table = heads.Count > 0 ? PriceListTable.Headed([.. heads.Select(head => head.Cells)], [.. list.Skip(heads.Count)]) : PriceListTable.Of(list);
            return table is { Rows.Count: > 0 } ? new Candidate(place, page.Caption, table, notes) : null;
        }

        private static bool IsSum(string cell) => _sums.Contains(cell.TrimEnd(':', ' '));

        private static bool HasHeads(PageRow row) =>
            !row.Cells.Any(PriceCell.LooksLikeAmount)
            && row.Cells.Distinct().Select(cell => PriceListHeads.Find(cell)?.Column).OfType<PriceColumn>().Distinct().Count() >= 2;

        private static void Note(List<string> notes, string where, PageRow[] rows)
        {
            if (rows.Length > 0)
            {
                var words = rows.Take(3).Select(row => string.Join(' ', row.Cells.Where(cell => cell.Length > 0).Distinct()))
                    .Select(text => text.Length > 60 ? text[..60] + "…" : text);
                var many = rows.Length == 1 ? "1 row" : $"{rows.Length} rows";
                notes.Add($"{many} {where} left out: {string.Join("; ", words)}{(rows.Length > 3 ? "; …" : "")}");
            }
        }
    }
}
