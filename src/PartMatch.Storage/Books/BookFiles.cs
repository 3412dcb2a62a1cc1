using System.Runtime.InteropServices;

namespace PartMatch.Storage.Books;

/// <summary>One file of a parts book.</summary>
public sealed class BookFile
{
    internal const int BufferBytes = 81_920;

    private readonly ReadOnlyMemory<byte>? _content;
    private readonly Func<Stream>? _open;

    public BookFile(string name, ReadOnlyMemory<byte> content) => (Name, _content) = (name, content);

    /// <param name="open">Gives the content from its beginning, each time; a large file is read several times rather than held.</param>
    internal BookFile(string name, Func<Stream> open) => (Name, _open) = (name, open);

    /// <summary>Without folder, for example <c>parts.csv</c>.</summary>
    public string Name { get; }

    /// <summary>All of it at once.</summary>
    public ReadOnlyMemory<byte> Content
    {
        get
        {
            if (_content is { } content)
            {
                return content;
            }

            using var stream = Open();
            using var whole = new MemoryStream();
            stream.CopyTo(whole);
            return whole.ToArray();
        }
    }

    /// <summary>From its beginning.</summary>
    internal Stream Open() => _open?.Invoke()
        ?? (MemoryMarshal.TryGetArray(Content, out var bytes)
            ? new MemoryStream(bytes.Array!, bytes.Offset, bytes.Count, writable: false) // a segment of an array has one
            : new MemoryStream(Content.ToArray(), writable: false));
}

/// <summary>The files of a parts book, in ordinal order of their names.</summary>
public sealed record BookFiles
{
    public BookFiles(IEnumerable<BookFile> files) => Files = [.. files.OrderBy(file => file.Name, StringComparer.Ordinal)];

    public IReadOnlyList<BookFile> Files { get; }

    public BookFile? Find(string name) => Files.FirstOrDefault(file => file.Name == name);
}
