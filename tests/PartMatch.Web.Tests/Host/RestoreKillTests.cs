using System.Diagnostics;
using PartMatch.Storage;
using PartMatch.Storage.Books;
using PartMatch.Storage.Keeping;
using PartMatch.Web.Tests.Books;

namespace PartMatch.Web.Tests.Host;

/// <summary>The restore command as a process of its own, killed in the middle: what is there afterwards is the old base or the new one, whole.</summary>
public sealed class RestoreKillTests : IDisposable
{
    private const int Parts = 6_000;
    private const int RandomKills = 3;

    /// <summary>A step can be over before it is seen; then it is tried again.</summary>
    private const int Tries = 6;

    private readonly string _folder = Directory.CreateTempSubdirectory("partmatch-kill-").FullName;

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    private string Base => Path.Combine(_folder, "base.db");

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public async Task Restore_killed_at_any_step_leaves_the_old_base_or_the_new_one_whole()
    {
        byte[][] states = [ImportKillTests.BookOf("red", Parts), ImportKillTests.BookOf("green", Parts)];
        string[] backups = [.. states.Select(BackupOf)];
        var seed = Environment.TickCount;
        var random = new Random(seed);

        // The first runs to its end: it tells how long one takes, and makes the base.
        var clock = Stopwatch.StartNew();
        Assert.False(await RestoreAsync(backups[0], () => false));
        var lasted = clock.Elapsed;
        Assert.Equal(states[0], Export(Base));

        // What lies in the folder while the backup is copied beside, while the present base is kept, while it is overwritten.
        var steps = new List<(string Name, int Tries, Func<bool> IsThere)>
        {
            ("copying", Tries, () => Beside().Any()),
            ("keeping", Tries, () => Beside().Any(file => file.Contains(".before-restore-", StringComparison.Ordinal))),
            ("overwriting", Tries, () => Beside().Any(IsKept) && File.Exists(Base + "-journal")),
        };
        steps.AddRange(Enumerable.Range(0, RandomKills).Select(kill =>
        {
            var moment = lasted * ((kill + random.NextDouble()) / RandomKills);
            return ($"after {moment}", 1, (Func<bool>)(() => clock.Elapsed >= moment));
        }));

        var current = 0;
        foreach (var (name, tries, isThere) in steps)
        {
            var isKilled = false;
            for (var left = tries; left > 0 && !isKilled; left--)
            {
                isKilled = await RestoreAndLookAsync(isThere, name);
            }

            Assert.True(isKilled || tries == 1, $"seed {seed}, {name}: it was over before each kill");
        }

        async Task<bool> RestoreAndLookAsync(Func<bool> isThere, string name)
        {
            clock.Restart();
            var isKilled = await RestoreAsync(backups[1 - current], isThere);
            var where = $"seed {seed}, killed {name}";
            Assert.IsType<Sound>(BaseCheck.Run(Base, Cancellation));
            var found = Export(Base);
            var isNew = found.SequenceEqual(states[1 - current]);
            Assert.True(isNew || found.SequenceEqual(states[current]), $"{where}: the base is neither the old one nor the new one");
            Assert.True(isNew || isKilled, $"{where}: the restore was done, and the base is the old one");
            foreach (var kept in Beside().Where(IsKept))
            {
                Assert.True(Export(kept).SequenceEqual(states[current]), $"{where}: what is kept is not the old base");
            }

            current = isNew ? 1 - current : current;
            foreach (var left in Beside())
            {
                File.Delete(left);
            }

            return isKilled;
        }
    }

    /// <summary>What a restore lays beside the base: its name and a full stop, then more. Not by a pattern: "base.db.*" is the base as well.</summary>
    private IEnumerable<string> Beside() => Directory.EnumerateFiles(_folder).Where(file => file.StartsWith(Base + ".", StringComparison.Ordinal));

    private static bool IsKept(string file) => file.Contains(".before-restore-", StringComparison.Ordinal) && file.EndsWith('Z');

    /// <summary>Was it killed before its end?</summary>
    private async Task<bool> RestoreAsync(string backup, Func<bool> isMoment)
    {
        await using var command = ServerProcess.Start(
            new Dictionary<string, string> { ["HOME"] = _folder, ["PartMatch__Database"] = Base }, ["restore", backup]);
        var exit = command.ExitCodeAsync();
        while (!exit.IsCompleted && !isMoment())
        {
            Thread.Sleep(1); // not a timer: a busy machine fires those too late
        }

        if (!exit.IsCompleted)
        {
            await command.KillAsync();
        }

        var code = await exit;
        Assert.True(code is 0 or 137, string.Join('\n', command.Errors)); // 128 + SIGKILL
        return code != 0;
    }

    private string BackupOf(byte[] book)
    {
        var (work, backup) = (Path.Combine(_folder, "work.db"), Path.Combine(_folder, $"backup-{Directory.GetFiles(_folder).Length}.db"));
        using (var database = Database.Open(work))
        using (var zip = new MemoryStream(book))
        {
            var files = Assert.IsType<BookRead>(BookZip.Read(zip, new BookZipLimits())).Files;
            Assert.IsType<ImportOutcome.Imported>(new BookStore(database).Import(files, ImportMode.Replace, dryRun: false, Cancellation));
        }

        Assert.IsType<BackedUp>(BaseBackup.Write(work, backup));
        return backup;
    }

    private static byte[] Export(string path)
    {
        using var database = Database.Open(path);
        using var zip = new MemoryStream();
        BookZip.Write(new BookStore(database).Export("load") ?? throw new InvalidOperationException($"{path} has no book"), zip);
        return zip.ToArray();
    }
}
