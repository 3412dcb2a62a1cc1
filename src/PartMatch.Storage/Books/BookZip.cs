using System.IO.Compression;
using System.IO.Hashing;

namespace PartMatch.Storage.Books;

/// <summary>Bounds of a zip that is read.</summary>
/// <param name="MaxEntries">Entries, folders included.</param>
/// <param name="MaxBytes">Bytes of all files together, unpacked.</param>
/// <param name="MaxRatio">Unpacked bytes per packed byte, for each file; files under a megabyte are let pass.</param>
public sealed record BookZipLimits(int MaxEntries = 512, long MaxBytes = 512L << 20, int MaxRatio = 200);

/// <summary>What came of reading a zip: <see cref="BookRead"/> or <see cref="BookUnreadable"/>.</summary>
public abstract record BookReading;

public sealed record BookRead(BookFiles Files) : BookReading;

/// <summary>Not a zip, or one that is refused.</summary>
/// <param name="Error">About the zip as a whole, or about the entry it names as its file.</param>
public sealed record BookUnreadable(ImportError Error) : BookReading;

/// <summary>A parts book as one zip file.</summary>
public static class BookZip
{
    /// <summary>Stands for the whole zip in an error.</summary>
    private const string WholeZip = "(zip)";

    private const int UnixTypeMask = 0xF000;
    private const int UnixRegularFile = 0x8000;
    private const int UnixReadableByAll = 0x1A4;

    /// <summary>The oldest time a zip can state.</summary>
    private static readonly DateTimeOffset _entryTime = new(1980, 1, 1, 0, 0, 0, TimeSpan.Zero);

    /// <summary>
    /// Unpacks once, within the limits, and keeps nothing: the files are unpacked again as they are read. They lie at the root or all under one folder.
    /// </summary>
    /// <param name="zip">Readable and seekable; open and unchanged as long as the files are read, by one reader at a time.</param>
    public static BookReading Read(Stream zip, BookZipLimits limits)
    {
        try
        {
            // Holds nothing but the stream, which stays the caller's; its entries outlive this call.
            var archive = new ZipArchive(zip, ZipArchiveMode.Read, leaveOpen: true);
            return FindFault(archive, limits) ?? Unpack(archive, limits);
        }
        catch (InvalidDataException)
        {
            return Refused(WholeZip, "not a zip file, or a damaged one", "pack the CSV files of the book into a new zip");
        }
    }

    /// <summary>Writes the files at the root, in ordinal order, every entry dated 1980-01-01: equal books give equal bytes.</summary>
    public static void Write(BookFiles files, Stream zip)
    {
        using var archive = new ZipArchive(zip, ZipArchiveMode.Create, leaveOpen: true);
        foreach (var file in files.Files)
        {
            var entry = archive.CreateEntry(file.Name, CompressionLevel.Optimal);
            entry.LastWriteTime = _entryTime;
            entry.ExternalAttributes = (UnixRegularFile | UnixReadableByAll) << 16;
            using var stream = entry.Open();
            stream.Write(file.Content.Span);
        }
    }

    private static BookUnreadable? FindFault(ZipArchive archive, BookZipLimits limits)
    {
        if (archive.Entries.Count > limits.MaxEntries)
        {
            return Refused(WholeZip, $"{archive.Entries.Count} entries, at most {limits.MaxEntries} are read", "leave out what is no file of the book");
        }

        var folders = new HashSet<string>(StringComparer.Ordinal);
        foreach (var entry in archive.Entries)
        {
            if (FindFault(entry, limits) is { } fault)
            {
                return fault;
            }

            folders.Add(entry.FullName.Contains('/', StringComparison.Ordinal) ? entry.FullName[..(entry.FullName.LastIndexOf('/') + 1)] : "");
        }

        return folders.Count > 1 ? Refused(WholeZip, "files in several folders", "put all files at the root, or all in one folder") : null;
    }

    private static BookUnreadable? FindFault(ZipArchiveEntry entry, BookZipLimits limits)
    {
        var name = entry.FullName;
        var type = (entry.ExternalAttributes >> 16) & UnixTypeMask;
        var isFolder = name.EndsWith('/');
        if (name.StartsWith('/') || name.Contains('\\', StringComparison.Ordinal) || name.Split('/').Any(step => step is ".." or ".") || name.Any(char.IsControl))
        {
            return Refused(name, "a path that leads out of the zip", "pack the files by their plain names");
        }

        if (type is not (0 or UnixRegularFile) && !isFolder)
        {
            return Refused(name, "a link or a device, expected a plain file", "pack the file itself");
        }

        if (name.Split('/', StringSplitOptions.RemoveEmptyEntries).Length > (isFolder ? 1 : 2))
        {
            return Refused(name, "a folder inside a folder", "put all files at the root, or all in one folder");
        }

        return entry.IsEncrypted ? Refused(name, "encrypted", "pack it without a password")
            : entry.Length > 1 << 20 && entry.Length / Math.Max(1, entry.CompressedLength) > limits.MaxRatio
                ? Refused(name, $"unpacks to more than {limits.MaxRatio} times its size", "this is no honest file of a book")
            : null;
    }

    private static BookReading Unpack(ZipArchive archive, BookZipLimits limits)
    {
        var files = new List<BookFile>();
        var left = limits.MaxBytes;
        foreach (var entry in archive.Entries.Where(entry => entry.Name.Length > 0))
        {
            if (files.Exists(file => file.Name == entry.Name))
            {
                return Refused(entry.FullName, "the file is there twice", "leave one out");
            }

            // Counted while unpacking: the lengths that a zip states about itself are not to be trusted.
            if (CheckUpTo(entry, left) is not var (length, sum))
            {
                return Refused(
                    WholeZip, $"more than {limits.MaxBytes} bytes unpacked", "split the book, or let the server read larger ones: PartMatch:LargestBook");
            }

            // The framework's reader hands out damaged content without comparing it.
            if (sum != entry.Crc32)
            {
                return Refused(entry.FullName, "damaged: its check sum does not match", "pack or send it again");
            }

            left -= length;
            files.Add(new BookFile(entry.Name, entry.Open));
        }

        return new BookRead(new BookFiles(files));
    }

    /// <summary>How long it is and its check sum; null where it is longer than the limit.</summary>
    private static (long Length, uint Sum)? CheckUpTo(ZipArchiveEntry entry, long limit)
    {
        using var stream = entry.Open();
        var (sum, length, buffer) = (new Crc32(), 0L, new byte[BookFile.BufferBytes]);
        for (int read; (read = stream.Read(buffer)) > 0; length += read)
        {
            if (length + read > limit)
            {
                return null;
            }

            sum.Append(buffer.AsSpan(0, read));
        }

        return (length, sum.GetCurrentHashAsUInt32());
    }

    private static BookUnreadable Refused(string file, string reason, string suggestion) =>
        new(new ImportError(file, null, null, null, reason, suggestion));
}
