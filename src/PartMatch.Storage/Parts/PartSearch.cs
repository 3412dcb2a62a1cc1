using Dapper;
using Microsoft.Data.Sqlite;
using PartMatch.Core.Catalogue;
using PartMatch.Storage.Books.Rows;

namespace PartMatch.Storage.Parts;

/// <summary>The search over numbers and names.</summary>
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
        var words = System.Text.Json.JsonSerializer.Serialize(Computed.Words(query).Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(word => " " + word));
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
        var page = rows.Take(limit).ToList();
        return new PartPage(
            [.. page.Select(row => new PartSummary(row.Id, row.Maker, row.Id[(row.Maker.Length + 1)..], row.Kind, row.Name))], total,
            rows.Count > limit ? new SearchCursor(page[^1].SearchGroup, page[^1].Id).ToString() : null);
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
