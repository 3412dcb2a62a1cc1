using System.Globalization;
using Dapper;
using Microsoft.Data.Sqlite;
using PartMatch.Core.Catalogue;
using PartMatch.Storage.Catalogue;

namespace PartMatch.Storage.Families;

/// <summary>Reads what the makers fitted.</summary>
internal sealed class FitmentReader(SqliteConnection connection, EvidenceReader evidence)
{
    /// <summary>Of one family, ordered by variant, position, part and span.</summary>
    public IReadOnlyList<Fitment> OfBook(string book) => [.. Read("f.book = @book", new { book }).Select(ToFitment)];

    /// <summary>Of one part in all families, ordered by family, variant, position and span.</summary>
    public IReadOnlyList<PartFitment> OfPart(string partKey) =>
        [.. Read("f.part_key = @partKey", new { partKey }).Select(row => new PartFitment(row.Book, row.PositionName, ToFitment(row)))];

    /// <param name="wanted">Constant text of this class.</param>
    private IEnumerable<FitmentRow> Read(string wanted, object parameters) =>
        connection.Query<FitmentRow>(
            $"""
            select f.book, f.variant, f.position, s.name as position_name, p.part, f.built_from, f.built_to, f.serial_from, f.serial_to,
              f.mark, f.quantity, f.evidence, f.evidence_book
            from fitments f
            join positions s on s.book = f.book and s.position = f.position
            left join parts p on p.part_key = f.part_key
            where {wanted}
            order by f.book, f.variant, f.position, f.part, f.built_from, f.built_to, f.serial_from, f.serial_to
            """,
            parameters);

    private Fitment ToFitment(FitmentRow row) => new(
        row.Variant, row.Position, row.Part, Readings.SpanOf(row.BuiltFrom, row.BuiltTo, row.SerialFrom, row.SerialTo, row.Mark),
        row.Quantity is null ? null : int.Parse(row.Quantity, CultureInfo.InvariantCulture), evidence.Find(row.EvidenceBook, row.Evidence));

    private sealed record FitmentRow(
        string Book, string Variant, string Position, string PositionName, string? Part, string BuiltFrom, string BuiltTo, string SerialFrom, string SerialTo,
        string? Mark, string? Quantity, string? Evidence, string? EvidenceBook);
}
