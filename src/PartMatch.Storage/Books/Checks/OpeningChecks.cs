using PartMatch.Core.Catalogue;
using PartMatch.Core.Measures;
using PartMatch.Storage.Books.Format;

namespace PartMatch.Storage.Books.Checks;

/// <summary>
/// What comes off first, and what goes in first: no ring in any variant. Reminders: of works only where worked. Renewals and weak points: amounts that can be
/// measured out, remedies that can sit there.
/// </summary>
internal static class OpeningChecks
{
    public static void Run(BookScope scope, ErrorList errors)
    {
        CheckRings(scope, errors);
        foreach (var row in scope.Own.Rows(BookTables.Reminders).Where(row => row.Has("works") && row["at"] != Codes.Of(ReminderAt.Worked)))
        {
            errors.Add(row, "works", $"only what is minded when it is worked on names works: at is {row["at"]}", "take the works out, or write worked in at");
        }

        foreach (var row in scope.Own.Rows(BookTables.Renewals))
        {
            CheckRenewal(row, errors);
        }

        foreach (var row in scope.Own.Rows(BookTables.WeakPoints))
        {
            SpanChecks.Check(row, errors);
            CheckRemedy(scope, row, errors);
        }
    }

    private static void CheckRings(BookScope scope, ErrorList errors)
    {
        string[] variants = [.. scope.Own.Rows(BookTables.Variants).Select(row => row["variant"]).Order(StringComparer.Ordinal)];
        var told = new HashSet<string>(StringComparer.Ordinal);
        foreach (var variant in variants)
        {
            var rows = scope.Own.Rows(BookTables.Openings).Concat(scope.Own.Rows(BookTables.BenchOrder))
                .Where(row => !row.Has("variants") || row.List("variants").Contains(variant))
                .OrderBy(row => row.Table.File, StringComparer.Ordinal).ThenBy(row => row.KeyText, StringComparer.Ordinal).ToLookup(Later, StringComparer.Ordinal);
            if (FindRing(rows) is { } ring && told.Add(string.Join('>', ring.Select(Later).Order(StringComparer.Ordinal))))
            {
                errors.Add(
                    ring[^1], ring[^1].Table == BookTables.Openings ? "off_first" : "then",
                    $"no order in which {variant} comes apart: {string.Join(" before ", ring.Select(Sooner).Reverse().Append(Sooner(ring[^1])))}",
                    "take one of these rows out");
            }
        }
    }

    /// <summary>What comes off later; what goes in first comes off last.</summary>
    private static string Later(BookRow row) => row.Table == BookTables.Openings ? row["position"] : row["first"];

    private static string Sooner(BookRow row) => row.Table == BookTables.Openings ? row["off_first"] : row["then"];

    /// <summary>The rows of a ring, each naming what comes off before the one before; null where there is none.</summary>
    private static BookRow[]? FindRing(ILookup<string, BookRow> rows)
    {
        var done = new HashSet<string>(StringComparer.Ordinal);
        var path = new List<BookRow>();
        return rows.Select(at => at.Key).Order(StringComparer.Ordinal).Select(Walk).FirstOrDefault(ring => ring is not null);

        BookRow[]? Walk(string position)
        {
            if (path.FindIndex(row => Later(row) == position) is >= 0 and var begins)
            {
                return [.. path[begins..]];
            }

            if (!done.Contains(position))
            {
                foreach (var row in rows[position])
                {
                    path.Add(row);
                    if (Walk(Sooner(row)) is { } ring)
                    {
                        return ring;
                    }

                    path.RemoveAt(path.Count - 1);
                }

                done.Add(position);
            }

            return null;
        }
    }

    private static void CheckRenewal(BookRow row, ErrorList errors)
    {
        if (row.Has("amount") != row.Has("unit"))
        {
            var (empty, other) = row.Has("amount") ? ("unit", "amount") : ("amount", "unit");
            errors.Add(row, empty, $"empty, but {other} is {row[other]}: expected both or neither");
        }

        if (UnitTable.Find(row["unit"]) is { Dimension: not (Dimension.Volume or Dimension.Mass) })
        {
            errors.Add(
                row, "unit",
                $"an amount is a volume or a mass: expected one of: {UnitTable.SymbolsOf(Dimension.Volume)}, {UnitTable.SymbolsOf(Dimension.Mass)}", "mL");
        }

        if (Cells.FindNumber(row["amount"]) == 0)
        {
            errors.Add(row, "amount", "0 is nothing: expected more than 0", "leave it empty where it is not recorded");
        }
    }

    private static void CheckRemedy(BookScope scope, BookRow row, ErrorList errors)
    {
        if (!row.Has("remedy_part") && !row.Has("remedy_work"))
        {
            errors.Add(row, "remedy_part", "neither a part nor a work: expected what mends it", "name a part of parts.csv or a work of works.csv");
        }

        if (scope.FindPart(row["remedy_part"]) is { } part && scope.KindAt(row["position"]) is { } kind && part.Kind != kind)
        {
            errors.Add(row, "remedy_part", $"'{row["remedy_part"]}' is of kind {part.Kind}: expected a part of kind {kind}, which sits at {row["position"]}");
        }
    }
}
