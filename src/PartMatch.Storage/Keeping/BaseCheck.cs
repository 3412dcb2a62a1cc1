using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using Dapper;
using Microsoft.Data.Sqlite;
using PartMatch.Storage.Books;
using PartMatch.Storage.Builds;

namespace PartMatch.Storage.Keeping;

/// <summary>Is the base whole, and would every row of it still be taken? Changes nothing; a server may go on writing.</summary>
public static class BaseCheck
{
    /// <summary>Most faults that one check lists.</summary>
    public const int MaxFaults = 100;

    public static KeepingOutcome Run(string basePath, CancellationToken cancellation)
    {
        var path = Path.GetFullPath(basePath);
        return File.Exists(path)
            ? BaseFile.Attempt(path, () => Check(path, cancellation))
            : new KeepingRefused(KeepingRefusal.NoFile, $"There is no base '{path}': expected the one to check. Set PartMatch:Database to it.");
    }

    private static KeepingOutcome Check(string path, CancellationToken cancellation)
    {
        using var connection = BaseFile.Open(path);
        if (BaseFile.FindStranger(connection, path) is { } stranger)
        {
            return stranger;
        }

        var schema = BaseFile.Schema(connection);
        var isNewest = schema == Migration.Embedded()[^1].Number;
        var faults = BaseFile.FaultsOf(connection, MaxFaults);
        if (faults.Count == 0)
        {
            faults = [.. ImageFaults(connection).Concat(BuildFaults(connection)).Concat(isNewest ? RowFaults(path, cancellation) : []).Take(MaxFaults)];
        }

        return faults.Count > 0
            ? new Faulty(path, faults)
            : new Sound(path, new FileInfo(path).Length, schema, connection.ExecuteScalar<long>("select count(*) from books"), isNewest);
    }

    /// <summary>A picture whose bytes are not those that its name was made of.</summary>
    private static IEnumerable<string> ImageFaults(SqliteConnection connection)
    {
        if (connection.ExecuteScalar<long>("select count(*) from sqlite_schema where name = 'images'") == 0)
        {
            yield break;
        }

        foreach (var (image, bytes) in connection.Query<(string, byte[])>("select image, bytes from images order by image", buffered: false))
        {
            if (!image.StartsWith(Convert.ToHexStringLower(SHA256.HashData(bytes)), StringComparison.Ordinal))
            {
                yield return $"the picture {image} has other bytes than its name was made of";
            }
        }
    }

    /// <summary>A build that can no longer be read as one.</summary>
    private static IEnumerable<string> BuildFaults(SqliteConnection connection)
    {
        if (connection.ExecuteScalar<long>("select count(*) from sqlite_schema where name = 'build_versions'") == 0)
        {
            yield break;
        }

        foreach (var (build, version, document) in connection.Query<(string, long, string)>(
            "select build, version, document from build_versions where document is not null order by build, version", buffered: false))
        {
            if (BuildDocument.Read(Encoding.UTF8.GetBytes(document)) is not BuildReading.Read)
            {
                yield return string.Create(CultureInfo.InvariantCulture, $"version {version} of the build {build} is no document of a build");
            }
        }
    }

    /// <summary>Each book taken out and read again as if it came from outside.</summary>
    private static IEnumerable<string> RowFaults(string path, CancellationToken cancellation)
    {
        using var database = Database.Open(path);
        var books = new BookStore(database);
        foreach (var book in books.List())
        {
            if (books.Export(book.Book) is not { } files)
            {
                continue; // removed meanwhile: a server may go on writing
            }

            foreach (var fault in FaultsIn(book.Book, books.Import(files, ImportMode.Replace, dryRun: true, cancellation)))
            {
                yield return fault;
            }
        }
    }

    private static IEnumerable<string> FaultsIn(string book, ImportOutcome outcome) => outcome switch
    {
        ImportOutcome.Checked => [],
        ImportOutcome.Refused refused => refused.Errors.Select(error =>
            $"book {book}, {error.File} line {error.Line} column {error.Column}: found '{error.Value}': {error.Reason}"),

        // Told where the book that uses this one is looked at itself.
        ImportOutcome.InUse => [],
        var other => throw new InvalidOperationException($"A check of the book {book} ended as {other.GetType().Name}, which no fault names."),
    };
}
