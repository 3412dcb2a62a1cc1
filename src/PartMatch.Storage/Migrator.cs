using System.Globalization;
using Dapper;
using Microsoft.Data.Sqlite;

namespace PartMatch.Storage;

/// <summary>One step of the schema.</summary>
/// <param name="Number">1 for the first; the schema's version once the step is done.</param>
internal sealed record Migration(int Number, string Name, string Sql)
{
    private const string Prefix = "PartMatch.Storage.Migrations.";

    /// <summary>The steps this program carries, in order. A step that was ever released is never changed; the schema only grows.</summary>
    public static IReadOnlyList<Migration> Embedded() =>
    [
        .. typeof(Migration).Assembly.GetManifestResourceNames()
            .Where(name => name.StartsWith(Prefix, StringComparison.Ordinal))
            .Order(StringComparer.Ordinal)
            .Select(name => new Migration(int.Parse(name.AsSpan(Prefix.Length, 4), CultureInfo.InvariantCulture), name[Prefix.Length..], Text(name))),
    ];

    private static string Text(string name)
    {
        // The name came from the assembly's own list, so the stream is there.
        using var reader = new StreamReader(typeof(Migration).Assembly.GetManifestResourceStream(name)!);
        return reader.ReadToEnd();
    }
}

/// <summary>Brings a database to the newest step. A step is done whole or not at all.</summary>
internal static class Migrator
{
    /// <summary>Written into the file's header; tells this program's databases from others. The letters PART.</summary>
    public const int ApplicationId = 0x50415254;

    /// <returns>Was the database new?</returns>
    /// <exception cref="DatabaseException">It belongs to another program, or to a newer one of this.</exception>
    public static bool Run(SqliteConnection connection, IReadOnlyList<Migration> steps, string path)
    {
        Refuse(connection, steps, path);
        connection.Execute("pragma journal_mode = wal");
        var wasNew = false;
        foreach (var step in steps)
        {
            using var transaction = connection.BeginTransaction(deferred: false);

            // Read inside the transaction: another process may have done the step meanwhile.
            if (Version(connection) < step.Number)
            {
                wasNew |= step.Number == 1;
                connection.Execute(step.Sql, transaction: transaction);
                connection.Execute(string.Create(CultureInfo.InvariantCulture, $"pragma user_version = {step.Number}"), transaction: transaction);
                connection.Execute(string.Create(CultureInfo.InvariantCulture, $"pragma application_id = {ApplicationId}"), transaction: transaction);
                transaction.Commit();
            }
        }

        return wasNew;
    }

    private static long Version(SqliteConnection connection) => connection.ExecuteScalar<long>("pragma user_version");

    private static void Refuse(SqliteConnection connection, IReadOnlyList<Migration> steps, string path)
    {
        var id = connection.ExecuteScalar<long>("pragma application_id");
        var tables = connection.ExecuteScalar<long>("select count(*) from sqlite_schema");
        if (id != ApplicationId && tables > 0)
        {
            throw new DatabaseException($"'{path}' is a database of another program: expected one that this program has made. Give the path of another file.");
        }

        var version = Version(connection);
        if (version > steps[^1].Number)
        {
            throw new DatabaseException(
                $"'{path}' has schema {version}, this program knows schemas up to {steps[^1].Number}: it was written by a newer program. Use that one.");
        }
    }
}
