using System.Globalization;

namespace PartMatch.Core.Buying;

/// <summary>Which column of a price list holds what.</summary>
/// <param name="Columns">In the order of <see cref="PriceColumn"/>, at most one for each.</param>
/// <param name="Unused">Heads of the columns that nothing is taken from.</param>
public sealed record PriceListMapping(IReadOnlyList<MappedColumn> Columns, IReadOnlyList<string> Unused)
{
    // Shares of a column's filled cells from which its content alone says what it is. Ours, no source.
    private const double MostAreKnown = 0.3;
    private const double MostAreSo = 0.8;

    public MappedColumn? Find(PriceColumn column) => Columns.FirstOrDefault(mapped => mapped.Holds == column);

    /// <summary>What the user says; for the rest what the heads say; for what is then missing, what the cells look like.</summary>
    /// <param name="isKnown">Is it a number of the base?</param>
    /// <param name="given">Column by what it holds, from 0; null where the user says that there is none.</param>
    public static PriceListMapping Propose(PriceListTable table, Func<string, bool> isKnown, IReadOnlyDictionary<PriceColumn, int?> given)
    {
        var mapped = new SortedDictionary<PriceColumn, MappedColumn>();
        void Take(PriceColumn holds, int column, string because) => mapped[holds] = new MappedColumn(holds, column + 1, table.Headers[column], because);
        bool IsFree(int column) => mapped.Values.All(one => one.Column != column + 1);

        foreach (var (holds, column) in given)
        {
            if (column is { } chosen)
            {
                Take(holds, chosen, "you said so");
            }
        }

        var heads = table.Headers.Select((head, column) => (Column: column, Said: PriceListHeads.Find(head))).Where(head => head.Said is not null)
            .OrderByDescending(head => head.Said!.Value.Whole).ThenBy(head => head.Column); // filtered for null
        foreach (var (column, said) in heads)
        {
            if (said is { } what && !mapped.ContainsKey(what.Column) && !given.ContainsKey(what.Column) && IsFree(column))
            {
                Take(what.Column, column, $"headed \"{table.Headers[column]}\"");
            }
        }

        var contents = Enumerable.Range(0, table.Headers.Count).Select(column => ContentOf(table, column, isKnown)).ToList();
        foreach (var (holds, share, least, what) in new (PriceColumn, Func<Content, double>, double, string)[]
        {
            (PriceColumn.Number, content => content.Known, MostAreKnown, "numbers of the base"), (PriceColumn.Price, content => content.Prices, MostAreSo,
                "amounts with decimals"),
            (PriceColumn.Number, content => content.Numbers, MostAreSo, "shaped like part numbers"), (PriceColumn.Quantity, content => content.Small,
                MostAreSo, "small whole numbers"),
        })
        {
            var best = contents.Where(content => IsFree(content.Column) && share(content) >= least).OrderByDescending(share)
                .ThenBy(content => content.Column).FirstOrDefault();
            if (best is not null && !mapped.ContainsKey(holds) && !given.ContainsKey(holds))
            {
                Take(holds, best.Column, string.Create(CultureInfo.InvariantCulture, $"{Math.Round(share(best) * 100)} % of its cells are {what}"));
            }
        }

        return new PriceListMapping([.. mapped.Values], [.. table.Headers.Where((_, column) => IsFree(column))]);
    }

    private static Content ContentOf(PriceListTable table, int column, Func<string, bool> isKnown)
    {
        var cells = table.Filled(column).ToList();
        double Share(Func<string, bool> holds) => cells.Count == 0 ? 0 : (double)cells.Count(holds) / cells.Count;
        return new Content(
            column, Share(isKnown), Share(PriceListTable.HasNumberShape), Share(PriceCell.LooksLikeAmount),
            Share(cell => cell.Length <= 3 && cell.All(char.IsAsciiDigit)));
    }

    /// <summary>Shares of the filled cells of a column.</summary>
    private sealed record Content(int Column, double Known, double Numbers, double Prices, double Small);
}

/// <param name="Column">From 1.</param>
/// <param name="Because">Why this column was taken for it.</param>
public sealed record MappedColumn(PriceColumn Holds, int Column, string Head, string Because);
