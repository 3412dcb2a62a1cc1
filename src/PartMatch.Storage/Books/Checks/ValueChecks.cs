using PartMatch.Core.Catalogue;
using PartMatch.Core.Measures;
using PartMatch.Storage.Books.Format;

namespace PartMatch.Storage.Books.Checks;

/// <summary>Is a value what its feature can have? Lists are put into ordinal order on the way.</summary>
internal static class ValueChecks
{
    private static readonly string[] _spread = ["minus", "plus", "uncertainty"];

    /// <summary>Checks value, minus, plus, unit and uncertainty of a row.</summary>
    /// <param name="relation">Of the value to what it is compared with; one that compares with a set makes a list of it.</param>
    public static void Check(BookRow row, FeatureInScope feature, Relation? relation, ErrorList errors)
    {
        CheckValue(row, "value", "unit", feature, relation, errors);
        if (feature.Type != FeatureType.Quantity)
        {
            MustBeEmpty(row, _spread, $"'{feature.Code}' is a {Codes.Of(feature.Type)}", errors);
        }
    }

    /// <summary>Checks a value and its unit, in the columns named.</summary>
    public static void CheckValue(BookRow row, string column, string unitColumn, FeatureInScope feature, Relation? relation, ErrorList errors)
    {
        if (!row.Has(column))
        {
            return;
        }

        switch (feature.Type)
        {
            case FeatureType.Quantity:
                CheckCell(row, column, Cells.Number, errors);
                CheckUnit(row, unitColumn, feature, isNeeded: true, errors);
                break;
            case FeatureType.Count:
                CheckCell(row, column, Cells.Whole, errors);
                MustBeEmpty(row, [unitColumn], $"'{feature.Code}' is a count", errors);
                break;
            case FeatureType.Choice:
                CheckChoices(row, column, feature, isList: relation == Relation.OneOf, errors);
                MustBeEmpty(row, [unitColumn], $"'{feature.Code}' is a choice", errors);
                break;
            case FeatureType.Choices:
                CheckChoices(row, column, feature, isList: true, errors);
                MustBeEmpty(row, [unitColumn], $"'{feature.Code}' is a set of choices", errors);
                break;
            default:
                errors.Add(row, column, $"'{feature.Code}' is a curve, which has no single value", "its points go to curves.csv");
                break;
        }
    }

    /// <summary>A unit must be there where it is needed, and measure what the feature measures.</summary>
    public static void CheckUnit(BookRow row, string column, FeatureInScope feature, bool isNeeded, ErrorList errors)
    {
        if (!row.Has(column))
        {
            if (isNeeded)
            {
                errors.Add(row, column, $"the unit is missing: '{feature.Code}' is kept in {feature.Unit?.Symbol}", () => feature.Unit?.Symbol);
            }
        }
        else if (UnitTable.Find(row[column]) is { } unit && feature.Unit is { } expected && unit.Dimension != expected.Dimension)
        {
            errors.Add(
                row, column,
                $"'{feature.Code}' is a {expected.Dimension.ToString().ToLowerInvariant()}, expected one of: {UnitTable.SymbolsOf(expected.Dimension)}",
                () => expected.Symbol);
        }
    }

    public static void MustBeEmpty(BookRow row, IReadOnlyList<string> columns, string because, ErrorList errors)
    {
        foreach (var column in columns.Where(row.Has))
        {
            errors.Add(row, column, $"{because}: expected an empty cell", "leave the cell empty");
        }
    }

    /// <summary>A rule that depends on the rest of the row, for one cell.</summary>
    public static void CheckCell(BookRow row, string column, CellRule rule, ErrorList errors)
    {
        if (rule.FindFault(row[column]) is { } fault)
        {
            errors.Add(row, column, fault, () => rule.FindMend(row[column]));
        }
    }

    private static void CheckChoices(BookRow row, string column, FeatureInScope feature, bool isList, ErrorList errors)
    {
        var rule = Cells.OneOf(feature.Choices);
        rule = isList ? rule.Listed() : rule;
        var before = errors.Total;
        CheckCell(row, column, rule, errors);
        if (isList && errors.Total == before)
        {
            row[column] = CellChecks.InOrder(row[column]);
        }
    }
}
