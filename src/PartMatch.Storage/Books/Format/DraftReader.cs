namespace PartMatch.Storage.Books.Format;

/// <summary>Reads the files of a book into rows. Faults of shape go to the error list; the reader goes on with the next row or file.</summary>
internal static class DraftReader
{
    /// <returns>The draft, or null when not even <c>book.csv</c> tells which book it is.</returns>
    public static BookDraft? Read(BookFiles files, ErrorList errors, CancellationToken cancellation)
    {
        if (files.Find(BookTables.Books.File) is null)
        {
            errors.AddToFile(
                BookTables.Books.File, null, null, null, "the file is missing; a parts book says in it which book it is", "add book.csv");
            return null;
        }

        var rows = new Dictionary<BookTable, List<BookRow>?>();
        foreach (var file in files.Files)
        {
            cancellation.ThrowIfCancellationRequested();
            if (BookTables.All.FirstOrDefault(table => table.File == file.Name) is not { } table)
            {
                var nearest = NearestCode.Find(file.Name, BookTables.All.Select(known => known.File));
                errors.AddToFile(
                    file.Name, null, null, null, "not a file of a parts book of format 1",
                    nearest is null ? "leave it out" : $"{nearest}, or leave it out");
            }
            else if (!rows.TryAdd(table, TableReader.Read(table, file, errors)))
            {
                errors.AddToFile(file.Name, null, null, null, "the file is there twice", "leave one out");
            }
        }

        return rows[BookTables.Books] is { } heads && HasOneHead(heads, errors) ? new BookDraft(rows) : null;
    }

    private static bool HasOneHead(List<BookRow> heads, ErrorList errors)
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
