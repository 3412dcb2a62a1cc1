using Dapper;
using Microsoft.Data.Sqlite;

namespace PartMatch.Storage.Books.Rows;

/// <summary>What must be unique, or the same, over the whole base: facts of all other books.</summary>
/// <param name="BookOfPart">By part key.</param>
/// <param name="Makers">Name of each maker, and a book that says so.</param>
internal sealed record BaseFacts(IReadOnlyDictionary<string, string> BookOfPart, IReadOnlyDictionary<string, (string Name, string Book)> Makers)
{
    public static BaseFacts Read(SqliteConnection connection, string ownBook)
    {
        var parts = connection.Query<PartRow>("select part_key, book from parts where book <> @ownBook", new { ownBook });
        var makers = connection.Query<MakerRow>("select maker, name, book from makers where book <> @ownBook order by book desc", new { ownBook });
        var names = new Dictionary<string, (string, string)>(StringComparer.Ordinal);
        foreach (var maker in makers)
        {
            names[maker.Maker] = (maker.Name, maker.Book);
        }

        return new BaseFacts(parts.ToDictionary(part => part.PartKey, part => part.Book, StringComparer.Ordinal), names);
    }

    private sealed record PartRow(string PartKey, string Book);

    private sealed record MakerRow(string Maker, string Name, string Book);
}
