using PartMatch.Storage.Families;
using Xunit;

namespace PartMatch.Storage.Tests.Books;

public sealed class SeedBooksTests
{
    [Fact]
    public void Seed_books_come_out_byte_for_byte_as_they_went_in()
    {
        using var temp = new TempBase();
        var shelf = SeedBooks.InOrder();
        Assert.NotEmpty(shelf);
        temp.Load(shelf.Select(book => book.Files));
        foreach (var (folder, files) in shelf)
        {
            var exported = temp.Books.Export(folder);
            Assert.NotNull(exported);
            BookAssert.Equal(files, exported);
        }
    }

    [Fact]
    public void Books_exported_from_one_base_and_imported_into_another_stay_the_same()
    {
        using var first = new TempBase();
        using var second = new TempBase();
        var shelf = SeedBooks.InOrder();
        first.Load(shelf.Select(book => book.Files));
        foreach (var (folder, files) in shelf)
        {
            // Loaded above, so the first base has it, and the second has it after the line before.
            second.Load(first.Books.Export(folder)!);
            BookAssert.Equal(files, second.Books.Export(folder)!);
        }
    }

    [Fact]
    public void Replacing_every_seed_book_by_itself_changes_nothing()
    {
        using var temp = new TempBase();
        var shelf = SeedBooks.InOrder();
        temp.Load(shelf.Select(book => book.Files));
        temp.Load(shelf.Select(book => book.Files));
        Assert.All(shelf, book => BookAssert.Equal(book.Files, temp.Books.Export(book.Folder)!));
    }

    [Fact]
    public void Every_family_of_the_seed_can_be_reasoned_about()
    {
        using var temp = new TempBase();
        temp.Load(SeedBooks.InOrder().Select(book => book.Files));
        var store = new FamilyStore(temp.Database);
        Assert.NotEmpty(store.List());
        Assert.All(store.List(), family => Assert.Equal(family.Positions, store.FindFamily(family.Family)?.Positions.Count));
    }
}
