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
            var row = Withdrawn(Row(book, code));
            _made[(book, code)] = evidence = new Evidence(
                code, Codes.Get<EvidenceGrade>(row.Grade), row.Date, row.Author, row.Source, row.DerivedFrom, row.RetractedOn, row.RetractedWhy)
            {
                Root = Root(book, row),
                Details = DetailsOf(row),
            };
        }

        return evidence;
    }

    /// <summary>What was copied from a source that was retracted has nothing left to stand on: it is retracted with it.</summary>
    private EvidenceRow Withdrawn(EvidenceRow row)
    {
        var source = row;
        while (source is { RetractedOn: null, DerivedFromBook: { } originalBook, DerivedFrom: { } original })
        {
            source = Row(originalBook, original);
        }

        return source == row || source.RetractedOn is null
            ? row
            : row with { RetractedOn = source.RetractedOn, RetractedWhy = $"copied from {source.Code}, which was retracted{(source.RetractedWhy is null ? "" : $": {source.RetractedWhy}")}" };
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
            select e.evidence as code, e.grade, e.date, e.author, e.source, e.derived_from, e.retracted_on, e.retracted_why, e.derived_from_book,
              s.evidence as detailed, s.speaks_of, s.instrument, s.hours, s.output, s.output_unit, s.fuel, s.page, s.note
            from evidence e
            left join sources s on s.evidence_book = e.book and s.evidence = e.evidence
            where e.book = @book
            """,
            new { book }).ToDictionary(row => row.Code, StringComparer.Ordinal);

    private static SourceDetails? DetailsOf(EvidenceRow row) => row.Detailed is null ? null : new SourceDetails(
        row.SpeaksOf is null ? null : Codes.Get<SpeaksOf>(row.SpeaksOf), row.Instrument, Readings.FindNumber(row.Hours),
        row.Output is null ? null : Readings.Of(FeatureType.Quantity, row.Output, null, null, row.OutputUnit, null), row.Fuel, row.Page, row.Note);

    private sealed record EvidenceRow(
        string Code, string Grade, string? Date, string? Author, string? Source, string? DerivedFrom, string? RetractedOn, string? RetractedWhy,
        string? DerivedFromBook, string? Detailed, string? SpeaksOf, string? Instrument, string? Hours, string? Output, string? OutputUnit, string? Fuel,
        string? Page, string? Note);
}
