using PartMatch.Core.Catalogue;

namespace PartMatch.Web.Editing;

internal static class EditLinks
{
    public static string ToTable(string book, string table) => Permalink.To("/api/books", book, table).ToString();

    public static string ToRow(string book, string table, string key) => Permalink.To("/api/books", book, table, key).ToString();

    public static string ToHistory(string book, string? table, string? key) =>
        new Permalink("/api/history").With("book", book).With("table", table).With("key", key).ToString();
}
