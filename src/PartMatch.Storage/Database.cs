namespace PartMatch.Storage;

/// <summary>One SQLite file. Safe to use from several threads; several processes may hold it open.</summary>
public sealed class Database : IDisposable
{
    private Database(string path, bool wasCreated) => (Path, WasCreated) = (path, wasCreated);

    public string Path { get; }

    /// <summary>Did <see cref="Open"/> create the file?</summary>
    public bool WasCreated { get; }

    /// <summary>Opens the base, creates the file when absent, and brings an older schema up to this program's.</summary>
    /// <exception cref="DatabaseException">The file is not a database, is of a newer program, or cannot be opened or written.</exception>
    public static Database Open(string path) => throw new NotImplementedException(path);

    public void Dispose()
    {
    }
}
