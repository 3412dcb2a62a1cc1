using PartMatch.Storage.Books;

namespace PartMatch.Storage.Tests;

/// <summary>The demo books of the repository.</summary>
internal static class SeedBooks
{
    /// <summary>Each after those that it uses.</summary>
    public static IReadOnlyList<ShelvedBook> InOrder() => BookShelf.Read(FindFolder());

    private static string FindFolder()
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            if (File.Exists(Path.Combine(folder.FullName, "PartMatch.sln")))
            {
                return Path.Combine(folder.FullName, "data-seed");
            }
        }

        throw new InvalidOperationException("no PartMatch.sln above the test assembly");
    }
}
