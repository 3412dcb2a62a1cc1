using PartMatch.Core.Catalogue;
using PartMatch.Storage.Books;
using Xunit;

namespace PartMatch.Storage.Tests.Books;

public sealed class ImportTests
{
    [Fact]
    public void Sound_books_come_out_byte_for_byte()
    {
        using var temp = Loaded();
        BookAssert.Equal(SampleBook.Common().Files, temp.Books.Export("shared")!);
        BookAssert.Equal(SampleBook.Family().Files, temp.Books.Export("lark-2")!);
    }

    [Fact]
    public void Books_are_listed_with_their_rows()
    {
        using var temp = Loaded();
        var books = temp.Books.List();
        Assert.Equal(["lark-2", "shared"], books.Select(book => book.Book));
        Assert.Equal((BookKind.Family, "Lark 2", "marl", "CC0-1.0"), (books[0].Kind, books[0].Title, books[0].Maker, books[0].Licence));
        Assert.Equal(["shared"], books[0].Uses);
        Assert.Contains(new FileCount("values.csv", 7), books[0].Counts);
        Assert.Null(books[1].Note);
    }

    [Fact]
    public void Unknown_book_is_not_exported()
    {
        using var temp = Loaded();
        Assert.Null(temp.Books.Export("lark-3"));
    }

    [Fact]
    public void Import_tells_what_it_stored()
    {
        using var temp = new TempBase();
        var imported = Assert.IsType<ImportOutcome.Imported>(temp.Import(SampleBook.Common().Files));
        Assert.Equal(("shared", false), (imported.Book, imported.Replaced));
        Assert.Equal(temp.Books.List()[0].Counts, imported.Counts);
    }

    [Fact]
    public void Dry_run_stores_nothing_and_tells_what_it_would()
    {
        using var temp = new TempBase();
        var outcome = Assert.IsType<ImportOutcome.Checked>(temp.Import(SampleBook.Common().Files, dryRun: true));
        Assert.Equal(("shared", false), (outcome.Book, outcome.WouldReplace));
        Assert.Contains(new FileCount("kinds.csv", 3), outcome.Counts);
        Assert.Empty(temp.Books.List());
        Assert.IsType<ImportOutcome.Refused>(temp.Import(SampleBook.Family().Files, dryRun: true));
    }

    [Fact]
    public void Book_that_is_there_is_left_alone_unless_replaced()
    {
        using var temp = Loaded();
        var changed = SampleBook.Family().Change("variants.csv", "LA pump set", "Other name");
        Assert.Equal(new ImportOutcome.AlreadyThere("lark-2"), temp.Import(changed.Files));
        BookAssert.Equal(SampleBook.Family().Files, temp.Books.Export("lark-2")!);

        Assert.True(Assert.IsType<ImportOutcome.Checked>(temp.Import(changed.Files, ImportMode.Replace, dryRun: true)).WouldReplace);
        BookAssert.Equal(SampleBook.Family().Files, temp.Books.Export("lark-2")!);

        Assert.True(Assert.IsType<ImportOutcome.Imported>(temp.Import(changed.Files, ImportMode.Replace)).Replaced);
        BookAssert.Equal(changed.Files, temp.Books.Export("lark-2")!);
    }

    [Fact]
    public void Replacement_removes_rows_that_it_lacks()
    {
        using var temp = Loaded();
        temp.Load(SampleBook.Family().Remove("companions.csv").Remove("numbers.csv").Files);
        Assert.Null(temp.Books.Export("lark-2")!.Find("companions.csv"));
    }

