using System.Text;
using PartMatch.Storage.Books;
using Xunit;

namespace PartMatch.Storage.Tests.Books;

/// <summary>What the files may look like, and what is said when they look otherwise.</summary>
public sealed class ImportShapeTests
{
    [Fact]
    public void Byte_order_mark_line_ends_and_any_legal_quoting_come_out_canonical()
    {
        using var temp = new TempBase();
        var spoiled = SampleBook.Common().Files.Files.Select(file => new BookFile(file.Name, Spoil(file.Content)));
        temp.Load(new BookFiles(spoiled));
        BookAssert.Equal(SampleBook.Common().Files, temp.Books.Export("shared")!);
    }

    [Fact]
    public void Rows_and_columns_in_any_order_come_out_canonical()
    {
        using var temp = new TempBase();
        temp.Load(SampleBook.Common().Files);
        var shuffled = SampleBook.Family()
            .Write("positions.csv", "role,kind,group,name,position\n,shaft,bottom-end,Main shaft,main-shaft\ninjector,injector,fuel,Injector,injector\n,bush,bottom-end,Front bush,front-bush\n")
            .Change("needs.csv", "e85|petrol", "petrol|e85")
            .Change("companions.csv", "plain|tang", "tang|plain")
            .Change("joints.csv", "la|lb", "lb|la")
            .Change("values.csv", "bronze|tin", "tin|bronze")
            .Change("supersessions.csv", "marl:S-100|orrin:B-77", "orrin:B-77|marl:S-100");
        temp.Load(shuffled.Files);
        BookAssert.Equal(SampleBook.Family().Files, temp.Books.Export("lark-2")!);
    }

    // limits.csv as books had it before a limit could be of one part.
    [Fact]
    public void File_without_a_column_that_came_later_is_read_as_not_recorded_there()
    {
        using var temp = new TempBase();
        temp.Load(SampleBook.Common().Files);
        temp.Load(SampleBook.Family().Write("limits.csv", "kind,feature,min,max,unit,consequence,evidence,note\nbush,grooves,2,,,loss,,\n").Files);
        Assert.Equal("kind,feature,part,min,max,unit,consequence,evidence,note\nbush,grooves,,2,,,loss,,\n", Text(temp.Books.Export("lark-2")!, "limits.csv"));
    }

    [Fact]
    public void Decomposed_letters_are_composed()
    {
        using var temp = new TempBase();
        temp.Load(SampleBook.Common().Change("makers.csv", "Orrin & Daughters", "Orrin & To\u0308chter").Files);
        Assert.Contains("T\u00F6chter", Text(temp.Books.Export("shared")!, "makers.csv"), StringComparison.Ordinal);
    }

    [Fact]
    public void Carriage_returns_inside_a_cell_become_line_feeds()
    {
        using var temp = new TempBase();
        temp.Load(SampleBook.Common().Add("makers.csv", "marl,\"Marl\r\nEngines\rLtd\"").Files);
        Assert.EndsWith("marl,\"Marl\nEngines\nLtd\"\norrin,Orrin & Daughters\n", Text(temp.Books.Export("shared")!, "makers.csv"), StringComparison.Ordinal);
    }

    [Fact]
    public void Lines_inside_cells_are_counted()
    {
        var error = One(SampleBook.Common().Add("makers.csv", "marl,\"one\ntwo\r\nthree\rfour\"").Add("makers.csv", "MARL,Marl"));
        Assert.Equal(("makers.csv", 7, "maker", "MARL", "marl"), (error.File, error.Line, error.Column, error.Value, error.Suggestion));
    }

