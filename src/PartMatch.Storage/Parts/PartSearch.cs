using System.Text.Json;
using Dapper;
using Microsoft.Data.Sqlite;
using PartMatch.Core.Catalogue;
using PartMatch.Storage.Books.Rows;

namespace PartMatch.Storage.Parts;

/// <summary>The search over numbers and names: by an index, or, while there is none, over every row.</summary>
internal static class PartSearch
{
    /// <summary>Groups: 1 a number begins with the key, 2 a number contains it, 3 the name has all the words.</summary>
    private const string Matches =
        """
        with found (part_key, place) as (
          select part_key, min(instr(number_key, @key))
          from (
            select part_key, number_key from parts
            union all
            select part_key, number_key from numbers
          )
          where @key <> '' and instr(number_key, @key) > 0
          group by part_key, number_key
        ),
        matches (part_key, search_group) as (
          select part_key, min(case when place = 1 then 1 else 2 end)
          from found
          group by part_key
          union all
          select part_key, 3
          from parts
          where not exists (select 1 from json_each(@words) word where instr(parts.name_words, word.value) = 0)
            and (json_array_length(@words) > 0 or @key = '')
            and part_key not in (select part_key from found)
        )
        """;

    public static PartPage Find(SqliteConnection connection, string query, int limit, SearchCursor? after)
    {
        var key = NumberKey.Of(query);
        var words = JsonSerializer.Serialize(Words(query));
        var total = connection.ExecuteScalar<int>($"{Matches} select count(*) from matches", new { key, words });
        var rows = connection.Query<FoundRow>(
            $"""
            {Matches}
            select p.part as id, p.maker, p.kind, p.name, m.search_group
            from matches m
            join parts p on p.part_key = m.part_key
            where m.search_group > @afterGroup or (m.search_group = @afterGroup and p.part > @afterPart)
            order by m.search_group, p.part
            limit @count
            """,
            new { key, words, afterGroup = after?.Group ?? 0, afterPart = after?.Part ?? "", count = limit + 1 }).AsList();
        return Page(rows, total, limit);
    }

    /// <summary>The same, found in the index.</summary>
    public static PartPage Find(SqliteConnection connection, PartIndex index, string query, int limit, SearchCursor? after)
    {
        var (total, hits) = index.Find(NumberKey.Of(query), Words(query), after is null ? null : new PartHit(after.Group, after.Part), limit + 1);
        var parts = connection.Query<FoundRow>(
            """
            select p.part as id, p.maker, p.kind, p.name, 0 as search_group
            from json_each(@keys) key
            join parts p on p.part_key = key.value
            """,
            new { keys = JsonSerializer.Serialize(hits.Select(hit => PartId.FindKey(hit.Part))) }).ToDictionary(row => row.Id, StringComparer.Ordinal);

        // A part that was removed since leaves a gap, and the next page begins behind it all the same.
        var page = hits.Take(limit).ToList();
        return new PartPage(
            [.. page.Select(hit => parts.GetValueOrDefault(hit.Part)).OfType<FoundRow>().Select(ToSummary)], total,
            hits.Count > limit ? new SearchCursor(page[^1].Group, page[^1].Part).ToString() : null);
    }

    /// <summary>What the index is built from, in the order of the ids.</summary>
    public static IEnumerable<IndexedPart> ReadAll(SqliteConnection connection)
    {
        var further = connection.Query<FurtherRow>("select part_key, number_key from numbers", buffered: false)
            .ToLookup(row => row.PartKey, row => row.NumberKey, StringComparer.Ordinal);
        using var command = connection.CreateCommand();
        command.CommandText = "select part, part_key, number_key, name_words from parts order by part";
        using var rows = command.ExecuteReader();
        while (rows.Read())
        {
            yield return new IndexedPart(rows.GetString(0), rows.GetString(3), [rows.GetString(2), .. further[rows.GetString(1)]]);
        }
    }

    /// <summary>The parts of these keys that there are.</summary>
    public static IEnumerable<IndexedPart> Read(SqliteConnection connection, IEnumerable<string> keys) =>
        connection.Query<IndexedRow>(
            """
            select p.part, p.name_words, p.number_key as own,
              (select json_group_array(n.number_key) from numbers n where n.part_key = p.part_key) as further
            from json_each(@keys) key
            join parts p on p.part_key = key.value
            """,
            new { keys = JsonSerializer.Serialize(keys) })
            .Select(row => new IndexedPart(row.Part, row.NameWords, [row.Own, .. JsonSerializer.Deserialize<string[]>(row.Further) ?? []]));

    private static string[] Words(string query) => [.. Computed.Words(query).Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(word => " " + word)];

    private static PartPage Page(IReadOnlyList<FoundRow> rows, int total, int limit)
    {
        var page = rows.Take(limit).ToList();
        return new PartPage(
            [.. page.Select(ToSummary)], total, rows.Count > limit ? new SearchCursor(page[^1].SearchGroup, page[^1].Id).ToString() : null);
    }

    private static PartSummary ToSummary(FoundRow row) => new(row.Id, row.Maker, row.Id[(row.Maker.Length + 1)..], row.Kind, row.Name);

    private sealed record FurtherRow(string PartKey, string NumberKey);

    // By its members: where no row is found, SQLite does not say of what type a worked-out column is, and no constructor matches.
    private sealed record IndexedRow
    {
        public required string Part { get; init; }

        public required string NameWords { get; init; }

        public required string Own { get; init; }

        public required string Further { get; init; }
    }

    private sealed record FoundRow
    {
        public required string Id { get; init; }

        public required string Maker { get; init; }

        public required string Kind { get; init; }

        public required string Name { get; init; }

        public int SearchGroup { get; init; }
    }
}
