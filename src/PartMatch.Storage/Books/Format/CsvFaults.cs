namespace PartMatch.Storage.Books.Format;

/// <summary>A fault of the quoting.</summary>
internal sealed record CsvFault(int Line, string Reason, string Suggestion);

/// <summary>Finds what is not CSV by RFC 4180: a quote that never ends, one in the middle of a cell, text after a closing quote.</summary>
internal static class CsvFaults
{
    /// <summary>The CSV library refuses rows of 16 million characters; no honest row comes near this.</summary>
    private const int MaxRowLength = 1_000_000;

    private const int BlockLength = 32_768;

    private enum Place
    {
        CellStart,
        Plain,
        Quoted,
        AfterQuote,
    }

    /// <summary>The faults of a file with a header: the separator alone where that is wrong, because every quote would be told as well.</summary>
    public static IEnumerable<CsvFault> FindInFile(string text) => FindInFile(() => new StringReader(text));

    /// <param name="open">Gives the text from its beginning, each time. It is read to its end before the first fault is told.</param>
    public static IEnumerable<CsvFault> FindInFile(Func<TextReader> open)
    {
        using var text = open();
        var mayHaveFaults = MayHaveFaults(text);
        using var again = open();
        return HasSemicolons(again.ReadLine() ?? "")
            ? [new CsvFault(
                1, "the columns are separated by semicolons, expected commas",
                "export it from the spreadsheet again with commas between the columns and points in the numbers")]
            : mayHaveFaults ? FindLetterByLetter(open, ',') : [];
    }

    /// <summary>The faults in order of their lines.</summary>
    public static IEnumerable<CsvFault> Find(string text, char separator = ',') =>
        MayHaveFaults(new StringReader(text)) ? FindLetterByLetter(() => new StringReader(text), separator) : [];

    /// <summary>Not without any quote, as whole lists are, and with no row too long.</summary>
    private static bool MayHaveFaults(TextReader text)
    {
        var (mayHave, row, block) = (false, 0, new char[BlockLength]);
        for (int read; (read = text.ReadBlock(block)) > 0;)
        {
            var rest = block.AsSpan(0, read);
            mayHave |= rest.Contains('"');
            for (int end; (end = rest.IndexOfAny('\r', '\n')) >= 0; rest = rest[(end + 1)..])
            {
                mayHave |= row + end >= MaxRowLength;
                row = 0;
            }

            row += rest.Length;
            mayHave |= row >= MaxRowLength;
        }

        return mayHave;
    }

    private static IEnumerable<CsvFault> FindLetterByLetter(Func<TextReader> open, char separator)
    {
        using var text = open();
        var place = Place.CellStart;
        int line = 1, opened = 0, rowStart = 0, rowLine = 1;
        for (int index = 0, read; (read = text.Read()) >= 0; index++)
        {
            var letter = (char)read;
            var isBreak = letter == '\n' || (letter == '\r' && text.Peek() != '\n');
            if (place == Place.AfterQuote && letter is not ('"' or '\r' or '\n') && letter != separator)
            {
                var reason = line == opened
                    ? "text after the closing quote of a cell"
                    : $"the quote that opens here closes in line {line}, in the middle of a cell";
                yield return new CsvFault(opened, reason, "double a quote that belongs to the text, and close the cell with a single one");
                place = Place.Plain;
            }
            else if (letter == '"')
            {
                if (place == Place.Plain)
                {
                    yield return new CsvFault(
                        line, "a quote inside a cell that does not begin with one", "put the whole cell in quotes and double the quote inside it");
                }

                if (place == Place.CellStart)
                {
                    opened = line;
                }

                place = place switch
                {
                    Place.CellStart or Place.AfterQuote => Place.Quoted,
                    Place.Quoted => Place.AfterQuote,
                    _ => Place.Plain,
                };
            }
            else if (place != Place.Quoted)
            {
                place = letter is '\r' or '\n' || letter == separator ? Place.CellStart : Place.Plain;
            }

            line += isBreak ? 1 : 0;
            if (place != Place.Quoted && (isBreak || text.Peek() < 0))
            {
                if (index - rowStart > MaxRowLength)
                {
                    yield return new CsvFault(rowLine, $"a row of more than {MaxRowLength} characters", "shorten its cells");
                }

                (rowStart, rowLine) = (index + 1, line);
            }
        }

        if (place == Place.Quoted)
        {
            yield return new CsvFault(opened, "a quote opens here and never closes", "close the cell with a quote");
        }
    }

    /// <remarks>Spreadsheets do so where decimals are written with a comma; they may have rewritten numbers as well, so it is not read all the same.</remarks>
    private static bool HasSemicolons(string header) => header.Contains(';', StringComparison.Ordinal) && !header.Contains(',', StringComparison.Ordinal);
}
