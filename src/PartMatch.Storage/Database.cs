using Dapper;
using Microsoft.Data.Sqlite;

namespace PartMatch.Storage;

/// <summary>One SQLite file. Safe to use from several threads; several processes may hold it open.</summary>
public sealed class Database : IDisposable
{
    /// <summary>How long a writer waits for another one before it gives up.</summary>
    private const int BusySeconds = 30;

    private readonly string _connectionString;
    private readonly SqliteConnection _watch;
    private readonly SqliteCommand _version;
    private readonly Lock _watchLock = new();

    // Columns are snake_case, row records are not.
    static Database() => DefaultTypeMap.MatchNamesWithUnderscores = true;

    private Database(string path, string connectionString, bool wasCreated)
    {
        (Path, _connectionString, WasCreated) = (path, connectionString, wasCreated);
        _watch = Connect();
        _version = _watch.CreateCommand();
        _version.CommandText = "pragma data_version"; // asked at every request: prepared once

        // Once it has read, SQLite keeps a lock on the file for it: a restore can see that somebody has the base open.
        Version();
    }

    public string Path { get; }

    /// <summary>Did <see cref="Open"/> make a new base?</summary>
    public bool WasCreated { get; }

    /// <summary>Opens the base, creates the file when absent, and brings an older schema up to this program's.</summary>
    /// <exception cref="DatabaseException">The file is not a database, is of a newer program, or cannot be opened or written.</exception>
    public static Database Open(string path)
    {
        var full = System.IO.Path.GetFullPath(path);
        if (Directory.Exists(full))
        {
            throw new DatabaseException($"'{full}' is a folder, expected the path of a database file: add a file name.");
        }

        if (System.IO.Path.GetDirectoryName(full) is { } folder && !Directory.Exists(folder))
        {
            throw new DatabaseException($"The folder '{folder}' for the database does not exist: create it, or give another path.");
        }

        var connectionString = new SqliteConnectionStringBuilder
        {
            DataSource = full,
            ForeignKeys = true,
            DefaultTimeout = BusySeconds,
        }.ConnectionString;
        try
        {
            using var connection = Connect(connectionString);
            var wasCreated = Migrator.Run(connection, Migration.Embedded(), full);
            return new Database(full, connectionString, wasCreated);
        }
        catch (SqliteException exception)
        {
            throw DatabaseException.Explain(exception, full);
        }
    }

    public void Dispose()
    {
        _version.Dispose();
        _watch.Dispose();
        using var pooled = new SqliteConnection(_connectionString);
        SqliteConnection.ClearPool(pooled);
    }

    internal SqliteConnection Connect() => Connect(_connectionString);

    /// <summary>A number that differs from the last one whenever anybody has committed a change since, in this process or another.</summary>
    /// <remarks>SQLite keeps it per connection and leaves out the connection's own commits: so the one that watches never writes.</remarks>
    internal long Version()
    {
        lock (_watchLock)
        {
            return (long)_version.ExecuteScalar()!; // the pragma always gives a number
        }
    }

    private static SqliteConnection Connect(string connectionString)
    {
        var connection = new SqliteConnection(connectionString);
        connection.Open();

        // A write that was answered must survive a power cut: in WAL mode only FULL waits for the disk on every commit.
        // What a large import leaves of the log beyond 64 MiB is given back at the next write.
        connection.Execute("pragma synchronous = full; pragma journal_size_limit = 67108864");
        return connection;
    }
}
