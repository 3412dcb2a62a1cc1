using PartMatch.Storage.Books.Format;

namespace PartMatch.Storage.Editing;

/// <summary>The key of a row as one text: its key cells joined by a comma; in a cell a comma is written %2C and a percent sign %25.</summary>
internal static class RowKey
{
    public static string Of(BookRow row) => Of(row.Table, row.Cells);

    public static string Of(BookTable table, IReadOnlyList<string> cells) =>
        table.KeyIndexes is [var only] ? Escaped(cells[only]) : string.Join(',', table.KeyIndexes.Select(index => Escaped(cells[index])));

    private static string Escaped(string cell) => !cell.AsSpan().ContainsAny(',', '%') ? cell
        : cell.Replace("%", "%25", StringComparison.Ordinal).Replace(",", "%2C", StringComparison.Ordinal);
}
