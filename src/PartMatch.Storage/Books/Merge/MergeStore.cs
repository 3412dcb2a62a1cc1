using Microsoft.Data.Sqlite;
using PartMatch.Storage.Books.Checks;
using PartMatch.Storage.Books.Format;
using PartMatch.Storage.Books.Rows;
using PartMatch.Storage.Editing;
using PartMatch.Storage.History;

namespace PartMatch.Storage.Books.Merge;

/// <summary>Takes the rows of another state of a book into the base: what is new is added, what differs is decided by a person, nothing is removed.</summary>
public sealed class MergeStore(Database database, TimeProvider time)
{
    /// <summary>Most rows of one file that are listed.</summary>
    public const int MaxRowsShown = 50;

    /// <param name="there">The other state.</param>
    /// <param name="decisions">The conflicts as filled in; null when nobody has decided yet.</param>
    /// <exception cref="DatabaseException">The base could not be written; nothing is stored.</exception>
    public MergeOutcome Merge(string book, BookFiles there, BookFile? decisions, bool dryRun, ChangeNote note, CancellationToken cancellation)
    {
        var errors = new ErrorList(BookStore.MaxErrors);
        if (DraftReader.Read(there, errors, ImportWatch.Silent(cancellation)) is not { } other)
        {
            return Refused(errors);
        }

        CellChecks.Run(other, errors, ImportWatch.Silent(cancellation));
        if (errors.Any)
        {
            return Refused(errors);
        }

        if (other.Code != book)
        {
            return new MergeOutcome.OtherBook(other.Code);
        }

        try
        {
            using var connection = database.Connect();
            using var transaction = connection.BeginTransaction(deferred: false);
            var outcome = Merge(connection, book, other, decisions, new HistoryEntry(book, note, Act.Merge, time.GetUtcNow()), cancellation);
            if (outcome is MergeOutcome.Merged merged)
            {
                if (dryRun)
                {
                    return new MergeOutcome.Checked(merged.Counts, merged.Files);
                }

                transaction.Commit();
            }

            return outcome;
        }
        catch (SqliteException exception)
        {
            throw DatabaseException.Explain(exception, database.Path);
        }
    }

    private static MergeOutcome Merge(
        SqliteConnection connection, string book, BookDraft there, BookFile? decisions, HistoryEntry entry, CancellationToken cancellation)
    {
        if (BookRows.Find(connection, book, BookTables.All) is not { } here)
        {
            return new MergeOutcome.NoBook(book);
        }

        var edit = new BookEdit(here);
        var meeting = new BookMeeting(edit.Draft, there);
        var errors = new ErrorList(BookStore.MaxErrors);
        var decided = decisions is null ? new Dictionary<MergeConflict, bool>() : MergeDecisions.Read(decisions, meeting.Conflicts, errors);
        if (errors.Any)
        {
            return Refused(errors);
        }

        var open = meeting.Conflicts.Count(conflict => !decided.ContainsKey(conflict));
        if (open > 0)
        {
            return new MergeOutcome.Undecided(meeting.Conflicts, open, MergeDecisions.Write(meeting.Conflicts, decided));
        }

        BookImages.Store(connection, there, entry.At);
        var added = meeting.Decide(edit, decided);
        var counts = meeting.Count(decided);
        return BookChange.Apply(connection, book, edit, added, entry, cancellation) switch
        {
            ChangeResult.Written written => new MergeOutcome.Merged(written.Change, counts, Tell(edit.Steps(added))),
            ChangeResult.Faulty faulty => new MergeOutcome.Refused([.. faulty.Errors.Select(one => one.Error)], faulty.Errors.Count),
            ChangeResult.InUse inUse => new MergeOutcome.InUse(inUse.Users, inUse.Total),
            var other => throw new InvalidOperationException($"A merge ended as {other.GetType().Name}, which no outcome names."),
        };
    }

    private static IReadOnlyList<MergeFile> Tell(IReadOnlyList<RowStep> steps) =>
    [
        .. steps.GroupBy(step => step.Table.File, StringComparer.Ordinal).Select(file => new MergeFile(
            file.Key, file.Count(step => step.Before is null), file.Count(step => step.Before is not null), [.. file.Take(MaxRowsShown).Select(RowTold.Of)])),
    ];

    private static MergeOutcome.Refused Refused(ErrorList errors)
    {
        var refused = errors.ToRefused();
        return new MergeOutcome.Refused(refused.Errors, refused.Total);
    }
}
