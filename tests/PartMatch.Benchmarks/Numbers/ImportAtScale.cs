using System.Diagnostics;
using System.Globalization;
using PartMatch.Storage;
using PartMatch.Storage.Books;

namespace PartMatch.Benchmarks.Numbers;

/// <summary>
/// A maker's whole list into an empty base: <c>book dense list.zip</c> (or its first so many parts: <c>book dense list.zip 250000</c>), then, in a process that has made nothing of it, <c>import list.zip large.db</c>.
/// </summary>
internal static class ImportAtScale
{
    public static void Write(string name, string zip, int most)
    {
        using var file = File.Create(zip);
        BookZip.Write(LargeBook.Of(KeySet.Of(name), "velm-list", most), file);
    }

    public static void Show(string zip, string path)
    {
        using var database = Database.Open(path);
        var books = new BookStore(database);
        foreach (var dryRun in (bool[])[true, true, true, false])
        {
            GC.Collect();
            using var process = Process.GetCurrentProcess();
            var (processor, begun, stages) = (process.TotalProcessorTime, Stopwatch.GetTimestamp(), new Stages());
            using var file = File.OpenRead(zip);
            var read = (BookRead)BookZip.Read(file, new BookZipLimits());
            var outcome = books.Import(read.Files, ImportMode.Add, dryRun, CancellationToken.None, tell: stages.Tell);
            var rows = outcome switch
            {
                ImportOutcome.Imported imported => imported.Counts.Sum(count => count.Rows),
                ImportOutcome.Checked check => check.Counts.Sum(count => count.Rows),
                ImportOutcome.Refused refused => throw new InvalidOperationException($"The book was refused: {refused.Errors[0]}"),
                _ => throw new InvalidOperationException($"The book was not taken: {outcome}"),
            };
            var seconds = Stopwatch.GetElapsedTime(begun).TotalSeconds;
            process.Refresh();
            Say($"{(dryRun ? "unpacked, read and checked" : "unpacked, read, checked and stored")}: {rows:N0} rows in {seconds:0.0} s ({(process.TotalProcessorTime - processor).TotalSeconds:0.0} s of processor time), {rows / seconds:N0} rows a second, {process.PeakWorkingSet64 >> 20} MB at most");
            Say($"  {stages.Ended()}");
        }
    }

    private static void Say(FormattableString line) => Console.WriteLine(line.ToString(CultureInfo.InvariantCulture));

    private sealed class Stages
    {
        private readonly List<(ImportStage Stage, long Begun)> _begun = [];

        public void Tell(ImportProgress progress)
        {
            if (_begun.Count == 0 || _begun[^1].Stage != progress.Stage)
            {
                _begun.Add((progress.Stage, Stopwatch.GetTimestamp()));
            }
        }

        public string Ended()
        {
            var ends = _begun.Skip(1).Select(next => next.Begun).Append(Stopwatch.GetTimestamp());
            return string.Join(", ", _begun.Zip(ends, (stage, end) =>
                string.Create(CultureInfo.InvariantCulture, $"{stage.Stage} {Stopwatch.GetElapsedTime(stage.Begun, end).TotalSeconds:0.0} s")));
        }
    }
}
