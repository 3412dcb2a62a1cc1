using System.Diagnostics;

namespace PartMatch.Web.Tests.Host;

/// <summary>A disk of 8 MiB of its own, which a test may fill.</summary>
internal sealed class SmallDisk : IDisposable
{
    private const int Piece = 4096;

    private readonly string _filler;

    private SmallDisk(string folder) => (Folder, _filler) = (folder, Path.Combine(folder, "filler"));

    public string Folder { get; }

    /// <summary>Null where this user may not mount.</summary>
    public static SmallDisk? TryMount()
    {
        var folder = Directory.CreateTempSubdirectory("partmatch-disk-").FullName;
        if (OperatingSystem.IsLinux() && Run("mount", "-t", "tmpfs", "-o", "size=8m", "tmpfs", folder))
        {
            return new SmallDisk(folder);
        }

        Directory.Delete(folder);
        return null;
    }

    /// <summary>Writes until nothing more goes on it, then gives back some bytes.</summary>
    public void Fill(int left)
    {
        using var file = new FileStream(_filler, FileMode.Create, FileAccess.ReadWrite, FileShare.Read, bufferSize: 0);
        try
        {
            while (true)
            {
                file.Write(new byte[Piece]);
            }
        }
        catch (IOException)
        {
            file.SetLength(Math.Max(0, (file.Length / Piece * Piece) - left));
        }
    }

    public void Free() => File.Delete(_filler);

    public void Dispose()
    {
        Run("umount", "-l", Folder);
        Directory.Delete(Folder);
    }

    private static bool Run(string program, params string[] arguments)
    {
        using var process = Process.Start(new ProcessStartInfo(program, arguments) { RedirectStandardError = true });
        process?.WaitForExit();
        return process?.ExitCode == 0;
    }
}
