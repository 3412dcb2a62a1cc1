using PartMatch.Storage.Books.Format;

namespace PartMatch.Storage.Editing;

/// <summary>A row of one book before and after.</summary>
/// <param name="Before">Its cells; null when it was not there.</param>
/// <param name="After">Its cells; null when it is there no more.</param>
internal sealed record RowStep(BookTable Table, string Key, IReadOnlyList<string>? Before, IReadOnlyList<string>? After);

/// <summary>The rows of a book while they are being changed.</summary>
internal sealed class BookEdit
{
    private readonly Dictionary<BookTable, List<BookRow>?> _rows;
    private readonly Dictionary<(BookTable Table, string Key), IReadOnlyList<string>> _before = [];

    /// <param name="present">The book as it is; null when there is none yet.</param>
    public BookEdit(BookDraft? present) =>
        _rows = BookTables.All.ToDictionary(table => table, table => (List<BookRow>?)[.. present?.Declared(table).Select(row => row.Unpacked()) ?? []]);

    /// <summary>Has it still the row that says which book it is?</summary>
    public bool IsABook => Rows(BookTables.Books).Count > 0;

    /// <summary>As it is by now. Its rows are those of this edit: what a check puts in order is put in order here.</summary>
    public BookDraft Draft => new(_rows.ToDictionary(table => table.Key, table => (IReadOnlyList<BookRow>?)table.Value));

    public BookRow? Find(BookTable table, string key) => Rows(table).Find(row => RowKey.Of(row) == key);

    /// <param name="line">Where it stands in a file; 0 when it was typed.</param>
    public BookRow Add(BookTable table, string[] cells, int line = 0)
    {
        var row = new BookRow(table, line, cells);
        Rows(table).Add(row);
        return row;
    }

    public void Remove(BookRow row)
    {
        _before.TryAdd((row.Table, RowKey.Of(row)), row.Cells);
        Rows(row.Table).Remove(row);
    }

    /// <summary>What has become of each row that was removed, and which were added, in order of table and key. A row that is as it was is left out.</summary>
    /// <param name="added">The rows that were added, their cells final.</param>
    public IReadOnlyList<RowStep> Steps(IEnumerable<BookRow> added)
    {
        var after = added.ToDictionary(row => (row.Table, Key: RowKey.Of(row)), row => row.Cells);
        return
        [
            .. _before.Keys.Union(after.Keys).OrderBy(step => step.Table.File, StringComparer.Ordinal).ThenBy(step => step.Key, StringComparer.Ordinal)
                .Select(step => new RowStep(step.Table, step.Key, _before.GetValueOrDefault(step), after.GetValueOrDefault(step)))
                .Where(step => step.Before is null || step.After is null || !step.Before.SequenceEqual(step.After)),
        ];
    }

    // The dictionary has every table from the start.
    private List<BookRow> Rows(BookTable table) => _rows[table]!;
}
