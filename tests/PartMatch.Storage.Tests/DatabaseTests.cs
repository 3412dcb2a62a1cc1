using Dapper;
using Microsoft.Data.Sqlite;
using Xunit;

namespace PartMatch.Storage.Tests;

public sealed class DatabaseTests : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("partmatch-test-");

    private string PathOf(string name) => Path.Combine(_folder.FullName, name);

    public void Dispose() => _folder.Delete(recursive: true);

    [Fact]
    public void New_file_is_created_and_an_old_one_opened()
    {
        using (var created = Database.Open(PathOf("base.db")))
        {
            Assert.True(created.WasCreated);
        }

        using var opened = Database.Open(PathOf("base.db"));
        Assert.False(opened.WasCreated);
    }

    [Fact]
    public void Commits_wait_for_the_disk_and_references_are_checked()
    {
        using var database = Database.Open(PathOf("base.db"));
        using var connection = database.Connect();
        Assert.Equal("wal", connection.ExecuteScalar<string>("pragma journal_mode"));
        Assert.Equal(2, connection.ExecuteScalar<int>("pragma synchronous"));
        Assert.Equal(1, connection.ExecuteScalar<int>("pragma foreign_keys"));
        Assert.Equal(30, connection.DefaultTimeout);
    }

    [Fact]
    public void Reference_to_nothing_cannot_be_stored_even_past_the_checks()
    {
        using var database = Database.Open(PathOf("base.db"));
        using var connection = database.Connect();
        using var transaction = connection.BeginTransaction();
        connection.Execute("insert into makers (book, maker, name) values ('nowhere', 'orrin', 'Orrin')");
        var refused = Assert.Throws<SqliteException>(transaction.Commit);
        Assert.Contains("FOREIGN KEY", refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void File_that_is_no_database_is_refused_and_left_alone()
    {
        File.WriteAllText(PathOf("notes.txt"), string.Concat(Enumerable.Repeat("not a database at all\n", 100)));
        var before = File.ReadAllBytes(PathOf("notes.txt"));
        var refused = Assert.Throws<DatabaseException>(() => Database.Open(PathOf("notes.txt")));
        Assert.Contains("is not a database", refused.Message, StringComparison.Ordinal);
        Assert.Equal(before, File.ReadAllBytes(PathOf("notes.txt")));
    }

    [Fact]
    public void Database_of_another_program_is_refused()
    {
        Execute(PathOf("other.db"), "create table notes (note text)");
        Assert.Contains("another program", Assert.Throws<DatabaseException>(() => Database.Open(PathOf("other.db"))).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Schema_of_a_newer_program_is_refused()
    {
        using (Database.Open(PathOf("base.db")))
        {
        }

        Execute(PathOf("base.db"), "pragma user_version = 999");
        var refused = Assert.Throws<DatabaseException>(() => Database.Open(PathOf("base.db")));
        Assert.Contains("has schema 999, this program knows schemas up to", refused.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("", "is a folder")]
    [InlineData("absent/base.db", "does not exist")]
    public void Path_that_cannot_be_is_refused(string path, string reason) =>
        Assert.Contains(reason, Assert.Throws<DatabaseException>(() => Database.Open(PathOf(path))).Message, StringComparison.Ordinal);

    [Fact]
    public void Folder_that_cannot_be_written_is_refused()
    {
        // On Linux nobody, not even root, can create a file there.
        Assert.SkipUnless(Directory.Exists("/proc"), "needs a folder that nobody can write to");
        Assert.Contains("cannot be opened or created", Assert.Throws<DatabaseException>(() => Database.Open("/proc/base.db")).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Version_changes_with_every_commit_of_anybody_and_only_then()
    {
        using var database = Database.Open(PathOf("base.db"));
        using var other = Database.Open(PathOf("base.db"));
        var first = database.Version();
        Assert.Equal(first, database.Version());
        Write(database, "a");
        var second = database.Version();
        Assert.NotEqual(first, second);
        Write(other, "b");
        Assert.NotEqual(second, database.Version());
    }

    private static void Write(Database database, string book)
    {
        using var connection = database.Connect();
        connection.Execute("insert into books (format, book, kind, title) values ('1', @book, 'common', 'Title')", new { book });
    }

    private static void Execute(string path, string sql)
    {
        using var connection = new SqliteConnection($"Data Source={path};Pooling=False");
        connection.Open();
        connection.Execute(sql);
    }
}
