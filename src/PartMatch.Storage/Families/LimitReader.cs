using Dapper;
using Microsoft.Data.Sqlite;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Measures;
using PartMatch.Storage.Catalogue;

namespace PartMatch.Storage.Families;

/// <summary>Reads how worn a part of a kind may be.</summary>
internal sealed class LimitReader(SqliteConnection connection, EvidenceReader evidence)
{
    /// <summary>What these books say, ordered by kind, feature, then book.</summary>
    public IReadOnlyList<ServiceLimit> OfBooks(IReadOnlyList<string> books)
    {
        var rows = connection.Query<LimitRow>(
            """
            select kind, feature, min, max, unit, consequence, evidence, evidence_book, note
            from limits
            where book in @books
            order by kind, feature, book
            """,
            new { books });
        return [.. rows.Select(ToLimit)];
    }

    private ServiceLimit ToLimit(LimitRow row)
    {
        var unit = row.Unit is null ? null : UnitTable.Get(row.Unit);
        return new ServiceLimit(
            row.Kind, row.Feature, new Interval(End(row.Min, unit), End(row.Max, unit)), unit, Codes.Get<Consequence>(row.Consequence),
            evidence.Find(row.EvidenceBook, row.Evidence), row.Note);
    }

    private static decimal? End(string? number, Unit? unit) =>
        number is null ? null : unit is null ? Readings.FindNumber(number) : Readings.InBase(number, unit);

    private sealed record LimitRow(
        string Kind, string Feature, string? Min, string? Max, string? Unit, string Consequence, string? Evidence, string? EvidenceBook, string? Note);
}
