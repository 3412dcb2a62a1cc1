using PartMatch.Storage.Books.Checks;
using PartMatch.Storage.Books.Format;
using PartMatch.Storage.Editing;

namespace PartMatch.Storage.Books.Rows;

/// <summary>The books that use the one to be replaced, and those rows of theirs that the replacement would leave without what they refer to.</summary>
/// <param name="Scopes">With the replacement in place of the old book.</param>
internal sealed record BookUsers(IReadOnlyList<BookScope> Scopes, IReadOnlyList<BookUser> Users, int Total)
{
    public static BookUsers None { get; } = new([], [], 0);

    /// <summary>Found by the same checks that an import of the using book would go through: what they still accept is still satisfied.</summary>
    public static BookUsers Find(ScopeReader reader, CancellationToken cancellation)
    {
        var scopes = new List<BookScope>();
        var users = new List<BookUser>();
        var total = 0;
        foreach (var book in reader.Users())
        {
            var errors = new ErrorList(BookStore.MaxErrors);
            if (reader.Find(book, errors) is { } scope)
            {
                BookChecks.Run(scope, errors, ImportWatch.Silent(cancellation));
                scopes.Add(scope);
            }

            total += errors.Total;
            users.AddRange(errors.Kept.Select(kept => ToUser(book.Code, kept.Row, kept.Error)));
        }

        return new BookUsers(scopes, [.. users.Take(BookStore.MaxErrors)], total);
    }

    /// <summary>A row that a change would leave at fault.</summary>
    public static BookUser ToUser(string book, BookRow? row, ImportError error) =>
        new(book, error.File, row is null ? "" : RowKey.Of(row), error.Column is null ? "" : $"{error.Column} {error.Value}", error.Reason);
}