    [Theory]
    [InlineData("maker,name\norrin,\"Orrin\nmarl,Marl\n", 2, "a quote opens here and never closes")]
    [InlineData("maker,name\n\"x\",\"a \"\"b\"\"\"\norrin,\"Orrin\nmarl,\"Marl\"\n", 3, "the quote that opens here closes in line 4, in the middle of a cell")]
    [InlineData("maker,name\norrin,Orrin \"the\" Maker\n", 2, "a quote inside a cell")]
    [InlineData("maker,name\norrin,\"Orrin\" & Daughters\n", 2, "text after the closing quote")]
    [InlineData("maker,name\norrin,Orrin\n\nmarl,Marl\n", 3, "an empty line")]
    [InlineData("maker,name\norrin,Orrin,\n", 2, "3 cells, the header has 2")]
    [InlineData("maker,name\norrin\n", 2, "1 cells, the header has 2")]
    [InlineData("maker,name\norrin,Or\u0007rin\n", 2, "control characters")]
    [InlineData("maker,name\norrin,Or\u202Erin\n", 2, "turn the direction of writing")]
    [InlineData("maker,name\norrin,Or\u2067rin\n", 2, "turn the direction of writing")]
    public void Fault_of_a_line_is_named_with_the_line_where_it_begins(string text, int line, string reason)
    {
        var error = Errors(SampleBook.Common().Write("makers.csv", text).Files)[0];
        Assert.Equal(("makers.csv", line), (error.File, error.Line));
        Assert.Contains(reason, error.Reason, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("maker,name,note\norrin,Orrin,\n", "note", "unknown column", null)]
    [InlineData("makr,name\norrin,Orrin\n", "makr", "unknown column", "maker")]
    [InlineData("maker,name,name\norrin,Orrin,Orrin\n", "name", "twice", "leave one out")]
    [InlineData("maker\norrin\n", "name", "missing", "add it; its cells may be empty where nothing is recorded")]
    [InlineData("", null, "the file is empty", "maker,name")]
    public void Fault_of_a_header_is_named(string text, string? column, string reason, string? suggestion)
    {
        var errors = Errors(SampleBook.Common().Write("makers.csv", text).Files);
        Assert.Contains(errors, error => error.File == "makers.csv" && error.Column == column && error.Reason.Contains(reason, StringComparison.Ordinal) && error.Suggestion == suggestion);

        // What the unreadable file would have declared is not called missing.
        Assert.All(errors, error => Assert.Equal("makers.csv", error.File));
    }

    [Fact]
    public void Unknown_file_is_refused_and_the_nearest_one_named()
    {
        var error = One(SampleBook.Common().Write("value.csv", "part\n"));
        Assert.Equal(("value.csv", "values.csv, or leave it out"), (error.File, error.Suggestion));
    }

    [Fact]
    public void Missing_book_file_is_refused() =>
        Assert.Equal(("book.csv", "add book.csv"), Place(One(SampleBook.Common().Remove("book.csv"))));

    [Fact]
    public void Another_format_is_refused_by_its_number_alone()
    {
        var error = One(SampleBook.Common().Write("book.csv", "format,book,kind,title,scope\n2,shared,common,Shared,all\n"));
        Assert.Equal(("book.csv", 2, "format", "2", "unknown format number, expected 1"), (error.File, error.Line, error.Column, error.Value, error.Reason));
    }

    [Fact]
    public void Two_books_in_one_folder_are_refused() =>
        Assert.Equal(3, One(SampleBook.Common().Add("book.csv", "1,other,common,Other,,,,")).Line);

    [Fact]
    public void File_that_is_not_utf8_is_refused_with_the_line()
    {
        byte[] latin1 = [.. "maker,name\norrin,Orrin\nmarl,M"u8, 0xE4, .. "rl\n"u8];
        var files = new BookFiles(SampleBook.Common().Remove("makers.csv").Files.Files.Append(new BookFile("makers.csv", latin1)));
        var error = Assert.Single(Errors(files));
        Assert.Equal(("makers.csv", 3, "save the file as UTF-8"), (error.File, error.Line, error.Suggestion));
    }

    [Fact]
    public void Every_bad_row_is_reported_whatever_is_wrong_with_it()
    {
        var errors = Errors(SampleBook.Common().Write("makers.csv", "maker,name\norrin,Orrin\nToo,many,cells\nBAD,Bad\norrin,Twice\nempty,\n").Files);
        Assert.Equal([3, 4, 5, 6], errors.Where(error => error.File == "makers.csv").Select(error => error.Line ?? 0));
    }

    [Fact]
    public void File_with_a_header_only_is_empty_and_absent_on_export()
    {
        using var temp = new TempBase();
        temp.Load(SampleBook.Common().Files);
        temp.Load(SampleBook.Family().Remove("selects.csv").Write("selects.csv", "position,measure_position,measure_feature,from,to,unit,part,evidence\n").Files);
        Assert.Null(temp.Books.Export("lark-2")!.Find("selects.csv"));
    }

    [Fact]
    public void Row_without_final_line_end_is_read()
    {
        using var temp = new TempBase();
        temp.Load(SampleBook.Common().Write("makers.csv", "maker,name\norrin,Orrin & Daughters").Files);
        BookAssert.Equal(SampleBook.Common().Files, temp.Books.Export("shared")!);
    }

    private static byte[] Spoil(ReadOnlyMemory<byte> content)
    {
        // Every cell of these files is unquoted, or quoted with commas inside only: quoting each by hand keeps its text.
        var lines = Encoding.UTF8.GetString(content.Span).TrimEnd('\n').Split('\n').Select(line => line.Contains('"', StringComparison.Ordinal)
            ? line
            : string.Join(',', line.Split(',').Select(cell => $"\"{cell}\"")));
        return [.. Encoding.UTF8.Preamble, .. Encoding.UTF8.GetBytes(string.Join("\r\n", lines))];
    }

    private static string Text(BookFiles files, string file) => Encoding.UTF8.GetString(files.Find(file)!.Content.Span);

    private static (string File, string? Suggestion) Place(ImportError error) => (error.File, error.Suggestion);

    private static ImportError One(SampleBook book) => Assert.Single(Errors(book.Files));

    private static IReadOnlyList<ImportError> Errors(BookFiles files)
    {
        using var temp = new TempBase();
        var refused = Assert.IsType<ImportOutcome.Refused>(temp.Import(files));
        Assert.Empty(temp.Books.List());
        return refused.Errors;
    }
}
