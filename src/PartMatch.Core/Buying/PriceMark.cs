namespace PartMatch.Core.Buying;

/// <summary>How a column of prices writes its decimals. What one cell leaves open, the others may settle; nothing else does.</summary>
/// <param name="Mark">Null where nothing settles it, or two cells contradict each other.</param>
/// <param name="Because">What settles it; null where no cell has a mark.</param>
/// <param name="Open">Cells that can mean two amounts as they stand.</param>
public sealed record PriceMark(char? Mark, string? Because, IReadOnlyList<string> Open)
{
    /// <summary>Does every cell with a mark leave it open, so that only the user can say?</summary>
    public bool IsAsked => Because is null && Open.Count > 0;

    internal static PriceMark None { get; } = new(null, null, []);

    public static string NameOf(char mark) => mark == '.' ? "point" : "comma";

    /// <param name="column">From 0.</param>
    /// <param name="given">As the user says; null where nothing was said.</param>
    internal static PriceMark Of(PriceListTable table, int column, string currency, char? given)
    {
        var cells = table.Rows.Select(row => (row.Line, Text: PriceListTable.Cell(row, column))).Where(cell => cell.Text.Length > 0).ToList();
        string[] open = [.. cells.Select(cell => cell.Text).Where(cell => PriceCell.IsOpen(cell, currency))];
        if (given is not null)
        {
            return new PriceMark(given, "you said so", open);
        }

        var shown = cells.Select(cell => (cell.Line, cell.Text, Mark: PriceCell.FindMark(cell.Text))).Where(cell => cell.Mark is not null)
            .DistinctBy(cell => cell.Mark).ToList();
        return shown switch
        {
            [] => new PriceMark(null, null, open),
            [var only] => new PriceMark(only.Mark, FormattableString.Invariant($"{only.Text} in line {only.Line} can mean nothing else") + Settled(open), open),
            [var one, var other, ..] => new PriceMark(
                null,
                FormattableString.Invariant($"{one.Text} in line {one.Line} and {other.Text} in line {other.Line} contradict each other")
                    + ", so each price is read by itself",
                open),
        };
    }

    private static string Settled(string[] open) => open.Length == 0 ? ""
        : $"; that settles {open[0]}{(open.Length == 1 ? "" : $" and {open.Length - 1} more")}";
}
