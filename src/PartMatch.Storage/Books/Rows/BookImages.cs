using Dapper;
using Microsoft.Data.Sqlite;
using PartMatch.Storage.Books.Format;
using PartMatch.Storage.Photos;

namespace PartMatch.Storage.Books.Rows;

/// <summary>The pictures that the photographs of a book show: files beside the CSV files, named by their own bytes.</summary>
internal static class BookImages
{
    /// <summary>Every picture that is named comes with the book or is in the base, and every one that comes is named.</summary>
    public static void Check(SqliteConnection connection, BookDraft draft, ErrorList errors)
    {
        foreach (var row in draft.Rows(BookTables.Photos).Where(row => Cells.Image.Accepts(row["image"])))
        {
            if (!draft.Images.ContainsKey(row["image"]) && !IsStored(connection, row["image"]))
            {
                errors.Add(row, "image", "no such picture: expected one that comes with the book or is in the base", "send it to /api/images, which gives its name");
            }
        }

        var named = draft.Declared(BookTables.Photos).Select(row => row["image"]).ToHashSet(StringComparer.Ordinal);
        foreach (var image in draft.Images.Keys.Where(image => !named.Contains(image)).Order(StringComparer.Ordinal))
        {
            errors.AddToFile(image, null, null, null, $"no row of {BookTables.Photos.File} names this picture", "leave it out, or say in a row what it shows");
        }
    }

    public static void Store(SqliteConnection connection, BookDraft draft, DateTimeOffset at)
    {
        foreach (var photo in draft.Images.Values)
        {
            ImageStore.Insert(connection, photo, at);
        }
    }

    /// <summary>The pictures of a book from the base, as files.</summary>
    public static IEnumerable<BookFile> Of(SqliteConnection connection, BookDraft draft) =>
        draft.Declared(BookTables.Photos).Select(row => row["image"]).Distinct(StringComparer.Ordinal)
            .Select(image => new BookFile(image, connection.QuerySingle<byte[]>("select bytes from images where image = @image", new { image })));

    private static bool IsStored(SqliteConnection connection, string image) =>
        connection.ExecuteScalar<long>("select count(*) from images where image = @image", new { image }) > 0;
}
