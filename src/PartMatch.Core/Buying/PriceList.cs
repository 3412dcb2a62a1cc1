using System.Globalization;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Listings;
using PartMatch.Core.Measures;

namespace PartMatch.Core.Buying;

/// <summary>How a price list is read.</summary>
/// <param name="DecimalMark">The decimal mark of its prices; null: as the columns show it.</param>
/// <param name="Condition">Of every row, where no column says it.</param>
public sealed record PriceListTerms(string Currency, char? DecimalMark, ItemCondition Condition);

/// <summary>One row of a price list, with what was made of it.</summary>
/// <param name="Sold">What the number is; absent where there is none.</param>
/// <param name="Pack">1 where no column says it: a list prices single pieces.</param>
/// <param name="Faults">What keeps it from being stored; empty where nothing does.</param>
public sealed record PriceListLine(
    int Line, string Number, string NumberKey, SoldNumber? Sold, Money? Price, int? Pack, int? Stock, ItemCondition Condition, Money? CoreDeposit, string? Note,
    IReadOnlyList<CellFault> Faults)
{
    /// <summary>Words or nothing where the price should stand: "on request". It is no offer, whatever else is wrong with the row.</summary>
    public bool IsUnpriced { get; init; }

    public bool IsFaulty => Faults.Count > 0;
}

/// <param name="Column">Head of the column.</param>
public sealed record CellFault(string Column, string Found, string Expected, string Mend);

/// <summary>Reads the rows of a price list, one by one, once it is known which column holds what.</summary>
public sealed class PriceList
{
    private const int LongestNote = 500;

    private readonly PriceListMapping _mapping;
    private readonly PriceListTerms _terms;
    private readonly SoldNumbers _numbers;
    private readonly char? _depositMark;

    public PriceList(PriceListTable table, PriceListMapping mapping, PriceListTerms terms, SoldNumbers numbers)
    {
        (_mapping, _terms, _numbers) = (mapping, terms, numbers);
        DecimalMark = MarkOf(table, PriceColumn.Price);
        _depositMark = MarkOf(table, PriceColumn.CoreDeposit).Mark ?? DecimalMark.Mark;
    }

    /// <summary>The decimal mark that the prices are read with, and why.</summary>
    public PriceMark DecimalMark { get; }

    public PriceListLine Read(PriceListRow row)
    {
        var faults = new List<CellFault>();
        var number = ListingText.Keep(Cell(row, PriceColumn.Number)).Text;
        var key = NumberKey.Of(number);
        if (key.Length is 0 or > NumberKey.MaxLength)
        {
            AddFault(faults, PriceColumn.Number, number, $"a part number of 1 to {NumberKey.MaxLength} letters and digits",
                "leave the row out, or complete the number");
        }

        return new PriceListLine(
            row.Line, number, key, key.Length is 0 or > NumberKey.MaxLength ? null : _numbers.Judge(number),
            Money(row, PriceColumn.Price, DecimalMark.Mark, isNeeded: true, faults),
            _mapping.Find(PriceColumn.Pack) is null ? 1 : Whole(row, PriceColumn.Pack, 1, "pieces", faults),
            Whole(row, PriceColumn.Quantity, 0, "packs", faults),
            Condition(row, faults), Money(row, PriceColumn.CoreDeposit, _depositMark, isNeeded: false, faults), NoteOf(Cell(row, PriceColumn.Note)), faults)
        {
            IsUnpriced = !Cell(row, PriceColumn.Price).Any(char.IsNumber),
        };
    }

    private PriceMark MarkOf(PriceListTable table, PriceColumn holds) =>
        _mapping.Find(holds) is { } column ? PriceMark.Of(table, column.Column - 1, _terms.Currency, _terms.DecimalMark) : PriceMark.None;

    private string Cell(PriceListRow row, PriceColumn holds) => _mapping.Find(holds) is { } column ? PriceListTable.Cell(row, column.Column - 1) : "";

    private Money? Money(PriceListRow row, PriceColumn holds, char? mark, bool isNeeded, List<CellFault> faults)
    {
        var cell = Cell(row, holds);
        if (cell.Length == 0 && !isNeeded)
        {
            return null;
        }

        // No deposit can be stated, a price of nothing cannot.
        if (!isNeeded && Amount.Find(cell.Replace(',', '.'), _terms.Currency) is { Minor: var minor } nothing && minor == 0)
        {
            return nothing.ToMoney();
        }

        switch (PriceCell.Of(cell, _terms.Currency, mark))
        {
            case PriceCellReading.Read read:
                return read.Money;
            case PriceCellReading.Faulty faulty:
                AddFault(faults, holds, cell, faulty.Expected, faulty.Mend);
                return null;
            default:
                throw new InvalidOperationException("A price was read as something that no outcome names.");
        }
    }

    private int? Whole(PriceListRow row, PriceColumn holds, int least, string what, List<CellFault> faults)
    {
        var cell = Cell(row, holds);
        if (cell.Length == 0)
        {
            return null;
        }

        if (int.TryParse(cell, NumberStyles.None, CultureInfo.InvariantCulture, out var many) && many >= least && many <= OfferBounds.MostPieces)
        {
            return many;
        }

        AddFault(faults, holds, cell, $"a whole number of {what} from {least} to {OfferBounds.MostPieces}",
            "leave the cell empty where it is not known, or take another column");
        return null;
    }

    private ItemCondition Condition(PriceListRow row, List<CellFault> faults)
    {
        var cell = Cell(row, PriceColumn.Condition);
        if (cell.Length == 0)
        {
            return _terms.Condition;
        }

        if (PriceListConditions.Find(cell) is { } condition)
        {
            return condition;
        }

        AddFault(faults, PriceColumn.Condition, cell, "new, refurbished, used or damaged",
            "write one of these, or ask with condition=none to leave the column out");
        return ItemCondition.NotStated;
    }

    private void AddFault(List<CellFault> faults, PriceColumn holds, string found, string expected, string mend) =>
        faults.Add(new CellFault(_mapping.Find(holds)?.Head ?? Codes.Of(holds), found.Length == 0 ? "nothing" : found, expected, mend));

    private static string? NoteOf(string cell)
    {
        var plain = ListingText.Keep(cell).Text.ReplaceLineEndings(" ");
        var most = char.IsHighSurrogate(plain.ElementAtOrDefault(LongestNote - 1)) ? LongestNote - 1 : LongestNote;
        return plain.Length == 0 ? null : plain.Length <= most ? plain : plain[..most].TrimEnd() + "…";
    }
}
