using System.Text;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Measures;
using PartMatch.Storage.Books.Checks;
using PartMatch.Storage.Books.Format;

namespace PartMatch.Storage.Books.Rows;

/// <summary>A column that the import works out of a row and its scope, beside the columns of the file.</summary>
internal sealed record Computed(string Name, Func<BookRow, BookScope, object?> Value)
{
    /// <summary>The computed columns of a table.</summary>
    public static IReadOnlyList<Computed> Of(BookTable table) => [.. Special(table), .. table.Columns.SelectMany(column => References(table, column))];

    /// <summary>The name with a blank before each word, for searching by the beginnings of words.</summary>
    public static string Words(string name)
    {
        var words = new StringBuilder(name.Length + 1);
        var isInside = false;
        foreach (var letter in name.ToLowerInvariant())
        {
            var belongs = char.IsLetterOrDigit(letter);
            if (belongs)
            {
                words.Append(isInside ? "" : " ").Append(letter);
            }

            isInside = belongs;
        }

        return words.ToString();
    }

    private static IEnumerable<Computed> References(BookTable table, BookColumn column)
    {
        var (name, book) = (column.Name, column.Name + "_book");
        return column.Refers switch
        {
            _ when column.Rule.IsList || table == BookTables.Books => [],
            Refers.Part => [new(name + "_key", (row, _) => PartId.FindKey(row[name]))],
            Refers.Kind => [new(book, (row, scope) => scope.BookOf(BookTables.Kinds, row[name]))],
            Refers.Work => [new(book, (row, scope) => scope.BookOf(BookTables.Works, row[name]))],
            Refers.Evidence => [new(book, (row, scope) => scope.BookOf(BookTables.EvidenceRows, row[name]))],
            Refers.Seller => [new(book, (row, scope) => scope.BookOf(BookTables.Sellers, row[name]))],
            _ => [],
        };
    }

    private static IEnumerable<Computed> Special(BookTable table) => table.Name switch
    {
        "parts" =>
        [
            new("part_key", (row, _) => PartId.FindKey(row["part"])), new("maker", (row, _) => Id(row, "part").Maker),
            new("number_key", (row, _) => NumberKey.Of(Id(row, "part").Number)),
            new("name_words", (row, _) => Words(row["name"])),
        ],
        "numbers" => [new("maker", (row, _) => Id(row, "number").Maker), new("number_key", (row, _) => NumberKey.Of(Id(row, "number").Number))],
        "values" => [new("type", (row, scope) => Codes.Of(FeatureOf(row, scope).Type)), new("value_si", (row, _) => BaseValue(row))],
        "readings" => [new("type", (row, scope) => Codes.Of(scope.FindFeature(scope.KindOfItem(row["item"])!, row["feature"])!.Type))],
        "engine" => [new("value_si", (row, _) => BaseValue(row))],
        "works" => [new("price_minor", (row, _) => PriceMinor(row))],
        _ => [],
    };

    // A stored row has passed the checks: its part, its feature and its numbers are there.
    private static PartId Id(BookRow row, string column) => PartId.Find(row[column])!;

    private static FeatureInScope FeatureOf(BookRow row, BookScope scope) =>
        scope.FindFeature(scope.FindPart(row["part"])!.Kind, row["feature"])!;

    private static double? BaseValue(BookRow row) =>
        Cells.FindNumber(row["value"]) is not { } number ? null
        : (double)(row.Has("unit") ? UnitTable.Get(row["unit"]).ToBase(number) : number);

    private static long? PriceMinor(BookRow row)
    {
        if (Cells.FindNumber(row["price"]) is not { } price || Currencies.FindDigits(row["currency"]) is not { } digits)
        {
            return null;
        }

        for (var digit = 0; digit < digits; digit++)
        {
            price *= 10;
        }

        return (long)price;
    }
}
