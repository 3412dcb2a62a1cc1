using PartMatch.Core.Catalogue;
using PartMatch.Storage.Books.Format;

namespace PartMatch.Storage.Books.Checks;

/// <summary>Findings: an outcome that its axis can have, a part that can sit there, neighbours that exist.</summary>
internal static class FindingChecks
{
    private static readonly string[] _ofMounts = [.. Outcomes(FindingOutcome.Yes, FindingOutcome.WithWork, FindingOutcome.No)];
    private static readonly string[] _ofRuns = [.. Outcomes(FindingOutcome.Same, FindingOutcome.Differently)];

    public static void Run(BookScope scope, ErrorList errors)
    {
        foreach (var row in scope.Own.Rows(BookTables.Findings))
        {
            SpanChecks.Check(row, errors);
            FamilyChecks.CheckKind(scope, row, errors);
            CheckOutcome(row, errors);
            if (BookTables.Findings.Columns[BookTables.Findings.IndexOf("with")].Rule.FindFault(row["with"]) is null)
            {
                CheckNeighbours(scope, row, errors);
            }
        }
    }

    private static void CheckOutcome(BookRow row, ErrorList errors)
    {
        if (Codes.Find<Axis>(row["axis"]) is { } axis && row.Has("outcome"))
        {
            ValueChecks.CheckCell(row, "outcome", Cells.OneOf(axis == Axis.Mounts ? _ofMounts : _ofRuns), errors);
        }
    }

    private static void CheckNeighbours(BookScope scope, BookRow row, ErrorList errors)
    {
        var seen = new HashSet<string>(StringComparer.Ordinal);
        foreach (var neighbour in row.List("with"))
        {
            var (position, part) = (neighbour[..neighbour.IndexOf('=', StringComparison.Ordinal)], neighbour[(neighbour.IndexOf('=', StringComparison.Ordinal) + 1)..]);
            if (position == row["position"] || !seen.Add(position))
            {
                errors.Add(row, "with", $"'{position}' is the finding's own position or stands twice: expected each other position once", "leave it out");
            }
            else if (scope.KindAt(position) is not { } kind)
            {
                if (scope.Own.IsReadable(BookTables.Positions))
                {
                    errors.Add(row, "with", $"no position '{position}' in this book: expected one of positions.csv", () => NearestCode.Find(position, scope.Known(Refers.Position)));
                }
            }
            else if (part != Part.None)
            {
                CheckPart(scope, row, part, kind, errors);
            }
        }
    }

    private static void CheckPart(BookScope scope, BookRow row, string part, string kind, ErrorList errors)
    {
        if (scope.FindPart(part) is not { } found)
        {
            if (scope.Own.IsReadable(BookTables.Parts))
            {
                errors.Add(row, "with", $"no part '{part}' in this book or a book that it uses: expected one of parts.csv", () => NearestCode.Find(part, scope.Known(Refers.Part)));
            }
        }
        else if (found.Kind != kind && scope.Holds(Refers.Kind, found.Kind) && scope.Holds(Refers.Kind, kind))
        {
            errors.Add(row, "with", $"{part} is of kind {found.Kind}, the position holds kind {kind}");
        }
    }

    private static IEnumerable<string> Outcomes(params IEnumerable<FindingOutcome> outcomes) => outcomes.Select(outcome => Codes.Of(outcome)).Order(StringComparer.Ordinal);
}
