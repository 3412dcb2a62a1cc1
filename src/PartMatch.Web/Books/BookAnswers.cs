using PartMatch.Core.Families;
using PartMatch.Storage.Books;

namespace PartMatch.Web.Books;

/// <summary>Every parts book of the base, in ordinal order.</summary>
public sealed record BooksAnswer(NothingAsked Asked, IReadOnlyList<BookSummary> Books, string Permalink);

/// <summary>How an import ended that found no fault.</summary>
/// <param name="Outcome">What happened, or would happen.</param>
/// <param name="Counts">Rows per file, in ordinal order of the files.</param>
/// <param name="Permalink">Where the book is.</param>
public sealed record ImportAnswer(ImportAsked Asked, ImportResult Outcome, string Book, IReadOnlyList<FileCount> Counts, string Permalink);

public sealed record ImportAsked(ImportMode Mode, bool DryRun);

public enum ImportResult
{
    Added,
    Replaced,
    WouldAdd,
    WouldReplace,
}
