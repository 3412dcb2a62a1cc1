using PartMatch.Storage.Books.Format;

namespace PartMatch.Storage.Books.Checks;

/// <summary>Evidence: no source is derived from itself, and what was retracted says when.</summary>
internal static class EvidenceChecks
{
    public static void Run(BookScope scope, ErrorList errors)
    {
        var derivedFrom = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (var row in scope.Own.Declared(BookTables.EvidenceRows))
        {
            derivedFrom.TryAdd(row["evidence"], row["derived_from"]);
        }

        var isSound = new HashSet<string>(StringComparer.Ordinal);
        foreach (var row in scope.Own.Rows(BookTables.EvidenceRows))
        {
            if (row.Has("retracted_why") && !row.Has("retracted_on"))
            {
                errors.Add(row, "retracted_on", "empty, but a reason for retracting it is given: expected a date");
            }

            if (IsInLoop(row["evidence"], derivedFrom, isSound))
            {
                errors.Add(
                    row, "derived_from", "goes round in a loop back to this evidence: expected a chain that ends at an original source",
                    "leave the cell of the original empty");
            }
        }
    }

    private static bool IsInLoop(string evidence, Dictionary<string, string> derivedFrom, HashSet<string> isSound)
    {
        var seen = new HashSet<string>(StringComparer.Ordinal);
        for (var next = evidence; next is { Length: > 0 } && !isSound.Contains(next); next = derivedFrom.GetValueOrDefault(next))
        {
            if (!seen.Add(next))
            {
                return next == evidence;
            }
        }

        // Everything on a chain that ends is sound: each is walked once.
        isSound.UnionWith(seen);
        return false;
    }
}
