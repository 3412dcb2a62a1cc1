using CsCheck;
using PartMatch.Storage.Books.Format;
using Xunit;

namespace PartMatch.Storage.Tests.Books;

public sealed class CsvTextTests
{
    // Everything that could upset a CSV reader, more often than chance would bring it; line ends other than line feeds are changed by design.
    private static readonly Gen<string> _cell = Gen.Frequency(
        (3, OneOf("\",\n ';\t=a1").Array[0, 8].Select(letters => new string(letters))),
        (2, Gen.String.Select(text => text.Replace("\r\n", "\n", StringComparison.Ordinal).Replace('\r', '\n'))),
        (1, Gen.Const("")));

    private static readonly Gen<string[][]> _rows = Gen.Int[2, 6].SelectMany(width => _cell.Array[width].Array[1, 7]);

    private static Gen<T> OneOf<T>(IEnumerable<T> items)
    {
        var all = items.ToArray();
        return Gen.Int[0, all.Length - 1].Select(index => all[index]);
    }

    [Fact]
    public void Any_cells_come_back_as_they_were_written() =>
        _rows.Sample(
            rows =>
            {
                var text = CsvText.Write(rows[0], rows.Skip(1));
                var read = CsvText.Read(text).ToList();
                return !CsvFaults.Find(text).Any() && read.Count == rows.Length && read.Zip(rows).All(pair => pair.First.Cells.SequenceEqual(pair.Second));
            });

    [Fact]
    public void Writing_what_was_read_gives_the_same_text() =>
        _rows.Sample(
            rows =>
            {
                var text = CsvText.Write(rows[0], rows.Skip(1));
                return CsvText.Write(rows[0], CsvText.Read(text).Skip(1).Select(row => row.Cells)) == text;
            });

    [Fact]
    public void Every_way_to_quote_and_to_end_lines_reads_the_same()
    {
        Gen.Select(_rows, OneOf(["\n", "\r\n", "\r"]), Gen.Bool).Sample(
            (cells, end, isEnded) =>
            {
                var lines = cells.Select(row => string.Join(',', row.Select(cell => $"\"{cell.Replace("\"", "\"\"", StringComparison.Ordinal)}\"")));
                var text = string.Join(end, lines) + (isEnded ? end : "");
                return !CsvFaults.Find(text).Any() && CsvText.Read(text).Zip(cells).All(pair => pair.First.Cells.SequenceEqual(pair.Second));
            });
    }

    [Fact]
    public void Lines_are_counted_as_an_editor_counts_them()
    {
        var lines = CsvText.Read("a,b\n\"1\n2\",\"3\r\n4\"\r\n5,6\n\n7,8").Select(row => row.Line);
        Assert.Equal([1, 2, 5, 6, 7], lines);
    }

    [Fact]
    public void Quotes_are_written_only_where_they_are_required() =>
        Assert.Equal(
            "a,b\n\"x\"\"y\",\"1,2\"\n\"l\nm\", blank \n=1+1,'\n",
            CsvText.Write(["a", "b"], [["x\"y", "1,2"], ["l\nm", " blank "], ["=1+1", "'"]]));

    [Fact]
    public void Row_of_a_million_characters_is_read_and_a_longer_one_is_named()
    {
        var fits = "a,b\n" + new string('x', 999_000) + ",2\n";
        Assert.Empty(CsvFaults.Find(fits));
        Assert.Equal(999_000, CsvText.Read(fits).Last().Cells[0].Length);
        Assert.Empty(CsvFaults.Find("a\n" + new string('x', 1_000_000) + "\nb\n"));
        Assert.Equal(2, Assert.Single(CsvFaults.Find("a\n" + new string('x', 1_000_001) + "\nb\n")).Line);
        Assert.Equal(2, Assert.Single(CsvFaults.Find("a\r" + new string('x', 1_000_002))).Line);
        var fault = Assert.Single(CsvFaults.Find("a,b\n1,2\n" + new string('x', 17_000_000) + ",2\n3,4\n"));
        Assert.Equal((3, "a row of more than 1000000 characters"), (fault.Line, fault.Reason));
    }
}
