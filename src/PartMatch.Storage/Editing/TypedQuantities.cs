using System.Text.RegularExpressions;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Measures;
using PartMatch.Storage.Books.Checks;
using PartMatch.Storage.Books.Format;

namespace PartMatch.Storage.Editing;

/// <summary>Quantities typed with their unit into one cell ("3.40 in"): number and unit each go to their own cell, as typed.</summary>
internal static partial class TypedQuantities
{
    /// <summary>The columns of units, each with those that are in it.</summary>
    private static readonly (string Unit, string[] Values)[] _groups =
    [
        ("unit", ["value", "minus", "plus", "uncertainty", "min", "max", "from", "to", "allowance"]), ("output_unit", ["output"]),
        ("x_unit", ["x"]), ("y_unit", ["y"]), ("when_unit", ["when_value"]), ("then_unit", ["then_value"]),
    ];

    /// <summary>Splits what can be split; what looks like a quantity and is none is a fault of its cell.</summary>
    /// <returns>The columns of units that are still in such a text: they are not to blame for being empty.</returns>
    public static IReadOnlyList<string> Split(BookScope scope, BookRow row, ErrorList errors)
    {
        var unread = new List<string>();
        foreach (var (unit, values) in _groups.Where(group => row.Table.FindIndex(group.Unit) is not null))
        {
            var before = errors.Total;
            var (mayBeQuantity, dimension) = Of(scope, row, unit);
            var hadUnit = row.Has(unit);
            var withUnit = new HashSet<string>(StringComparer.Ordinal);
            foreach (var column in values.Where(column => mayBeQuantity && row.Table.FindIndex(column) is not null && Shape().IsMatch(row[column])))
            {
                if (Split(row, column, unit, dimension, errors))
                {
                    withUnit.Add(column);
                }
            }

            if (!hadUnit && row.Has(unit) && values.Contains("value") && !withUnit.Contains("value"))
            {
                AskForUnit(row, unit, errors);
            }

            if (errors.Total > before)
            {
                unread.Add(unit);
            }
        }

        return unread;
    }

    // "3.40" beside "0.2 mm" may be inches as well as millimetres: asked about, never guessed.
    private static void AskForUnit(BookRow row, string unitColumn, ErrorList errors)
    {
        if (row.Table.FindIndex("value") is not null && Number().IsMatch(row["value"]))
        {
            var unit = row[unitColumn];
            errors.Add(row, "value", $"no unit, but another cell of the row is in {unit}: expected the number with its unit", $"write {row["value"]} {unit}, if it is that");
        }
    }

    // Was it a quantity with its unit?
    private static bool Split(BookRow row, string column, string unitColumn, Dimension? dimension, ErrorList errors)
    {
        var wanted = dimension ?? UnitOf(row[column])?.Dimension ?? Dimension.Power;
        if (QuantityParser.Parse(row[column], wanted) is QuantityRead read)
        {
            Take(row, column, unitColumn, read, errors);
            return true;
        }

        if (QuantityParser.Parse(row[column], wanted) is QuantityRefused refused)
        {
            errors.Add(row, column, $"{refused.Title.TrimEnd('?')}: expected {refused.Expected}", refused.Mend);
        }

        return false;
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
                    ? InOtherUnit(number, read.Unit, unit)
                    : null);
            return;
        }

        row[column] = number;
        row[unitColumn] = read.Unit.Symbol;
    }

    private static string? InOtherUnit(string number, Unit typed, Unit wanted) => QuantityParser.FindNumber(number) is { } value
        ? FormattableString.Invariant($"{number} {typed.Symbol} is {wanted.FromBase(typed.ToBase(value)):0.#########} {wanted.Symbol}")
        : null;

    /// <summary>Can the values in that unit be quantities, and of which dimension where that is known?</summary>
    private static (bool MayBe, Dimension? Dimension) Of(BookScope scope, BookRow row, string unitColumn) => unitColumn switch
    {
        "x_unit" or "y_unit" => (true, DimensionOfAxis(scope, row, unitColumn)),
        "when_unit" => OfSide(scope, row, "when"),
        "then_unit" => OfSide(scope, row, "then"),
        _ => OfValue(scope, row),
    };

    /// <summary>All points of a curve measure the same along an axis; null at the first point.</summary>
    private static Dimension? DimensionOfAxis(BookScope scope, BookRow row, string unitColumn) => scope.Own.Declared(BookTables.Curves)
        .Where(other => other != row && other["curve"] == row["curve"] && PartId.Find(other["part"])?.Key == PartId.Find(row["part"])?.Key)
        .Select(other => UnitTable.Find(other[unitColumn])?.Dimension).FirstOrDefault(dimension => dimension is not null);

    /// <summary>A side whose feature nobody knows has that as its fault.</summary>
    private static (bool MayBe, Dimension? Dimension) OfSide(BookScope scope, BookRow row, string side) =>
        scope.KindAt(row[side + "_position"]) is { } kind && scope.FindFeature(kind, row[side + "_feature"]) is { Type: FeatureType.Quantity } feature
            ? (true, feature.Unit?.Dimension)
            : (false, null);

    private static (bool MayBe, Dimension? Dimension) OfValue(BookScope scope, BookRow row)
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
