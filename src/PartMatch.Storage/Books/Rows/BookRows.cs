using Dapper;
using Microsoft.Data.Sqlite;
using PartMatch.Storage.Books.Checks;
using PartMatch.Storage.Books.Format;

namespace PartMatch.Storage.Books.Rows;

/// <summary>The rows of books in the base: the SQL follows the list of files and columns.</summary>
internal static class BookRows
{
    /// <summary>How many rows are written between two looks at the cancellation.</summary>
    private const int RowsPerLook = 1000;

    public static bool Exists(SqliteConnection connection, string book) =>
        connection.ExecuteScalar<long>("select count(*) from books where book = @book", new { book }) > 0;

    /// <summary>The cells of a book as typed, rows in the order of their keys; null when there is no such book.</summary>
    public static BookDraft? Find(SqliteConnection connection, string book, IReadOnlyList<BookTable> tables) =>
        !Exists(connection, book) ? null : new BookDraft(tables.ToDictionary(table => table, table => (List<BookRow>?)Read(connection, book, table)));

    /// <summary>Rows per file that has any, in ordinal order of the files.</summary>
    public static IReadOnlyList<FileCount> Counts(SqliteConnection connection, string book) =>
    [
        .. BookTables.All
            .Select(table => new FileCount(table.File, Count(connection, book, table)))
            .Where(count => count.Rows > 0),
    ];

    public static void Delete(SqliteConnection connection, string book)
    {
        connection.Execute("delete from book_uses where book = @book", new { book });
        foreach (var table in BookTables.All)
        {
            connection.Execute($"delete from {Quoted(table.Name)} where book = @book", new { book });
        }
    }

    public static void Insert(SqliteConnection connection, BookScope scope, CancellationToken cancellation)
    {
        var book = scope.Own.Code;
        foreach (var table in BookTables.All.Where(table => scope.Own.Declared(table).Count > 0))
        {
            Insert(connection, table, scope, cancellation);
        }

        foreach (var used in scope.Own.Uses)
        {
            connection.Execute("insert into book_uses (book, used) values (@book, @used)", new { book, used });
        }
    }

    private static int Count(SqliteConnection connection, string book, BookTable table) =>
        connection.ExecuteScalar<int>($"select count(*) from {Quoted(table.Name)} where book = @book", new { book });

    private static List<BookRow> Read(SqliteConnection connection, string book, BookTable table)
    {
        var columns = string.Join(", ", table.Columns.Select(column => Quoted(column.Name)));
        var order = string.Join(", ", table.Key.Select(Quoted));
        using var command = connection.CreateCommand();
        command.CommandText = $"select {columns} from {Quoted(table.Name)} where book = @book order by {order}";
        command.Parameters.AddWithValue("@book", book);
        using var reader = command.ExecuteReader();
        var rows = new List<BookRow>();
        while (reader.Read())
        {
            var cells = new string[table.Columns.Count];
            for (var column = 0; column < cells.Length; column++)
            {
                cells[column] = reader.IsDBNull(column) ? "" : reader.GetString(column);
            }

            rows.Add(new BookRow(table, 0, cells));
        }

        return rows;
    }

    private static void Insert(SqliteConnection connection, BookTable table, BookScope scope, CancellationToken cancellation)
    {
        var computed = Computed.Of(table);
        string[] names =
        [
            .. table == BookTables.Books ? [] : new[] { "book" },
            .. table.Columns.Select(column => column.Name),
            .. computed.Select(column => column.Name),
        ];
        using var command = connection.CreateCommand();
        command.CommandText =
            $"insert into {Quoted(table.Name)} ({string.Join(", ", names.Select(Quoted))}) values ({string.Join(", ", names.Select((_, index) => $"@p{index}"))})";
        var parameters = names.Select((_, index) => command.Parameters.AddWithValue($"@p{index}", DBNull.Value)).ToArray();
        command.Prepare();
        foreach (var (index, row) in scope.Own.Declared(table).Index())
        {
            if (index % RowsPerLook == 0)
            {
                cancellation.ThrowIfCancellationRequested();
            }

            var values = Values(table, scope, computed, row);
            for (var column = 0; column < values.Length; column++)
            {
                parameters[column].Value = values[column] ?? DBNull.Value;
            }

            command.ExecuteNonQuery();
        }
    }

    private static object?[] Values(BookTable table, BookScope scope, IReadOnlyList<Computed> computed, BookRow row) =>
    [
        .. table == BookTables.Books ? [] : new[] { scope.Own.Code },
        .. row.Cells.Select((cell, index) => cell.Length > 0 || table.KeyIndexes.Contains(index) ? cell : null),
        .. computed.Select(column => column.Value(row, scope)),
    ];

    /// <summary>Names come from the list of files and columns only; some are words of SQL.</summary>
    private static string Quoted(string name) => $"\"{name}\"";
}
