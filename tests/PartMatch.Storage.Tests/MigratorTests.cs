using Dapper;
using Microsoft.Data.Sqlite;
using PartMatch.Storage.Books;
using PartMatch.Storage.Books.Format;
using PartMatch.Storage.Books.Rows;
using PartMatch.Storage.Tests.Books;
using Xunit;

namespace PartMatch.Storage.Tests;

public sealed class MigratorTests : IDisposable
{
    private static readonly Migration _first = new(1, "first", "create table one (x integer) strict");
    private static readonly Migration _broken = new(2, "broken", "create table two (x integer) strict; insert into two (x) values ('text');");
    private static readonly Migration _second = new(2, "second", "create table two (x integer) strict; insert into two (x) values (2);");

    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("partmatch-test-");
    private readonly SqliteConnection _connection;

    public MigratorTests()
    {
        _connection = new SqliteConnection($"Data Source={Path.Combine(_folder.FullName, "base.db")};Pooling=False");
        _connection.Open();
    }

    public void Dispose()
    {
        _connection.Dispose();
        _folder.Delete(recursive: true);
    }

    [Fact]
    public void Steps_are_taken_once_and_in_order()
    {
        Assert.True(Migrator.Run(_connection, [_first, _second], "base"));
        Assert.False(Migrator.Run(_connection, [_first, _second], "base"));
        Assert.Equal((2, 1), (Version(), _connection.ExecuteScalar<int>("select count(*) from two")));
    }

    [Fact]
    public void Step_that_fails_leaves_the_step_before_it_whole()
    {
        Assert.Throws<SqliteException>(() => Migrator.Run(_connection, [_first, _broken], "base"));
        Assert.Equal(1, Version());
        Assert.Equal(["one"], Tables());

        Assert.False(Migrator.Run(_connection, [_first, _second], "base"));
        Assert.Equal(["one", "two"], Tables());
    }

    [Fact]
    public void Older_base_is_brought_up_to_date_from_every_version()
    {
        var steps = Migration.Embedded();
        Assert.Equal(Enumerable.Range(1, steps.Count), steps.Select(step => step.Number));
        for (var known = 1; known <= steps.Count; known++)
        {
            Migrator.Run(_connection, [.. steps.Take(known)], "base");
            Assert.Equal(known, Version());
        }
    }

    [Fact]
    public void Base_from_before_pairs_keeps_its_books_and_takes_pairs()
    {
        var path = Path.Combine(_folder.FullName, "older.db");
        using (var older = new SqliteConnection($"Data Source={path};Pooling=False"))
        {
            older.Open();
            Migrator.Run(older, [.. Migration.Embedded().Take(4)], path);
            older.Execute("insert into books (format, book, kind, title) values ('1', 'old', 'common', 'Old')");
            older.Execute("insert into makers (book, maker, name) values ('old', 'tessick', 'Tessick')");
        }

        using var database = Database.Open(path);
        var store = new BookStore(database);
        Assert.Equal(["book.csv", "makers.csv"], store.Export("old")?.Files.Select(file => file.Name));
        Assert.IsType<ImportOutcome.Imported>(store.Import(SampleBook.Common().Files, ImportMode.Add, false, TestContext.Current.CancellationToken));
        Assert.IsType<ImportOutcome.Imported>(store.Import(SampleBook.Family().Files, ImportMode.Add, false, TestContext.Current.CancellationToken));
        Assert.NotNull(store.Export("lark-2")?.Find("pairs.csv"));
    }

    [Fact]
    public void Tables_have_the_columns_of_the_files_and_the_computed_ones()
    {
        Migrator.Run(_connection, Migration.Embedded(), "base");
        foreach (var table in BookTables.All)
        {
            string[] expected =
            [
                .. table == BookTables.Books ? [] : new[] { "book" },
                .. table.Columns.Select(column => column.Name), .. Computed.Of(table).Select(column => column.Name),
            ];
            var actual = _connection.Query<string>("select name from pragma_table_info(@Name)", new { table.Name });
            Assert.Equal(expected.Order(StringComparer.Ordinal), actual.Order(StringComparer.Ordinal));

            var key = _connection.Query<string>("select name from pragma_table_info(@Name) where pk > 0 order by pk", new { table.Name });
            Assert.Equal(table == BookTables.Books ? table.Key : [.. table.Key.Prepend("book")], key);
        }
    }

    [Fact]
    public void Every_table_is_strict_and_every_reference_has_an_index_on_both_sides()
    {
        Migrator.Run(_connection, Migration.Embedded(), "base");
        Assert.Empty(_connection.Query<string>("select name from pragma_table_list where schema = 'main' and type = 'table' and strict = 0 and name not like 'sqlite_%'"));
        foreach (var table in Tables())
        {
            var references = _connection.Query<(int Id, int Seq, string Column)>("""select id, seq, "from" from pragma_foreign_key_list(@table) order by id, seq""", new { table })
                .GroupBy(row => row.Id, row => row.Column);
            var indexes = Indexes(table).ToList();
            foreach (var reference in references)
            {
                Assert.True(indexes.Exists(index => index.Take(reference.Count()).SequenceEqual(reference)), $"{table}: no index begins with {string.Join(", ", reference)}");
            }
        }
    }

    private IEnumerable<List<string>> Indexes(string table)
    {
        foreach (var index in _connection.Query<string>("select name from pragma_index_list(@table)", new { table }))
        {
            yield return _connection.Query<string>("select name from pragma_index_info(@index) order by seqno", new { index }).AsList();
        }
    }

    private int Version() => _connection.ExecuteScalar<int>("pragma user_version");

    private List<string> Tables() => _connection.Query<string>("select name from sqlite_schema where type = 'table' and name not like 'sqlite_%' order by name").AsList();
}
