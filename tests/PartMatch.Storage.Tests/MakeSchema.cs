using Dapper;
using Microsoft.Data.Sqlite;
using PartMatch.Storage.Books;
using PartMatch.Storage.Tests.Books;
using Xunit;

namespace PartMatch.Storage.Tests;

public sealed class MakeSchema
{
    [Fact]
    public void Make()
    {
        File.Delete("/tmp/w9-schema.db");
        using (var connection = new SqliteConnection("Data Source=/tmp/w9-schema.db;Pooling=False;Foreign Keys=False"))
        {
            connection.Open();
            connection.Execute(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "Schemas", "schema-14.sql")));
        }

        using var database = Database.Open("/tmp/w9-schema.db");
        var books = new BookStore(database);
        Assert.IsType<ImportOutcome.Imported>(books.Import(SampleBook.Common().Files, ImportMode.Replace, false, TestContext.Current.CancellationToken));
        Assert.IsType<ImportOutcome.Imported>(books.Import(SampleBook.Family().Files, ImportMode.Replace, false, TestContext.Current.CancellationToken));
    }
}
