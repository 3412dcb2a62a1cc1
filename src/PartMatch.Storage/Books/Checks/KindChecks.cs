using PartMatch.Core.Catalogue;
using PartMatch.Storage.Books.Format;

namespace PartMatch.Storage.Books.Checks;

/// <summary>Features, and the rules and checks that belong to them.</summary>
internal static class KindChecks
{
    public static void Run(BookScope scope, ErrorList errors)
    {
        foreach (var row in scope.Own.Rows(BookTables.Features))
        {
            CheckFeature(row, errors);
        }

        foreach (var row in scope.Own.Rows(BookTables.Rules))
        {
            if (FeatureLookUp.Find(scope, row, row["kind"], "feature", errors) is { } feature)
            {
                CheckRule(row, feature, errors);
            }

            CheckWork(row, errors);
        }

        foreach (var row in scope.Own.Rows(BookTables.Checks))
        {
            if (FeatureLookUp.Find(scope, row, row["kind"], "feature", errors) is { } feature)
            {
                CheckCheck(row, feature, errors);
            }
        }
    }

    /// <summary>A work is named exactly where the effect is work.</summary>
    public static void CheckWork(BookRow row, ErrorList errors)
    {
        var isWork = row["effect"] == Codes.Of(Effect.Work);
        if (isWork && !row.Has("work"))
        {
            errors.Add(row, "work", "empty, but the effect is work: expected a work of works.csv");
        }
        else if (!isWork && row.Has("work"))
        {
            errors.Add(row, "work", $"a work is named, but the effect is {row["effect"]}", "make the effect work, or leave the cell empty");
        }
    }

    private static void CheckFeature(BookRow row, ErrorList errors)
    {
        if (row["feature"] == Feature.Present.Code)
        {
            errors.Add(row, "feature", "every kind has this feature built in", "leave the row out");
        }

        if (Codes.Find<FeatureType>(row["type"]) is not { } type)
        {
            return;
        }

        var needsUnit = type is FeatureType.Quantity or FeatureType.Curve;
        if (needsUnit != row.Has("unit"))
        {
            errors.Add(
                row, "unit", needsUnit ? $"empty, but a {row["type"]} has a unit" : $"a {row["type"]} has no unit",
                needsUnit ? "1 for a plain ratio" : "leave the cell empty");
        }

        var needsChoices = type is FeatureType.Choice or FeatureType.Choices;
        if (needsChoices != row.Has("choices"))
        {
            errors.Add(
                row, "choices", needsChoices ? "empty, expected the allowed values as a list by |" : $"a {row["type"]} has no choices",
                needsChoices ? "no|yes" : "leave the cell empty");
        }
    }

    private static void CheckRule(BookRow row, FeatureInScope feature, ErrorList errors)
    {
        if (RelationTypes.FindFault(feature, row["relation"]) is { } fault)
        {
            errors.Add(row, "relation", fault);
            return;
        }

        if (feature.Type != FeatureType.Quantity)
        {
            ValueChecks.MustBeEmpty(row, ["allowance", "unit"], $"'{feature.Code}' is a {Codes.Of(feature.Type)}", errors);
            return;
        }

        if (row["relation"] == Codes.Of(Relation.Same) && !row.Has("allowance"))
        {
            errors.Add(
                row, "allowance", "empty, but a rule that wants the same quantity must say how far off is still accepted", "0 where nothing is");
        }

        ValueChecks.CheckUnit(row, "unit", feature, isNeeded: row.Has("allowance"), errors);
    }

    private static void CheckCheck(BookRow row, FeatureInScope feature, ErrorList errors)
    {
        if (feature.Type is FeatureType.Quantity or FeatureType.Curve)
        {
            ValueChecks.CheckUnit(row, "unit", feature, isNeeded: row.Has("uncertainty"), errors);
        }
        else
        {
            ValueChecks.MustBeEmpty(row, ["uncertainty", "unit"], $"'{feature.Code}' is a {Codes.Of(feature.Type)}", errors);
        }
    }
}
