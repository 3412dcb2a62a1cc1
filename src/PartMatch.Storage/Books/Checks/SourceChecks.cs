using PartMatch.Core.Catalogue;
using PartMatch.Core.Measures;
using PartMatch.Storage.Books.Format;

namespace PartMatch.Storage.Books.Checks;

/// <summary>What is told of the sources, and that a reading of one example is not passed off as a value of its number.</summary>
internal static class SourceChecks
{
    public static void Run(BookScope scope, ErrorList errors)
    {
        foreach (var row in scope.Own.Rows(BookTables.Sources))
        {
            Check(scope, row, errors);
        }

        foreach (var row in scope.Own.Rows(BookTables.Values).Where(row => row.Has("evidence") && scope.SpeaksOfAnItem(row["evidence"])))
        {
            errors.Add(
                row, "evidence", $"'{row["evidence"]}' speaks of one item in hand: expected a source that speaks of the number",
                "record it in readings.csv for that item, and promote the reading when it shall count for the number");
        }

        foreach (var row in scope.Own.Rows(BookTables.Photos).Where(row => !row.Has("evidence") && !row.Has("item")))
        {
            errors.Add(row, "evidence", "evidence and item are both empty: expected at least one of them, so that the photograph shows something");
        }
    }

    private static void Check(BookScope scope, BookRow row, ErrorList errors)
    {
        if (scope.BookOf(BookTables.EvidenceRows, row["evidence"]) is { } book && book != scope.Own.Code)
        {
            errors.Add(row, "evidence", $"book {book} has this evidence: expected evidence of this book", $"tell more of it in sources.csv of {book}");
        }

        if (row.Has("output") != row.Has("output_unit"))
        {
            errors.Add(row, row.Has("output") ? "output_unit" : "output", "output and its unit go together: expected both or neither");
        }
        else if (UnitTable.Find(row["output_unit"]) is { } unit && unit.Dimension != Dimension.Power)
        {
            errors.Add(row, "output_unit", $"an output is a power: expected one of: {UnitTable.SymbolsOf(Dimension.Power)}", "kW");
        }

        var grade = scope.Own.Rows(BookTables.EvidenceRows).FirstOrDefault(other => other["evidence"] == row["evidence"])?["grade"];
        if (grade is not null && row.Has("hours") && grade != Codes.Of(EvidenceGrade.RanUnderLoad))
        {
            errors.Add(
                row, "hours", $"hours under load are told, but the grade of '{row["evidence"]}' is {grade}",
                "make the grade ran-under-load, or leave the cell empty");
        }
    }
}
