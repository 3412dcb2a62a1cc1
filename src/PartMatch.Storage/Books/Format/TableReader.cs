using System.Buffers;
using System.Text;

namespace PartMatch.Storage.Books.Format;

/// <summary>Reads one file: any column order, a byte order mark, any line ends, any legal quoting.</summary>
internal static class TableReader
{
    private const char ByteOrderMark = '\uFEFF';

    private static readonly UTF8Encoding _strictUtf8 = new(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);

    /// <summary>
    /// Its rows, cells in the table's order and in Unicode normal form C, or null when its encoding, quoting or header is at fault. A row of the wrong
    /// width is reported and marked.
    /// </summary>
    public static IReadOnlyList<BookRow>? Read(BookTable table, BookFile file, ErrorList errors, ImportWatch watch)
    {
        var faults = 0;
        try
        {
            foreach (var fault in CsvFaults.FindInFile(() => Text(file)))
            {
                errors.AddToFile(file.Name, fault.Line, null, null, fault.Reason, fault.Suggestion);
                faults++;
            }
        }
        catch (DecoderFallbackException)
        {
            errors.AddToFile(file.Name, LineOfBadBytes(file), null, null, "bytes that are not UTF-8", "save the file as UTF-8");
            return null;
        }

        return faults > 0 ? null : Rows(table, Lines(file), errors, watch);
    }

    /// <summary>From the beginning of the file, each time they are gone through.</summary>
    private static IEnumerable<CsvRow> Lines(BookFile file)
    {
        using var text = Text(file);
        foreach (var line in CsvText.Read(text))
        {
            yield return InFormC(line);
        }
    }

    private static StreamReader Text(BookFile file)
    {
        var text = new StreamReader(file.Open(), _strictUtf8, detectEncodingFromByteOrderMarks: false, BookFile.BufferBytes);
        if (text.Peek() == ByteOrderMark)
        {
            text.Read();
        }

        return text;
    }

    private static int LineOfBadBytes(BookFile file)
    {
        var bytes = file.Content.Span;
        var good = 0;
        while (good < bytes.Length && Rune.DecodeFromUtf8(bytes[good..], out _, out var read) == OperationStatus.Done)
        {
            good += read;
        }

        return 1 + bytes[..good].Count((byte)'\n');
    }

    private static PackedRows? Rows(BookTable table, IEnumerable<CsvRow> lines, ErrorList errors, ImportWatch watch)
    {
        var rows = new PackedRows(table);
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
            rows.Add(line.Line, cells, isBroken);
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

    // Cell by cell: no sign joins with a comma, a quote or a line end before it.
    private static CsvRow InFormC(CsvRow line)
    {
        foreach (var (index, cell) in line.Cells.Index())
        {
            if (!cell.IsNormalized())
            {
                line.Cells[index] = cell.Normalize();
            }
        }

        return line;
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
