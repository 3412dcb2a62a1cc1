using Dapper;
using PartMatch.Core.Catalogue;
using PartMatch.Storage.Catalogue;
using PartMatch.Storage.History;

namespace PartMatch.Storage.Parts;

/// <summary>The parts of the base, whatever book describes them.</summary>
public sealed class PartStore(Database database)
{
    /// <summary>
    /// The parts a written number can mean: parts whose own number has this key, then parts that carry it as a further number, each ordered by id. Casting
    /// marks and grades stand on many parts and identify none: they count only where nothing else is found.
    /// </summary>
    /// <param name="maker">Only numbers of this maker; null for any.</param>
    public IReadOnlyList<Part> FindByNumber(string number, string? maker)
    {
        using var connection = database.Connect();
        using var transaction = connection.BeginTransaction(deferred: true);
        var key = NumberKey.Of(number);
        var own = connection.Query<string>(
            """
            select part_key
            from parts
            where number_key = @key and (@maker is null or maker = @maker)
            """,
            new { key, maker }).AsList();
        var carried = connection.Query<CarriedRow>(
            """
            select distinct part_key, sort
            from numbers
            where number_key = @key and (@maker is null or maker = @maker)
            """,
            new { key, maker }).AsList();
        var identified = carried.Where(row => Codes.Get<NumberSort>(row.Sort) is not (NumberSort.CastingMark or NumberSort.Grade))
            .Select(row => row.PartKey)
            .Except(own)
            .ToList();
        var reader = new PartReader(connection, new EvidenceReader(connection));
        return own.Count + identified.Count > 0
            ? [.. reader.OfKeys(own), .. reader.OfKeys(identified)]
            : reader.OfKeys([.. carried.Select(row => row.PartKey).Distinct()]);
    }

    /// <summary>The part of that id, <c>maker:number</c>, the number read as a number key; or null.</summary>
    public Part? FindPart(string id)
    {
        if (PartId.Find(id) is not { } found)
        {
            return null;
        }

        using var connection = database.Connect();
        using var transaction = connection.BeginTransaction(deferred: true);
        return new PartReader(connection, new EvidenceReader(connection)).OfKeys([found.Key]).SingleOrDefault();
    }

    /// <summary>The part of that id with everything that is said about it, or null.</summary>
    public PartRecord? FindRecord(string id)
    {
        if (PartId.Find(id) is not { } found)
        {
            return null;
        }

        using var connection = database.Connect();
        using var transaction = connection.BeginTransaction(deferred: true);
        return PartRecordReader.Find(connection, found);
    }

    /// <summary>Every part of a kind over the whole base, ordered by id.</summary>
    public IReadOnlyList<Part> ListOfKind(string kind)
    {
        using var connection = database.Connect();
        using var transaction = connection.BeginTransaction(deferred: true);
        return new PartReader(connection, new EvidenceReader(connection)).OfKind(kind);
    }

    /// <summary>
    /// Parts one of whose numbers begins with the query, then those one of whose numbers contains it, then those whose name has all its words
    /// (as beginnings of words); each group ordered by id. An empty query finds every part.
    /// </summary>
    /// <param name="limit">Parts per page, 1 or more.</param>
    /// <param name="cursor">From the page before; null for the first page.</param>
    /// <exception cref="ArgumentException">The cursor is not one that this store gave out: see <see cref="IsCursor"/>.</exception>
    /// <param name="index">Of the base as it stands; null while there is none: then every row is looked at.</param>
    public PartPage Search(string query, int limit, string? cursor, PartIndex? index = null)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(limit, 1);
        var after = cursor is null ? null : SearchCursor.Find(cursor) ?? throw new ArgumentException("not a cursor of a part search", nameof(cursor));
        using var connection = database.Connect();
        using var transaction = connection.BeginTransaction(deferred: true);
        return index is null ? PartSearch.Find(connection, query, limit, after) : PartSearch.Find(connection, index, query, limit, after);
    }

    /// <summary>Differs from the last one whenever anybody has committed since.</summary>
    public long Version() => database.Version();

    /// <summary>An index of every part, and the end of the history that it takes in.</summary>
    public (HistoryEnd End, PartIndex Index) Index()
    {
        using var connection = database.Connect();
        using var transaction = connection.BeginTransaction(deferred: true);
        return (HistoryEnd.Read(connection), new PartIndex(PartSearch.ReadAll(connection)));
    }

    /// <summary>The index with what the history says has changed since.</summary>
    /// <param name="most">More parts than this are not read.</param>
    /// <param name="end">The one that the index came with.</param>
    /// <returns>Null when more has changed, or the history does not go on from there: another base is in place of that one.</returns>
    public (HistoryEnd End, PartIndex Index)? Index(PartIndex index, HistoryEnd end, int most)
    {
        using var connection = database.Connect();
        using var transaction = connection.BeginTransaction(deferred: true);
        if (!end.IsIn(connection))
        {
            return null;
        }

        var ids = connection.Query<string>(
            """
            select distinct json_extract(coalesce(after, before), '$.part')
            from changed_rows
            where change > @change and "table" in ('parts', 'numbers')
            limit @most + 1
            """,
            new { change = end.Change, most }).ToHashSet(StringComparer.Ordinal);
        if (ids.Count > most)
        {
            return null;
        }

        var parts = PartSearch.Read(connection, ids.Select(PartId.FindKey).OfType<string>().Distinct(StringComparer.Ordinal)).ToList();
        ids.UnionWith(parts.Select(part => part.Part));
        return (HistoryEnd.Read(connection), ids.Count == 0 ? index : index.With(ids, parts));
    }

    /// <summary>Is that text a cursor that a search could have given out?</summary>
    public static bool IsCursor(string text) => SearchCursor.Find(text) is not null;

    private sealed record CarriedRow(string PartKey, string Sort);
}
