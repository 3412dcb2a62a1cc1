namespace PartMatch.Storage.Books;

/// <summary>Bounds of a zip that is read.</summary>
/// <param name="MaxEntries">Entries, folders included.</param>
/// <param name="MaxBytes">Bytes of all files together, unpacked.</param>
/// <param name="MaxRatio">Unpacked bytes per packed byte, for each file.</param>
public sealed record BookZipLimits(int MaxEntries = 64, long MaxBytes = 64 << 20, int MaxRatio = 200);

/// <summary>What came of reading a zip: <see cref="BookRead"/> or <see cref="BookUnreadable"/>.</summary>
public abstract record BookReading;

public sealed record BookRead(BookFiles Files) : BookReading;

/// <summary>Not a zip, or one that is refused unread.</summary>
public sealed record BookUnreadable(ImportError Error) : BookReading;

/// <summary>A parts book as one zip file.</summary>
public static class BookZip
{
    /// <summary>Unpacks into memory, within the limits. Files lie at the root or all under one folder.</summary>
    /// <param name="zip">Readable and seekable.</param>
    public static BookReading Read(Stream zip, BookZipLimits limits) => throw new NotImplementedException();

    /// <summary>Writes the files at the root, in ordinal order, every entry dated 1980-01-01: equal books give equal bytes.</summary>
    public static void Write(BookFiles files, Stream zip) => throw new NotImplementedException();
}
