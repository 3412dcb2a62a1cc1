using PartMatch.Core.Catalogue;
using PartMatch.Storage.Books.Format;

namespace PartMatch.Storage.Books.Checks;

/// <summary>What was read of single examples, and the service limits of kinds and parts.</summary>
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
            CheckPart(scope, row, errors);
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

    /// <summary>Written as the part is, so that one part has one limit of a feature: its key is the text.</summary>
    private static void CheckPart(BookScope scope, BookRow row, ErrorList errors)
    {
        if (scope.FindPart(row["part"]) is not { } part)
        {
            return; // empty, or told by the checks of references
        }

        // A kind that nobody declares is a fault of its own row.
        if (part.Kind != row["kind"] && scope.Holds(Refers.Kind, part.Kind) && scope.Holds(Refers.Kind, row["kind"]))
        {
            errors.Add(
                row, "part", $"it is of the kind '{part.Kind}', and the limit is of '{row["kind"]}': expected a part of that kind",
                "leave it empty for the whole kind");
        }
        else if (part.Id != row["part"])
        {
            errors.Add(row, "part", $"the number stands in {BookTables.Parts.File} as {part.Id}: expected the same writing", part.Id);
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
