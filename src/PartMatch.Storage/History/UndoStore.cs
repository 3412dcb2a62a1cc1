using System.Globalization;
using Dapper;
using Microsoft.Data.Sqlite;
using PartMatch.Storage.Books;
using PartMatch.Storage.Books.Format;
using PartMatch.Storage.Books.Rows;
using PartMatch.Storage.Editing;

namespace PartMatch.Storage.History;

/// <summary>How taking back a change ended; one of the nested cases. Only <see cref="Done"/> stored anything.</summary>
public abstract record UndoOutcome
{
    private UndoOutcome()
    {
    }

    /// <param name="Change">The new change that takes the old one back.</param>
    /// <param name="Rows">The rows that are there again; those that are gone again are left out.</param>
    public sealed record Done(long Change, IReadOnlyList<RowSeen> Rows) : UndoOutcome;

    public sealed record NoChange : UndoOutcome;

    /// <summary>It was taken back before.</summary>
    public sealed record Undone(long By) : UndoOutcome;

    /// <summary>Rows of it were changed again since.</summary>
    /// <param name="Later">Each such row with the latest change of it.</param>
    public sealed record ChangedSince(IReadOnlyList<(RowTold Row, ChangeSeen? By)> Later) : UndoOutcome;

    /// <summary>Rows that came later rest on it.</summary>
    public sealed record InUse(IReadOnlyList<BookUser> Users, int Total) : UndoOutcome;
}

/// <summary>Takes back single changes, as changes of their own.</summary>
public sealed class UndoStore(Database database, TimeProvider time)
{
    /// <exception cref="DatabaseException">The base could not be written; nothing is stored.</exception>
    public UndoOutcome Undo(long change, ChangeNote note, CancellationToken cancellation)
    {
        try
        {
            using var connection = database.Connect();
            using var transaction = connection.BeginTransaction(deferred: false);
            var outcome = Undo(connection, change, note, cancellation);
            if (outcome is UndoOutcome.Done)
            {
                transaction.Commit();
            }

            return outcome;
        }
        catch (SqliteException exception)
        {
            throw DatabaseException.Explain(exception, database.Path);
        }
    }

    private UndoOutcome Undo(SqliteConnection connection, long change, ChangeNote note, CancellationToken cancellation)
    {
        if (connection.QuerySingleOrDefault<string>("select book from changes where change = @change", new { change }) is not { } book)
        {
            return new UndoOutcome.NoChange();
        }

        if (connection.ExecuteScalar<long?>("select change from changes where undoes = @change", new { change }) is { } by)
        {
            return new UndoOutcome.Undone(by);
        }

        var edit = new BookEdit(BookRows.Find(connection, book, BookTables.All));
        var (added, later) = TurnBack(connection, book, edit, Steps(connection, change));
        if (later.Count > 0)
        {
            return new UndoOutcome.ChangedSince(later);
        }

        var entry = new HistoryEntry(book, note, Act.Undo, time.GetUtcNow(), change);
        return BookChange.Apply(connection, book, edit, added, entry, cancellation) switch
        {
            ChangeResult.Written { Change: { } made } => new UndoOutcome.Done(made, [.. added.Select(row => RowStore.Seen(book, row))]),
            ChangeResult.InUse inUse => new UndoOutcome.InUse(inUse.Users, inUse.Total),

            // A row that was sound rests on something that is gone since.
            ChangeResult.Faulty faulty => new UndoOutcome.InUse(
                [.. faulty.Errors.Select(one => BookUsers.ToUser(book, one.Row, one.Error))],
                faulty.Errors.Count),
            var other => throw new InvalidOperationException(string.Create(CultureInfo.InvariantCulture, $"Taking back change {change} ended as {other}.")),
        };
    }

    /// <summary>Puts every row back, unless it is not as the change left it.</summary>
    private static (List<BookRow> Added, List<(RowTold Row, ChangeSeen? By)> Later) TurnBack(
        SqliteConnection connection, string book, BookEdit edit, IReadOnlyList<RowStep> steps)
    {
        var added = new List<BookRow>();
        var later = new List<(RowTold, ChangeSeen?)>();
        foreach (var step in steps)
        {
            var present = edit.Find(step.Table, step.Key);
            var isAsLeft = (present, step.After) is (null, null) || (present is not null && step.After is not null && present.Cells.SequenceEqual(step.After));
            if (!isAsLeft)
            {
                later.Add((
                    RowTold.Of(new RowStep(step.Table, step.Key, step.After, present?.Cells)), HistoryRows.FindLatest(connection, book, step.Table, step.Key)));
                continue;
            }

            if (present is not null)
            {
                edit.Remove(present);
            }

            if (step.Before is not null)
            {
                added.Add(edit.Add(step.Table, [.. step.Before]));
            }
        }

        return (added, later);
    }

    private static IReadOnlyList<RowStep> Steps(SqliteConnection connection, long change) =>
    [
        .. connection.Query<ChangedRow>("""select "table", "key", before, after from changed_rows where change = @change order by "table", "key" """, new { change })
            .Select(row => (Row: row, Table: BookTables.Find(row.Table)!)) // the history only names tables of books
            .Select(one => new RowStep(
                one.Table, one.Row.Key, one.Row.Before is null ? null : RowCells.FromJson(one.Table, one.Row.Before),
                one.Row.After is null ? null : RowCells.FromJson(one.Table, one.Row.After))),
    ];

    private sealed record ChangedRow(string Table, string Key, string? Before, string? After);
}
