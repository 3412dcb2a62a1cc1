using PartMatch.Storage.Keeping;
using Xunit;

namespace PartMatch.Storage.Tests.Keeping;

public sealed class BaseRestoreTests : IDisposable
{
    private const string KeptName = "base.db.before-restore-20270506T070809Z";

    private static readonly StoppedClock _clock = new("2027-05-06T07:08:09Z");

    private readonly KeptBase _kept = new();

    public void Dispose() => _kept.Dispose();

    [Fact]
    public void Restored_base_exports_the_same_bytes_and_the_one_before_is_kept()
    {
        var old = KeptBase.Export(_kept.Fill().Base);
        KeptBase.Done<BackedUp>(BaseBackup.Write(_kept.Base, _kept.Backup));
        var changed = KeptBase.Export(_kept.Fill(title: "Lark 2 changed").Base);
        Assert.NotEqual(old, changed);

        var done = KeptBase.Done<Restored>(Restore());

        Assert.Equal((_kept.Base, _kept.PathOf(KeptName)), (done.Base, done.Kept));
        Assert.Equal(["backup.db", "base.db", KeptName], _kept.Files);
        Assert.Equal(old, KeptBase.Export(_kept.Base));
        Assert.Equal(changed, KeptBase.Export(_kept.PathOf(KeptName)));
        KeptBase.Done<Sound>(BaseCheck.Run(_kept.Base, TestContext.Current.CancellationToken));
    }

    [Fact]
    public void Without_a_base_the_backup_becomes_the_base()
    {
        var old = KeptBase.Export(_kept.Fill().Base);
        File.Move(_kept.Base, _kept.Backup);

        Assert.Null(KeptBase.Done<Restored>(Restore()).Kept);
        Assert.Equal(["backup.db", "base.db"], _kept.Files);
        Assert.Equal(old, KeptBase.Export(_kept.Base));
    }

    // Somebody took the damaged base away and forgot the log beside it.
    [Fact]
    public void Write_ahead_log_of_a_base_that_is_gone_is_not_played_into_the_restored_one()
    {
        var old = KeptBase.Export(_kept.Fill().Base);
        BaseBackup.Write(_kept.Base, _kept.Backup);
        byte[] log;
        using (var database = Database.Open(_kept.Base))
        {
            KeptBase.Execute(_kept.Base, "update books set title = 'Lark 2 changed' where book = 'lark-2'");
            log = File.ReadAllBytes(_kept.Base + "-wal");
        }

        File.Delete(_kept.Base);
        File.WriteAllBytes(_kept.Base + "-wal", log);

        Assert.Null(KeptBase.Done<Restored>(Restore()).Kept);
        Assert.Equal(["backup.db", "base.db", KeptName + "-wal"], _kept.Files);
        Assert.Equal(old, KeptBase.Export(_kept.Base));
    }

    [Fact]
    public void Base_that_is_open_is_left_alone()
    {
        _kept.Fill();
        BaseBackup.Write(_kept.Base, _kept.Backup);
        _kept.Fill(title: "Lark 2 changed");
        var present = KeptBase.Export(_kept.Base);
        using (Database.Open(_kept.Base))
        {
            Assert.Contains("Stop the server", KeptBase.Refused(KeepingRefusal.InUse, Restore()), StringComparison.Ordinal);
        }

        Assert.DoesNotContain(KeptName, _kept.Files);
        Assert.Equal(present, KeptBase.Export(_kept.Base));
        KeptBase.Done<Restored>(Restore());
    }

    public static TheoryData<string, KeepingRefusal> BadBackups => new()
    {
        { "damaged", KeepingRefusal.Damaged },
        { "cut short", KeepingRefusal.Damaged },
        { "no database", KeepingRefusal.NotOurs },
        { "of another program", KeepingRefusal.NotOurs },
        { "empty", KeepingRefusal.NotOurs },
        { "newer", KeepingRefusal.NewerSchema },
        { "absent", KeepingRefusal.NoFile },
        { "referring to nothing", KeepingRefusal.Damaged },
    };

