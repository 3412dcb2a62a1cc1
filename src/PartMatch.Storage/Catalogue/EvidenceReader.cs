using Dapper;
using Microsoft.Data.Sqlite;
using PartMatch.Core.Catalogue;

namespace PartMatch.Storage.Catalogue;

/// <summary>Finds evidence by book and code; reads a book's evidence when it is first asked for. Lives as long as one reading transaction.</summary>
internal sealed class EvidenceReader(SqliteConnection connection)
{
    private readonly Dictionary<string, IReadOnlyDictionary<string, EvidenceRow>> _books = new(StringComparer.Ordinal);
    private readonly Dictionary<(string Book, string Code), Evidence> _made = [];

    /// <param name="book">The book in which the import found it; null where nothing is cited.</param>
    public Evidence? Find(string? book, string? code) => book is null || code is null ? null : Get(book, code);

    private Evidence Get(string book, string code)
    {
        if (!_made.TryGetValue((book, code), out var evidence))
        {
            var row = Row(book, code);
            _made[(book, code)] = evidence = new Evidence(
                code, Codes.Get<EvidenceGrade>(row.Grade), row.Date, row.Author, row.Source, row.DerivedFrom, row.RetractedOn, row.RetractedWhy)
            {
                Root = Root(book, row),
            };
        }

        return evidence;
    }

    /// <summary>Codes repeat between books, so a root is named with its book. The import has made sure that no chain is a loop.</summary>
    private string Root(string book, EvidenceRow row)
    {
        while (row is { DerivedFromBook: { } originalBook, DerivedFrom: { } original })
        {
            (book, row) = (originalBook, Row(originalBook, original));
        }

        return $"{book}/{row.Code}";
    }

    private EvidenceRow Row(string book, string code)
    {
        if (!_books.TryGetValue(book, out var rows))
        {
            _books[book] = rows = Read(book);
        }

        return rows[code];
    }

    private Dictionary<string, EvidenceRow> Read(string book) =>
        connection.Query<EvidenceRow>(
            """
            select evidence as code, grade, date, author, source, derived_from, retracted_on, retracted_why, derived_from_book
            from evidence
            where book = @book
            """,
            new { book }).ToDictionary(row => row.Code, StringComparer.Ordinal);

    private sealed record EvidenceRow(
        string Code, string Grade, string? Date, string? Author, string? Source, string? DerivedFrom, string? RetractedOn, string? RetractedWhy,
        string? DerivedFromBook);
}
