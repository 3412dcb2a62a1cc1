namespace PartMatch.Storage.Books;

/// <summary>One file of a parts book.</summary>
/// <param name="Name">Without folder, for example <c>parts.csv</c>.</param>
public sealed record BookFile(string Name, ReadOnlyMemory<byte> Content);

/// <summary>The files of a parts book, in ordinal order of their names.</summary>
public sealed record BookFiles
{
    public BookFiles(IEnumerable<BookFile> files) => Files = [.. files.OrderBy(file => file.Name, StringComparer.Ordinal)];

    public IReadOnlyList<BookFile> Files { get; }

    public BookFile? Find(string name) => Files.FirstOrDefault(file => file.Name == name);
}
