using PartMatch.Core.Photos;

namespace PartMatch.Storage.Books.Format;

/// <summary>Reads the files of a book into rows. Faults of shape go to the error list; the reader goes on with the next row or file.</summary>
internal static class DraftReader
{
    /// <summary>Ours, no source: what is kept of a row are its bytes and some fifty more.</summary>
    private const int MaxLines = 10_000_000;

    /// <returns>The draft, or null when not even <c>book.csv</c> tells which book it is.</returns>
    public static BookDraft? Read(BookFiles files, ErrorList errors, ImportWatch watch)
    {
        if (files.Find(BookTables.Books.File) is null)
        {
            errors.AddToFile(
                BookTables.Books.File, null, null, null, "the file is missing; a parts book says in it which book it is", "add book.csv");
            return null;
        }

        var lines = files.Files.Where(file => !Cells.Image.Accepts(file.Name)).Sum(LinesOf);
        if (lines > MaxLines)
        {
            errors.AddToFile(
                BookTables.Books.File, null, null, null, $"the files of the book have {lines} lines together, at most {MaxLines} are read", "split the book");
            return null;
        }

        watch.Begin(ImportStage.Reading, (int)lines);
        var rows = new Dictionary<BookTable, IReadOnlyList<BookRow>?>();
        var images = new Dictionary<string, Photo>(StringComparer.Ordinal);
        foreach (var file in files.Files)
        {
            if (Cells.Image.Accepts(file.Name))
            {
                if (Picture(file, errors) is { } picture)
                {
                    images[file.Name] = picture;
                }
            }
            else if (BookTables.All.FirstOrDefault(table => table.File == file.Name) is not { } table)
            {
                var nearest = NearestCode.Find(file.Name, BookTables.All.Select(known => known.File));
                errors.AddToFile(
                    file.Name, null, null, null, "not a file of a parts book of format 1",
                    nearest is null ? "leave it out" : $"{nearest}, or leave it out");
            }
            else if (!rows.TryAdd(table, TableReader.Read(table, file, errors, watch)))
            {
                errors.AddToFile(file.Name, null, null, null, "the file is there twice", "leave one out");
            }
        }

        return rows[BookTables.Books] is { } heads && HasOneHead(heads, errors) ? new BookDraft(rows) { Images = images } : null;
    }

    // Lines may end in either sign or in both.
    private static long LinesOf(BookFile file)
    {
        using var stream = file.Open();
        var (feeds, returns, buffer) = (0L, 0L, new byte[BookFile.BufferBytes]);
        for (int read; (read = stream.Read(buffer)) > 0;)
        {
            feeds += buffer.AsSpan(0, read).Count((byte)'\n');
            returns += buffer.AsSpan(0, read).Count((byte)'\r');
        }

        return Math.Max(feeds, returns);
    }

    /// <summary>A picture as an export has it: written anew without metadata, and named by its own bytes.</summary>
    private static Photo? Picture(BookFile file, ErrorList errors)
    {
        switch (PhotoReader.Read(file.Content))
        {
            case PhotoRead read when ImageName.Of(read.Photo) == file.Name:
                return read.Photo;
            case PhotoRead read:
                errors.AddToFile(
                    file.Name, null, null, null, "the name is not the SHA-256 of the picture as the base keeps it, without metadata",
                    $"send the picture to /api/images, which gives its name: {ImageName.Of(read.Photo)}");
                return null;
            case PhotoRefused refused:
                errors.AddToFile(file.Name, null, null, refused.Found, $"not a picture that is kept: expected {refused.Expected}", refused.Mend);
                return null;
            default:
                throw new InvalidOperationException("A picture was read as something that no outcome names.");
        }
    }

    private static bool HasOneHead(IReadOnlyList<BookRow> heads, ErrorList errors)
    {
        if (heads.Count == 1)
        {
            return !heads[0].IsBroken;
        }

        errors.AddToFile(
            BookTables.Books.File, heads.Count > 1 ? heads[1].Line : null, null, null, $"{heads.Count} rows, expected exactly one", "one folder holds one book");
        return false;
    }
}
