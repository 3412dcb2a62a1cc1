using PartMatch.Core.Catalogue;

namespace PartMatch.Storage.Books;

/// <summary>A book in a list.</summary>
/// <param name="Uses">The books it uses directly, in ordinal order.</param>
/// <param name="Counts">Rows per file that has any, in ordinal order of the files.</param>
public sealed record BookSummary(
    string Book, BookKind Kind, string Title, string? Maker, IReadOnlyList<string> Uses, string? Licence, string? Note, IReadOnlyList<FileCount> Counts);

/// <summary>The parts books of the base: import and export.</summary>
public sealed class BookStore(Database database)
{
    /// <summary>Most faults that one import lists.</summary>
    public const int MaxErrors = 200;

    /// <summary>Every book, in ordinal order.</summary>
    public IReadOnlyList<BookSummary> List() => throw new NotImplementedException(database.Path);

    /// <summary>The book in canonical form, or null when the base has none of that name.</summary>
    public BookFiles? Export(string book) => throw new NotImplementedException(book);

    /// <summary>Imports a book, all or nothing.</summary>
    /// <param name="dryRun">Report what would happen and store nothing.</param>
    /// <exception cref="OperationCanceledException">Cancelled; nothing is stored.</exception>
    public ImportOutcome Import(BookFiles files, ImportMode mode, bool dryRun, CancellationToken cancellation) => throw new NotImplementedException();
}
