using Dapper;
using Microsoft.Data.Sqlite;
using PartMatch.Core.Catalogue;
using PartMatch.Storage.Books.Format;
using PartMatch.Storage.Books.Rows;
using PartMatch.Storage.Editing;
using PartMatch.Storage.History;

namespace PartMatch.Storage.Books;

/// <summary>A book in a list.</summary>
/// <param name="Uses">The books it uses directly, in ordinal order.</param>
/// <param name="Counts">Rows per file that has any, in ordinal order of the files.</param>
public sealed record BookSummary(
    string Book, BookKind Kind, string Title, string? Maker, IReadOnlyList<string> Uses, string? Licence, string? Note, IReadOnlyList<FileCount> Counts);

/// <summary>The parts books of the base: import and export.</summary>
public sealed class BookStore(Database database, TimeProvider? time = null)
{
    /// <summary>Most faults that one import lists.</summary>
    public const int MaxErrors = 200;

    // KiB. A whole list dirties more pages than SQLite keeps by itself, which then go to the disk and come back again and again.
    private const string ManyPages = "pragma cache_size = -131072";
    private const string UsualPages = "pragma cache_size = -2000; pragma shrink_memory";

    /// <summary>Every book, in ordinal order.</summary>
    public IReadOnlyList<BookSummary> List()
    {
        using var connection = database.Connect();
        using var transaction = connection.BeginTransaction(deferred: true);
        var codes = connection.Query<string>("select book from books order by book").AsList();
        return [.. codes.Select(code => Summary(connection, code))];
    }

    /// <summary>The book in canonical form with its pictures, or null when the base has none of that name.</summary>
    public BookFiles? Export(string book)
    {
        using var connection = database.Connect();
        using var transaction = connection.BeginTransaction(deferred: true);
        return BookRows.Find(connection, book, BookTables.All) is { } draft
            ? new BookFiles([.. CanonicalBook.Write(draft).Files, .. BookImages.Of(connection, draft)])
            : null;
    }

    /// <summary>Imports a book, all or nothing.</summary>
    /// <param name="dryRun">Report what would happen and store nothing.</param>
    /// <param name="note">Who brings it in, and why.</param>
    /// <param name="tell">Is told how far it is, every few thousand rows.</param>
    /// <exception cref="OperationCanceledException">Cancelled; nothing is stored.</exception>
    /// <exception cref="DatabaseException">The base could not be written, for example because the disk is full; nothing is stored.</exception>
    public ImportOutcome Import(
        BookFiles files, ImportMode mode, bool dryRun, CancellationToken cancellation, ChangeNote? note = null, Action<ImportProgress>? tell = null)
    {
        try
        {
            using var connection = database.Connect();
            var entry = new HistoryEntry("", note ?? ChangeNote.None, Act.Import, (time ?? TimeProvider.System).GetUtcNow());
            try
            {
                connection.Execute(ManyPages);
                return BookImport.Run(connection, files, mode, dryRun, entry, new ImportWatch(tell, cancellation), cancellation);
            }
            finally
            {
                connection.Execute(UsualPages); // the connection goes back to those that are kept
            }
        }
        catch (SqliteException exception)
        {
            throw DatabaseException.Explain(exception, database.Path);
        }
    }

    private static BookSummary Summary(SqliteConnection connection, string code)
    {
        var head = connection.QuerySingle<HeadRow>("select kind, title, maker, uses, licence, note from books where book = @code", new { code });
        return new BookSummary(
            code, Codes.Get<BookKind>(head.Kind), head.Title, head.Maker, head.Uses?.Split('|') ?? [], head.Licence, head.Note, BookRows.Counts(connection, code));
    }

    private sealed record HeadRow(string Kind, string Title, string? Maker, string? Uses, string? Licence, string? Note);
}
