namespace PartMatch.Storage;

/// <summary>The base cannot be opened or read; the message says what was found, what was expected, where, and how to mend it.</summary>
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
}
