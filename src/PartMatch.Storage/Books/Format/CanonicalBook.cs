using System.Text;

namespace PartMatch.Storage.Books.Format;

/// <summary>
/// Writes a book in canonical form: UTF-8 without byte order mark, line feeds, quotes only where needed, columns and rows in their fixed order, no file
/// without rows. Equal books give equal bytes.
/// </summary>
internal static class CanonicalBook
{
    /// <param name="draft">Rows in ordinal order of their keys, as the base gives them.</param>
    public static BookFiles Write(BookDraft draft) =>
        new(BookTables.All.Where(table => draft.Declared(table).Count > 0).Select(table => new BookFile(table.File, Bytes(table, draft))));

    private static byte[] Bytes(BookTable table, BookDraft draft) =>
        Encoding.UTF8.GetBytes(CsvText.Write([.. table.Columns.Select(column => column.Name)], draft.Declared(table).Select(row => row.Cells)));
}
