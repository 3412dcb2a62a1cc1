using PartMatch.Core.Catalogue;
using PartMatch.Storage.Books.Format;

namespace PartMatch.Storage.Books.Checks;

/// <summary>What was read of single examples, and the service limits of a kind.</summary>
internal static class ItemChecks
{
    public static void Run(BookScope scope, ErrorList errors)
    {
        foreach (var row in scope.Own.Rows(BookTables.Readings))
        {
            CheckReading(scope, row, errors);
        }

        foreach (var row in scope.Own.Rows(BookTables.Limits))
        {
            if (FeatureLookUp.Find(scope, row, row["kind"], "feature", errors) is { } feature)
            {
                CheckLimit(row, feature, errors);
            }
        }
    }

    private static void CheckReading(BookScope scope, BookRow row, ErrorList errors)
    {
        if (row["feature"] == Feature.Present.Code)
        {
            errors.Add(row, "feature", "an item in hand is there: expected a feature that can be read on it", "leave the row out");
        }
        else if (FeatureLookUp.Find(scope, row, scope.KindOfItem(row["item"]), "feature", errors) is { } feature)
        {
            ValueChecks.CheckValue(row, "value", "unit", feature, null, errors);
            if (feature.Type != FeatureType.Quantity)
            {
                ValueChecks.MustBeEmpty(row, ["uncertainty"], $"'{feature.Code}' is a {Codes.Of(feature.Type)}", errors);
            }
        }
    }

    private static void CheckLimit(BookRow row, FeatureInScope feature, ErrorList errors)
    {
        SpanChecks.CheckBand(row, "min", "max", errors);
        if (feature.Type == FeatureType.Quantity)
        {
            ValueChecks.CheckUnit(row, "unit", feature, isNeeded: true, errors);
        }
        else if (feature.Type == FeatureType.Count)
        {
            ValueChecks.MustBeEmpty(row, ["unit"], $"'{feature.Code}' is a count", errors);
        }
        else
        {
            errors.Add(row, "feature", $"'{feature.Code}' is a {Codes.Of(feature.Type)}: expected a quantity or a count, which can wear beyond a limit");
        }
    }
}
