using Dapper;
using Microsoft.Data.Sqlite;
using PartMatch.Storage.Books.Checks;
using PartMatch.Storage.Books.Format;

namespace PartMatch.Storage.Books.Rows;

/// <summary>Finds the books that a book uses, directly and through others, and the books that use it.</summary>
/// <param name="imported">The draft that is about to stand in the base instead of the book of its name.</param>
internal sealed class ScopeReader(SqliteConnection connection, BookDraft imported)
{
    private readonly Dictionary<string, BookDraft?> _read = new(StringComparer.Ordinal) { [imported.Code] = imported };

    /// <summary>The scope of the draft, or null when a used book is missing or the books use each other in a ring.</summary>
    public BookScope? Find(BookDraft own, ErrorList errors)
    {
        var used = new SortedDictionary<string, BookDraft>(StringComparer.Ordinal);
        var open = new Queue<BookDraft>([own]);
        var before = errors.Total;
        while (open.TryDequeue(out var user))
        {
            foreach (var code in user.Uses)
            {
                if (code == own.Code)
                {
                    errors.Add(
                        own.Head, "uses", user == own ? "the book uses itself" : $"{user.Code} uses this book, so this book cannot use it",
                        "take it out of the list");
                }
                else if (used.ContainsKey(code))
                {
                    continue;
                }
                else if (Referable(code) is not { } book)
                {
                    errors.Add(own.Head, "uses", $"no book '{code}' in the base", () => Nearest(code));
                }
                else
                {
                    used.Add(code, book);
                    open.Enqueue(book);
                }
            }
        }

        return errors.Total > before ? null : new BookScope(own, [.. used.Values]);
    }

    /// <summary>The books that use the imported one, directly or through others, whole, in ordinal order.</summary>
    public IReadOnlyList<BookDraft> Users()
    {
        var codes = connection.Query<string>(
            """
            with recursive users (book) as (
              select book
              from book_uses
              where used = @Code
              union
              select book_uses.book
              from book_uses
              join users on users.book = book_uses.used
            )
            select book
            from users
            where book <> @Code
            order by book
            """,
            new { imported.Code });
        // The codes come from the base in the same transaction, so their books are there.
        return [.. codes.AsList().Select(code => BookRows.Find(connection, code, BookTables.All)!)];
    }

    private BookDraft? Referable(string code)
    {
        if (!_read.TryGetValue(code, out var book))
        {
            _read[code] = book = BookRows.Find(connection, code, BookTables.Referable);
        }

        return book;
    }

    private string Nearest(string code)
    {
        var known = connection.Query<string>("select book from books order by book").AsList();
        return NearestCode.Find(code, known) ?? "import that book first";
    }
}
