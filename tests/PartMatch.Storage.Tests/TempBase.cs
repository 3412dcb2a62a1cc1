using PartMatch.Storage.Books;
using Xunit;

namespace PartMatch.Storage.Tests;

/// <summary>A base in a temporary folder of its own.</summary>
internal sealed class TempBase : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("partmatch-test-");

    public TempBase()
    {
        Path = System.IO.Path.Combine(_folder.FullName, "base.db");
        Database = Database.Open(Path);
        Books = new BookStore(Database);
    }

    public string Path { get; }

    public Database Database { get; }

    public BookStore Books { get; }

    public ImportOutcome Import(BookFiles files, ImportMode mode = ImportMode.Add, bool dryRun = false) =>
        Books.Import(files, mode, dryRun, TestContext.Current.CancellationToken);

    /// <summary>Imports what must be sound, and shows the faults where it is not.</summary>
    public void Load(params IEnumerable<BookFiles> books)
    {
        foreach (var files in books)
        {
            var outcome = Import(files, ImportMode.Replace);
            Assert.True(outcome is ImportOutcome.Imported, outcome is ImportOutcome.Refused refused ? string.Join('\n', refused.Errors) : outcome.ToString());
        }
    }

    public void Dispose()
    {
        Database.Dispose();
        _folder.Delete(recursive: true);
    }
}
