using PartMatch.Core.Catalogue;
using PartMatch.Core.Measures;
using PartMatch.Storage.Books.Format;
using PartMatch.Storage.Catalogue;

namespace PartMatch.Storage.Books.Checks;

/// <summary>Joints and stacks: their features exist where they are said to, and measure the same.</summary>
internal static class JointChecks
{
    public static void Run(BookScope scope, ErrorList errors)
    {
        foreach (var row in scope.Own.Rows(BookTables.Joints))
        {
            KindChecks.CheckWork(row, errors);
            var left = FeatureLookUp.Find(scope, row, scope.KindAt(row["left_position"]), "left_feature", errors);
            var right = FeatureLookUp.Find(scope, row, scope.KindAt(row["right_position"]), "right_feature", errors);
            if (left is not null && right is not null && Codes.Find<Relation>(row["relation"]) is { } relation)
            {
                CheckJoint(row, left, relation, right, errors);
            }
        }

        foreach (var row in scope.Own.Rows(BookTables.Stacks))
        {
            KindChecks.CheckWork(row, errors);
            SpanChecks.CheckBand(row, "min", "max", errors);
            if (UnitTable.Find(row["unit"]) is { Offset: not 0 } unit)
            {
                errors.Add(
                    row, "unit", $"{unit.Symbol} has a zero of its own, so a sum in it means nothing",
                    () => UnitTable.BaseOf(unit.Dimension).Symbol);
            }

            CheckTerms(scope, row, errors);
        }
    }

    private static void CheckJoint(BookRow row, FeatureInScope left, Relation relation, FeatureInScope right, ErrorList errors)
    {
        if (!Fit(left.Type, relation, right.Type))
        {
            errors.Add(
                row, "relation", $"'{left.Code}' is a {Codes.Of(left.Type)} and '{right.Code}' a {Codes.Of(right.Type)}, which cannot be compared so",
                "band for two quantities or counts; same for two counts, choices or sets; one-of for a choice in a set; covers for a set that holds a choice or a set");
            return;
        }

        if (relation != Relation.Band)
        {
            ValueChecks.MustBeEmpty(row, ["min", "max", "unit"], $"the relation is {Codes.Of(relation)}", errors);
            return;
        }

        SpanChecks.CheckBand(row, "min", "max", errors);
        if (left.Type == FeatureType.Count)
        {
            ValueChecks.MustBeEmpty(row, ["unit"], "counts have no unit", errors);
        }
        else if (left.Unit?.Dimension != right.Unit?.Dimension)
        {
            errors.Add(
                row, "right_feature",
                $"'{left.Code}' is kept in {left.Unit?.Symbol} and '{right.Code}' in {right.Unit?.Symbol}: they measure different things");
        }
        else
        {
            ValueChecks.CheckUnit(row, "unit", left, isNeeded: true, errors);
        }
    }

    private static bool Fit(FeatureType left, Relation relation, FeatureType right) => (left, relation, right) switch
    {
        (FeatureType.Quantity, Relation.Band, FeatureType.Quantity) or (FeatureType.Count, Relation.Band, FeatureType.Count) => true,
        (_, Relation.Same, _) => left == right && left is FeatureType.Count or FeatureType.Choice or FeatureType.Choices,
        (FeatureType.Choice, Relation.OneOf, FeatureType.Choices) => true,
        (FeatureType.Choices, Relation.Covers, FeatureType.Choices or FeatureType.Choice) => true,
        _ => false,
    };

    private static void CheckTerms(BookScope scope, BookRow row, ErrorList errors)
    {
        if (StackTerms.Find(row["terms"]) is not { } terms)
        {
            errors.Add(
                row, "terms", "expected signed terms joined by |, each +position.feature, -position.feature or a signed number",
                "+34.0|-intake-camshaft.lift");
            return;
        }

        if (!terms.OfType<FeatureTerm>().Any())
        {
            errors.Add(row, "terms", "no term names a feature");
        }

        foreach (var at in terms.OfType<FeatureTerm>().Select(term => term.At))
        {
            CheckTerm(scope, row, at, errors);
        }
    }

    private static void CheckTerm(BookScope scope, BookRow row, FeatureAt at, ErrorList errors)
    {
        if (scope.KindAt(at.Position) is not { } kind)
        {
            if (scope.Own.IsReadable(BookTables.Positions))
            {
                errors.Add(
                    row, "terms", $"no position '{at.Position}' in this book", () => NearestCode.Find(at.Position, scope.Known(Refers.Position)));
            }
        }
        else if (scope.LacksFeature(kind, at.Feature))
        {
            errors.Add(
                row, "terms", $"the kind {kind} at {at.Position} has no feature '{at.Feature}'",
                () => NearestCode.Find(at.Feature, scope.FeaturesOf(kind)));
        }
        else if (scope.FindFeature(kind, at.Feature) is { } feature)
        {
            if (feature.Type != FeatureType.Quantity)
            {
                errors.Add(row, "terms", $"'{at.Position}.{at.Feature}' is a {Codes.Of(feature.Type)}, expected a quantity");
            }
            else if (UnitTable.Find(row["unit"]) is { } unit && unit.Dimension != feature.Unit?.Dimension)
            {
                errors.Add(
                    row, "terms",
                    $"'{at.Position}.{at.Feature}' is kept in {feature.Unit?.Symbol}, the stack in {unit.Symbol}: they measure different things");
            }
        }
    }
}
