using System.Text;

namespace PartMatch.Storage.Books.Format;

/// <summary>Reads one file: any column order, a byte order mark, any line ends, any legal quoting.</summary>
internal static class TableReader
{
    private static readonly UTF8Encoding _strictUtf8 = new(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);

    /// <summary>
    /// Its rows, cells in the table's order and in Unicode normal form C, or null when its encoding, quoting or header is at fault. A row of the wrong
    /// width is reported and marked.
    /// </summary>
    public static List<BookRow>? Read(BookTable table, BookFile file, ErrorList errors, ImportWatch watch)
    {
        if (Decode(file, errors) is not { } text)
        {
            return null;
        }

        var faults = CsvFaults.FindInFile(text).Aggregate(0, (count, fault) =>
        {
            errors.AddToFile(file.Name, fault.Line, null, null, fault.Reason, fault.Suggestion);
            return count + 1;
        });
        return faults > 0 ? null : Rows(table, CsvText.Read(text), errors, watch);
    }

    private static string? Decode(BookFile file, ErrorList errors)
    {
        var bytes = file.Content.Span;
        try
        {
            var text = _strictUtf8.GetString(bytes.StartsWith(Encoding.UTF8.Preamble) ? bytes[3..] : bytes);
            return text.IsNormalized() ? text : text.Normalize();
        }
        catch (DecoderFallbackException exception)
        {
            var line = 1 + bytes[..Math.Clamp(exception.Index, 0, bytes.Length)].Count((byte)'\n');
            errors.AddToFile(file.Name, line, null, null, "bytes that are not UTF-8", "save the file as UTF-8");
            return null;
        }
    }

    private static List<BookRow>? Rows(BookTable table, IEnumerable<CsvRow> lines, ErrorList errors, ImportWatch watch)
    {
        var rows = new List<BookRow>();
        int[]? columns = null;
        var (width, isInOrder) = (0, false);
        foreach (var line in lines)
        {
            if (columns is null)
            {
                width = line.Cells.Length;
                if (IsOtherFormat(table, line.Cells, lines, errors) || Header(table, line.Cells, errors) is not { } found)
                {
                    return null;
                }

                columns = found;
                isInOrder = found.Length == width && found.Index().All(column => column.Item == column.Index);
                continue;
            }

            var isBroken = line.Cells.Length != width;
            if (isBroken)
            {
                errors.AddToFile(
                    table.File, line.Line, null, string.Join(',', line.Cells), WidthFault(line, width), "check the commas and quotes of the row");
            }

            var cells = isInOrder && !isBroken ? line.Cells
                : Array.ConvertAll(columns, index => index >= 0 && index < line.Cells.Length ? line.Cells[index] : "");
            rows.Add(new BookRow(table, line.Line, cells) { IsBroken = isBroken });
            watch.Row();
        }

        if (columns is null)
        {
            errors.AddToFile(
                table.File, null, null, null, "the file is empty, expected a header row",
                string.Join(',', table.Columns.Select(column => column.Name)));
            return null;
        }

        return rows;
    }

    private static string WidthFault(CsvRow line, int width) =>
        line.Cells is [""] ? "an empty line" : $"{line.Cells.Length} cells, the header has {width}";

    /// <summary>Asked before the columns are: another format may have others.</summary>
    private static bool IsOtherFormat(BookTable table, string[] header, IEnumerable<CsvRow> lines, ErrorList errors)
    {
        var index = table == BookTables.Books ? Array.IndexOf(header, "format") : -1;
        if (index < 0 || lines.Skip(1).FirstOrDefault() is not { } first || index >= first.Cells.Length || first.Cells[index] == BookTables.Format)
        {
            return false;
        }

        errors.AddToFile(
            table.File, first.Line, "format", first.Cells[index], $"unknown format number, expected {BookTables.Format}",
            "a newer program may read it");
        return true;
    }

    /// <summary>For each column of the table its place in the file, -1 where the file may lack it; or null when the header is not that of the table.</summary>
    private static int[]? Header(BookTable table, string[] header, ErrorList errors)
    {
        var names = table.Columns.Select(column => column.Name).ToList();
        var before = errors.Total;
        foreach (var (index, name) in header.Index())
        {
            if (table.FindIndex(name) is null)
            {
                errors.AddToFile(table.File, 1, name, null, "unknown column", NearestCode.Find(name, names.Except(header)));
            }
            else if (Array.IndexOf(header, name) < index)
            {
                errors.AddToFile(table.File, 1, name, null, "the column is there twice", "leave one out");
            }
        }

        foreach (var name in names.Except(header).Except(table.Columns.Where(column => column.CameLater).Select(column => column.Name)))
        {
            errors.AddToFile(table.File, 1, name, null, "the column is missing", "add it; its cells may be empty where nothing is recorded");
        }

        return errors.Total > before ? null : [.. names.Select(name => Array.IndexOf(header, name))];
    }
}
