using Dapper;
using Microsoft.Data.Sqlite;
using PartMatch.Core.Catalogue;
using PartMatch.Storage.Catalogue;
using PartMatch.Storage.Families;

namespace PartMatch.Storage.Parts;

/// <summary>Reads everything that any book says about one part.</summary>
internal static class PartRecordReader
{
    public static PartRecord? Find(SqliteConnection connection, PartId id)
    {
        var evidence = new EvidenceReader(connection);
        if (new PartReader(connection, evidence).OfKeys([id.Key]).SingleOrDefault() is not { } part)
        {
            return null;
        }

        var key = id.Key;
        var book = connection.QuerySingle<string>("select book from parts where part_key = @key", new { key });
        var supersessions = new SupersessionReader(connection, evidence);
        var contents = new ContentsReader(connection);
        return new PartRecord(
            part,
            book,
            connection.QueryFirstOrDefault<string>("select name from makers where maker = @Maker order by book", new { part.Maker }),
            KindReader.Read(connection, Scopes.Of(connection, book)).Single(kind => kind.Code == part.Kind),
            [new PartNumber(part.Maker, part.Number, part.Key, NumberSort.Service, part.Id), .. Numbers(connection, part, key)],
            new FitmentReader(connection, evidence).OfPart(key),
            supersessions.OfOldPart(key),
            supersessions.OfNewPart(key),
            contents.OfSet(key),
            contents.OfPart(key));
    }

    private static IEnumerable<PartNumber> Numbers(SqliteConnection connection, Part part, string key) =>
        connection.Query<NumberRow>(
            """
            select number, sort, maker, number_key
            from numbers
            where part_key = @key
            order by number, book
            """,
            new { key })
            .Select(row => new PartNumber(row.Maker, row.Number[(row.Maker.Length + 1)..], row.NumberKey, Codes.Get<NumberSort>(row.Sort), part.Id));

    private sealed record NumberRow(string Number, string Sort, string Maker, string NumberKey);
}
