using System.Globalization;
using Dapper;
using Microsoft.Data.Sqlite;
using PartMatch.Core.Catalogue;
using PartMatch.Storage.Books.Format;
using PartMatch.Storage.Editing;

namespace PartMatch.Storage.History;

/// <summary>The rows of the history. They are only ever added to.</summary>
internal static class HistoryRows
{
    /// <returns>The number of the change.</returns>
    public static long Insert(SqliteConnection connection, HistoryEntry entry, IReadOnlyList<RowStep> steps)
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
        using var command = connection.CreateCommand();
        command.CommandText = """insert into changed_rows (change, "table", "key", before, after) values (@change, @table, @key, @before, @after)""";
        var (table, key, before, after) = (Parameter("@table"), Parameter("@key"), Parameter("@before"), Parameter("@after"));
        command.Parameters.AddWithValue("@change", change);
        command.Prepare();
        foreach (var step in steps)
        {
            (table.Value, key.Value) = (step.Table.Stem, step.Key);
            before.Value = step.Before is null ? DBNull.Value : RowCells.ToJson(step.Table, step.Before);
            after.Value = step.After is null ? DBNull.Value : RowCells.ToJson(step.Table, step.After);
            command.ExecuteNonQuery();
        }

        return change;

        SqliteParameter Parameter(string name) => command.Parameters.AddWithValue(name, DBNull.Value);
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
