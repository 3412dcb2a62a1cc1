using Dapper;
using Microsoft.Data.Sqlite;
using PartMatch.Storage.Books.Checks;
using PartMatch.Storage.Books.Format;
using PartMatch.Storage.Editing;

namespace PartMatch.Storage.Books.Rows;

/// <summary>The rows of books in the base: the SQL follows the list of files and columns.</summary>
internal static class BookRows
{
    public static bool Exists(SqliteConnection connection, string book) =>
        connection.ExecuteScalar<long>("select count(*) from books where book = @book", new { book }) > 0;

    /// <summary>The cells of a book as typed, rows in the order of their keys; null when there is no such book.</summary>
    public static BookDraft? Find(SqliteConnection connection, string book, IReadOnlyList<BookTable> tables) =>
        !Exists(connection, book) ? null : new BookDraft(tables.ToDictionary(table => table, table => (IReadOnlyList<BookRow>?)Read(connection, book, table)));

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

    /// <param name="rows">The rows of the scope's own book, in the order in which they are written.</param>
    public static void Insert(SqliteConnection connection, BookScope scope, BookDraft rows, ImportWatch watch)
    {
        var book = scope.Own.Code;
        foreach (var table in BookTables.All.Where(table => rows.Declared(table).Count > 0))
        {
            Insert(connection, table, scope, rows.Declared(table), watch);
        }

        foreach (var used in scope.Own.Uses)
        {
            connection.Execute("insert into book_uses (book, used) values (@book, @used)", new { book, used });
        }
    }

    private static int Count(SqliteConnection connection, string book, BookTable table) =>
        connection.ExecuteScalar<int>($"select count(*) from {Quoted(table.Name)} where book = @book", new { book });

    /// <summary>The books that use this one directly, in ordinal order.</summary>
    public static IReadOnlyList<string> Using(SqliteConnection connection, string book) =>
        connection.Query<string>("select book from book_uses where used = @book order by book", new { book }).AsList();

    /// <summary>Writes only what has changed, where no other row's computed columns depend on it.</summary>
    public static void Write(SqliteConnection connection, BookScope scope, IReadOnlyList<RowStep> steps)
    {
        foreach (var step in steps.Where(step => step.Before is not null))
        {
            Delete(connection, scope.Own.Code, step);
        }

        foreach (var table in steps.Where(step => step.After is not null).GroupBy(step => step.Table))
        {
            var rows = table.Select(step => new BookRow(table.Key, 0, [.. step.After!])).ToList(); // filtered for null
            Insert(connection, table.Key, scope, rows, ImportWatch.Silent(CancellationToken.None));
        }
    }

    private static void Delete(SqliteConnection connection, string book, RowStep step)
    {
        using var command = connection.CreateCommand();
        var key = string.Join(" and ", step.Table.Key.Select((column, index) => $"{Quoted(column)} = @k{index}"));
        command.CommandText = $"delete from {Quoted(step.Table.Name)} where book = @book and {key}";
        command.Parameters.AddWithValue("@book", book);
        foreach (var (index, column) in step.Table.KeyIndexes.Index())
        {
            command.Parameters.AddWithValue($"@k{index}", step.Before![column]); // only steps that had a row before are deleted
        }

        command.ExecuteNonQuery();
    }

    /// <summary>The rows of one table in the order of their keys; none when there is no such book.</summary>
    public static IReadOnlyList<BookRow> Read(SqliteConnection connection, string book, BookTable table)
    {
        var columns = string.Join(", ", table.Columns.Select(column => Quoted(column.Name)));
        var order = string.Join(", ", table.Key.Select(Quoted));
        using var command = connection.CreateCommand();
        command.CommandText = $"select {columns} from {Quoted(table.Name)} where book = @book order by {order}";
        command.Parameters.AddWithValue("@book", book);
        using var reader = command.ExecuteReader();
        var rows = new PackedRows(table);
        while (reader.Read())
        {
            var cells = new string[table.Columns.Count];
            for (var column = 0; column < cells.Length; column++)
            {
                cells[column] = reader.IsDBNull(column) ? "" : reader.GetString(column);
            }

            rows.Add(0, cells);
        }

        return rows;
    }

    private static void Insert(SqliteConnection connection, BookTable table, BookScope scope, IReadOnlyList<BookRow> rows, ImportWatch watch)
    {
        var computed = Computed.Of(table);
        string[] first = table == BookTables.Books ? [] : ["book"];
        using var insert = new PreparedInsert(
            connection, table.Name, [.. first, .. table.Columns.Select(column => column.Name), .. computed.Select(column => column.Name)]);
        if (first.Length > 0)
        {
            insert.Bind(0, scope.Own.Code);
        }

        var isKey = Enumerable.Range(0, table.Columns.Count).Select(table.KeyIndexes.Contains).ToArray();
        foreach (var row in rows)
        {
            for (var column = 0; column < isKey.Length; column++)
            {
                insert.Bind(first.Length + column, row[column].Length > 0 || isKey[column] ? (object)row[column] : null);
            }

            for (var column = 0; column < computed.Count; column++)
            {
                insert.Bind(first.Length + isKey.Length + column, computed[column].Value(row, scope));
            }

            insert.Run();
            watch.Row();
        }
    }

    /// <summary>Names come from the list of files and columns only; some are words of SQL.</summary>
    private static string Quoted(string name) => $"\"{name}\"";
}
