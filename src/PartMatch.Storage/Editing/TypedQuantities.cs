using System.Text.RegularExpressions;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Measures;
using PartMatch.Storage.Books.Checks;
using PartMatch.Storage.Books.Format;

namespace PartMatch.Storage.Editing;

/// <summary>Quantities typed with their unit into one cell ("3.40 in"): number and unit each go to their own cell, as typed.</summary>
internal static partial class TypedQuantities
{
    private static readonly string[] _valueColumns = ["value", "minus", "plus", "uncertainty", "min", "max", "from", "to", "allowance", "output"];

    /// <summary>Splits what can be split; what looks like a quantity and is none is a fault of its cell.</summary>
    /// <returns>Was all of it split? Otherwise the unit is still in the text, and its own cell is not to blame for being empty.</returns>
    public static bool Split(BookScope scope, BookRow row, ErrorList errors)
    {
        var before = errors.Total;
        var unitColumn = row.Table.FindIndex("unit") is not null ? "unit" : row.Table.FindIndex("output_unit") is not null ? "output_unit" : null;
        if (unitColumn is null)
        {
            return true;
        }

        var (mayBeQuantity, dimension) = Of(scope, row);
        var hadUnit = row.Has(unitColumn);
        var withUnit = new HashSet<string>(StringComparer.Ordinal);
        foreach (var column in _valueColumns.Where(column => mayBeQuantity && row.Table.FindIndex(column) is not null && Shape().IsMatch(row[column])))
        {
            var wanted = dimension ?? UnitOf(row[column])?.Dimension ?? Dimension.Power;
            if (QuantityParser.Parse(row[column], wanted) is QuantityRead read)
            {
                withUnit.Add(column);
                Take(row, column, unitColumn, read, errors);
            }
            else if (QuantityParser.Parse(row[column], wanted) is QuantityRefused refused)
            {
                errors.Add(row, column, $"{refused.Title.TrimEnd('?')}: expected {refused.Expected}", refused.Mend);
            }
        }

        // "3.40" beside "0.2 mm" may be inches as well as millimetres: asked about, never guessed.
        var isUnitFromOthers = !hadUnit && row.Has(unitColumn) && !withUnit.Contains("value");
        if (isUnitFromOthers && row.Table.FindIndex("value") is not null && Number().IsMatch(row["value"]))
        {
            var unit = row[unitColumn];
            errors.Add(row, "value", $"no unit, but another cell of the row is in {unit}: expected the number with its unit", $"write {row["value"]} {unit}, if it is that");
        }

        return errors.Total == before;
    }

    // A number, then something that begins with a letter, a degree or percent sign: not a date, not a number with a wrong mark in it.
    [GeneratedRegex(@"^\s*[-+\u2212]?[0-9][0-9.,'\u2019 ]*[\p{L}°%µΩ/].*$", RegexOptions.CultureInvariant)]
    private static partial Regex Shape();

    [GeneratedRegex(@"^[\s0-9.,'\u2019+\u2212-]+", RegexOptions.CultureInvariant)]
    private static partial Regex Digits();

    [GeneratedRegex("^-?[0-9.]+", RegexOptions.CultureInvariant)]
    private static partial Regex Number();

    private static Unit? UnitOf(string typed) => UnitTable.Find(Digits().Replace(typed, "").Trim());

    private static void Take(BookRow row, string column, string unitColumn, QuantityRead read, ErrorList errors)
    {
        var number = Number().Match(read.Quantity.Text).Value;
        if (row.Has(unitColumn) && row[unitColumn] != read.Unit.Symbol)
        {
            errors.Add(
                row, column, $"in {read.Unit.Symbol}, but the unit of the row is {row[unitColumn]}: expected one unit for the whole row",
                () => UnitTable.Find(row[unitColumn]) is { } unit && unit.Dimension == read.Unit.Dimension
                    ? FormattableString.Invariant($"{number} {read.Unit.Symbol} is {unit.FromBase(read.Unit.ToBase(QuantityParser.FindNumber(number) ?? 0)):0.#########} {unit.Symbol}")
                    : null);
            return;
        }

        row[column] = number;
        row[unitColumn] = read.Unit.Symbol;
    }

    /// <summary>Can the values of the row be quantities, and of which dimension where that is known?</summary>
    private static (bool MayBe, Dimension? Dimension) Of(BookScope scope, BookRow row)
    {
        if (row.Table == BookTables.Engine)
        {
            var property = EngineProperties.Find(row["property"]);
            return (property?.Words is null, property?.Dimension);
        }

        if (row.Table == BookTables.Sources)
        {
            return (true, Dimension.Power);
        }

        var kind = row.Table == BookTables.Readings ? scope.KindOfItem(row["item"])
            : row.Table == BookTables.Values ? scope.FindPart(row["part"])?.Kind
            : row.Table == BookTables.Needs ? scope.KindAt(row["position"])
            : row.Table.FindIndex("kind") is not null ? row["kind"]
            : null;
        return kind is not null && row.Table.FindIndex("feature") is not null && scope.FindFeature(kind, row["feature"]) is { } feature
            ? (feature.Type == FeatureType.Quantity, feature.Unit?.Dimension)
            : (true, null);
    }
}
