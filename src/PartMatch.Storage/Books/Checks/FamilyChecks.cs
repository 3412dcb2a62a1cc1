using PartMatch.Core.Catalogue;
using PartMatch.Core.Measures;
using PartMatch.Storage.Books.Format;

namespace PartMatch.Storage.Books.Checks;

/// <summary>Variants, their engine facts, what is fitted where, and what a position needs.</summary>
internal static class FamilyChecks
{
    public static void Run(BookScope scope, ErrorList errors)
    {
        foreach (var row in scope.Own.Rows(BookTables.Variants))
        {
            SpanChecks.Check(row, errors);
        }

        foreach (var row in scope.Own.Rows(BookTables.Engine))
        {
            CheckEngine(row, errors);
        }

        foreach (var row in scope.Own.Rows(BookTables.Fitments))
        {
            SpanChecks.Check(row, errors);
            CheckFitment(scope, row, errors);
        }

        foreach (var row in scope.Own.Rows(BookTables.Needs))
        {
            CheckNeed(scope, row, errors);
        }
    }

    private static void CheckEngine(BookRow row, ErrorList errors)
    {
        if (row.Has("unit"))
        {
            ValueChecks.CheckCell(row, "value", Cells.Number, errors);
        }
        else
        {
            ValueChecks.MustBeEmpty(row, ["minus", "plus", "uncertainty"], "there is no unit, so this is a count or a word", errors);
            if (Cells.FindNumber(row["value"]) is not null && Cells.FindWhole(row["value"]) is null)
            {
                errors.Add(row, "unit", $"{row["value"]} is no count, so it needs a unit", "1 for a plain ratio");
                return;
            }
        }

        if (EngineProperties.Find(row["property"]) is { } property && row.Has("value"))
        {
            CheckKnownProperty(row, property, errors);
        }
    }

    private static void CheckKnownProperty(BookRow row, EngineProperty property, ErrorList errors)
    {
        if (property.Dimension is { } dimension)
        {
            if (UnitTable.Find(row["unit"])?.Dimension != dimension && (!row.Has("unit") || UnitTable.Find(row["unit"]) is not null))
            {
                errors.Add(
                    row, "unit",
                    $"'{row["property"]}' is a {dimension.ToString().ToLowerInvariant()}, expected one of: {UnitTable.SymbolsOf(dimension)}");
            }

            return;
        }

        ValueChecks.MustBeEmpty(row, ["unit"], $"'{row["property"]}' is {(property.Words is null ? "a count" : "a word")}", errors);
        ValueChecks.CheckCell(row, "value", property.Words is null ? Cells.Whole : Cells.OneOf(property.Words), errors);
    }

    private static void CheckFitment(BookScope scope, BookRow row, ErrorList errors)
    {
        var pieces = Cells.FindWhole(row["quantity"]);
        if (row["part"] == Part.None)
        {
            if (pieces > 0)
            {
                errors.Add(row, "quantity", "nothing is fitted there, expected 0", "0");
            }

            return;
        }

        if (pieces is 0 or > int.MaxValue)
        {
            errors.Add(row, "quantity", "expected a number of pieces, 1 or more", $"to say that nothing is fitted, write the part as {Part.None}");
        }

        CheckKind(scope, row, errors);
    }

    /// <summary>A part is of the kind that its position holds.</summary>
    public static void CheckKind(BookScope scope, BookRow row, ErrorList errors)
    {
        if (scope.FindPart(row["part"]) is { } part && scope.KindAt(row["position"]) is { } kind && part.Kind != kind
            && scope.Holds(Refers.Kind, part.Kind) && scope.Holds(Refers.Kind, kind))
        {
            errors.Add(row, "part", $"the part is of kind {part.Kind}, the position holds kind {kind}");
        }
    }

    private static void CheckNeed(BookScope scope, BookRow row, ErrorList errors)
    {
        if (scope.KindAt(row["position"]) is not { } kind || FeatureLookUp.Find(scope, row, kind, "feature", errors) is not { } feature)
        {
            return;
        }

        if (RelationTypes.FindFault(feature, row["relation"]) is { } fault)
        {
            errors.Add(row, "relation", fault);
            return;
        }

        ValueChecks.Check(row, feature, Codes.Find<Relation>(row["relation"]), errors);
        if (row["effect"] == Codes.Of(Effect.Work) && scope.Own.IsReadable(BookTables.Rules) && scope.FindRuleWork(kind, feature.Code) is null)
        {
            errors.Add(
                row, "effect", $"no rule of the kind {kind} names a work for '{feature.Code}'",
                "add the rule with its work to rules.csv, or use another effect");
        }
    }
}
