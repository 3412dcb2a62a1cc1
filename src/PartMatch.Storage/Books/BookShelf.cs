using PartMatch.Storage.Books.Format;

namespace PartMatch.Storage.Books;

/// <summary>One book of a shelf, by the name of its folder.</summary>
public sealed record ShelvedBook(string Folder, BookFiles Files);

/// <summary>A folder with one folder per parts book.</summary>
/// <remarks>A folder without any table is no book and is passed over; one that only lacks its book.csv is one, and its import says so.</remarks>
public static class BookShelf
{
    /// <summary>Every book, each after the books it uses; among equals in ordinal order of the folders. Books that use each other stand last, as found.</summary>
    /// <exception cref="IOException">A folder or a file cannot be read.</exception>
    public static IReadOnlyList<ShelvedBook> Read(string path)
    {
        List<ShelvedBook> waiting =
        [
            .. Directory.EnumerateDirectories(path).Where(folder => Directory.EnumerateFiles(folder, "*.csv").Any()).Order(StringComparer.Ordinal)
                .Select(folder => new ShelvedBook(Path.GetFileName(folder), BookFolder.Read(folder))),
        ];
        List<ShelvedBook> ordered = [];
        while (waiting.Count > 0)
        {
            var unread = waiting.Select(book => book.Folder).ToHashSet(StringComparer.Ordinal);
            var next = waiting.Find(book => !UsesOf(book.Files).Any(unread.Contains)) ?? waiting[0];
            waiting.Remove(next);
            ordered.Add(next);
        }

        return ordered;
    }

    // A book.csv that cannot be read says nothing here; the import of that book says what is wrong with it.
    private static IEnumerable<string> UsesOf(BookFiles files) =>
        files.Find(BookTables.Books.File) is { } file
        && TableReader.Read(BookTables.Books, file, new ErrorList(0), ImportWatch.Silent(CancellationToken.None)) is [{ IsBroken: false } head, ..]
            ? head.List("uses")
            : [];
}
