namespace PartMatch.Storage.Books;

/// <summary>A parts book as a folder.</summary>
public static class BookFolder
{
    /// <summary>Reads every file directly in the folder.</summary>
    /// <exception cref="IOException">The folder or a file cannot be read.</exception>
    public static BookFiles Read(string path) =>
        new(Directory.EnumerateFiles(path).Select(file => new BookFile(Path.GetFileName(file), File.ReadAllBytes(file))));
}
