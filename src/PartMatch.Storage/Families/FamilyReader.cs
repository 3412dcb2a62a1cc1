using Dapper;
using Microsoft.Data.Sqlite;
using PartMatch.Core.Catalogue;
using PartMatch.Storage.Catalogue;
using PartMatch.Storage.Parts;

namespace PartMatch.Storage.Families;

/// <summary>Reads everything about one family. Rows that cite retracted evidence are kept: deciders see that it is retracted.</summary>
internal static class FamilyReader
{
    public static FamilyFacts? Find(SqliteConnection connection, string code)
    {
        var family = connection.QuerySingleOrDefault<FamilyRow>("select book, title, maker, note from books where book = @code and kind = 'family'", new { code });
        if (family is null)
        {
            return null;
        }

        var books = Scopes.Of(connection, code);
        var evidence = new EvidenceReader(connection);
        var kinds = KindReader.Read(connection, books);
        var positions = Positions(connection, code);
        var openings = new OpeningReader(connection, evidence, code);
        var relations = new RelationReader(connection, evidence, code, kinds, positions);
        return new FamilyFacts(
            Variants(connection, evidence, code),
            positions,
            kinds,
            new PartReader(connection, evidence).OfBooks(books),
            KindReader.ReadWorks(connection, books),
            new FitmentReader(connection, evidence).OfBook(code),
            relations.Joints(),
            relations.Stacks())
        {
            // A family book without a maker is refused by the import.
            Family = new Family(family.Book, family.Title, family.Maker ?? "", family.Note),
            Needs = relations.Needs(),
            Companions = relations.Companions(),
            Pairs = new PairReader(connection, evidence).OfBooks(books),
            Supersessions = new SupersessionReader(connection, evidence).OfBooks(books),
            Selects = relations.Selects(),
            Findings = new FindingReader(connection, evidence).OfBook(code),
            Torques = new TorqueReader(connection, evidence).OfBook(code),
            Openings = openings.Openings(),
            BenchOrders = openings.BenchOrders(),
            Reminders = new ReminderReader(connection, evidence).OfBooks(books),
            Renewals = openings.Renewals(),
            WeakPoints = openings.WeakPoints(),
            Limits = new LimitReader(connection, evidence).OfBooks(books),
            EngineFacts = EngineFacts(connection, evidence, code),
        };
    }

    private static List<Variant> Variants(SqliteConnection connection, EvidenceReader evidence, string book) =>
    [
        .. connection.Query<VariantRow>(
            """
            select variant, name, built_from, built_to, serial_from, serial_to, evidence, evidence_book
            from variants
            where book = @book
            order by variant
            """,
            new { book })
            .Select(row => new Variant(
                row.Variant, row.Name, Readings.SpanOf(row.BuiltFrom, row.BuiltTo, row.SerialFrom, row.SerialTo), evidence.Find(row.EvidenceBook, row.Evidence))),
    ];

    private static List<Position> Positions(SqliteConnection connection, string book) =>
    [
        .. connection.Query<PositionRow>(
            """
            select s.position, s.name, s."group", s.kind, s.role, a.minutes, a.how
            from positions s
            left join access a on a.book = s.book and a.position = s.position
            where s.book = @book
            order by s.position
            """,
            new { book })
            .Select(row => new Position(row.Position, row.Name, row.Group, row.Kind, row.Role)
            {
                AccessMinutes = Readings.FindNumber(row.Minutes),
                Access = row.How,
            }),
    ];

    private static List<EngineFact> EngineFacts(SqliteConnection connection, EvidenceReader evidence, string book) =>
    [
        .. connection.Query<EngineRow>(
            """
            select variant, property, value, minus, plus, unit, uncertainty, evidence, evidence_book
            from engine
            where book = @book
            order by variant, property
            """,
            new { book })
            .Select(row => new EngineFact(
                row.Variant, row.Property, Readings.OfEngine(row.Value, row.Minus, row.Plus, row.Unit, row.Uncertainty),
                evidence.Find(row.EvidenceBook, row.Evidence))),
    ];

    private sealed record FamilyRow(string Book, string Title, string? Maker, string? Note);

    private sealed record VariantRow(
        string Variant, string Name, string? BuiltFrom, string? BuiltTo, string? SerialFrom, string? SerialTo, string? Evidence, string? EvidenceBook);

    private sealed record PositionRow(string Position, string Name, string Group, string Kind, string? Role, string? Minutes, string? How);

    private sealed record EngineRow(
        string Variant, string Property, string Value, string? Minus, string? Plus, string? Unit, string? Uncertainty, string? Evidence, string? EvidenceBook);
}
