namespace PartMatch.Core.Listings;

/// <summary>Rows of a table with headed columns as products with their offers.</summary>
internal static class TableReader
{
    // The row of heads stands first, or under a caption or two. Ours, no source.
    private const int HeadsWithin = 4;

    private static readonly Label[] _things = [Label.Number, Label.Mpn, Label.Sku, Label.Gtin, Label.Description];
    private static readonly Label[] _sale = [Label.Price, Label.Quantity, Label.Pieces, Label.Stock, Label.Condition, Label.Availability, Label.Shipping];

    /// <summary>One for each row; empty for a table that offers nothing.</summary>
    public static IReadOnlyList<ListedProduct> Products(IReadOnlyList<IReadOnlyList<string>> grid, string? currency)
    {
        var heads = FindHeads(grid);
        if (heads < 0)
        {
            return [];
        }

        var labels = grid[heads].Select(LabelWords.Find).ToList();
        if (!labels.Exists(label => label is { } known && _things.Contains(known)) || !labels.Exists(label => label is { } known && _sale.Contains(known)))
        {
            return [];
        }

        var priced = labels.IndexOf(Label.Price) is >= 0 and var column ? LabelWords.FindCurrency(grid[heads][column]) : null;
        return [.. grid.Skip(heads + 1).Take(StatedProducts.Most + 1).Select((row, index) => Row(row, index + 1, labels, grid[heads], priced ?? currency))
            .OfType<ListedProduct>()];
    }

    /// <summary>The row that heads the columns; −1 for a table that only lays out a page.</summary>
    public static int FindHeads(IReadOnlyList<IReadOnlyList<string>> grid)
    {
        for (var row = 0; row < Math.Min(grid.Count, HeadsWithin); row++)
        {
            var labels = grid[row].Where(cell => cell.Length > 0).Distinct().ToList();
            if (labels.Select(LabelWords.Find).OfType<Label>().Distinct().Count() >= 2
                && labels.Count(cell => LabelWords.Find(cell) is null) <= labels.Count / 2)
            {
                return row;
            }
        }

        return -1;
    }

    private static ListedProduct? Row(IReadOnlyList<string> row, int place, List<Label?> labels, IReadOnlyList<string> heads, string? currency)
    {
        string? Cell(Label label) => labels.IndexOf(label) is >= 0 and var column && column < row.Count && row[column].Length > 0 ? row[column] : null;
        List<StatedNumber> numbers = [];
        List<Passage> passages = [];
        for (var column = 0; column < Math.Min(row.Count, labels.Count); column++)
        {
            var property = LabelWords.Property(labels[column]);
            if (row[column].Length == 0 || (property is null && labels[column] is not (Label.Description or null)))
            {
                continue;
            }

            passages.Add(new(PassagePlace.TableCell, $"table row {place}, {heads[column]}", row[column], null, property));
            if (property is { } stated and not (NumberProperty.Fits or NumberProperty.Replaces))
            {
                numbers.Add(StatedNumbers.Number(stated, row[column]));
            }
        }

        var name = Cell(Label.Description);
        if ((numbers.Count == 0 && name is null) || row.Select(LabelWords.Find).OfType<Label>().Distinct().Count() >= 2)
        {
            return null;
        }

        var unheaded = string.Join(", ", row.Where((_, column) => column >= labels.Count || labels[column] is null or Label.Returns or Label.Description));
        var condition = Cell(Label.Condition) is { } written ? ConditionWords.Stated(written) : ConditionWords.Find(name ?? "");
        var stock = Cell(Label.Stock) ?? Cell(Label.Quantity);
        var there = StatedTerms.Whole(stock);
        var offer = new ReadOffer(
            Cell(Label.Price) is { } price ? PriceText.Read(price, currency) : null,
            StatedTerms.Whole(Cell(Label.Pieces)) ?? PieceWords.Find(name ?? "") ?? 1,
            condition,
            Available(Cell(Label.Availability) ?? stock, there),
            Cell(Label.Shipping) is { } shipping ? ShippingWords.Stated(shipping, currency) : null,
            Cell(Label.Days) is { } days ? DayWords.Stated(days) : null,
            Cell(Label.Seller),
            null,
            there,
            TermWords.Find(unheaded) with { CoreDeposit = Cell(Label.Deposit) is { } deposit ? PriceText.Read(deposit, currency) : null },
            LevelWords.Find(name ?? ""));
        return new(new(StatementForm.Table, name, Cell(Label.Brand), numbers, condition, [offer], null), passages);
    }

    private static Availability Available(string? words, int? pieces) =>
        words is null ? Availability.NotStated
        : pieces is { } there ? there > 0 ? Availability.InStock : Availability.OutOfStock
        : words.ToLowerInvariant() switch
        {
            "yes" or "ja" or "oui" or "sí" or "si" or "x" or "✓" => Availability.InStock,
            "no" or "nein" or "non" or "nej" or "—" or "-" => Availability.OutOfStock,
            "sold" or "gone" or "verkauft" or "weg" or "vendu" or "vendue" or "såld" or "sålt" or "vendido" or "vendida" => Availability.SoldOut,
            _ => StockWords.Find(words),
        };
}
