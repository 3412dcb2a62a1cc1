using Dapper;
using Microsoft.Data.Sqlite;

namespace PartMatch.Storage.Keeping;

/// <summary>A base as a file that is only looked at or copied: never made, never brought up to a newer schema.</summary>
internal static class BaseFile
{
    /// <summary>Short: whoever types a command waits for it.</summary>
    private const int BusySeconds = 2;

    /// <summary>The files that lie beside a base while it is open, and after a program that had it open was killed.</summary>
    public static IReadOnlyList<string> Companions(string path) => [path + "-wal", path + "-shm", path + "-journal"];

    public static SqliteConnection Open(string path, SqliteOpenMode mode = SqliteOpenMode.ReadWrite)
    {
        // Unpooled: closing has to let go of the file.
        var settings = new SqliteConnectionStringBuilder { DataSource = path, Mode = mode, Pooling = false, DefaultTimeout = BusySeconds };
        var connection = new SqliteConnection(settings.ConnectionString);
        connection.Open();
        connection.Execute("pragma synchronous = full");
        return connection;
    }

    public static long Schema(SqliteConnection connection) => connection.ExecuteScalar<long>("pragma user_version");

    /// <summary>Is it a base of this program, of a schema that it knows? The refusal, or null.</summary>
    public static KeepingRefused? FindStranger(SqliteConnection connection, string path)
    {
        if (connection.ExecuteScalar<long>("pragma application_id") != Migrator.ApplicationId)
        {
            return new(
                KeepingRefusal.NotOurs, $"'{path}' is a database of another program: expected one that this program has made. Give the path of another file.");
        }

        var newest = Migration.Embedded()[^1].Number;
        return Schema(connection) is var schema && schema >= 1 && schema <= newest
            ? null
            : new(
                KeepingRefusal.NewerSchema,
                $"'{path}' has schema {schema}, this program knows schemas 1 to {newest}: it was written by a newer program. Use that one.");
    }

    /// <summary>What SQLite finds wrong in the file: pages, rows, indexes, and references to rows that are not there.</summary>
    public static IReadOnlyList<string> FaultsOf(SqliteConnection connection, int most)
    {
        List<string> faults = [];
        try
        {
            faults.AddRange(connection.Query<string>($"pragma integrity_check({most})", buffered: false)
                .Where(fault => fault != "ok").Select(fault => fault.ReplaceLineEndings(" ")));
            if (faults.Count == 0)
            {
                faults.AddRange(connection.Query<string>(
                    """
                    select 'a row of ' || "table" || ' refers to a row of ' || parent || ' that is not there'
                    from pragma_foreign_key_check
                    limit @most
                    """,
                    new { most }));
            }
        }
        catch (SqliteException exception) when (DatabaseException.Explain(exception, connection.DataSource).Fault == DatabaseFault.Corrupt)
        {
            // Some damage ends the check itself.
            faults.Add(exception.Message);
        }

        return faults;
    }

    /// <summary>Copies the source as it is at one moment into a new file that stands for itself, whole and on the disk; the refusal, or null.</summary>
    /// <param name="name">What the source is called in the refusal.</param>
    public static KeepingRefused? Copy(SqliteConnection source, string draft, string name)
    {
        using (var copy = Open(draft, SqliteOpenMode.ReadWriteCreate))
        {
            source.BackupDatabase(copy);

            // One file: nothing of it is left in a second one that may be forgotten.
            copy.Execute("pragma journal_mode = delete");
            if (FaultsOf(copy, most: 1) is [var fault, ..])
            {
                return new(KeepingRefusal.Damaged, $"'{name}' is damaged ({fault}): expected a whole base. Take an older backup.");
            }
        }

        Sync(draft);
        return null;
    }

    public static void Sync(string path)
    {
        using var file = File.OpenHandle(path, FileMode.Open, FileAccess.ReadWrite);
        RandomAccess.FlushToDisk(file);
    }

    public static void Delete(string path)
    {
        foreach (var file in Companions(path).Prepend(path))
        {
            File.Delete(file);
        }
    }

    /// <summary>Does it, and turns what the disk or the database has to say into a refusal.</summary>
    public static KeepingOutcome Attempt(string path, Func<KeepingOutcome> act)
    {
        try
        {
            return act();
        }
        catch (SqliteException exception)
        {
            var fault = DatabaseException.Explain(exception, path);
            return new KeepingRefused(
                fault.Fault switch
                {
                    DatabaseFault.NotADatabase => KeepingRefusal.NotOurs,
                    DatabaseFault.Corrupt => KeepingRefusal.Damaged,
                    DatabaseFault.Busy => KeepingRefusal.InUse,
                    _ => KeepingRefusal.CannotBeDone,
                },
                fault.Message);
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
        {
            return new KeepingRefused(
                KeepingRefusal.CannotBeDone, $"The disk says: {exception.Message.TrimEnd('.')}. Check the folder, its rights and its space.");
        }
    }
}
