using nietras.SeparatedValues;

namespace PartMatch.Storage.Books.Format;

/// <summary>A row as it stands in the file, the header being the first.</summary>
/// <param name="Line">Physical line where it starts, from 1; line breaks inside cells count.</param>
internal sealed record CsvRow(int Line, string[] Cells);

/// <summary>CSV by RFC 4180. The one place that names the CSV library, because it follows the RFC only when told to escape and to unescape.</summary>
internal static class CsvText
{
    /// <summary>Reads rows of any width. The text must have passed <see cref="CsvFaults"/>: the library accepts an unterminated quote silently.</summary>
    /// <remarks>Line ends inside cells become line feeds. Short texts that a column has again and again are one text.</remarks>
    public static IEnumerable<CsvRow> Read(string text, char separator = ',') => Read(new StringReader(text), separator);

    /// <summary>The same, with no more than a piece of the text in memory. It is gone through once.</summary>
    public static IEnumerable<CsvRow> Read(TextReader text, char separator = ',')
    {
        using var reader = Sep.New(separator)
            .Reader(options => options with { HasHeader = false, Unescape = true, DisableColCountCheck = true, CreateToString = SepToString.PoolPerCol() })
            .From(text);
        var line = 1;
        while (reader.MoveNext())
        {
            yield return new CsvRow(line, Cells(reader.Current));

            // Where a row ends is counted right; where the first one starts is not, so starts are taken from ends.
            line = reader.Current.LineNumberToExcl;
        }
    }

    /// <summary>Writes rows of equal width: line feeds, quotes only where the RFC requires them.</summary>
    public static string Write(IReadOnlyList<string> header, IEnumerable<IReadOnlyList<string>> rows)
    {
        using var writer = Sep.New(',').Writer(options => options with { WriteHeader = false, Escape = true }).ToText();
        foreach (var cells in rows.Prepend(header))
        {
            using var row = writer.NewRow();
            for (var column = 0; column < cells.Count; column++)
            {
                row[column].Set(cells[column]);
            }
        }

        return writer.ToString();
    }

    private static string[] Cells(SepReader.Row row)
    {
        var cells = new string[row.ColCount];
        for (var column = 0; column < cells.Length; column++)
        {
            cells[column] = WithLineFeeds(row[column].ToString());
        }

        return cells;
    }

    private static string WithLineFeeds(string cell) =>
        cell.Contains('\r', StringComparison.Ordinal) ? cell.Replace("\r\n", "\n", StringComparison.Ordinal).Replace('\r', '\n') : cell;
}
