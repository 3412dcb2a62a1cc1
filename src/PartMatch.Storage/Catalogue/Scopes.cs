using Dapper;
using Microsoft.Data.Sqlite;

namespace PartMatch.Storage.Catalogue;

/// <summary>The books that the rows of a book may refer to.</summary>
internal static class Scopes
{
    /// <summary>The book itself and the books it uses, directly or through others; in ordinal order.</summary>
    public static IReadOnlyList<string> Of(SqliteConnection connection, string book) =>
        connection.Query<string>(
            """
            with recursive scope (book) as (
              select @book
              union
              select book_uses.used
              from book_uses
              join scope on scope.book = book_uses.book
            )
            select book
            from scope
            order by book
            """,
            new { book }).AsList();
}
