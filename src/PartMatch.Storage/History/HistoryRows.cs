using System.Buffers;
using System.Globalization;
using System.Text.Json;
using Dapper;
using Microsoft.Data.Sqlite;
using PartMatch.Core.Catalogue;
using PartMatch.Storage.Books;
using PartMatch.Storage.Books.Format;
using PartMatch.Storage.Books.Rows;
using PartMatch.Storage.Editing;

namespace PartMatch.Storage.History;

/// <summary>The rows of the history. They are only ever added to.</summary>
internal static class HistoryRows
{
    /// <returns>The number of the change.</returns>
    public static long Insert(SqliteConnection connection, HistoryEntry entry, IEnumerable<RowStep> steps, ImportWatch? watch = null)
    {
        var change = connection.ExecuteScalar<long>(
            """
            insert into changes (book, at, who, why, act, undoes)
            values (@Book, @at, @Who, @Why, @act, @Undoes)
            returning change
            """,
            new
            {
                entry.Book,
                at = entry.At.ToString("yyyy-MM-dd'T'HH:mm:ss.fff'Z'", CultureInfo.InvariantCulture),
                entry.Note.Who,
                entry.Note.Why,
                act = Codes.Of(entry.Act),
                entry.Undoes,
            });
        using var insert = new PreparedInsert(connection, "changed_rows", ["change", "table", "key", "before", "after"]);
        insert.Bind(0, change);
        var json = new ArrayBufferWriter<byte>();
        using var writer = new Utf8JsonWriter(json);
        foreach (var step in steps)
        {
            insert.Bind(1, step.Table.Stem);
            insert.Bind(2, step.Key);
            Bind(3, step.Table, step.Before);
            Bind(4, step.Table, step.After);
            insert.Run();
            watch?.Row();
        }

        return change;

        void Bind(int column, BookTable table, IReadOnlyList<string>? cells)
        {
            if (cells is null)
            {
                insert.Bind(column, null);
                return;
            }

            json.ResetWrittenCount();
            writer.Reset();
            RowCells.WriteJson(writer, table, cells);
            writer.Flush();
            insert.BindUtf8(column, json.WrittenSpan);
        }
    }

    /// <summary>The latest change of a row, or null when the history has none.</summary>
    public static ChangeSeen? FindLatest(SqliteConnection connection, string book, BookTable table, string key) =>
        connection.QueryFirstOrDefault<ChangeSeen>(
            """
            select c.change, c.at, c.who, c.why
            from changed_rows r
            join changes c on c.change = r.change
            where r."table" = @Stem and r."key" = @key and c.book = @book
            order by c.change desc
            limit 1
            """,
            new { table.Stem, key, book });
}
