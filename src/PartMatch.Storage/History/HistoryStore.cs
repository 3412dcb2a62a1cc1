using Dapper;
using Microsoft.Data.Sqlite;
using PartMatch.Core.Catalogue;
using PartMatch.Storage.Books.Format;
using PartMatch.Storage.Editing;

namespace PartMatch.Storage.History;

/// <summary>A change as the history tells it.</summary>
/// <param name="At">UTC.</param>
/// <param name="Undoes">The change that it takes back.</param>
/// <param name="UndoneBy">The change that took it back.</param>
/// <param name="RowCount">How many rows it changed.</param>
/// <param name="Rows">The first of them, in order of table and key.</param>
public sealed record ChangeTold(
    long Change, string Book, string At, string? Who, string? Why, Act Act, long? Undoes, long? UndoneBy, int RowCount, IReadOnlyList<RowTold> Rows);

/// <summary>One row before and after; null where it was not there.</summary>
/// <param name="Differs">The columns whose cells differ, in the order of the file.</param>
public sealed record RowTold(
    string Table, string Key, IReadOnlyDictionary<string, string>? Before, IReadOnlyDictionary<string, string>? After, IReadOnlyList<string> Differs)
{
    internal static RowTold Of(RowStep step) => new(
        step.Table.Stem, step.Key,
        step.Before is null ? null : RowCells.Of(step.Table, step.Before), step.After is null ? null : RowCells.Of(step.Table, step.After),
        [
            .. step.Table.Columns.Index().Where(column => (step.Before?[column.Index] ?? "") != (step.After?[column.Index] ?? ""))
                .Select(column => RowCells.NameOf(column.Item.Name)),
        ]);
}

/// <summary>Which changes are wanted; null leaves that open.</summary>
/// <param name="Before">Only changes older than this one.</param>
public sealed record HistoryWanted(string? Book, string? Table, string? Key, int Limit, long? Before);

/// <summary>Some changes, newest first.</summary>
public sealed record HistoryPage(IReadOnlyList<ChangeTold> Changes, int Total, long? Next);

/// <summary>Who changed what, when and why.</summary>
public sealed class HistoryStore(Database database)
{
    /// <summary>Most rows of one change that are listed.</summary>
    public const int MaxRowsShown = 50;

    private const string Matching =
        """
        from changes c
        where (@Book is null or c.book = @Book)
          and (@Table is null or exists (
            select 1
            from changed_rows r
            where r.change = c.change and r."table" = @Table and (@Key is null or r."key" = @Key)))
        """;

    public HistoryPage List(HistoryWanted wanted)
    {
        using var connection = database.Connect();
        using var transaction = connection.BeginTransaction(deferred: true);
        var total = connection.ExecuteScalar<int>($"select count(*) {Matching}", wanted);
        var rows = connection.Query<ChangeRow>(
            $"""
            select c.change, c.book, c.at, c.who, c.why, c.act, c.undoes,
              (select u.change from changes u where u.undoes = c.change) as undone_by,
              (select count(*) from changed_rows r where r.change = c.change) as row_count
            {Matching} and (@Before is null or c.change < @Before)
            order by c.change desc
            limit @Limit + 1
            """,
            wanted).AsList();
        var next = rows.Count > wanted.Limit ? rows[wanted.Limit - 1].Change : (long?)null;
        return new HistoryPage([.. rows.Take(wanted.Limit).Select(row => Tell(connection, row, wanted))], total, next);
    }

    private static ChangeTold Tell(SqliteConnection connection, ChangeRow row, HistoryWanted wanted)
    {
        var rows = connection.Query<ChangedRow>(
            """
            select "table", "key", before, after
            from changed_rows
            where change = @Change and (@Table is null or "table" = @Table) and (@Key is null or "key" = @Key)
            order by "table", "key"
            limit @MaxRowsShown
            """,
            new { row.Change, wanted.Table, wanted.Key, MaxRowsShown });
        return new ChangeTold(
            row.Change, row.Book, row.At, row.Who, row.Why, Codes.Get<Act>(row.Act), row.Undoes, row.UndoneBy, row.RowCount,
            [.. rows.Select(Tell)]);
    }

    private static RowTold Tell(ChangedRow row)
    {
        // A table of the history is a table of this program: migrations only add some.
        var table = BookTables.Find(row.Table)!;
        return RowTold.Of(new RowStep(table, row.Key, CellsOf(table, row.Before), CellsOf(table, row.After)));
    }

    private static string[]? CellsOf(BookTable table, string? json) => json is null ? null : RowCells.FromJson(table, json);

    private sealed record ChangedRow(string Table, string Key, string? Before, string? After);

    private sealed record ChangeRow
    {
        public long Change { get; init; }

        public required string Book { get; init; }

        public required string At { get; init; }

        public string? Who { get; init; }

        public string? Why { get; init; }

        public required string Act { get; init; }

        public long? Undoes { get; init; }

        public long? UndoneBy { get; init; }

        public int RowCount { get; init; }
    }
}