    [Fact]
    public void Replacement_is_refused_with_the_rows_that_would_lose_what_they_refer_to()
    {
        using var temp = Loaded();
        var without = SampleBook.Common().Change("parts.csv", "orrin:B-77,bush,Plain bush,,ev-0001\n", "").Change("features.csv", "shaft,nose,nose,choice,,plain|tang", "shaft,nose,nose,choice,,plain|spline");
        var inUse = Assert.IsType<ImportOutcome.InUse>(temp.Import(without.Files, ImportMode.Replace));
        Assert.Equal(
            [
                ("lark-2", "companions.csv", "tang-needs-bush"), ("lark-2", "companions.csv", "tang-needs-injector"), ("lark-2", "pairs.csv", "marl:B-1/2,orrin:B-77"),
                ("lark-2", "readings.csv", "it-0001,nose"),
                ("lark-2", "supersessions.csv", "marl:B-1/2,marl:B-1/3"), ("lark-2", "values.csv", "marl:S-100,nose,ev-0001"),
            ],
            inUse.Users.Select(user => (user.Book, user.File, user.Key)).Order());
        Assert.Equal(6, inUse.Total);
        var user = inUse.Users.Single(user => user.File == "supersessions.csv");
        Assert.Equal("with marl:S-100|orrin:B-77", user.Uses);
        Assert.Contains("no part 'orrin:B-77'", user.Reason, StringComparison.Ordinal);
        BookAssert.Equal(SampleBook.Common().Files, temp.Books.Export("shared")!);
    }

    [Fact]
    public void Replacement_that_still_satisfies_its_users_is_stored()
    {
        using var temp = Loaded();
        var changed = SampleBook.Common()
            .Change("parts.csv", "orrin:B-77,bush", "orrin:B.77,bush")
            .Change("features.csv", "shaft,nose,nose,choice,,plain|tang", "shaft,nose,nose,choice,,plain|spline|tang")
            .Change("kinds.csv", "Bush", "Bearing bush");
        temp.Load(changed.Files);
        BookAssert.Equal(SampleBook.Family().Files, temp.Books.Export("lark-2")!);
    }

    [Fact]
    public void Books_may_not_use_each_other_in_a_ring()
    {
        using var temp = Loaded();
        var refused = Assert.IsType<ImportOutcome.Refused>(temp.Import(SampleBook.Common().Change("book.csv", ",,,CC0", ",,lark-2,CC0").Files, ImportMode.Replace));
        Assert.Equal("lark-2 uses this book, so this book cannot use it", Assert.Single(refused.Errors).Reason);
    }

    [Fact]
    public void Fault_in_the_last_row_stores_nothing_of_the_others()
    {
        using var temp = Loaded();
        var before = temp.Books.List();
        Assert.IsType<ImportOutcome.Refused>(temp.Import(SampleBook.Family().Add("values.csv", "marl:S-100,outer,1,,,kg,,ev-0003").Files, ImportMode.Replace));
        Assert.Equivalent(before, temp.Books.List(), strict: true);
        BookAssert.Equal(SampleBook.Family().Files, temp.Books.Export("lark-2")!);
    }

    [Fact]
    public void Cancelled_import_stores_nothing()
    {
        using var temp = Loaded();
        using var cancelled = new CancellationTokenSource();
        cancelled.Cancel();
        Assert.Throws<OperationCanceledException>(() => temp.Books.Import(SampleBook.Family().Remove("needs.csv").Files, ImportMode.Replace, false, cancelled.Token));
        BookAssert.Equal(SampleBook.Family().Files, temp.Books.Export("lark-2")!);
    }

    [Fact]
    public void Fifty_thousand_bad_rows_are_counted_and_the_first_two_hundred_listed()
    {
        var rows = string.Concat(Enumerable.Range(0, 50_000).Select(number => $"orrin:N-{number},bosh,Bad,,ev-0001\n"));
        using var temp = new TempBase();
        var refused = Assert.IsType<ImportOutcome.Refused>(temp.Import(SampleBook.Common().Write("parts.csv", "part,kind,name,note,evidence\n" + rows).Files));
        Assert.Equal((50_000, 200, true), (refused.Total, refused.Errors.Count, refused.Capped));
        Assert.Equal(Enumerable.Range(2, 200), refused.Errors.Select(error => error.Line ?? 0));
        Assert.All(refused.Errors, error => Assert.Equal("bush", error.Suggestion));
    }

