using Dapper;
using Microsoft.Data.Sqlite;
using PartMatch.Core.Catalogue;
using PartMatch.Storage.Catalogue;

namespace PartMatch.Storage.Items;

/// <summary>A photograph of an item or of what a source saw.</summary>
public sealed record PhotoRow(string Photo, string Image, string? Caption);

/// <summary>The single examples of parts that somebody has, or had, in hand.</summary>
public sealed class ItemStore(Database database)
{
    /// <summary>Every item of a book, in ordinal order.</summary>
    public IReadOnlyList<Item> List(string book)
    {
        using var connection = database.Connect();
        using var transaction = connection.BeginTransaction(deferred: true);
        return Read(connection, book, null);
    }

    /// <summary>One item, or null.</summary>
    public Item? Find(string book, string item)
    {
        using var connection = database.Connect();
        using var transaction = connection.BeginTransaction(deferred: true);
        return Find(connection, book, item);
    }

    /// <summary>As it stands inside a transaction.</summary>
    internal static Item? Find(SqliteConnection connection, string book, string item) => Read(connection, book, item).SingleOrDefault();

    /// <summary>The photographs of one item, in ordinal order.</summary>
    public IReadOnlyList<PhotoRow> Photos(string book, string item)
    {
        using var connection = database.Connect();
        return connection.Query<PhotoRow>(
            "select photo, image, caption from photos where book = @book and item = @item order by photo", new { book, item }).AsList();
    }

    private static IReadOnlyList<Item> Read(SqliteConnection connection, string book, string? item)
    {
        var evidence = new EvidenceReader(connection);
        var readings = Readings(connection, evidence, book, item).ToLookup(reading => reading.Item, reading => reading.Reading, StringComparer.Ordinal);
        var works = connection.Query<WorkRow>(
            """
            select item, work, done_on, note
            from works_done
            where book = @book and (@item is null or item = @item)
            order by item, work
            """,
            new { book, item }).ToLookup(row => row.Item, row => new WorkDone(row.Work, row.DoneOn, row.Note), StringComparer.Ordinal);
        var rows = connection.Query<ItemRow>(
            """
            select i.item, p.part, i.origin, i.condition, i.evidence, i.evidence_book, i.note
            from items i
            join parts p on p.part_key = i.part_key
            where i.book = @book and (@item is null or i.item = @item)
            order by i.item
            """,
            new { book, item });
        return
        [
            .. rows.Select(row => new Item(
                row.Item, book, row.Part, row.Origin is null ? null : Codes.Get<ItemOrigin>(row.Origin), row.Condition,
                evidence.Find(row.EvidenceBook, row.Evidence), row.Note, [.. readings[row.Item]], [.. works[row.Item]])),
        ];
    }

    private static IEnumerable<(string Item, ItemReading Reading)> Readings(
        SqliteConnection connection, EvidenceReader evidence, string book, string? item) =>
        connection.Query<ReadingRow>(
            """
            select item, feature, type, value, unit, uncertainty, instrument, read_on, evidence, evidence_book, note
            from readings
            where book = @book and (@item is null or item = @item)
            order by item, feature
            """,
            new { book, item })
            .Select(row => (row.Item, new ItemReading(
                row.Feature, Catalogue.Readings.Of(Codes.Get<FeatureType>(row.Type), row.Value, null, null, row.Unit, row.Uncertainty),
                row.Instrument, row.ReadOn, evidence.Find(row.EvidenceBook, row.Evidence), row.Note)));

    private sealed record WorkRow(string Item, string Work, string? DoneOn, string? Note);

    private sealed record ItemRow(string Item, string Part, string? Origin, string? Condition, string? Evidence, string? EvidenceBook, string? Note);

    private sealed record ReadingRow(
        string Item, string Feature, string Type, string Value, string? Unit, string? Uncertainty, string? Instrument, string? ReadOn,
        string? Evidence, string? EvidenceBook, string? Note);
}
