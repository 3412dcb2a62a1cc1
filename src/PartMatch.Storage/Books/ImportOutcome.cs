namespace PartMatch.Storage.Books;

/// <summary>What to do with a book that the base already holds.</summary>
public enum ImportMode
{
    Add,
    Replace,
}

/// <summary>One fault of an imported book.</summary>
/// <param name="File">For example <c>values.csv</c>.</param>
/// <param name="Line">Physical line where the row starts, the header being line 1; null when the fault is of the file as a whole.</param>
/// <param name="Column">Null when the fault is of the row as a whole.</param>
/// <param name="Value">What was found; shortened when long.</param>
/// <param name="Reason">What is wrong, and what was expected.</param>
/// <param name="Suggestion">How to mend it; null when there is nothing to suggest.</param>
public sealed record ImportError(string File, int? Line, string? Column, string? Value, string Reason, string? Suggestion);

/// <summary>Rows of one file.</summary>
public sealed record FileCount(string File, int Rows);

/// <summary>Something outside the book that refers to what a replacement would remove.</summary>
/// <param name="Book">The book that refers.</param>
/// <param name="Key">The key of the referring row, its columns joined by a comma.</param>
/// <param name="Uses">The cell that refers, as column and value; empty when it is the row as a whole.</param>
/// <param name="Reason">What would be wrong with it.</param>
public sealed record BookUser(string Book, string File, string Key, string Uses, string Reason);

/// <summary>How an import ended; one of the nested cases.</summary>
public abstract record ImportOutcome
{
    private ImportOutcome()
    {
    }

    /// <summary>Stored, all of it.</summary>
    /// <param name="Replaced">Did it take the place of an older state of the same book?</param>
    /// <param name="Counts">Per file that has rows, in ordinal order.</param>
    public sealed record Imported(string Book, bool Replaced, IReadOnlyList<FileCount> Counts) : ImportOutcome;

    /// <summary>A dry run found no fault; nothing is stored.</summary>
    public sealed record Checked(string Book, bool WouldReplace, IReadOnlyList<FileCount> Counts) : ImportOutcome;

    /// <summary>Faults were found; nothing is stored.</summary>
    /// <param name="Errors">The first that were found, at most <see cref="BookStore.MaxErrors"/>, in order of file and line.</param>
    /// <param name="Total">How many faults there are in all.</param>
    /// <param name="Capped">Are there more than are listed?</param>
    public sealed record Refused(IReadOnlyList<ImportError> Errors, int Total, bool Capped) : ImportOutcome;

    /// <summary>The base holds a book of that name, and the mode was not to replace it.</summary>
    public sealed record AlreadyThere(string Book) : ImportOutcome;

    /// <summary>Other books refer to rows that the replacement lacks; nothing is stored.</summary>
    /// <param name="Users">In ordinal order, at most <see cref="BookStore.MaxErrors"/>.</param>
    public sealed record InUse(string Book, IReadOnlyList<BookUser> Users, int Total) : ImportOutcome;
}
