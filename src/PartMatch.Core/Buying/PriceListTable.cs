using PartMatch.Core.Catalogue;

namespace PartMatch.Core.Buying;

/// <summary>A seller's price list as a table of texts, from whatever document: everything behind it asks only for this.</summary>
/// <param name="Headers">One for each column; <c>column 3</c> where the list has no heads.</param>
/// <param name="Rows">Without the row of heads, in the order of the document.</param>
public sealed record PriceListTable(IReadOnlyList<string> Headers, IReadOnlyList<PriceListRow> Rows)
{
    /// <summary>Ours, no source: a list of every number of a maker, several times over.</summary>
    public const int MostRows = 20_000;

    private const int MostShown = 3;

    /// <param name="rows">All of them; empty ones are passed over. The first is a row of heads where a word of it says so, or no cell of it holds a digit;
    /// one with a price never is.</param>
    /// <returns>Null when there is nothing but empty rows.</returns>
    public static PriceListTable? Of(IEnumerable<PriceListRow> rows)
    {
        PriceListRow[] filled = [.. rows.Where(row => row.Cells.Any(cell => !string.IsNullOrWhiteSpace(cell)))];
        if (filled is not [var first, ..])
        {
            return null;
        }

        var width = filled.Max(row => row.Cells.Count);
        var hasHeads = !first.Cells.Any(PriceCell.LooksLikeAmount) && (first.Cells.Any(PriceListHeads.IsKnown)
            || !first.Cells.Any(cell => cell.Any(char.IsDigit)));
        return new PriceListTable(
            [.. Enumerable.Range(0, width).Select(column => hasHeads && Cell(first, column) is { Length: > 0 } head ? head
                : FormattableString.Invariant($"column {column + 1}"))],
            [.. filled.Skip(hasHeads ? 1 : 0)]);
    }

    /// <param name="heads">Rows of heads, one above the other: what stands over a column is read from top to bottom.</param>
    internal static PriceListTable Headed(IReadOnlyList<IReadOnlyList<string>> heads, IReadOnlyList<PriceListRow> rows)
    {
        var width = heads.Concat(rows.Select(row => row.Cells)).Max(cells => cells.Count);
        return new PriceListTable(
            [
                .. Enumerable.Range(0, width).Select(column => string.Join(' ', heads.Where(row => column < row.Count).Select(row => row[column].Trim())
                    .Where(head => head.Length > 0).Distinct()) is { Length: > 0 } head ? head : FormattableString.Invariant($"column {column + 1}")),
            ],
            rows);
    }

    /// <summary>What can be told of the columns before it is known what they hold.</summary>
    public IReadOnlyList<PriceListColumn> Columns =>
        [.. Headers.Select((head, column) => new PriceListColumn(column + 1, head, [.. Filled(column).Take(MostShown)]))];

    /// <summary>A cell without the blanks around it; empty where the row is too short.</summary>
    public static string Cell(PriceListRow row, int column) => column < row.Cells.Count ? row.Cells[column].Trim() : "";

    /// <summary>The cells of a column that are filled.</summary>
    internal IEnumerable<string> Filled(int column) => Rows.Select(row => Cell(row, column)).Where(cell => cell.Length > 0);

    /// <summary>Has the cell a key that a part could have, with a digit in it?</summary>
    internal static bool HasNumberShape(string cell) => NumberKey.Of(cell) is { Length: >= 4 and <= NumberKey.MaxLength } key && key.Any(char.IsAsciiDigit);
}

/// <param name="Column">From 1.</param>
/// <param name="Cells">The first that are filled, at most three.</param>
public sealed record PriceListColumn(int Column, string Head, IReadOnlyList<string> Cells);

/// <param name="Line">Where it stands in the document, from 1.</param>
public sealed record PriceListRow(int Line, IReadOnlyList<string> Cells);
