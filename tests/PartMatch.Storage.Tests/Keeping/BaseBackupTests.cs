using Dapper;
using PartMatch.Core.Photos;
using PartMatch.Storage.Keeping;
using PartMatch.Storage.Photos;
using Xunit;

namespace PartMatch.Storage.Tests.Keeping;

public sealed class BaseBackupTests : IDisposable
{
    private readonly KeptBase _kept = new();

    public void Dispose() => _kept.Dispose();

    [Fact]
    public void Backup_holds_what_the_base_holds_and_stands_for_itself()
    {
        _kept.Fill();

        var done = KeptBase.Done<BackedUp>(BaseBackup.Write(_kept.Base, _kept.Backup));

        Assert.Equal((_kept.Backup, new FileInfo(_kept.Backup).Length), (done.File, done.Bytes));
        Assert.Equal(["backup.db", "base.db"], _kept.Files);
        Assert.Equal("delete", KeptBase.Read<string>(_kept.Backup, "pragma journal_mode"));
        Assert.Equal(KeptBase.Export(_kept.Base), KeptBase.Export(_kept.Backup));
    }

    [Fact]
    public async Task Backup_of_a_base_that_is_being_written_is_the_base_at_one_moment()
    {
        const int Backups = 8;
        _kept.Fill();
        using var database = Database.Open(_kept.Base);
        new ImageStore(database, TimeProvider.System).Store(new Photo(PhotoFormat.Png, 1, 1, new byte[3 << 20])); // something to copy

        // Two rows that every transaction makes equal.
        using var stop = new CancellationTokenSource();
        var written = 0;
        var writer = Task.Run(
            () =>
            {
                while (!stop.IsCancellationRequested)
                {
                    using var connection = database.Connect();
                    using var transaction = connection.BeginTransaction();
                    connection.Execute("update books set note = @written where book = 'shared'", new { written = $"{written + 1}" }, transaction);
                    connection.Execute("update books set note = @written where book = 'lark-2'", new { written = $"{written + 1}" }, transaction);
                    transaction.Commit();
                    Interlocked.Increment(ref written);
                }
            },
            TestContext.Current.CancellationToken);

        var moments = new List<long>();
        for (var number = 0; number < Backups; number++)
        {
            var (before, backup) = (Volatile.Read(ref written), _kept.PathOf($"{number}.db"));
            KeptBase.Done<BackedUp>(BaseBackup.Write(_kept.Base, backup));
            var notes = KeptBase.Read<(long Least, long Most)>(
                backup, "select cast(min(cast(note as integer)) as integer), cast(max(cast(note as integer)) as integer) from books");
            Assert.Equal(notes.Least, notes.Most);
            Assert.InRange(notes.Least, before, Volatile.Read(ref written) + 1); // a commit is counted a moment after it is made
            moments.Add(notes.Least);
        }

        await stop.CancelAsync();
        await writer;
        Assert.True(moments.Distinct().Count() > 1, "nothing was written between the backups");
    }

    [Fact]
    public void Backup_overwrites_nothing()
    {
        _kept.Fill();
        File.WriteAllText(_kept.Backup, "letters");

        Assert.Contains("is there already", KeptBase.Refused(KeepingRefusal.FileThere, BaseBackup.Write(_kept.Base, _kept.Backup)), StringComparison.Ordinal);
        Assert.Equal("letters", File.ReadAllText(_kept.Backup));
        KeptBase.Refused(KeepingRefusal.FileThere, BaseBackup.Write(_kept.Base, _kept.Base));
        KeptBase.Refused(KeepingRefusal.FileThere, BaseBackup.Write(_kept.Base, Path.GetDirectoryName(_kept.Base) ?? ""));
    }

    [Fact]
    public void Without_a_base_or_a_folder_there_is_no_backup()
    {
        KeptBase.Refused(KeepingRefusal.NoFile, BaseBackup.Write(_kept.Base, _kept.Backup));
        _kept.Fill();
        KeptBase.Refused(KeepingRefusal.NoFolder, BaseBackup.Write(_kept.Base, _kept.PathOf("absent/backup.db")));
        Assert.Equal(["base.db"], _kept.Files);
    }

    [Fact]
    public void Damaged_base_gives_no_backup_and_leaves_no_half_of_one()
    {
        _kept.Fill();
        KeptBase.SpoilTable(_kept.Base, "makers");

        Assert.Contains("is damaged", KeptBase.Refused(KeepingRefusal.Damaged, BaseBackup.Write(_kept.Base, _kept.Backup)), StringComparison.Ordinal);
        Assert.Equal(["base.db"], _kept.Files);
    }

    [Fact]
    public void Base_of_an_older_schema_is_backed_up_as_it_is()
    {
        _kept.Fill();
        KeptBase.Execute(_kept.Base, "pragma user_version = 3");

        Assert.Equal(3, KeptBase.Done<BackedUp>(BaseBackup.Write(_kept.Base, _kept.Backup)).Schema);
        Assert.Equal(3, KeptBase.Read<long>(_kept.Base, "pragma user_version"));
    }

    [Fact]
    public void Base_that_is_not_ours_is_not_backed_up()
    {
        KeptBase.Execute(_kept.Base, "create table notes (note text)");
        KeptBase.Refused(KeepingRefusal.NotOurs, BaseBackup.Write(_kept.Base, _kept.Backup));

        File.WriteAllText(_kept.PathOf("notes.txt"), string.Concat(Enumerable.Repeat("not a database at all\n", 100)));
        KeptBase.Refused(KeepingRefusal.NotOurs, BaseBackup.Write(_kept.PathOf("notes.txt"), _kept.Backup));
    }
}
