using Microsoft.Data.Sqlite;

namespace PartMatch.Storage;

/// <summary>The base cannot be opened, read or written; the message says what was found, what was expected, where, and how to mend it.</summary>
public sealed class DatabaseException : Exception
{
    // SQLite result codes, https://www.sqlite.org/rescode.html
    private const int Busy = 5;
    private const int ReadOnly = 8;
    private const int InputOutput = 10;
    private const int Corrupt = 11;
    private const int Full = 13;
    private const int CannotOpen = 14;
    private const int NotADatabase = 26;

    public DatabaseException(string message)
        : base(message)
    {
    }

    public DatabaseException(string message, Exception inner)
        : base(message, inner)
    {
    }

    internal static DatabaseException Explain(SqliteException exception, string path) => new(
        exception.SqliteErrorCode switch
        {
            NotADatabase => $"'{path}' is not a database: expected a file that this program has made. Give the path of another file; this one was left alone.",
            CannotOpen => $"'{path}' cannot be opened or created: the folder must exist and be writable for the user who runs the program.",
            ReadOnly => $"'{path}' cannot be written: make the file and its folder writable for the user who runs the program.",
            Busy => $"'{path}' is being written by another program and stayed so: try again, or end that program.",
            Full => $"No room is left for '{path}': free some space on its disk. Nothing of the last change was stored.",
            Corrupt => $"'{path}' is damaged: restore it from a backup.",
            InputOutput => $"The disk under '{path}' reports an error ({exception.Message}): check the disk and its space.",
            _ => $"The database '{path}' reports: {exception.Message}",
        },
        exception);
}
