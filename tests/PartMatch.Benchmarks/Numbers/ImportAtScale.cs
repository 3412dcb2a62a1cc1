using System.Diagnostics;
using System.Globalization;
using PartMatch.Storage;
using PartMatch.Storage.Books;

namespace PartMatch.Benchmarks.Numbers;

/// <summary>A maker's whole list into an empty base: <c>import dense-tenth large.db</c>.</summary>
internal static class ImportAtScale
{
    public static void Show(string name, string path)
    {
        var set = KeySet.Of(name);
        var files = LargeBook.Of(set, "velm-list");
        var bytes = files.Files.Sum(file => file.Content.Length);
        GC.Collect();
        using var database = Database.Open(path);
        var books = new BookStore(database);
        foreach (var dryRun in (bool[])[true, false])
        {
            var watch = Stopwatch.StartNew();
            var outcome = books.Import(files, ImportMode.Add, dryRun, CancellationToken.None);
            var rows = outcome switch
            {
                ImportOutcome.Imported imported => imported.Counts.Sum(count => count.Rows),
                ImportOutcome.Checked check => check.Counts.Sum(count => count.Rows),
                ImportOutcome.Refused refused => throw new InvalidOperationException($"The book was refused: {refused.Errors[0]}"),
                _ => throw new InvalidOperationException($"The book was not taken: {outcome}"),
            };
            using var process = Process.GetCurrentProcess();
            Console.WriteLine(string.Create(CultureInfo.InvariantCulture,
                $"{set.Name}, {bytes >> 20} MB of CSV, {(dryRun ? "read and checked" : "read, checked and stored")}: {rows:N0} rows in {watch.Elapsed.TotalSeconds:0.0} s, {rows / watch.Elapsed.TotalSeconds:N0} rows a second, {process.PeakWorkingSet64 >> 20} MB at most"));
        }
    }
}
