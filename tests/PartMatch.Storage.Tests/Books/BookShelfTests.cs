using PartMatch.Storage.Books;
using Xunit;

namespace PartMatch.Storage.Tests.Books;

public sealed class BookShelfTests : IDisposable
{
    private readonly DirectoryInfo _shelf = Directory.CreateTempSubdirectory("partmatch-shelf-");

    [Fact]
    public void Folder_without_a_table_is_no_book()
    {
        Put("listings", "a-page.html", "<p>a page</p>");
        Put("listings", "README.md", "saved pages");
        Put("shop", "book.csv", "format,book,kind,title,maker,uses,licence,note\n1,shop,common,Shop,,,,\n");

        Assert.Equal(["shop"], BookShelf.Read(_shelf.FullName).Select(book => book.Folder));
    }

    [Fact]
    public void Folder_with_tables_that_lacks_its_head_stays_on_the_shelf_for_the_import_to_say_so()
    {
        Put("shop", "kinds.csv", "kind,name,running,reviewed,cautions\n");

        Assert.Equal(["shop"], BookShelf.Read(_shelf.FullName).Select(book => book.Folder));
    }

    [Fact]
    public void Demo_pages_stand_beside_the_demo_books_and_are_none() =>
        Assert.Equal(["common", "hs-2", "tern-16"], SeedBooks.InOrder().Select(book => book.Folder).Order(StringComparer.Ordinal));

    public void Dispose() => _shelf.Delete(recursive: true);

    private void Put(string folder, string file, string text) => File.WriteAllText(Path.Combine(_shelf.CreateSubdirectory(folder).FullName, file), text);
}
