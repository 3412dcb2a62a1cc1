using System.Text;
using PartMatch.Storage.Books;
using PartMatch.Storage.Books.Checks;
using PartMatch.Storage.Books.Format;
using Xunit;

namespace PartMatch.Storage.Tests.Books;

public sealed class PackedRowsTests
{
    private static readonly BookTable _table = BookTables.Kinds; // kind, name, running, reviewed, cautions; its key is kind

    [Fact]
    public void Rows_are_as_they_were_put_in_whatever_their_cells_hold()
    {
        // 127 and 128 bytes, where a length needs its second byte; more than a chunk; signs of one to four bytes; the same text again.
        string[] texts = ["", "pump", "pump", new('a', 127), new('a', 128), new('b', 3_000_000), "Ölfilter", "\u20AC\U0001F527", "line\nline", "pump"];
        var rows = new PackedRows(_table);
        foreach (var (index, text) in texts.Index())
        {
            rows.Add(index * 1_000_000, [text, "", text, "yes", ""], isBroken: index % 3 == 0);
        }

        Assert.Equal(texts.Length, rows.Count);
        foreach (var (index, row) in rows.Index())
        {
            Assert.Equal([texts[index], "", texts[index], "yes", ""], row.Cells);
            Assert.Equal((index * 1_000_000, index % 3 == 0), (row.Line, row.IsBroken));
        }
    }

    [Fact]
    public void A_cell_put_in_order_is_in_order_when_the_row_is_asked_for_again()
    {
        var rows = new PackedRows(_table);
        rows.Add(2, ["b", "B", "can-alter", "yes", "hot|fuel"]);
        rows.Add(3, ["c", "C", "can-alter", "yes", "hot|fuel"]);

        rows[0]["cautions"] = "fuel|hot";

        Assert.Equal(["fuel|hot", "hot|fuel"], rows.Select(row => row["cautions"]));
        Assert.Equal(["b", "c"], rows.Select(row => row["kind"]));
    }

    [Fact]
    public void A_cell_is_not_overwritten_by_a_text_of_another_length()
    {
        var rows = new PackedRows(_table);
        rows.Add(2, ["b", "B", "can-alter", "yes", ""]);

        Assert.Throws<InvalidOperationException>(() => rows[0]["name"] = "longer");
        Assert.Equal("B", rows[0]["name"]);
    }

    [Fact]
    public void Rows_are_sorted_by_the_bytes_of_their_keys()
    {
        // U+FFFD is EF BF BD and U+1F527 is F0 9F 94 A7: as UTF-16 the second would come first.
        var rows = new PackedRows(_table);
        foreach (var key in (string[])["b", "\U0001F527", "ab", "\uFFFD", "a", "B"])
        {
            rows.Add(0, [key, "", "", "", ""]);
        }

        Assert.Equal(["B", "a", "ab", "b", "\uFFFD", "\U0001F527"], rows.InOrder().Select(row => row["kind"]));
        Assert.Equal("b", rows[0]["kind"]); // which keep their places
    }

    [Fact]
    public void A_key_of_several_columns_sorts_by_the_first_that_differs()
    {
        var rows = new PackedRows(BookTables.Torques); // variant, position, evidence, pass, …: evidence is the second last column
        var columns = BookTables.Torques.Columns.Select(column => column.Name).ToList();
        foreach (var (position, evidence, pass) in (IEnumerable<(string, string, string)>)[("p", "e2", "1"), ("p", "e1", "2"), ("o", "e9", "9"), ("p", "e1", "1")])
        {
            rows.Add(0, [.. columns.Select(column => column switch { "position" => position, "evidence" => evidence, "pass" => pass, _ => "x" })]);
        }

        Assert.Equal(["o e9 9", "p e1 1", "p e1 2", "p e2 1"], rows.InOrder().Select(row => $"{row["position"]} {row["evidence"]} {row["pass"]}"));
    }

    [Fact]
    public void Keys_are_found_at_the_place_where_they_came_first()
    {
        var dice = new Random(11);
        string[] keys = [.. Enumerable.Range(0, 5_000).Select(_ => $"k{dice.Next(3_000)}")];
        var places = new KeyPlaces(place => keys[place]); // begins small, so that it grows
        foreach (var (place, key) in keys.Index())
        {
            Assert.Equal(Array.IndexOf(keys, key), places.Add(key, place));
        }

        Assert.All(keys, key => Assert.Equal(Array.IndexOf(keys, key), places.Find(key)));
        Assert.Null(places.Find("k3000"));
        Assert.Equal(keys.Distinct(), places.Places.Select(place => keys[place]));
    }

    [Fact]
    public void A_file_is_read_alike_whole_and_in_pieces()
    {
        // Longer than the pieces it is read in, with a sign of three bytes across every odd place, quotes, both line ends in one cell, and accents apart from their letters.
        var text = new StringBuilder("\uFEFFkind,name,running,reviewed,cautions\r\n");
        for (var row = 0; row < 20_000; row++)
        {
            text.Append(row % 7 == 0 ? $"k{row},\"a \"\"b\"\",\r\n\u20AC{row}\",can-alter,yes,\r\n" : $"k{row},e\u0301\u20AC,can-alter,yes,\n");
        }

        var errors = new ErrorList(10);
        var file = new BookFile("kinds.csv", Encoding.UTF8.GetBytes(text.ToString()));
        var rows = TableReader.Read(_table, file, errors, ImportWatch.Silent(TestContext.Current.CancellationToken));

        Assert.False(errors.Any);
        Assert.NotNull(rows);
        Assert.Equal(20_000, rows.Count);
        var line = 2;
        foreach (var (index, row) in rows.Index())
        {
            Assert.Equal((line, $"k{index}", index % 7 == 0 ? $"a \"b\",\n\u20AC{index}" : "\u00E9\u20AC"), (row.Line, row["kind"], row["name"]));
            line += index % 7 == 0 ? 2 : 1;
        }
    }

    [Fact]
    public void Bytes_that_are_not_text_far_into_a_file_are_told_with_their_line_and_alone()
    {
        var text = new StringBuilder("kind,name,running,reviewed,cautions\n");
        text.Append("k0,a \"quote\" inside,can-alter,yes,\n"); // a fault of the quoting, which is not told beside it
        for (var row = 1; row < 9_999; row++)
        {
            text.Append("k,name,can-alter,yes,\n");
        }

        byte[] bytes = [.. Encoding.UTF8.GetBytes(text.ToString()), .. "k,"u8, 0xC3, 0x28, .. ",can-alter,yes,\n"u8];
        var errors = new ErrorList(10);

        Assert.Null(TableReader.Read(_table, new BookFile("kinds.csv", bytes), errors, ImportWatch.Silent(TestContext.Current.CancellationToken)));

        var (_, error) = Assert.Single(errors.Kept);
        Assert.Equal((10_001, "bytes that are not UTF-8"), (error.Line, error.Reason));
    }
}
