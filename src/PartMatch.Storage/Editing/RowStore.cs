using PartMatch.Storage.Books.Format;
using PartMatch.Storage.Books.Rows;
using PartMatch.Storage.History;

namespace PartMatch.Storage.Editing;

/// <summary>What a column may hold, for those who fill it in.</summary>
/// <param name="Column">As JSON names it.</param>
/// <param name="Key">Is it part of the row's key?</param>
/// <param name="List">Is it a list by <c>|</c>?</param>
/// <param name="Expected">In words.</param>
/// <param name="Refers">What its codes name: <c>part</c>, <c>evidence</c>, <c>position</c> and so on; null where they name nothing.</param>
/// <param name="OneOf">A closed vocabulary; null where it is open.</param>
public sealed record ColumnSeen(string Column, bool Required, bool Key, bool List, string Expected, string? Refers, IReadOnlyList<string>? OneOf);

/// <summary>Rows of one table, in order of their keys, then of their books: codes repeat between books.</summary>
/// <param name="Next">The last row of the page; null when no more follow.</param>
public sealed record RowPage(IReadOnlyList<RowSeen> Rows, int Total, RowPlace? Next);

/// <summary>A place in the order of rows.</summary>
public sealed record RowPlace(string Key, string Book);

/// <summary>Which rows of a table are wanted.</summary>
/// <param name="Text">Contained in any cell; null for all.</param>
/// <param name="Where">Column, as JSON names it, and the text that its cell has.</param>
/// <param name="WithUsed">Those of the books that this one uses as well?</param>
/// <param name="After">The place after which to begin; null to begin with the first.</param>
public sealed record RowsWanted(string? Text, IReadOnlyList<(string Column, string Value)> Where, bool WithUsed, int Limit, RowPlace? After);

/// <summary>Single rows of the books as they are edited: cells as typed, each with the version that a change must name.</summary>
public sealed class RowStore(Database database)
{
    /// <summary>The tables of a book, by the names of their files without ending, in ordinal order.</summary>
    public static IReadOnlyList<string> Tables { get; } = [.. BookTables.All.Select(table => table.Stem)];

    /// <summary>The columns of one of <see cref="Tables"/>, in the order of the file; null for another name.</summary>
    public static IReadOnlyList<ColumnSeen>? FindColumns(string table) => BookTables.Find(table)?.Columns
        .Select(column => new ColumnSeen(
            RowCells.NameOf(column.Name), column.Required,
            BookTables.Find(table)!.Key.Contains(column.Name), // found just before
            column.Rule.IsList, column.Rule.Expected,
            column.Refers == Refers.Nothing ? null : column.Refers.ToString().ToLowerInvariant(), column.Rule.Words is [] ? null : column.Rule.Words))
        .ToList();

    public bool HasBook(string book)
    {
        using var connection = database.Connect();
        return BookRows.Exists(connection, book);
    }

    /// <summary>Some rows of a table.</summary>
    /// <param name="table">One of <see cref="Tables"/>.</param>
    public RowPage List(string book, string table, RowsWanted wanted)
    {
        var found = Get(table);
        using var connection = database.Connect();
        using var transaction = connection.BeginTransaction(deferred: true);
        var books = wanted.WithUsed ? Catalogue.Scopes.Of(connection, book) : [book];
        var rows = books
            .SelectMany(one => BookRows.Read(connection, one, found).Where(row => IsWanted(found, row, wanted))
                .Select(row => (Book: one, Row: row, Key: RowKey.Of(row))))
            .OrderBy(row => row.Key, StringComparer.Ordinal).ThenBy(row => row.Book, StringComparer.Ordinal).ToList();
        var page = rows.Where(row => wanted.After is not { } after || IsBehind(row.Key, row.Book, after)).Take(wanted.Limit + 1).ToList();
        var next = page.Count > wanted.Limit ? new RowPlace(page[wanted.Limit - 1].Key, page[wanted.Limit - 1].Book) : null;
        return new RowPage([.. page.Take(wanted.Limit).Select(row => Seen(row.Book, row.Row))], rows.Count, next);
    }

    /// <summary>One row with its latest change, or null when the book or the row is not there.</summary>
    public (RowSeen Row, ChangeSeen? Changed)? Find(string book, string table, string key)
    {
        var found = Get(table);
        using var connection = database.Connect();
        using var transaction = connection.BeginTransaction(deferred: true);
        return BookRows.Read(connection, book, found).FirstOrDefault(row => RowKey.Of(row) == key) is { } row
            ? (Seen(book, row), HistoryRows.FindLatest(connection, book, found, key))
            : null;
    }

    internal static RowSeen Seen(string book, BookRow row) =>
        new(book, row.Table.Stem, RowKey.Of(row), RowCells.VersionOf(row.Cells), RowCells.Of(row.Table, row.Cells));

    private static bool IsBehind(string key, string book, RowPlace place) =>
        string.CompareOrdinal(key, place.Key) is var order && (order > 0 || (order == 0 && string.CompareOrdinal(book, place.Book) > 0));

    private static BookTable Get(string table) => BookTables.Find(table) ?? throw new ArgumentException($"'{table}' is no table of a book.", nameof(table));

    private static bool IsWanted(BookTable table, BookRow row, RowsWanted wanted) =>
        (wanted.Text is null || row.Cells.Any(cell => cell.Contains(wanted.Text, StringComparison.OrdinalIgnoreCase)))
        && wanted.Where.All(one => table.Columns.Index().Any(column => RowCells.NameOf(column.Item.Name) == one.Column && row.Cells[column.Index] == one.Value));
}
