using Dapper;
using Microsoft.Data.Sqlite;
using PartMatch.Core.Catalogue;
using PartMatch.Storage.Catalogue;

namespace PartMatch.Storage.Families;

/// <summary>Reads how one family comes apart, what is renewed then, and what is weak. Lists are ordered by the keys of their tables.</summary>
internal sealed class OpeningReader(SqliteConnection connection, EvidenceReader evidence, string book)
{
    public IReadOnlyList<Opening> Openings() =>
    [
        .. connection.Query<OpeningRow>(
            """
            select position, off_first, variants, evidence, evidence_book, note
            from openings
            where book = @book
            order by position, off_first, variants
            """,
            new { book })
            .Select(row => new Opening(row.Position, row.OffFirst, VariantsOf(row.Variants), evidence.Find(row.EvidenceBook, row.Evidence), row.Note)),
    ];

    public IReadOnlyList<BenchOrder> BenchOrders() =>
    [
        .. connection.Query<BenchOrderRow>(
            """
            select first, "then", how, variants, evidence, evidence_book, note
            from bench_order
            where book = @book
            order by first, "then", variants
            """,
            new { book })
            .Select(row => new BenchOrder(
                row.First, row.Then, row.How is null ? null : Codes.Get<BenchJoin>(row.How), VariantsOf(row.Variants), evidence.Find(row.EvidenceBook, row.Evidence),
                row.Note)),
    ];

    public IReadOnlyList<Renewal> Renewals() =>
    [
        .. connection.Query<RenewalRow>(
            """
            select opened, renewed, amount, unit, bead, cure_hours, variants, evidence, evidence_book, note
            from renewals
            where book = @book
            order by opened, renewed, variants
            """,
            new { book })
            .Select(row => new Renewal(
                row.Opened, row.Renewed,
                row.Amount is null ? null : (QuantityReading)Readings.Of(FeatureType.Quantity, row.Amount, null, null, row.Unit, null),
                row.Bead, Readings.FindNumber(row.CureHours), VariantsOf(row.Variants), evidence.Find(row.EvidenceBook, row.Evidence), row.Note)),
    ];

    public IReadOnlyList<WeakPoint> WeakPoints() =>
    [
        .. connection.Query<WeakPointRow>(
            """
            select w.weak_point, w.variant, w.position, w.what, p.part, w.remedy_work, w.built_from, w.built_to, w.serial_from, w.serial_to,
              w.evidence, w.evidence_book, w.note
            from weak_points w
            left join parts p on p.part_key = w.remedy_part_key
            where w.book = @book
            order by w.weak_point
            """,
            new { book })
            .Select(row => new WeakPoint(
                row.WeakPoint, row.Variant, row.Position, row.What, row.Part, row.RemedyWork,
                Readings.SpanOf(row.BuiltFrom, row.BuiltTo, row.SerialFrom, row.SerialTo), evidence.Find(row.EvidenceBook, row.Evidence), row.Note)),
    ];

    // In a key an empty cell is an empty text.
    private static IReadOnlyList<string> VariantsOf(string cell) => cell.Length == 0 ? [] : Readings.ListOf(cell);

    private sealed record OpeningRow(string Position, string OffFirst, string Variants, string? Evidence, string? EvidenceBook, string? Note);

    private sealed record BenchOrderRow(string First, string Then, string? How, string Variants, string? Evidence, string? EvidenceBook, string? Note);

    private sealed record RenewalRow(
        string Opened, string Renewed, string? Amount, string? Unit, string? Bead, string? CureHours, string Variants, string? Evidence, string? EvidenceBook,
        string? Note);

    private sealed record WeakPointRow(
        string WeakPoint, string Variant, string Position, string What, string? Part, string? RemedyWork, string? BuiltFrom, string? BuiltTo, string? SerialFrom,
        string? SerialTo, string? Evidence, string? EvidenceBook, string? Note);
}
