using Microsoft.Data.Sqlite;

namespace PartMatch.Storage;

/// <summary>The base cannot be opened, read or written; the message says what was found, what was expected, where, and how to mend it.</summary>
public sealed class DatabaseException : Exception
{
    public DatabaseException(string message)
        : base(message)
    {
    }

    public DatabaseException(string message, Exception inner)
        : base(message, inner)
    {
    }

    public DatabaseFault Fault { get; init; }

    internal static DatabaseException Explain(SqliteException exception, string path) => Explain(exception, FaultOf(exception), path);

    private static DatabaseException Explain(SqliteException exception, DatabaseFault fault, string path) => new(
        fault switch
        {
            DatabaseFault.NotADatabase => $"'{path}' is not a database: expected a file that this program has made. Give the path of another file; this one was left alone.",
            DatabaseFault.CannotOpen => $"'{path}' cannot be opened or created: the folder must exist and be writable for the user who runs the program.",
            DatabaseFault.ReadOnly => $"'{path}' cannot be written: make the file and its folder writable for the user who runs the program.",
            DatabaseFault.Busy => $"'{path}' is being written by another program and stayed so: try again, or end that program.",
            DatabaseFault.Full => $"No room is left for '{path}': free some space on its disk. Nothing of the last change was stored.",
            DatabaseFault.Corrupt => $"'{path}' is damaged: restore it from a backup.",
            DatabaseFault.InputOutput => $"The disk under '{path}' reports an error ({exception.Message}): check the disk and its space.",
            _ => $"The database '{path}' reports: {exception.Message}",
        },
        exception)
    {
        Fault = fault,
    };

    private static DatabaseFault FaultOf(SqliteException exception) =>
        Enum.IsDefined((DatabaseFault)exception.SqliteErrorCode) ? (DatabaseFault)exception.SqliteErrorCode : DatabaseFault.Other;
}

/// <summary>What the database complained of.</summary>
/// <remarks>The numbers are SQLite's primary result codes, https://www.sqlite.org/rescode.html</remarks>
public enum DatabaseFault
{
    Other = 0,
    Busy = 5,
    ReadOnly = 8,
    InputOutput = 10,
    Corrupt = 11,
    Full = 13,
    CannotOpen = 14,
    NotADatabase = 26,
}
