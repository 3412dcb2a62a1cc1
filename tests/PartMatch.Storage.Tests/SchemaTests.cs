using System.Text;
using System.Text.RegularExpressions;
using Dapper;
using Microsoft.Data.Sqlite;
using PartMatch.Storage.Books;
using PartMatch.Storage.Editing;
using PartMatch.Storage.History;
using PartMatch.Storage.Keeping;
using PartMatch.Storage.Tests.Books;
using Xunit;

namespace PartMatch.Storage.Tests;

/// <summary>Bases as older programs left them, kept as SQL under <c>Schemas</c>: each is brought up to date with its rows.</summary>
public sealed class SchemaTests : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("partmatch-test-");

    private string Base => Path.Combine(_folder.FullName, "base.db");

    /// <summary>The schemas that somebody may still have; one more with every release that has a new one. Schemas 6, 10 and 13 were never released by themselves.</summary>
    public static TheoryData<int> Kept => [1, 2, 3, 4, 5, 7, 8, 9, 11, 12, 14, 15, 16];

    public void Dispose() => _folder.Delete(recursive: true);

    [Theory]
    [MemberData(nameof(Kept))]
    public void Kept_base_has_the_schema_that_its_migrations_make(int schema)
    {
        using var kept = Load(schema);
        using var made = new SqliteConnection("Data Source=:memory:");
        made.Open();
        Migrator.Run(made, [.. Migration.Embedded().Take(schema)], "memory");

        // A step that was released and is changed afterwards would part the bases of old users from those of new ones.
        Assert.Equal(Objects(made), Objects(kept));
        Assert.Equal(schema, kept.ExecuteScalar<int>("pragma user_version"));
        Assert.Empty(kept.Query("pragma foreign_key_check"));
    }

    [Theory]
    [MemberData(nameof(Kept))]
    public void Older_base_is_brought_up_to_date_with_its_rows(int schema)
    {
        Dictionary<string, List<string>> before;
        using (var kept = Load(schema))
        {
            before = Tables(kept).ToDictionary(table => table, table => Rows(kept, table, Columns(kept, table)));
            Assert.True(before.Values.Sum(rows => rows.Count) > 30, "the kept base has rows");
        }

        using (var database = Database.Open(Base))
        {
            Assert.False(database.WasCreated);
            using var connection = database.Connect();
            using var old = Load(schema, "old.db");
            foreach (var (table, rows) in before.Where(pair => pair.Value.Count > 0))
            {
                Assert.Equal(table == "changed_rows" ? rows.ConvertAll(row => WithLaterKey(row, schema)) : rows, Rows(connection, table, Columns(old, table)));
            }
        }

        var sound = Assert.IsType<Sound>(BaseCheck.Run(Base, TestContext.Current.CancellationToken));
        Assert.Equal(Migration.Embedded()[^1].Number, sound.Schema);
    }

    // The import of lark-2 is change 2: two limits among its rows, whose keys had two cells then and have three now.
    [Fact]
    public void Change_of_an_older_base_can_be_taken_back_and_brought_back()
    {
        Load(7).Dispose();
        using var database = Database.Open(Base);
        var (books, history) = (new BookStore(database), new UndoStore(database, TimeProvider.System));
        var before = books.Export("lark-2")?.Find("limits.csv");

        var undone = Assert.IsType<UndoOutcome.Done>(history.Undo(2, ChangeNote.None, TestContext.Current.CancellationToken));
        Assert.Null(books.Export("lark-2"));
        Assert.IsType<UndoOutcome.Done>(history.Undo(undone.Change, ChangeNote.None, TestContext.Current.CancellationToken));
        Assert.Equal(before?.Content.ToArray(), books.Export("lark-2")?.Find("limits.csv")?.Content.ToArray());
    }

    // Change 7 of that base read the torque of ev-0003; its key had four cells then and has eight now.
    [Fact]
    public void Torque_of_an_older_base_holds_for_every_engine_and_can_be_taken_back()
    {
        Load(9).Dispose();
        using var database = Database.Open(Base);
        var books = new BookStore(database);
        string Torques() => Encoding.UTF8.GetString(books.Export("lark-2")!.Find("torques.csv")!.Content.Span);
        Assert.Contains("la,front-bush,1,,,,,15.5,,,lbf·ft", Torques(), StringComparison.Ordinal);

        Assert.IsType<UndoOutcome.Done>(new UndoStore(database, TimeProvider.System).Undo(7, ChangeNote.None, TestContext.Current.CancellationToken));
        Assert.DoesNotContain("15.5", Torques(), StringComparison.Ordinal);
    }

    [Fact]
    public void Base_of_the_newest_kept_schema_exports_its_books_as_they_were()
    {
        Load(Kept.Max(row => row.Data)).Dispose();

        using var database = Database.Open(Base);
        var books = new BookStore(database);
        foreach (var (book, sample) in new[] { ("shared", SampleBook.Common().Files), ("lark-2", SampleBook.Family().Files) })
        {
            foreach (var file in books.Export(book)?.Files ?? [])
            {
                var expected = sample.Find(file.Name)!; // a file that the sample lacks fails here
                Assert.Equal(Convert.ToHexString(expected.Content.Span), Convert.ToHexString(file.Content.Span));
            }
        }
    }

    private SqliteConnection Load(int schema, string name = "base.db")
    {
        var connection = new SqliteConnection($"Data Source={Path.Combine(_folder.FullName, name)};Pooling=False;Foreign Keys=False");
        connection.Open();
        connection.Execute(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "Schemas", $"schema-{schema}.sql")));
        return connection;
    }

    /// <summary>
    /// A row of the history as later schemas have it: since 8 the key of a limit ends in its part, and older limits were all of whole kinds; since 10 that of a
    /// torque ends in its span, and older torques were all of every engine.
    /// </summary>
    private static string WithLaterKey(string row, int schema)
    {
        var limits = schema < 8 ? Regex.Replace(row, "^([0-9]+, 'limits', '[^']*)'", "$1,'") : row;
        return schema < 10 ? Regex.Replace(limits, "^([0-9]+, 'torques', '[^']*)'", "$1,,,,'") : limits;
    }

    private static List<string> Objects(SqliteConnection connection) =>
        connection.Query<string>("select sql from sqlite_schema where sql is not null order by type, name").AsList();

    private static List<string> Tables(SqliteConnection connection) =>
        connection.Query<string>("select name from sqlite_schema where type = 'table' order by name").AsList();

    private static List<string> Columns(SqliteConnection connection, string table) =>
        connection.Query<string>("select name from pragma_table_info(@table)", new { table }).AsList();

    /// <summary>Each row as one text, in order.</summary>
    private static List<string> Rows(SqliteConnection connection, string table, List<string> columns)
    {
        var cells = string.Join(" || ', ' || ", columns.Select(column => $"quote(\"{column}\")"));
        return connection.Query<string>($"select {cells} as cells from \"{table}\" order by cells").AsList();
    }
}