    [Theory]
    [MemberData(nameof(BadBackups))]
    public void Backup_that_is_not_whole_or_not_ours_is_refused_before_anything_is_touched(string what, KeepingRefusal reason)
    {
        _kept.Fill();
        BaseBackup.Write(_kept.Base, _kept.Backup);
        Make(what);
        var before = File.ReadAllBytes(_kept.Base);

        KeptBase.Refused(reason, Restore());

        Assert.Equal(before, File.ReadAllBytes(_kept.Base));
        Assert.Equal(what == "absent" ? ["base.db"] : ["backup.db", "base.db"], _kept.Files);
    }

    [Theory]
    [InlineData("pages")]
    [InlineData("header")]
    [InlineData("empty")]
    public void Damaged_base_is_replaced_and_kept(string damage)
    {
        var old = KeptBase.Export(_kept.Fill().Base);
        BaseBackup.Write(_kept.Base, _kept.Backup);
        if (damage == "pages")
        {
            KeptBase.SpoilTable(_kept.Base, "makers");
        }
        else
        {
            File.WriteAllText(_kept.Base, damage == "header" ? new string('x', 10_000) : "");
            File.WriteAllText(_kept.Base + "-wal", "left by a kill");
        }

        var before = File.ReadAllBytes(_kept.Base);

        Assert.Equal(_kept.PathOf(KeptName), KeptBase.Done<Restored>(Restore()).Kept);

        Assert.Equal(old, KeptBase.Export(_kept.Base));
        if (damage != "pages")
        {
            // Pages are copied by SQLite, which counts the change in the header.
            Assert.Equal(before, File.ReadAllBytes(_kept.PathOf(KeptName)));
        }
    }

    [Fact]
    public void Database_of_another_program_is_not_overwritten()
    {
        _kept.Fill();
        File.Move(_kept.Base, _kept.Backup);
        KeptBase.Execute(_kept.Base, "create table notes (note text)");

        KeptBase.Refused(KeepingRefusal.NotOurs, Restore());
        Assert.Equal(["backup.db", "base.db"], _kept.Files);
    }

    [Fact]
    public void Base_is_no_backup_of_itself_and_a_kept_base_is_not_overwritten()
    {
        _kept.Fill();
        KeptBase.Refused(KeepingRefusal.InUse, BaseRestore.Run(_kept.Base, _kept.Base, _clock));

        BaseBackup.Write(_kept.Base, _kept.Backup);
        KeptBase.Done<Restored>(Restore());
        KeptBase.Refused(KeepingRefusal.FileThere, Restore());
    }

    [Fact]
    public void Backup_of_an_older_schema_is_brought_up_to_date_when_the_base_is_opened()
    {
        using (var older = new Microsoft.Data.Sqlite.SqliteConnection($"Data Source={_kept.Backup};Pooling=False"))
        {
            older.Open();
            Migrator.Run(older, [.. Migration.Embedded().Take(2)], _kept.Backup);
        }

        Assert.Equal(2, KeptBase.Done<Restored>(Restore()).Schema);
        Assert.Empty(KeptBase.Export(_kept.Base));
        Assert.Equal(Migration.Embedded()[^1].Number, KeptBase.Read<long>(_kept.Base, "pragma user_version"));
    }

    private KeepingOutcome Restore() => BaseRestore.Run(_kept.Base, _kept.Backup, _clock);

    private void Make(string what)
    {
        switch (what)
        {
            case "damaged":
                KeptBase.SpoilTable(_kept.Backup, "makers");
                break;
            case "cut short":
                File.WriteAllBytes(_kept.Backup, File.ReadAllBytes(_kept.Backup)[..(40 * 4096)]);
                break;
            case "no database":
                File.WriteAllText(_kept.Backup, new string('x', 10_000));
                break;
            case "of another program":
                KeptBase.Execute(_kept.Backup, "pragma application_id = 0");
                break;
            case "empty":
                File.WriteAllBytes(_kept.Backup, []);
                break;
            case "newer":
                KeptBase.Execute(_kept.Backup, "pragma user_version = 999");
                break;
            case "referring to nothing":
                KeptBase.Execute(_kept.Backup, "insert into makers (book, maker, name) values ('nowhere', 'orrin', 'Orrin')");
                break;
            default:
                File.Delete(_kept.Backup);
                break;
        }
    }
}
