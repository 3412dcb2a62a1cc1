using System.Globalization;
using PartMatch.Storage.Books;
using PartMatch.Storage.Editing;

namespace PartMatch.Web.Host;

/// <summary>The demo books that travel with the server.</summary>
internal static class SeedBooks
{
    private const string FolderName = "data-seed";

    /// <summary>The folder beside the server, else in the content root; null when neither holds a book.</summary>
    public static string? FindFolder(IConfiguration configuration) =>
        new[] { AppContext.BaseDirectory, configuration[HostDefaults.ContentRootKey] ?? AppContext.BaseDirectory }
            .Select(parent => Path.Combine(parent, FolderName))
            .FirstOrDefault(folder => Directory.Exists(folder) && Directory.EnumerateFiles(folder, "book.csv", SearchOption.AllDirectories).Any());

    /// <summary>Imports every book, those that others use first. The sentence that says which row is at fault, or null.</summary>
    public static string? Load(string folder, BookStore books, ILogger logger)
    {
        foreach (var (name, files) in BookShelf.Read(folder))
        {
            var outcome = books.Import(files, ImportMode.Add, dryRun: false, CancellationToken.None, new ChangeNote("PartMatch", "a demo book"));
            if (outcome is not ImportOutcome.Imported imported)
            {
                return $"the demo book {FolderName}/{name} {Fault(outcome)}";
            }

            logger.LogInformation("Loaded the demo book {Book}: {Rows} rows", imported.Book, imported.Counts.Sum(count => count.Rows));
        }

        return null;
    }

    private static string Fault(ImportOutcome outcome) => outcome switch
    {
        ImportOutcome.Refused { Errors: [var first, ..] } refused =>
            string.Create(CultureInfo.InvariantCulture, $"has {refused.Total} faults, the first in {first.File} line {first.Line} column {first.Column}: found '{first.Value}': {first.Reason} {first.Suggestion}").TrimEnd(),
        ImportOutcome.AlreadyThere there => $"is named {there.Book}, as another one is.",
        _ => "cannot be loaded.",
    };
}
