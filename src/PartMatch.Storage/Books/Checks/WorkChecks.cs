using PartMatch.Core.Measures;
using PartMatch.Storage.Books.Format;

namespace PartMatch.Storage.Books.Checks;

/// <summary>Works: their money, what must be there first, and which features they change.</summary>
internal static class WorkChecks
{
    public static void Run(BookScope scope, ErrorList errors)
    {
        CheckRing(scope, errors);
        foreach (var row in scope.Own.Rows(BookTables.Works))
        {
            CheckMoney(row, errors);
            if (!scope.Own.IsReadable(BookTables.Kinds) || !scope.Own.IsReadable(BookTables.Positions))
            {
                continue;
            }

            foreach (var code in row.List("needs_first").Where(code => !IsHolder(scope, code) && !scope.Holds(Refers.Work, code)))
            {
                errors.Add(
                    row, "needs_first", $"'{code}' is no kind, position or work in this book or a book that it uses",
                    () => NearestCode.Find(code, scope.Known(Refers.Kind)));
            }

            foreach (var change in row.List("changes"))
            {
                CheckChange(scope, row, change, errors);
            }
        }
    }

    /// <summary>Works wait for each other where both are done: not in a ring. A work of a used book waits for none of this one.</summary>
    private static void CheckRing(BookScope scope, ErrorList errors)
    {
        var waits = scope.Own.Rows(BookTables.Works).DistinctBy(row => row["work"])
            .ToDictionary(row => row["work"], row => row.List("needs_first"), StringComparer.Ordinal);
        var left = waits.Keys.ToHashSet(StringComparer.Ordinal);
        while (left.RemoveWhere(work => !waits[work].Any(left.Contains)) > 0)
        {
            // What waits for nothing that is left is out of every ring.
        }

        if (left.Count > 0)
        {
            var path = new List<string> { left.Order(StringComparer.Ordinal).First() };
            while (waits[path[^1]].First(left.Contains) is var next && path.IndexOf(next) is var begins)
            {
                if (begins >= 0)
                {
                    path = [.. path[begins..], next];
                    break;
                }

                path.Add(next);
            }

            errors.Add(
                scope.Own.Rows(BookTables.Works).First(row => row["work"] == path[0]), "needs_first",
                $"no order in which these works are done: {string.Join(" after ", path)}", "take one of them out of needs_first");
        }
    }

    private static void CheckMoney(BookRow row, ErrorList errors)
    {
        if (row.Has("price") != row.Has("currency"))
        {
            errors.Add(row, row.Has("price") ? "currency" : "price", "price and currency go together: expected both or neither");
        }
        else
        {
            CheckDigits(row, "price", errors);
        }
    }

    /// <summary>An amount has no more decimal digits than its currency.</summary>
    public static void CheckDigits(BookRow row, string column, ErrorList errors)
    {
        if (Currencies.FindDigits(row["currency"]) is { } digits && row[column].Split('.') is [_, var decimals] && decimals.Length > digits)
        {
            errors.Add(row, column, $"{row["currency"]} has {digits} decimal digits");
        }
    }

    private static void CheckChange(BookScope scope, BookRow row, string change, ErrorList errors)
    {
        if (change.Split('.') is not [var holder, var feature])
        {
            errors.Add(row, "changes", $"'{change}' is not of the form kind.feature");
        }
        else if (!IsHolder(scope, holder))
        {
            errors.Add(
                row, "changes", $"'{holder}' is no kind or position in this book or a book that it uses",
                () => NearestCode.Find(holder, scope.Known(Refers.Kind)));
        }
        else if ((scope.Holds(Refers.Kind, holder) ? holder : scope.KindAt(holder)) is { } kind && scope.LacksFeature(kind, feature))
        {
            errors.Add(row, "changes", $"the kind {kind} has no feature '{feature}'", () => NearestCode.Find(feature, scope.FeaturesOf(kind)));
        }
    }

    private static bool IsHolder(BookScope scope, string code) => scope.Holds(Refers.Kind, code) || scope.Holds(Refers.Position, code);
}
