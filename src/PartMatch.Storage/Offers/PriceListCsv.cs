using System.Text;
using PartMatch.Core.Buying;
using PartMatch.Storage.Books.Format;

namespace PartMatch.Storage.Offers;

/// <summary>Reads a seller's CSV file into a table: commas, semicolons or tabs, UTF-8 or Windows-1252, as spreadsheets write them.</summary>
public static class PriceListCsv
{
    private static readonly char[] _separators = [',', ';', '\t'];

    private static readonly UTF8Encoding _strictUtf8 = new(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);

    public static PriceListReading Of(ReadOnlySpan<byte> bytes)
    {
        var text = Decode(bytes);
        if (text.Contains('\0', StringComparison.Ordinal))
        {
            return new PriceListReading.Unreadable("bytes that are no text", "a CSV file", "save the table as CSV (UTF-8)");
        }

        var separator = SeparatorOf(text);
        if (CsvFaults.Find(text, separator).FirstOrDefault() is { } fault)
        {
            return new PriceListReading.Unreadable($"line {fault.Line}: {fault.Reason}", "CSV by RFC 4180, with commas, semicolons or tabs between the cells",
                fault.Suggestion);
        }

        var rows = CsvText.Read(text, separator).Take(PriceListTable.MostRows + 2).Select(row => new PriceListRow(row.Line, row.Cells)).ToList();
        return PriceListTable.Of(rows) is not { Rows.Count: > 0 } table
            ? new PriceListReading.Unreadable("no rows", "a row of heads and one row for each number", "save the sheet that holds the prices")
            : table.Rows.Count > PriceListTable.MostRows
                ? new PriceListReading.Unreadable($"more than {PriceListTable.MostRows} rows", $"at most {PriceListTable.MostRows} rows",
                    "cut the list into several files")
                : new PriceListReading.Read(table);
    }

    /// <summary>By its byte order mark, else as UTF-8, and as Windows-1252 where it cannot be that.</summary>
    private static string Decode(ReadOnlySpan<byte> bytes)
    {
        if (bytes.StartsWith(Encoding.Unicode.Preamble))
        {
            return Encoding.Unicode.GetString(bytes[2..]);
        }

        try
        {
            return _strictUtf8.GetString(bytes.StartsWith(Encoding.UTF8.Preamble) ? bytes[3..] : bytes);
        }
        catch (DecoderFallbackException)
        {
            return (CodePagesEncodingProvider.Instance.GetEncoding(1252) ?? Encoding.Latin1).GetString(bytes);
        }
    }

    /// <summary>The one that stands most often outside quotes in the first line that is not empty; the comma where none does.</summary>
    private static char SeparatorOf(string text)
    {
        var line = text.Split('\n').FirstOrDefault(one => !string.IsNullOrWhiteSpace(one)) ?? "";
        var counts = new int[_separators.Length];
        var isQuoted = false;
        foreach (var letter in line)
        {
            isQuoted ^= letter == '"';
            if (!isQuoted && Array.IndexOf(_separators, letter) is >= 0 and var index)
            {
                counts[index]++;
            }
        }

        return counts.Max() == 0 ? ',' : _separators[Array.IndexOf(counts, counts.Max())];
    }
}
