using PartMatch.Core.Catalogue;
using PartMatch.Storage.Books.Format;

namespace PartMatch.Storage.Books.Checks;

/// <summary>Pairs that were judged, and the photographs to ask for.</summary>
internal static class LookAlikeChecks
{
    public static void Run(BookScope scope, ErrorList errors)
    {
        CheckPairs(scope, errors);
        foreach (var row in scope.Own.Rows(BookTables.Shots))
        {
            foreach (var feature in row.List("shows"))
            {
                CheckShown(scope, row, feature, errors);
            }
        }
    }

    /// <summary>Two parts, and the same two once, in whatever order and however their numbers are written.</summary>
    private static void CheckPairs(BookScope scope, ErrorList errors)
    {
        var first = new Dictionary<(string, string), BookRow>();
        foreach (var row in scope.Own.Rows(BookTables.Pairs))
        {
            if (PartId.FindKey(row["part_a"]) is not { } one || PartId.FindKey(row["part_b"]) is not { } other)
            {
                continue;
            }

            if (one == other)
            {
                errors.Add(row, "part_b", "the same part as part_a: a part is not mistaken for itself, expected another part", "leave the row out, or name the other part");
                continue;
            }

            var key = string.CompareOrdinal(one, other) < 0 ? (one, other) : (other, one);

            // The same texts in the same order are found with the other keys.
            if (!first.TryAdd(key, row) && first[key].KeyText != row.KeyText)
            {
                errors.Add(
                    row, "part_a", $"the same two parts already stand {first[key].Place} as {first[key].KeyText}: their order does not count, expected one row",
                    "leave one of the two rows out");
            }
        }
    }

    /// <summary>What a photograph is said to show must be a feature of the kind that can be seen before paying.</summary>
    private static void CheckShown(BookScope scope, BookRow row, string feature, ErrorList errors)
    {
        if (FeatureLookUp.Find(scope, row, row["kind"], "shows", feature, errors) is not null
            && scope.Own.IsReadable(BookTables.Checks)
            && !scope.IsSeenBeforePaying(row["kind"], feature))
        {
            errors.Add(
                row, "shows", $"'{feature}' of the kind {row["kind"]} has neither a photo nor a label check: expected a feature that a photograph can show",
                "take it out of the list, or add such a check to checks.csv");
        }
    }
}
