using PartMatch.Core.Measures;
using PartMatch.Storage.Books.Format;

namespace PartMatch.Storage.Books.Checks;

/// <summary>Torques: a torque or an angle, passes without a gap, and one source that does not contradict itself.</summary>
internal static class TorqueChecks
{
    public static void Run(BookScope scope, ErrorList errors)
    {
        foreach (var row in scope.Own.Rows(BookTables.Torques))
        {
            CheckTurn(row, errors);
            SpanChecks.Check(row, errors);
        }

        var fasteners = scope.Own.Rows(BookTables.Torques).Where(row => Cells.Pass.FindFault(row["pass"]) is null)
            .GroupBy(row => (
                row["variant"], row["position"], row["evidence"], row["built_from"], row["built_to"], row["serial_from"], row["serial_to"]));
        foreach (var passes in fasteners)
        {
            BookRow[] inOrder = [.. passes.OrderBy(row => row["pass"], StringComparer.Ordinal)];
            CheckPasses(inOrder, errors);
            CheckAgreement(inOrder, "lubrication", errors);
            CheckAgreement(inOrder, "single_use", errors);
        }
    }

    private static void CheckTurn(BookRow row, ErrorList errors)
    {
        if (UnitTable.Find(row["unit"]) is { Dimension: not (Dimension.Torque or Dimension.Angle) })
        {
            errors.Add(
                row, "unit",
                $"a pass is a torque or an angle: expected one of: {UnitTable.SymbolsOf(Dimension.Torque)}, {UnitTable.SymbolsOf(Dimension.Angle)}", "N·m");
        }

        var value = Cells.FindNumber(row["value"]);
        if (value == 0)
        {
            errors.Add(row, "value", "0 tightens nothing: expected more than 0", "leave the row out where nothing is recorded");
        }
        else if (Cells.FindNumber(row["minus"]) > value)
        {
            errors.Add(row, "minus", $"more than the value itself, which is {row["value"]}: expected at most that");
        }
    }

    private static void CheckPasses(BookRow[] inOrder, ErrorList errors)
    {
        foreach (var (index, row) in inOrder.Index())
        {
            if (row["pass"] != FormattableString.Invariant($"{index + 1}"))
            {
                errors.Add(
                    row, "pass", $"pass {row["pass"]} of {row.KeyText} comes after {index}: expected {index + 1}",
                    "number the passes of one source 1, 2, 3 without a gap");
                return;
            }
        }
    }

    // Told once or on every pass, it holds for the fastener.
    private static void CheckAgreement(BookRow[] inOrder, string column, ErrorList errors)
    {
        if (Array.Find(inOrder, row => row.Has(column)) is not { } first)
        {
            return;
        }

        foreach (var row in inOrder.Where(row => row.Has(column) && row[column] != first[column]))
        {
            errors.Add(
                row, column, $"pass {first["pass"]} says {first[column]}: expected one word for all passes of one fastener by one source",
                "leave the cell empty, or correct the other pass");
        }
    }
}
