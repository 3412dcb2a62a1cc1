namespace PartMatch.Core.Listings;

/// <summary>How the tables of a page were read.</summary>
public abstract record TablesReading
{
    private TablesReading()
    {
    }

    /// <param name="Tables">In the order of the document; a table inside a cell is one of its own.</param>
    public sealed record Read(IReadOnlyList<PageTable> Tables, IReadOnlyList<ListingWarning> Warnings) : TablesReading;

    public sealed record Unreadable(string Found, string Expected) : TablesReading;
}

/// <summary>A table as people see it: a cell that spans several stands in each.</summary>
/// <param name="Caption">Null where it has none.</param>
public sealed record PageTable(string? Caption, IReadOnlyList<PageRow> Rows);

/// <param name="Place">From 1, empty rows counted.</param>
/// <param name="IsOneCell">Is it one cell alone, however many columns that spans?</param>
/// <param name="IsHead">Is it marked up as heads?</param>
/// <param name="IsFoot">Is it marked up as the foot of the table?</param>
public sealed record PageRow(int Place, IReadOnlyList<string> Cells, bool IsOneCell, bool IsHead, bool IsFoot);

internal static class PageTables
{
    // All tables together, spans counted: a price list of 20,000 rows and all the columns that are read. Ours, no source.
    private const int MostCells = 1_500_000;

    public static TablesReading Read(PageNode.Element page, List<ListingWarning> warnings)
    {
        List<PageTable> tables = [];
        var cells = 0;
        foreach (var table in PageWalk.Elements(page).Where(element => element.Name == "table" && !PageListing.IsInHidden(element)))
        {
            List<PageRow> rows = [];
            foreach (var row in TableGrid.Rows(table, int.MaxValue))
            {
                rows.Add(row);
                cells += row.Cells.Count;
                if (cells > MostCells)
                {
                    return new TablesReading.Unreadable(FormattableString.Invariant($"more than {MostCells:N0} cells in its tables"),
                        FormattableString.Invariant($"at most {MostCells:N0}"));
                }
            }

            var caption = table.Children.OfType<PageNode.Element>().Where(child => child.Name == "caption").Select(TableGrid.Text).FirstOrDefault();
            tables.Add(new(caption is { Length: > 0 } ? caption : null, rows));
        }

        return new TablesReading.Read(tables, warnings);
    }
}
