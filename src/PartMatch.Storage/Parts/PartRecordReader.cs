using System.Globalization;
using Dapper;
using Microsoft.Data.Sqlite;
using PartMatch.Core.Catalogue;
using PartMatch.Storage.Catalogue;
using PartMatch.Storage.Families;
using PartMatch.Storage.Listings;

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
        return new PartRecord(
            part,
            book,
            connection.QueryFirstOrDefault<string>("select name from makers where maker = @Maker order by book", new { part.Maker }),
            KindReader.Read(connection, Scopes.Of(connection, book)).Single(kind => kind.Code == part.Kind),
            [new PartNumber(part.Maker, part.Number, part.Key, NumberSort.Service, part.Id), .. Numbers(connection, part, key)],
            new FitmentReader(connection, evidence).OfPart(key),
            supersessions.OfOldPart(key),
            supersessions.OfNewPart(key),
            Contents(connection, "c.set_key = @key", key),
            Contents(connection, "c.part_key = @key", key));
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

    /// <param name="wanted">Constant text of this class.</param>
    private static List<ContentsRow> Contents(SqliteConnection connection, string wanted, string key)
    {
        var rows = connection.Query<HeldRow>(
            $"""
            select s.part as set_part, p.part, c.quantity, c.certain, c.note
            from contents c
            join parts s on s.part_key = c.set_key
            join parts p on p.part_key = c.part_key
            where {wanted}
            order by s.part, p.part, c.book
            """,
            new { key });
        return [.. rows.Select(row => new ContentsRow(
            row.SetPart, row.Part, row.Quantity is null ? null : int.Parse(row.Quantity, CultureInfo.InvariantCulture), ContentsStore.CertaintyOf(row.Certain), row.Note))];
    }

    private sealed record NumberRow(string Number, string Sort, string Maker, string NumberKey);

    private sealed record HeldRow(string SetPart, string Part, string? Quantity, string? Certain, string? Note);
}
