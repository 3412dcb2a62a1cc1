using Microsoft.Data.Sqlite;
using PartMatch.Storage.Books.Checks;
using PartMatch.Storage.Books.Format;
using PartMatch.Storage.Books.Rows;
using PartMatch.Storage.Editing;
using PartMatch.Storage.History;

namespace PartMatch.Storage.Books;

/// <summary>One import: read, judge, and only then write, in one transaction.</summary>
internal static class BookImport
{
    public static ImportOutcome Run(
        SqliteConnection connection, BookFiles files, ImportMode mode, bool dryRun, HistoryEntry entry, ImportWatch watch, CancellationToken cancellation)
    {
        var errors = new ErrorList(BookStore.MaxErrors);
        if (DraftReader.Read(files, errors, watch) is not { } draft)
        {
            return errors.ToRefused();
        }

        CellChecks.Run(draft, errors, watch);

        // Judged and written under one lock: what was found there still holds when it is written.
        using var transaction = connection.BeginTransaction(deferred: dryRun);
        var isThere = BookRows.Exists(connection, draft.Code);
        if (isThere && mode == ImportMode.Add)
        {
            return new ImportOutcome.AlreadyThere(draft.Code);
        }

        var scopes = new ScopeReader(connection, draft);
        var scope = scopes.Find(draft, errors);
        if (scope is not null)
        {
            UniquenessChecks.Run(scope, BaseFacts.Read(connection, scope), errors);
            BookChecks.Run(scope, errors, watch);
            BookImages.Check(connection, draft, errors);
        }

        if (scope is null || errors.Any)
        {
            return errors.ToRefused();
        }

        var users = isThere ? BookUsers.Find(scopes, cancellation) : BookUsers.None;
        if (users.Total > 0)
        {
            return new ImportOutcome.InUse(draft.Code, users.Users, users.Total);
        }

        if (dryRun)
        {
            return new ImportOutcome.Checked(draft.Code, isThere, draft.Counts());
        }

        var before = BookRows.Find(connection, draft.Code, BookTables.All);
        var inOrder = draft.InOrder();
        watch.Begin(ImportStage.Storing, draft.Count + users.Scopes.Sum(user => user.Own.Count));
        Write(connection, scope, inOrder, users, watch);
        BookImages.Store(connection, draft, entry.At);
        watch.Begin(ImportStage.Recording, draft.Count);
        HistoryRows.Insert(connection, entry with { Book = draft.Code }, BookSteps.Between(before, inOrder), watch);
        watch.Begin(ImportStage.Finishing, draft.Count);
        transaction.Commit();
        return new ImportOutcome.Imported(draft.Code, isThere, draft.Counts());
    }

    /// <summary>The books that use this one are stored again: their computed columns depend on it.</summary>
    private static void Write(SqliteConnection connection, BookScope scope, BookDraft inOrder, BookUsers users, ImportWatch watch)
    {
        foreach (var changed in users.Scopes.Prepend(scope))
        {
            BookRows.Delete(connection, changed.Own.Code);
        }

        BookRows.Insert(connection, scope, inOrder, watch);
        foreach (var changed in users.Scopes)
        {
            BookRows.Insert(connection, changed, changed.Own, watch);
        }
    }
}
