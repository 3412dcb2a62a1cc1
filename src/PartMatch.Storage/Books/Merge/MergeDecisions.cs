using System.Text;
using PartMatch.Storage.Books.Format;

namespace PartMatch.Storage.Books.Merge;

/// <summary>The conflicts of a merge as a CSV that a person fills in: <c>here</c> or <c>there</c> in the last column of each row.</summary>
/// <remarks>It is made for a spreadsheet: a cell that a spreadsheet would take for a formula, and one that begins with an apostrophe, has an apostrophe in front.</remarks>
internal static class MergeDecisions
{
    public const string File = "conflicts.csv";

    private const string Here = "here";
    private const string There = "there";

    private static readonly string[] _columns = ["file", "key", "column", "here", "there", "take"];

    public static byte[] Write(IReadOnlyList<MergeConflict> conflicts, IReadOnlyDictionary<MergeConflict, bool> decided) => Encoding.UTF8.GetBytes(CsvText.Write(
        _columns,
        conflicts.Select(one => (IReadOnlyList<string>)
            [one.File, Guarded(one.Key), one.Column, Guarded(one.Here), Guarded(one.There), decided.TryGetValue(one, out var takesThere) ? takesThere ? There : Here : ""])));

    /// <summary>For each conflict that was decided: is it taken from there? A row without a decision stays open.</summary>
    public static IReadOnlyDictionary<MergeConflict, bool> Read(BookFile file, IReadOnlyList<MergeConflict> conflicts, ErrorList errors)
    {
        var decided = new Dictionary<MergeConflict, bool>();
        var text = Encoding.UTF8.GetString(file.Content.Span).TrimStart('\uFEFF');
        foreach (var fault in CsvFaults.FindInFile(text))
        {
            errors.AddToFile(File, fault.Line, null, null, fault.Reason, fault.Suggestion);
        }

        if (errors.Any)
        {
            return decided;
        }

        var known = conflicts.ToHashSet();
        foreach (var row in CsvText.Read(text))
        {
            if (row.Line == 1)
            {
                CheckHeader(row, errors);
            }
            else if (row.Cells.Length != _columns.Length)
            {
                errors.AddToFile(File, row.Line, null, string.Join(',', row.Cells), $"{row.Cells.Length} cells, expected {_columns.Length}", "check the commas and quotes of the row");
            }
            else
            {
                Read(row, known, decided, errors);
            }
        }

        return decided;
    }

    private static void CheckHeader(CsvRow row, ErrorList errors)
    {
        if (!row.Cells.SequenceEqual(_columns))
        {
            errors.AddToFile(File, row.Line, null, string.Join(',', row.Cells), $"expected the header {string.Join(',', _columns)}", "fill in the file as it came, without changing its columns");
        }
    }

    private static void Read(CsvRow row, HashSet<MergeConflict> known, Dictionary<MergeConflict, bool> decided, ErrorList errors)
    {
        var cells = Array.ConvertAll(row.Cells, Bare);
        var conflict = new MergeConflict(cells[0], cells[1], cells[2], cells[3], cells[4]);
        var take = cells[5].Trim().ToLowerInvariant();
        if (!known.Contains(conflict))
        {
            errors.AddToFile(File, row.Line, "key", conflict.Key, "no conflict of this merge: the base or the other book has changed since", "ask for the conflicts again");
        }
        else if (take is not ("" or Here or There))
        {
            errors.AddToFile(File, row.Line, "take", cells[5], $"expected {Here} or {There}", NearestCode.Find(take, [Here, There]));
        }
        else if (take.Length > 0)
        {
            decided[conflict] = take == There;
        }
    }

    private static string Guarded(string cell) => cell.Length > 0 && "=+-@'\t".Contains(cell[0], StringComparison.Ordinal) ? "'" + cell : cell;

    private static string Bare(string cell) => cell.StartsWith('\'') ? cell[1..] : cell;
}
