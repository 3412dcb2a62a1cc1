using PartMatch.Core.Catalogue;
using PartMatch.Storage.Books.Format;

namespace PartMatch.Storage.Books.Checks;

/// <summary>Companion rules, and tables for positions that are chosen by measurement.</summary>
internal static class CompanionChecks
{
    public static void Run(BookScope scope, ErrorList errors)
    {
        foreach (var row in scope.Own.Rows(BookTables.Companions))
        {
            CheckSide(scope, row, "when", errors);
            CheckSide(scope, row, "then", errors);
        }

        foreach (var row in scope.Own.Rows(BookTables.Selects))
        {
            CheckSelect(scope, row, errors);
        }
    }

    private static void CheckSide(BookScope scope, BookRow row, string side, ErrorList errors)
    {
        if (FeatureLookUp.Find(scope, row, scope.KindAt(row[side + "_position"]), side + "_feature", errors) is not { } feature)
        {
            return;
        }

        if (RelationTypes.FindFault(feature, row[side + "_relation"]) is { } fault)
        {
            errors.Add(row, side + "_relation", fault);
            return;
        }

        ValueChecks.CheckValue(row, side + "_value", side + "_unit", feature, Codes.Find<Relation>(row[side + "_relation"]), errors);
    }

    private static void CheckSelect(BookScope scope, BookRow row, ErrorList errors)
    {
        SpanChecks.CheckBand(row, "from", "to", errors);
        if (FeatureLookUp.Find(scope, row, scope.KindAt(row["measure_position"]), "measure_feature", errors) is { } feature)
        {
            if (feature.Type == FeatureType.Quantity)
            {
                ValueChecks.CheckUnit(row, "unit", feature, isNeeded: true, errors);
            }
            else
            {
                errors.Add(row, "measure_feature", $"'{feature.Code}' is a {Codes.Of(feature.Type)}, expected a quantity that can be measured");
            }
        }

        FamilyChecks.CheckKind(scope, row, errors);
    }
}
