using Dapper;
using Microsoft.Data.Sqlite;
using PartMatch.Core.Catalogue;

namespace PartMatch.Storage.LookAlikes;

/// <summary>Every number of the base, for the search for look-alikes.</summary>
public sealed class NumberStore(Database database)
{
    private readonly Snapshot<IReadOnlyList<KnownNumber>> _numbers = new(database);

    /// <summary>Each part's own number (as sort service) and every further number, ordered by key, maker, part. The same instance until the base changes.</summary>
    public IReadOnlyList<KnownNumber> All() => _numbers.Find("", Read) ?? [];

    private static IReadOnlyList<KnownNumber> Read(SqliteConnection connection)
    {
        var families = connection.Query<FamilyRow>("select distinct part_key, book from fitments where part_key is not null order by part_key, book")
            .GroupBy(row => row.PartKey, StringComparer.Ordinal)
            .ToDictionary(rows => rows.Key, rows => (IReadOnlyList<string>)[.. rows.Select(row => row.Book)], StringComparer.Ordinal);
        var rows = connection.Query<NumberRow>(
            """
            select part as written, 'service' as sort, part as id, part_key, maker, number_key, kind, name
            from parts
            union all
            select n.number as written, n.sort, p.part as id, n.part_key, n.maker, n.number_key, p.kind, p.name
            from numbers n
            join parts p on p.part_key = n.part_key
            order by number_key, maker, id, written
            """);
        return
        [
            .. rows.Select(row => new KnownNumber(
                new PartNumber(row.Maker, row.Written[(row.Maker.Length + 1)..], row.NumberKey, Codes.Get<NumberSort>(row.Sort), row.Id), row.Kind, row.Name,
                families.GetValueOrDefault(row.PartKey, []))),
        ];
    }

    private sealed record FamilyRow(string PartKey, string Book);

    // Not positional: a column that is an expression has no type in an empty base, and the mapper would then take it for bytes.
    private sealed record NumberRow
    {
        public string Written { get; init; } = "";

        public string Sort { get; init; } = "";

        public string Id { get; init; } = "";

        public string PartKey { get; init; } = "";

        public string Maker { get; init; } = "";

        public string NumberKey { get; init; } = "";

        public string Kind { get; init; } = "";

        public string Name { get; init; } = "";
    }
}