    [Fact]
    public void Fifty_thousand_good_rows_are_stored_and_come_out_again()
    {
        // Padded, so that numbers in order are also in ordinal order.
        var parts = string.Concat(Enumerable.Range(0, 20_000).Select(number => $"orrin:N-{number:00000},bush,Bush,,ev-0001\n"));
        var values = string.Concat(Enumerable.Range(0, 30_000).Select(number => $"orrin:N-{number / 2:00000},{(number % 2 == 0 ? "bore" : "grooves")},{number % 7},,,{(number % 2 == 0 ? "mm" : "")},,ev-0001\n"));
        var book = SampleBook.Common().Write("parts.csv", "part,kind,name,note,evidence\n" + parts)
            .Write("values.csv", "part,feature,value,minus,plus,unit,uncertainty,evidence\n" + values);
        using var temp = new TempBase();
        temp.Load(book.Files);
        BookAssert.Equal(book.Files, temp.Books.Export("shared")!);
    }

    [Theory]
    [InlineData("'); drop table parts; --")]
    [InlineData("\"; delete from books where \"\"=\"")]
    [InlineData("@p0")]
    [InlineData("=1+1")]
    [InlineData("-2+3, \"quoted\"\nsecond line")]
    [InlineData("%_\\")]
    public void Text_that_looks_like_something_else_is_data(string text)
    {
        using var temp = new TempBase();
        var cell = $"\"{text.Replace("\"", "\"\"", StringComparison.Ordinal)}\"";
        temp.Load(SampleBook.Common().Change("parts.csv", "Plain bush", cell).Files);
        var part = new PartMatch.Storage.Parts.PartStore(temp.Database).FindPart("orrin:B-77");
        Assert.Equal(text, part?.Name);
    }

    [Fact]
    public void Maker_with_another_name_is_refused()
    {
        using var temp = Loaded();
        var refused = Assert.IsType<ImportOutcome.Refused>(temp.Import(SampleBook.Family().Change("makers.csv", "marl,Marl Engines", "marl,Marl Engines\norrin,Orrin Ltd").Files, ImportMode.Replace));
        var error = Assert.Single(refused.Errors);
        Assert.Equal(("makers.csv", 3, "name", "Orrin & Daughters"), (error.File, error.Line, error.Column, error.Suggestion));
    }

    [Fact]
    public void Number_that_another_book_describes_is_refused_however_it_is_written()
    {
        using var temp = Loaded();
        var refused = Assert.IsType<ImportOutcome.Refused>(temp.Import(SampleBook.Family().Add("parts.csv", "orrin:b 77,bush,Again,,").Files, ImportMode.Replace));
        var error = Assert.Single(refused.Errors);
        Assert.Equal(("parts.csv", 7, "part", "book shared already describes this maker's number"), (error.File, error.Line, error.Column, error.Reason));
    }

    [Fact]
    public void Kind_that_a_used_book_declares_is_refused()
    {
        using var temp = Loaded();
        var refused = Assert.IsType<ImportOutcome.Refused>(
            temp.Import(SampleBook.Family().Write("kinds.csv", "kind,name,running,reviewed,cautions\nbush,Other bush,cannot-alter,no,\n").Files, ImportMode.Replace));
        Assert.Contains("already declared by book shared", Assert.Single(refused.Errors).Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void Unrelated_books_may_use_the_same_codes()
    {
        using var temp = Loaded();
        var other = SampleBook.Common().Change("book.csv", "1,shared", "1,other").Remove("parts.csv").Change("kinds.csv", "bush,Bush", "bush,Brush");
        temp.Load(other.Files);
        Assert.Equal(["lark-2", "other", "shared"], temp.Books.List().Select(book => book.Book));
        BookAssert.Equal(other.Files, temp.Books.Export("other")!);
    }

    [Fact]
    public void Part_may_be_referred_to_in_another_way_of_writing_its_number()
    {
        using var temp = new TempBase();
        temp.Load(SampleBook.Common().Files);
        var book = SampleBook.Family().Change("fitments.csv", "lb,main-shaft,marl:S-100", "lb,main-shaft,marl:s100");
        temp.Load(book.Files);
        BookAssert.Equal(book.Files, temp.Books.Export("lark-2")!);
        var facts = new PartMatch.Storage.Families.FamilyStore(temp.Database).FindFamily("lark-2");
        Assert.Equal("marl:S-100", Assert.Single(facts!.FitmentsAt("lb", "main-shaft")).Part);
    }

    private static TempBase Loaded()
    {
        var temp = new TempBase();
        temp.Load(SampleBook.Common().Files, SampleBook.Family().Files);
        return temp;
    }
}
