using Dapper;
using Microsoft.Data.Sqlite;
using PartMatch.Storage.Books;
using PartMatch.Storage.Keeping;
using PartMatch.Storage.Tests.Books;
using Xunit;

namespace PartMatch.Storage.Tests.Keeping;

/// <summary>A base that is closed, so that commands can be tried on its file.</summary>
internal sealed class KeptBase : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("partmatch-keep-");

    public string Base => PathOf("base.db");

    public string Backup => PathOf("backup.db");

    /// <summary>Names of all files of the folder, in order.</summary>
    public IReadOnlyList<string> Files => [.. _folder.EnumerateFiles().Select(file => file.Name).Order(StringComparer.Ordinal)];

    public string PathOf(string name) => Path.Combine(_folder.FullName, name);

    public void Dispose() => _folder.Delete(recursive: true);

    /// <summary>Imports the two sample books into the base, the family's title as given, and closes it.</summary>
    public KeptBase Fill(string title = "Lark 2")
    {
        using var database = Database.Open(Base);
        var books = new BookStore(database);
        foreach (var book in new[] { SampleBook.Common(), SampleBook.Family().Change("book.csv", "Lark 2", title) })
        {
            Assert.IsType<ImportOutcome.Imported>(books.Import(book.Files, ImportMode.Replace, dryRun: false, TestContext.Current.CancellationToken));
        }

        return this;
    }

    /// <summary>Every file of every book of a base, in canonical form.</summary>
    public static IReadOnlyList<(string File, string Content)> Export(string path)
    {
        using var database = Database.Open(path);
        var books = new BookStore(database);
        return
        [
            .. from book in books.List()
               from file in books.Export(book.Book)!.Files // it was just listed
               select ($"{book.Book}/{file.Name}", Convert.ToHexString(file.Content.Span)),
        ];
    }

    public static void Execute(string path, string sql)
    {
        using var connection = new SqliteConnection($"Data Source={path};Pooling=False;Foreign Keys=False");
        connection.Open();
        connection.Execute(sql);
    }

    public static T Read<T>(string path, string sql)
    {
        using var connection = new SqliteConnection($"Data Source={path};Pooling=False");
        connection.Open();
        return connection.QuerySingle<T>(sql);
    }

    /// <summary>Overwrites the first page of a table.</summary>
    public static void SpoilTable(string path, string table)
    {
        var page = Read<long>(path, $"select rootpage from sqlite_schema where name = '{table}'");
        using var file = File.OpenWrite(path);
        file.Position = (page - 1) * 4096;
        file.Write(Enumerable.Repeat((byte)0xA5, 4096).ToArray());
    }

    public static T Done<T>(KeepingOutcome outcome)
        where T : KeepingOutcome
    {
        Assert.True(outcome is T, outcome.ToString());
        return (T)outcome;
    }

    public static string Refused(KeepingRefusal reason, KeepingOutcome outcome)
    {
        var refused = Assert.IsType<KeepingRefused>(outcome);
        Assert.True(reason == refused.Reason, refused.ToString());
        return refused.Sentence;
    }
}
