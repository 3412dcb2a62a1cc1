using Microsoft.Data.Sqlite;
using PartMatch.Storage.Books;
using PartMatch.Storage.Books.Format;
using PartMatch.Storage.Books.Rows;
using PartMatch.Storage.History;

namespace PartMatch.Storage.Editing;

/// <summary>Changes single rows of the books, as they are edited: checked like an import, all or nothing, and told of in the history.</summary>
public sealed class EditStore(Database database, TimeProvider time)
{
    /// <summary>Most rows that one change may name.</summary>
    public const int MaxRows = 2000;

    /// <summary>Makes one change of the rows of one book, in the order given.</summary>
    /// <param name="changes">At least one; each table must be one of <see cref="RowStore.Tables"/>.</param>
    /// <param name="act">What the history calls it.</param>
    /// <param name="isDryRun">Judge it all, and store nothing? Its number is then that of no change.</param>
    /// <exception cref="DatabaseException">The base could not be written; nothing is stored.</exception>
    public EditOutcome Apply(string book, IReadOnlyList<RowChange> changes, ChangeNote note, Act act, CancellationToken cancellation, bool isDryRun = false)
    {
        try
        {
            using var connection = database.Connect();

            // Judged and written under one lock: what was found there still holds when it is written.
            using var transaction = connection.BeginTransaction(deferred: false);
            var outcome = Apply(connection, book, changes, new HistoryEntry(book, note, act, time.GetUtcNow()), cancellation);
            if (outcome is EditOutcome.Done && !isDryRun)
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

    /// <summary>The same inside the transaction of another write, which is committed by whoever began it.</summary>
    internal static EditOutcome Apply(
        SqliteConnection connection, string book, IReadOnlyList<RowChange> changes, HistoryEntry entry, CancellationToken cancellation)
    {
        var present = BookRows.Find(connection, book, BookTables.All);
        if (present is null && !changes.Any(change => change is { Table: "book", Row: { } row } && row.GetValueOrDefault("book") == book))
        {
            return new EditOutcome.NoBook(book);
        }

        var edit = new BookEdit(present);
        var added = new List<(int Index, BookRow Row)>();
        var faults = new List<RowFault>();
        foreach (var (index, change) in changes.Index())
        {
            var table = BookTables.Find(change.Table) ?? throw new ArgumentException($"'{change.Table}' is no table of a book.", nameof(changes));
            if (change.Key is { } key && TakeOut(connection, book, edit, index, table, key, change.Version) is { } stale)
            {
                return stale;
            }

            if (change.Row is { } row)
            {
                var now = edit.Add(table, Cells(table, row));
                added.Add((index, now));
                faults.AddRange(Unknown(index, table, row));
                if (table == BookTables.Books && now["book"] != book)
                {
                    faults.Add(new RowFault(index, "book", now["book"], $"the rows of a book stay in it: expected {book}", book));
                }
            }
        }

        if (faults.Count > 0)
        {
            return new EditOutcome.Faulty(faults);
        }

        return BookChange.Apply(connection, book, edit, added.ConvertAll(one => one.Row), entry, cancellation) switch
        {
            ChangeResult.Written { Change: { } change } => new EditOutcome.Done(change, Seen(book, added)),
            ChangeResult.Written => new EditOutcome.Same(Seen(book, added)),
            ChangeResult.Faulty faulty => new EditOutcome.Faulty([.. faulty.Errors.Select(error => ToFault(added, error))]),
            ChangeResult.InUse inUse => new EditOutcome.InUse(inUse.Users, inUse.Total),
            var other => throw new InvalidOperationException($"A change ended as {other.GetType().Name}, which no outcome names."),
        };
    }

    private static EditOutcome.Stale? TakeOut(SqliteConnection connection, string book, BookEdit edit, int index, BookTable table, string key, string? version)
    {
        var row = edit.Find(table, key);
        if (row is null || (version is not null && RowCells.VersionOf(row.Cells) != version))
        {
            return new EditOutcome.Stale(index, row is null ? null : RowStore.Seen(book, row), HistoryRows.FindLatest(connection, book, table, key));
        }

        edit.Remove(row);
        return null;
    }

    private static IEnumerable<RowFault> Unknown(int index, BookTable table, IReadOnlyDictionary<string, string> row)
    {
        var known = table.Columns.Select(column => RowCells.NameOf(column.Name)).ToList();
        return row.Keys.Except(known).Select(name => new RowFault(
            index, name, name, $"no column of {table.File}: expected {string.Join(", ", known)}", NearestCode.Find(name, known)));
    }

    // Blanks around a cell are never meant, and one letter has one form.
    private static string[] Cells(BookTable table, IReadOnlyDictionary<string, string> row) =>
        [.. table.Columns.Select(column => row.GetValueOrDefault(RowCells.NameOf(column.Name), "").Trim().ReplaceLineEndings("\n").Normalize())];

    private static IReadOnlyList<RowSeen> Seen(string book, List<(int Index, BookRow Row)> added) => [.. added.Select(one => RowStore.Seen(book, one.Row))];

    private static RowFault ToFault(List<(int Index, BookRow Row)> added, (BookRow Row, ImportError Error) found) => new(
        added.Find(one => one.Row == found.Row).Index, found.Error.Column is { } column ? RowCells.NameOf(column) : null,
        found.Error.Value ?? "", found.Error.Reason, found.Error.Suggestion);
}
