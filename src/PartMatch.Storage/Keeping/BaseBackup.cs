using System.Globalization;

namespace PartMatch.Storage.Keeping;

/// <summary>A copy of the base as it is at one moment, made while a server may go on writing.</summary>
public static class BaseBackup
{
    /// <summary>Writes the copy beside its place, proves it whole, and only then gives it its name.</summary>
    public static KeepingOutcome Write(string basePath, string file)
    {
        var (source, target) = (Path.GetFullPath(basePath), Path.GetFullPath(file));
        var draft = string.Create(CultureInfo.InvariantCulture, $"{target}.{Environment.ProcessId}.new");
        return FindObstacle(source, target) ?? BaseFile.Attempt(source, () => Write(source, target, draft));
    }

    private static KeepingRefused? FindObstacle(string source, string target)
    {
        if (!File.Exists(source))
        {
            return new(KeepingRefusal.NoFile, $"There is no base '{source}': expected the one to back up. Set PartMatch:Database to it.");
        }

        if (File.Exists(target) || Directory.Exists(target))
        {
            return new(KeepingRefusal.FileThere, $"'{target}' is there already, and a backup overwrites nothing: give another name.");
        }

        return Directory.Exists(Path.GetDirectoryName(target))
            ? null
            : new(KeepingRefusal.NoFolder, $"The folder of '{target}' does not exist: create it, or give another path.");
    }

    private static KeepingOutcome Write(string source, string target, string draft)
    {
        try
        {
            using var connection = BaseFile.Open(source);
            if ((BaseFile.FindStranger(connection, source) ?? BaseFile.Copy(connection, draft, source)) is { } refused)
            {
                return refused;
            }

            File.Move(draft, target, overwrite: false);
            return new BackedUp(target, new FileInfo(target).Length, BaseFile.Schema(connection));
        }
        finally
        {
            BaseFile.Delete(draft);
        }
    }
}
