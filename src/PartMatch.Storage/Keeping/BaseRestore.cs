using System.Globalization;
using Dapper;
using Microsoft.Data.Sqlite;

namespace PartMatch.Storage.Keeping;

/// <summary>Puts a backup in the place of the base. Refused while a server has the base open; the base that was there is kept beside.</summary>
/// <remarks>
/// The backup is first copied beside the base and proved whole. A base that can be opened is then overwritten in one transaction of SQLite: a kill or a power
/// cut leaves the old one or the new one, and a server that starts meanwhile waits and finds the new one. One that cannot be opened is replaced as a file.
/// What is kept has its name only once it is whole; what a kill leaves half-written ends in <c>.new</c>.
/// </remarks>
public static class BaseRestore
{
    public static KeepingOutcome Run(string basePath, string backup, TimeProvider clock)
    {
        var (target, source) = (Path.GetFullPath(basePath), Path.GetFullPath(backup));
        if (!File.Exists(source))
        {
            return new KeepingRefused(KeepingRefusal.NoFile, $"There is no file '{source}': expected a backup. Give its path.");
        }

        if (source == target)
        {
            return new KeepingRefused(KeepingRefusal.InUse, $"'{source}' is the base itself: expected a backup of it. Give the path of another file.");
        }

        var kept = target + clock.GetUtcNow().ToString("'.before-restore-'yyyyMMdd'T'HHmmss'Z'", CultureInfo.InvariantCulture);
        return File.Exists(kept)
            ? new KeepingRefused(KeepingRefusal.FileThere, $"'{kept}' is there already, and nothing is overwritten: try again in a second.")
            : BaseFile.Attempt(source, () => Run(target, source, kept));
    }

    private static KeepingOutcome Run(string target, string source, string kept)
    {
        var draft = string.Create(CultureInfo.InvariantCulture, $"{target}.{Environment.ProcessId}.new");
        var strays = BaseFile.Companions(source).Where(file => !File.Exists(file)).ToList();
        try
        {
            using (var connection = BaseFile.Open(source, SqliteOpenMode.ReadOnly))
            {
                if ((BaseFile.FindStranger(connection, source) ?? BaseFile.Copy(connection, draft, source)) is { } refused)
                {
                    return refused;
                }
            }

            return BaseFile.Attempt(target, () => Put(draft, target, kept));
        }
        finally
        {
            BaseFile.Delete(draft);

            // A copy made by hand is still in WAL mode; one that is only read leaves these behind.
            strays.ForEach(File.Delete);
        }
    }

    private static KeepingOutcome Put(string draft, string target, string kept)
    {
        using var copy = BaseFile.Open(draft);
        var (bytes, schema) = (new FileInfo(draft).Length, BaseFile.Schema(copy));
        if (!File.Exists(target))
        {
            copy.Close();
            SetAside(target, kept);
            File.Move(draft, target, overwrite: false);
            return new Restored(target, null, bytes, schema);
        }

        try
        {
            using var present = Claim(target);
            return Overwrite(copy, present, kept) ?? (KeepingOutcome)new Restored(target, kept, bytes, schema);
        }
        catch (SqliteException exception) when (DatabaseException.Explain(exception, target).Fault is DatabaseFault.NotADatabase or DatabaseFault.Corrupt)
        {
            copy.Close();
            SetAside(target, kept);
            File.Move(draft, target, overwrite: true);
            return new Restored(target, kept, bytes, schema);
        }
        catch (SqliteException exception) when (DatabaseException.Explain(exception, target).Fault is DatabaseFault.Busy)
        {
            return new KeepingRefused(
                KeepingRefusal.InUse, $"'{target}' is open in a server or another program: expected that nobody uses it. Stop the server, then restore.");
        }
    }

    /// <summary>The base with a lock that nobody else can have: in WAL mode whoever has it open holds a lock of his own, so leaving that mode fails.</summary>
    private static SqliteConnection Claim(string target)
    {
        if (new FileInfo(target).Length == 0)
        {
            throw new SqliteException("an empty file", (int)DatabaseFault.NotADatabase);
        }

        var present = BaseFile.Open(target);
        try
        {
            present.Execute("pragma locking_mode = exclusive");
            present.Execute("pragma journal_mode = delete");
            present.Execute("begin exclusive; commit");
            return present;
        }
        catch
        {
            present.Dispose();
            throw;
        }
    }

    /// <summary>The lock on the present base is held from here to the end: nothing is written to it between keeping and overwriting.</summary>
    private static KeepingRefused? Overwrite(SqliteConnection copy, SqliteConnection present, string kept)
    {
        if (BaseFile.FindStranger(present, present.DataSource) is { Reason: KeepingRefusal.NotOurs } stranger)
        {
            return stranger;
        }

        var half = HalfOf(kept);
        var isDone = false;
        try
        {
            using (var beside = BaseFile.Open(half, SqliteOpenMode.ReadWriteCreate))
            {
                present.BackupDatabase(beside);
            }

            BaseFile.Sync(half);
            File.Move(half, kept);
            copy.BackupDatabase(present);
            isDone = true;
            return null;
        }
        finally
        {
            if (!isDone)
            {
                BaseFile.Delete(half);
                BaseFile.Delete(kept);
            }
        }
    }

    private static string HalfOf(string kept) => kept + ".new";

    /// <summary>
    /// The file that was there is kept beside with all that belongs to it, and what belongs to it goes: what is left of a write-ahead log would be played into
    /// the new base, also where somebody took the file itself away before.
    /// </summary>
    private static void SetAside(string target, string kept)
    {
        var moves = BaseFile.Companions(target).Prepend(target).Zip(BaseFile.Companions(kept).Prepend(kept));
        foreach (var (from, to) in moves.Where(pair => File.Exists(pair.First)))
        {
            File.Copy(from, HalfOf(to), overwrite: true);
            BaseFile.Sync(HalfOf(to));
            File.Move(HalfOf(to), to);
        }

        foreach (var companion in BaseFile.Companions(target))
        {
            File.Delete(companion);
        }
    }
}
