using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using PartMatch.Storage.Books.Format;

namespace PartMatch.Storage.Editing;

/// <summary>The cells of a row by the names of their columns as JSON writes them; an empty cell is left out: not recorded.</summary>
internal static class RowCells
{
    public static IReadOnlyDictionary<string, string> Of(BookTable table, IReadOnlyList<string> cells) =>
        table.Columns.Index().Where(column => cells[column.Index].Length > 0)
            .ToDictionary(column => NameOf(column.Item.Name), column => cells[column.Index], StringComparer.Ordinal);

    /// <summary><c>built_from</c> is <c>builtFrom</c>.</summary>
    public static string NameOf(string column) =>
        string.Concat(column.Split('_').Select((word, index) => index == 0 ? word : char.ToUpperInvariant(word[0]) + word[1..]));

    /// <summary>The columns in which two states of a row differ, in the order of the file; a row that is not there has every cell empty.</summary>
    public static IReadOnlyList<string> Differing(BookTable table, IReadOnlyList<string>? before, IReadOnlyList<string>? after) =>
        [.. table.Columns.Index().Where(column => (before?[column.Index] ?? "") != (after?[column.Index] ?? "")).Select(column => NameOf(column.Item.Name))];

    /// <summary>A digest of the cells: equal rows have equal versions, whoever wrote them and when.</summary>
    public static string VersionOf(IReadOnlyList<string> cells) =>
        Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(string.Join('\u001F', cells))).AsSpan(0, 8));

    /// <summary>As the history keeps it: by column, so that it can still be read when a table has grown one.</summary>
    public static void WriteJson(Utf8JsonWriter json, BookTable table, IReadOnlyList<string> cells)
    {
        json.WriteStartObject();
        for (var column = 0; column < cells.Count; column++)
        {
            if (cells[column].Length > 0)
            {
                json.WriteString(table.Columns[column].Name, cells[column]);
            }
        }

        json.WriteEndObject();
    }

    public static string[] FromJson(BookTable table, string json)
    {
        var byColumn = JsonSerializer.Deserialize<Dictionary<string, string>>(json) ?? [];
        return [.. table.Columns.Select(column => byColumn.GetValueOrDefault(column.Name, ""))];
    }
}
