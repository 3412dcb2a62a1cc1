using Microsoft.Data.Sqlite;
using PartMatch.Storage.Books;
using PartMatch.Storage.Books.Checks;
using PartMatch.Storage.Books.Format;
using PartMatch.Storage.Books.Rows;
using PartMatch.Storage.History;

namespace PartMatch.Storage.Editing;

/// <summary>How a change of some rows of one book ended.</summary>
internal abstract record ChangeResult
{
    private ChangeResult()
    {
    }

    /// <summary>Written, and told of in the history; the caller commits.</summary>
    /// <param name="Change">Null when nothing was different.</param>
    public sealed record Written(long? Change) : ChangeResult;

    /// <param name="Errors">Of the rows that were added, by what the same rows would be told in an import.</param>
    public sealed record Faulty(IReadOnlyList<(BookRow Row, ImportError Error)> Errors) : ChangeResult;

    /// <summary>Rows that were not touched, of this book or another, would be wrong.</summary>
    public sealed record InUse(IReadOnlyList<BookUser> Users, int Total) : ChangeResult;
}

/// <summary>Judges a book with some rows changed by the same checks as an import, and writes it: the one way in which single rows change.</summary>
internal static class BookChange
{
    /// <param name="edit">With the removals and additions made.</param>
    /// <param name="added">The rows that were added, in the order in which their faults are told.</param>
    public static ChangeResult Apply(
        SqliteConnection connection, string book, BookEdit edit, IReadOnlyList<BookRow> added, HistoryEntry entry, CancellationToken cancellation)
    {
        if (!edit.IsABook)
        {
            return TakeAway(connection, book, edit, entry, cancellation);
        }

        var errors = new ErrorList(BookStore.MaxErrors);
        var scopes = new ScopeReader(connection, edit.Draft);
        if (scopes.Find(edit.Draft, errors) is not { } scope)
        {
            return Sort(book, errors, added, new HashSet<(BookRow, string?)>());
        }

        var unread = added.SelectMany(row => TypedQuantities.Split(scope, row, errors).Select(unit => (row, (string?)unit))).ToHashSet();

        // Found again: a number that was typed with its unit can stand where others look.
        scope = scopes.Find(edit.Draft, errors)!; // found just before
        CellChecks.RunOn(scope, added, errors);
        UniquenessChecks.Run(scope, BaseFacts.Read(connection, scope), errors);
        BookChecks.Run(scope, errors, ImportWatch.Silent(cancellation));
        BookImages.Check(connection, edit.Draft, errors);
        if (errors.Any)
        {
            return Sort(book, errors, added, unread);
        }

        var steps = edit.Steps(added);
        if (steps.Count == 0)
        {
            return new ChangeResult.Written(null);
        }

        var reach = steps.Any(step => (BookTables.Referable.Contains(step.Table) && !IsPartOfItself(step)) || HasChangedPart(step));
        var users = reach ? BookUsers.Find(scopes, cancellation) : BookUsers.None;
        if (users.Total > 0)
        {
            return new ChangeResult.InUse(users.Users, users.Total);
        }

        Write(connection, scope, steps, reach ? users.Scopes : null, cancellation);
        return new ChangeResult.Written(HistoryRows.Insert(connection, entry, steps));
    }

    /// <summary>A part that is new, or keeps its number and kind: nothing referred to it before, or what does finds the same.</summary>
    private static bool IsPartOfItself(RowStep step) =>
        step.Table == BookTables.Parts && step.After is { } after
        && (step.Before is not { } before || before[step.Table.IndexOf("kind")] == after[step.Table.IndexOf("kind")]);

    /// <summary>Of which type a reading is follows from the part that its item is claimed to be.</summary>
    private static bool HasChangedPart(RowStep step) =>
        step is { Before: { } before, After: { } after } && step.Table == BookTables.Items
        && before[step.Table.IndexOf("part")] != after[step.Table.IndexOf("part")];

    /// <summary>Without the row that says which book it is there is no book: only where nothing is left of it, and nobody uses it.</summary>
    private static ChangeResult TakeAway(SqliteConnection connection, string book, BookEdit edit, HistoryEntry entry, CancellationToken cancellation)
    {
        var left = BookTables.All.SelectMany(table => edit.Draft.Declared(table))
            .Select(row => new BookUser(book, row.Table.File, RowKey.Of(row), "", $"it stands in the book {book}")).ToList();
        var users = BookRows.Using(connection, book)
            .Select(user => new BookUser(user, BookTables.Books.File, user, $"uses {book}", $"it uses the book {book}")).ToList();
        if (left.Count + users.Count > 0)
        {
            return new ChangeResult.InUse([.. users.Concat(left).Take(BookStore.MaxErrors)], left.Count + users.Count);
        }

        cancellation.ThrowIfCancellationRequested();
        BookRows.Delete(connection, book);
        return new ChangeResult.Written(HistoryRows.Insert(connection, entry, edit.Steps([])));
    }

    /// <summary>Rows that others can refer to carry over into computed columns elsewhere: then all is written anew, as an import does.</summary>
    /// <param name="users">The books that use this one; null where the change cannot reach them.</param>
    private static void Write(
        SqliteConnection connection, BookScope scope, IReadOnlyList<RowStep> steps, IReadOnlyList<BookScope>? users, CancellationToken cancellation)
    {
        if (users is null)
        {
            BookRows.Write(connection, scope, steps);
            return;
        }

        foreach (var changed in users.Prepend(scope))
        {
            BookRows.Delete(connection, changed.Own.Code);
        }

        foreach (var changed in users.Prepend(scope))
        {
            BookRows.Insert(connection, changed, changed.Own, ImportWatch.Silent(cancellation));
        }
    }

    /// <summary>Faults of rows that were sent are theirs; faults of any other row show that it is in use.</summary>
    /// <param name="unread">Cells of units that are still in the text of a quantity, which could not be split.</param>
    private static ChangeResult Sort(string book, ErrorList errors, IReadOnlyList<BookRow> added, IReadOnlySet<(BookRow Row, string? Column)> unread)
    {
        var own = errors.Kept.Where(kept => kept.Row is not null && added.Contains(kept.Row))
            .Select(kept => (Row: kept.Row!, kept.Error)) // filtered for null
            .Where(kept => !(kept.Error.Value is "" && unread.Contains((kept.Row, kept.Error.Column))))
            .DistinctBy(kept => (kept.Row, kept.Error.Column)) // the first fault of a cell explains the others
            .ToList();
        if (own.Count > 0)
        {
            return new ChangeResult.Faulty(own);
        }

        return new ChangeResult.InUse(
            [
                .. errors.Kept.Select(kept => BookUsers.ToUser(book, kept.Row, kept.Error)),
            ],
            errors.Total);
    }
}
