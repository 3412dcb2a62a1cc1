using System.Text.Json;
using Dapper;
using Microsoft.Data.Sqlite;
using PartMatch.Core.Catalogue;
using PartMatch.Storage.Books.Checks;
using PartMatch.Storage.Books.Format;

namespace PartMatch.Storage.Books.Rows;

/// <summary>What must be unique, or the same, over the whole base: facts of all other books.</summary>
/// <param name="BookOfPart">By part key, of the parts that the own book has too.</param>
/// <param name="Makers">Name of each maker, and a book that says so.</param>
internal sealed record BaseFacts(IReadOnlyDictionary<string, string> BookOfPart, IReadOnlyDictionary<string, (string Name, string Book)> Makers)
{
    // Ours: looking so many up one by one takes about as long as reading the parts of a whole base.
    private const int MostLookedUp = 5_000;

    public static BaseFacts Read(SqliteConnection connection, BookScope own)
    {
        var ownBook = own.Own.Code;
        var makers = connection.Query<MakerRow>("select maker, name, book from makers where book <> @ownBook order by book desc", new { ownBook });
        var names = new Dictionary<string, (string, string)>(StringComparer.Ordinal);
        foreach (var maker in makers)
        {
            names[maker.Maker] = (maker.Name, maker.Book);
        }

        var shared = own.Own.Declared(BookTables.Parts).Count > MostLookedUp ? ReadAll(connection, own) : LookUp(connection, own.Own);
        return new BaseFacts(shared.ToDictionary(part => part.PartKey, part => part.Book, StringComparer.Ordinal), names);
    }

    private static IEnumerable<PartRow> LookUp(SqliteConnection connection, BookDraft own) => connection.Query<PartRow>(
        """
        select part_key, book
        from json_each(@keys) own
        join parts on parts.part_key = own.value
        where book <> @Code
        """,
        new
        {
            keys = JsonSerializer.Serialize(own.Declared(BookTables.Parts).Select(row => PartId.FindKey(row["part"])).OfType<string>().Distinct()),
            own.Code,
        });

    // One at a time: a base may have millions.
    private static IEnumerable<PartRow> ReadAll(SqliteConnection connection, BookScope own) =>
        connection.Query<PartRow>("select part_key, book from parts where book <> @Code", new { own.Own.Code }, buffered: false)
            .Where(part => own.FindPart(part.PartKey)?.Book == own.Own.Code);

    private sealed record PartRow(string PartKey, string Book);

    private sealed record MakerRow(string Maker, string Name, string Book);
}
