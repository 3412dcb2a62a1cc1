namespace PartMatch.Storage.Tests;

/// <summary>The demo books of the repository.</summary>
internal static class SeedBooks
{
    public static string Folder { get; } = FindFolder();

    /// <summary>Each book's folder, a book after those that it uses.</summary>
    public static IReadOnlyList<string> FoldersInOrder()
    {
        var open = Directory.GetDirectories(Folder).Order(StringComparer.Ordinal).ToList();
        var done = new List<string>();
        while (open.Count > 0)
        {
            var next = open.Find(folder => Uses(folder).All(used => done.Exists(known => Path.GetFileName(known) == used)))
                ?? throw new InvalidOperationException($"these books use books that are not in {Folder}: {string.Join(", ", open)}");
            done.Add(next);
            open.Remove(next);
        }

        return done;
    }

    // Seed books are in canonical form: book.csv has one row, whose sixth cell lists the books in use. None of the cells before it has a comma outside quotes.
    private static IEnumerable<string> Uses(string folder)
    {
        var row = File.ReadAllLines(Path.Combine(folder, "book.csv"))[1];
        var cells = System.Text.RegularExpressions.Regex.Matches(row, "(?:^|,)(\"(?:[^\"]|\"\")*\"|[^,]*)").Select(match => match.Groups[1].Value).ToList();
        return cells[5].Split('|', StringSplitOptions.RemoveEmptyEntries);
    }

    private static string FindFolder()
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            var seed = Path.Combine(folder.FullName, "data-seed");
            if (File.Exists(Path.Combine(folder.FullName, "PartMatch.sln")))
            {
                return seed;
            }
        }

        throw new InvalidOperationException("no PartMatch.sln above the test assembly");
    }
}
