using PartMatch.Core.Catalogue;
using PartMatch.Core.Measures;
using PartMatch.Storage.Books.Format;

namespace PartMatch.Storage.Books.Checks;

/// <summary>Parts, their numbers, values and curves, what replaces them and what holds them.</summary>
internal static class PartChecks
{
    public static void Run(BookScope scope, ErrorList errors, ImportWatch watch)
    {
        CheckMakers(scope, BookTables.Parts, "part", errors, watch);
        CheckMakers(scope, BookTables.Numbers, "number", errors, watch);
        foreach (var row in scope.Own.Rows(BookTables.Values))
        {
            CheckValue(scope, row, errors);
            watch.Row();
        }

        CheckCurves(scope, errors);
        foreach (var row in scope.Own.Rows(BookTables.Supersessions))
        {
            SpanChecks.Check(row, errors);
            CheckTwoParts(row, "old_part", "new_part", "replaces", errors);
            CheckPieces(row, errors);
        }

        foreach (var row in scope.Own.Rows(BookTables.Contents))
        {
            CheckTwoParts(row, "set", "part", "holds", errors);
            CheckPieces(row, errors);
        }
    }

    private static void CheckMakers(BookScope scope, BookTable table, string column, ErrorList errors, ImportWatch watch)
    {
        var index = table.IndexOf(column);
        var known = "";
        foreach (var row in scope.Own.Rows(table))
        {
            watch.Row();

            // Whole lists are of one maker: that of the row before is known to be there.
            if (row[index].AsSpan().StartsWith(known, StringComparison.Ordinal) && known.Length > 0)
            {
                continue;
            }

            if (PartId.Find(row[index]) is { } id && scope.Holds(Refers.Maker, id.Maker))
            {
                known = id.Maker + ":";
            }
            else
            {
                CheckMaker(scope, row, column, errors);
            }
        }
    }

    private static void CheckMaker(BookScope scope, BookRow row, string column, ErrorList errors)
    {
        if (Cells.Part.Accepts(row[column])
            && PartId.Find(row[column]) is { } id
            && scope.Own.IsReadable(BookTables.Makers)
            && !scope.Holds(Refers.Maker, id.Maker))
        {
            errors.Add(
                row, column, $"no maker '{id.Maker}' in this book or a book that it uses: expected one of makers.csv",
                () => NearestCode.Find(id.Maker, scope.Known(Refers.Maker)) is { } maker ? $"{maker}:{id.Number}" : null);
        }
    }

    private static void CheckValue(BookScope scope, BookRow row, ErrorList errors)
    {
        if (row["feature"] == Feature.Present.Code)
        {
            errors.Add(row, "feature", "whether a part is there is known from the fitments, not recorded as a value", "leave the row out");
        }
        else if (FeatureLookUp.Find(scope, row, scope.FindPart(row["part"])?.Kind, "feature", errors) is { } feature)
        {
            ValueChecks.Check(row, feature, null, errors);
        }
    }

    private static void CheckCurves(BookScope scope, ErrorList errors)
    {
        var firstPoints = new Dictionary<(string Part, string Curve), BookRow>();
        foreach (var row in scope.Own.Rows(BookTables.Curves))
        {
            if (FeatureLookUp.Find(scope, row, scope.FindPart(row["part"])?.Kind, "curve", errors) is not { } feature)
            {
                continue;
            }

            if (feature.Type != FeatureType.Curve)
            {
                errors.Add(row, "curve", $"'{feature.Code}' is a {Codes.Of(feature.Type)}, expected a curve", "single values go to values.csv");
                continue;
            }

            ValueChecks.CheckUnit(row, "unit", feature, isNeeded: false, errors);
            if (row.Has("y") != row.Has("y_unit"))
            {
                errors.Add(row, "y_unit", "y and its unit go together: expected both or neither");
            }

            var first = firstPoints.GetValueOrDefault((row["part"], row["curve"]), row);
            firstPoints.TryAdd((row["part"], row["curve"]), row);
            CheckAxis(row, first, "x_unit", errors);
            CheckAxis(row, first, "y_unit", errors);
        }
    }

    /// <summary>All points of a curve measure the same along an axis.</summary>
    private static void CheckAxis(BookRow row, BookRow first, string column, ErrorList errors)
    {
        if (UnitTable.Find(row[column])?.Dimension != UnitTable.Find(first[column])?.Dimension)
        {
            errors.Add(
                row, column, $"the curve has '{first[column]}' {first.Place}: expected a unit of the same dimension", () => first[column]);
        }
    }

    private static void CheckTwoParts(BookRow row, string one, string other, string verb, ErrorList errors)
    {
        if (PartId.Find(row[one]) is { } first && first.Key == PartId.FindKey(row[other]))
        {
            errors.Add(row, other, $"a part that {verb} itself");
        }
    }

    private static void CheckPieces(BookRow row, ErrorList errors)
    {
        if (Cells.FindWhole(row["quantity"]) is 0 or > int.MaxValue)
        {
            errors.Add(row, "quantity", "expected a number of pieces, 1 or more");
        }
    }
}
