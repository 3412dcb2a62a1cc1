using PartMatch.Storage.Books;
using Xunit;

namespace PartMatch.Storage.Tests.Books;

public sealed class SeedBooksTests
{
    [Fact]
    public void Seed_books_come_out_byte_for_byte_as_they_went_in()
    {
        using var temp = new TempBase();
        var folders = SeedBooks.FoldersInOrder();
        Assert.NotEmpty(folders);
        foreach (var folder in folders)
        {
            var files = BookFolder.Read(folder);
            temp.Load(files);
            var exported = temp.Books.Export(Path.GetFileName(folder));
            Assert.NotNull(exported);
            BookAssert.Equal(files, exported);
        }
    }
}
