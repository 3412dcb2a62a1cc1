using Dapper;
using Microsoft.Data.Sqlite;
using PartMatch.Core.Catalogue;

namespace PartMatch.Storage.Families;

/// <summary>The families of the base.</summary>
public sealed class FamilyStore(Database database)
{
    private readonly Snapshot<FamilyFacts> _facts = new(database);

    /// <summary>Every family, in ordinal order of its code.</summary>
    public IReadOnlyList<FamilySummary> List()
    {
        using var connection = database.Connect();
        using var transaction = connection.BeginTransaction(deferred: true);
        var variants = connection.Query<VariantRow>("select book, variant from variants order by book, variant")
            .ToLookup(row => row.Book, row => row.Variant, StringComparer.Ordinal);
        return [.. Families(connection).Select(row => new FamilySummary(
            row.Code, row.Title, row.Maker, MakerName(connection, row.Maker), row.Note, [.. variants[row.Code]], row.Positions, row.Parts))];
    }

    /// <summary>The facts of one family, or null when no family book has that name. The same instance until the base changes.</summary>
    public FamilyFacts? FindFamily(string code) => _facts.Find(code, connection => FamilyReader.Find(connection, code));

    private static IEnumerable<FamilyRow> Families(SqliteConnection connection) =>
        connection.Query<FamilyRow>(
            """
            select book as code, title, maker, note,
              (select count(*) from positions where positions.book = books.book) as positions,
              (select count(*) from parts where parts.book = books.book) as parts
            from books
            where kind = 'family'
            order by book
            """);

    // A maker has one name in all books.
    private static string? MakerName(SqliteConnection connection, string? maker) =>
        connection.QueryFirstOrDefault<string>("select name from makers where maker = @maker order by book", new { maker });

    private sealed record VariantRow(string Book, string Variant);

    private sealed record FamilyRow
    {
        public required string Code { get; init; }

        public required string Title { get; init; }

        public string? Maker { get; init; }

        public string? Note { get; init; }

        public int Positions { get; init; }

        public int Parts { get; init; }
    }
}
