using Dapper;
using Microsoft.Data.Sqlite;
using PartMatch.Core.Catalogue;
using PartMatch.Core.Measures;
using PartMatch.Storage.Catalogue;

namespace PartMatch.Storage.Families;

/// <summary>Reads how worn a part may be.</summary>
internal sealed class LimitReader(SqliteConnection connection, EvidenceReader evidence)
{
    /// <summary>What these books say, ordered by kind, feature, part, then book.</summary>
    public IReadOnlyList<ServiceLimit> OfBooks(IReadOnlyList<string> books)
    {
        var rows = connection.Query<LimitRow>(
            """
            select kind, feature, part, min, max, unit, consequence, evidence, evidence_book, note
            from limits
            where book in @books
            order by kind, feature, part, book
            """,
            new { books });
        return [.. rows.Select(ToLimit)];
    }

    private ServiceLimit ToLimit(LimitRow row)
    {
        var unit = row.Unit is null ? null : UnitTable.Get(row.Unit);
        return new ServiceLimit(
            row.Kind, row.Feature, row.Part.Length > 0 ? row.Part : null, new Interval(End(row.Min, unit), End(row.Max, unit)), unit, Codes.Get<Consequence>(row.Consequence),
            evidence.Find(row.EvidenceBook, row.Evidence), row.Note);
    }

    private static decimal? End(string? number, Unit? unit) =>
        number is null ? null : unit is null ? Readings.FindNumber(number) : Readings.InBase(number, unit);

    private sealed record LimitRow(
        string Kind, string Feature, string Part, string? Min, string? Max, string? Unit, string Consequence, string? Evidence, string? EvidenceBook, string? Note);
}
